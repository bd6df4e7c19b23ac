"""What her window shows beside the scene, as plain values that the page places: controls, script, changes, questions."""

from collections.abc import Sequence
from typing import Any

from kit.food.composition import nutrient
from kit.meal.certainty import spoken_parts, spoken_parts_per_serving
from kit.meal.changes import Change
from kit.meal.portions import MAKE_MORE, SHARE_OUT
from kit.rules.cautions import allergens
from kit.show.marks import shorten
from kit.show.scenes import ESTIMATES, Scene
from kit.show.script_panel import CLASSES, SIGNS
from kit.show.setting import Setting, swaps_of
from kit.show.views import short_name
from kit.speech.verdict import Verdict
from kit.talk.rehearsal import Plan
from kit.texts import listing, number

MOST_SERVINGS = 24  # the servings slider goes to this, or to four times the recipe's
OF_A_CHANGE = ("energy", "protein", "carbohydrate", "fat", "fiber", "sodium", "saturated_fat")
MOST_ROWS = 4  # of a change that the audience sees
MEANINGS = {MAKE_MORE: "Make more", SHARE_OUT: "Share out"}
MEASURES = {"us": "Cups", "metric": "Grams"}
_TOLD = 0.2  # share from which a difference is said as one


def row(setting: Setting, at: int) -> dict[str, Any]:
    """Return the control of one ingredient: its name, the amounts it runs through and where it stands."""
    part = setting.pot.ingredients[at]
    written = setting.talk.recipe.ingredients
    steps, place = setting.amounts(at)
    return {
        "at": at,
        "name": shorten(part.food.name, 30),
        "full": part.line or part.food.name,
        "part": part.part.capitalize(),
        "steps": [step.label for step in steps],
        "place": place,
        "foods": swaps_of(written[at]) if at < len(written) and written[at].swaps else [],
        "food": part.food.key,
        "changed": at in setting.changed_rows(),
    }


def rows(setting: Setting) -> list[dict[str, Any]]:
    """Return the controls of all ingredients, part by part."""
    parts = [part.part for part in setting.pot.ingredients]
    order = sorted(range(len(parts)), key=lambda at: parts.index(parts[at]))
    return [row(setting, at) for at in order]


def servings(setting: Setting) -> dict[str, Any]:
    """Return the control of the servings."""
    own = setting.talk.recipe.servings
    counts = {float(count) for count in range(1, max(MOST_SERVINGS, round(4 * own)) + 1)} | {own, setting.servings}
    offered = sorted(counts)
    return {
        "steps": [number(count, 2) for count in offered],
        "values": offered,
        "place": offered.index(setting.servings),
        "meaning": setting.meaning,
        "meanings": list(MEANINGS.items()),
        "changed": setting.servings != own or setting.meaning != MAKE_MORE,
    }


def script(verdicts: Sequence[Verdict]) -> list[dict[str, str]]:
    """Return the sentences in their order, each with its verdict, the reason and what holds instead."""
    return [
        {
            "say": verdict.say,
            "sign": SIGNS[verdict.verdict],
            "verdict": verdict.verdict,
            "kind": CLASSES[verdict.verdict],
            "because": verdict.because,
            "instead": verdict.instead,
        }
        for verdict in verdicts
    ]


def plan_rows(plan: Plan) -> dict[str, Any]:
    """Return the plan on the day for the clock of her window; minutes from the first word."""
    steps = [
        {"title": step.title, "say": step.say, "start": step.start, "end": step.end, "waits": step.waits}
        for step in plan.steps
    ]
    pots = [{"name": pot.name, "start": pot.start, "ready": pot.ready} for pot in plan.pots]
    return {"steps": steps, "pots": pots, "slot": plan.slot, "total": plan.total}


def allergens_changed(setting: Setting) -> str:
    """Return which major allergens are gone and which are new, as a sentence; empty when none is."""
    rules = setting.talk.rules
    before = [found.name for found in allergens(setting.written.recipe, rules)]
    after = [found.name for found in allergens(setting.recipe, rules)]
    gone = [name for name in before if name not in after]
    new = [name for name in after if name not in before]
    told = [f"{listing(gone)} gone" if gone else "", f"{listing(new)} new" if new else ""]
    return "; ".join(filter(None, told)).capitalize()


def points_changed(before: Sequence[Verdict], after: Sequence[Verdict]) -> str:
    """Return how many sentences have another verdict than as written; empty when none has."""
    turned = [b for a, b in zip(before, after, strict=False) if a.verdict != b.verdict]
    if not turned:
        return ""
    words = listing([f"{SIGNS[verdict.verdict]} {verdict.say}" for verdict in turned[:2]])
    more = f" and {len(turned) - 2} more" if len(turned) > 2 else ""
    return f"Now otherwise: {words}{more}"


def change_scene(made: Change, sentence: str, answer: str = "") -> Scene:
    """Return a change for the audience: a serving before and after, what differs most on top.

    Parameters
    ----------
    made : Change
        The dish before and after.
    sentence : str
        What was asked.
    answer : str
        The prepared answer.
    """
    told = [_difference(made, name) for name in OF_A_CHANGE]
    told.sort(key=lambda pair: -pair[0])
    rows = [row for _, row in told[:MOST_ROWS]]
    return {"kind": "change", "sentence": sentence, "rows": rows, "answer": answer, "footer": ESTIMATES}


def _difference(made: Change, name: str) -> tuple[float, dict[str, Any]]:
    """Return how much a nutrient differs, to order by, and its row."""
    before, after = spoken_parts_per_serving(made.before)[name], spoken_parts_per_serving(made.after)[name]
    value, low, high = made.difference(name)
    unsure = low <= 0 <= high
    was = made.before[name]
    row = {
        "label": short_name(name),
        "before": " ".join(filter(None, before[1:])),
        "value": after[1],
        "unit": after[2],
        "by": "" if value == 0 else _by(value, low, high, was, name),
        "same": unsure or before == after,
    }
    if unsure and value != 0:
        row["by"] = "too small to tell"
    weight = abs(value) / max(was, made.after[name], 1e-9)
    return weight - (10 if row["same"] else 0), row


def _by(value: float, low: float, high: float, was: float, name: str) -> str:
    """Return by how much a nutrient differs, in words.

    Examples
    --------
    >>> _by(-170.0, -220.0, -120.0, 500.0, "sodium"), _by(2.0, 1.8, 2.2, 16.0, "protein")
    ('about a third less', 'about 2 more')
    """
    side = "less" if value < 0 else "more"
    share = abs(value) / was if was > 0 else 0.0
    parts = ((0.97, "all gone"), (0.9, "nearly all gone"))
    if value < 0 and share > parts[1][0]:
        return next(words for least, words in parts if share > least)
    named = {0.25: "a quarter", 1 / 3: "a third", 0.5: "half"}
    near = min(named, key=lambda part: abs(part - share))
    if share >= _TOLD and abs(near - share) <= 0.04:
        return f"about {named[near]} {side}"
    ends = sorted((abs(low), abs(high)))
    about, said, _unit = spoken_parts(abs(value), *ends, nutrient(name).unit, nutrient(name).decimals)
    return f"{about} {said} {side}".strip()

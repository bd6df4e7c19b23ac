"""What her window shows beside the scene, as plain values that the page places: controls, script, changes."""

from collections.abc import Sequence
from typing import Any

from kit.food.composition import Food
from kit.food.names import short_name as short_name_of
from kit.meal.portions import MAKE_MORE, SHARE_OUT
from kit.meal.recipe import Ingredient
from kit.rules.cautions import allergens
from kit.show.judged import KINDS, SIGNS
from kit.show.marks import shorten
from kit.show.setting import Setting, swaps_of
from kit.speech.verdict import Verdict
from kit.talk.plan import Plan
from kit.texts import listing, number

MOST_SERVINGS = 24  # the servings slider goes to this, or to four times the recipe's
MEANINGS = {MAKE_MORE: "Make more", SHARE_OUT: "Share out"}
MEASURES = {"us": "Cups", "metric": "Grams"}


def row(setting: Setting, at: int) -> dict[str, Any]:
    """Return the control of one ingredient: its name, the amounts it runs through and where it stands."""
    part = setting.pot.ingredients[at]
    written = setting.talk.recipe.ingredients
    steps, place = setting.amounts(at)
    foods = _choices(written[at]) if at < len(written) and written[at].swaps else []
    if foods and part.food.key not in dict(foods):  # a typed what-if has put it there
        foods = [*foods, (part.food.key, shown_name(part.food))]
    return {
        "at": at,
        "name": shown_name(part.food),
        "full": part.line or part.food.name,
        "part": part.part.capitalize(),
        "steps": [step.label for step in steps],
        "place": place,
        "foods": foods,
        "food": part.food.key,
        "changed": at in setting.changed_rows(),
    }


def shown_name(food: Food) -> str:
    """Return a food's name as a control shows it: the thing, without its state."""
    name = short_name_of(food)
    return shorten(name[:1].upper() + name[1:], 30)


def _choices(ingredient: Ingredient) -> list[tuple[str, str]]:
    """Return the foods that an ingredient's chooser offers, by keys; with their states where the names are alike."""
    foods = swaps_of(ingredient)
    short = [shown_name(food) for food in foods]
    return [
        (food.key, name if short.count(name) == 1 else shorten(food.name, 30))
        for food, name in zip(foods, short, strict=True)
    ]


class Rows:
    """The controls of all ingredients, of which only those are made anew that a change has touched."""

    def __init__(self) -> None:
        self._made: dict[int, tuple[tuple[Any, ...], dict[str, Any]]] = {}

    def of(self, setting: Setting) -> list[dict[str, Any]]:
        """Return the controls, part by part."""
        shown = {}
        for at, states in enumerate(setting.states()):
            if at not in self._made or self._made[at][0] != states:
                self._made[at] = (states, row(setting, at))
            shown[at] = self._made[at][1]
        return [shown[at] for at in in_order(setting)]


def in_order(setting: Setting) -> list[int]:
    """Return the places of the ingredients part by part."""
    parts = [part.part for part in setting.pot.ingredients]
    return sorted(range(len(parts)), key=lambda at: parts.index(parts[at]))


def rows(setting: Setting) -> list[dict[str, Any]]:
    """Return the controls of all ingredients, part by part."""
    return [row(setting, at) for at in in_order(setting)]


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
            "kind": KINDS[verdict.verdict],
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
    """Return the first sentence with another verdict than as written, and how many more; empty when none has.

    One alone: two would not stand whole above the clock on a laptop.
    """
    turned = [b for a, b in zip(before, after, strict=False) if a.verdict != b.verdict]
    if not turned:
        return ""
    more = f" and {len(turned) - 1} more" if len(turned) > 1 else ""
    return f"Now otherwise: {SIGNS[turned[0].verdict]} {turned[0].say}{more}"

"""A change for the audience: what was done to the dish, and a serving before and after."""

from collections.abc import Sequence
from typing import Any

from kit.errors import ChangeError
from kit.food.names import short_name
from kit.food.nutrients import nutrient
from kit.meal.certainty import range_of, said_number, spoken_parts_per_serving
from kit.meal.changes import Change
from kit.meal.changes_told import told
from kit.meal.recipe import Recipe
from kit.meal.steps import LeaveOut, Step, applied
from kit.meal.target_words import is_target, read_targets
from kit.show.scenes import ESTIMATES, Scene
from kit.speech.what_if import TOO_SMALL
from kit.texts import listing, number

OF_A_CHANGE = ("energy", "protein", "carbohydrate", "fat", "fiber", "sodium", "saturated_fat")
MOST_ROWS = 4  # of a change that the audience sees
_AS_MUCH = {"less": "about half as much", "more": "about half as much again"}
_UNCHANGED = -100.0
_TOLD, _GONE, _NEAR = 0.2, 0.9, 0.03  # shares: told as a share, nearly all, near enough to a fraction
_FRACTIONS = {0.25: "a quarter", 1 / 3: "a third", 0.5: "half", 2 / 3: "two thirds", 0.75: "three quarters"}
_LONGEST = 150  # characters of what was done: two lines


def change_scene(made: Change, sentence: str, answer: str = "", did: str = "", first: Sequence[str] = ()) -> Scene:
    """Return a change for the audience: a serving before and after, what differs most on top.

    Parameters
    ----------
    made : Change
        The dish before and after.
    sentence : str
        What was asked.
    answer, did : str
        The prepared answer; what was done, which stands there where none was prepared.
    first : sequence of str
        Nutrients that were asked for, which stand on top however little they differ.
    """
    differing = [_difference(made, name) for name in OF_A_CHANGE if name not in first]
    differing.sort(key=lambda pair: -pair[0])
    rows = [_difference(made, name)[1] for name in first]
    rows += [row for weight, row in differing if weight > _UNCHANGED]
    if did and not rows:
        did += " What one serving holds stays the same."
    shown = {"sentence": sentence, "rows": rows[:MOST_ROWS], "answer": answer or did}
    return {"kind": "change", **shown, "footer": ESTIMATES}


def asked_for(words: str) -> tuple[str, ...]:
    """Return the nutrients that a line of targets names; none of any other line.

    Examples
    --------
    >>> asked_for("20 g protein and under 600 mg sodium"), asked_for("no feta")
    (('protein', 'sodium'), ())
    """
    return tuple(target.nutrient for target in read_targets(words)) if is_target(words) else ()


def done(pot: Recipe, steps: Sequence[Step], system: str) -> str:
    """Return what a change does to a pot, as a sentence or two; empty where the question says it all.

    Examples
    --------
    >>> from kit.meal.changes import read_change
    >>> from kit.meal.recipe import recipe
    >>> salad = recipe("Salad", ["4 cups kale, chopped", "1/2 cup feta, crumbled", "1/2 tsp salt"], servings=2)
    >>> for line in ("no feta", "no feta and half the salt", "make it for ten"):
    ...     print(done(salad, read_change(line, salad), "us"))
    <BLANKLINE>
    Leave out the feta cheese; 1/4 tsp of salt, not 1/2 tsp.
    10 servings, everything times 5.
    """
    if all(isinstance(step, LeaveOut) for step in steps):
        return ""
    try:
        text = "; ".join(step.text for step in told(pot, steps, system))
        if len(text) > _LONGEST:
            text = f"other amounts of {listing(_changed(pot, steps))}"
    except ChangeError:
        return ""
    return f"{text[:1].upper()}{text[1:]}."


def _changed(pot: Recipe, steps: Sequence[Step]) -> list[str]:
    """Return the names of the ingredients that steps change."""
    after = applied(pot, steps).ingredients
    return [
        short_name(part.food)
        for at, part in enumerate(after)
        if at >= len(pot.ingredients)
        or (part.food.key, part.grams) != (pot.ingredients[at].food.key, pot.ingredients[at].grams)
    ]


def _difference(made: Change, name: str) -> tuple[float, dict[str, Any]]:
    """Return how much a nutrient differs, to order by, and its row."""
    before, after = spoken_parts_per_serving(made.before)[name], spoken_parts_per_serving(made.after)[name]
    differs = made.difference(name)
    value, low, high = differs.value, differs.low, differs.high
    unsure = low <= 0 <= high
    was = made.before[name]
    row = {
        "label": nutrient(name).short_name,
        "before": " ".join(filter(None, before[1:])),
        "value": after[1],
        "unit": after[2],
        "by": "" if value == 0 else _by(made, name),
        "same": unsure or before == after,
    }
    if unsure and value != 0:
        row["by"] = TOO_SMALL
    weight = abs(value) / max(was, made.after[name], 1e-9)
    return _UNCHANGED if value == 0 else weight - (10 if row["same"] else 0), row


def _by(made: Change, name: str) -> str:
    """Return by how much a nutrient differs, in words that fit the numbers beside them."""
    was, now = range_of(made.before, name), range_of(made.after, name)
    side = "less" if now.value < was.value else "more"
    share = abs(now.value - was.value) / was.value if was.value > 0 else 0.0
    if side == "less" and share > _GONE:
        return "all gone" if share > 1 - 1e-6 else "nearly all gone"
    if share >= _TOLD:
        return share_words(share, side)
    before, after = (said_number(ends.value, ends.high - ends.value) for ends in (was, now))
    return f"{number(abs(after - before), 1)} {side}" if before != after else f"slightly {side}"


def share_words(share: float, side: str) -> str:
    """Return by which share something differs.

    Examples
    --------
    >>> share_words(0.34, "less"), share_words(0.5, "less"), share_words(0.58, "more"), share_words(2.0, "more")
    ('about a third less', 'about half as much', 'about 60 % more', 'about 3 times as much')
    """
    if side == "more" and share >= 1 - _NEAR:
        return f"about {number(share + 1)} times as much" if share >= 1.5 else "about twice as much"
    near = min(_FRACTIONS, key=lambda part: abs(part - share))
    if abs(near - share) <= _NEAR:
        return _AS_MUCH[side] if near == 0.5 else f"about {_FRACTIONS[near]} {side}"
    return f"about {10 * round(10 * share)} % {side}"

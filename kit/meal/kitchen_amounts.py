"""The amounts that a kitchen can measure: spoons and cups that exist, whole things, and the steps of a slider."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, floor, log10

from kit.food.measures import amount_text, common_fraction, kitchen_steps, kitchen_volumes, plural, unit
from kit.food.names import lowered
from kit.lines.nearest_measure import SIZES
from kit.meal.recipe import MOST_GRAMS, Ingredient
from kit.texts import quantity

LEFT_OUT = "left out"
WORTH_SAYING = 0.05  # a rounding error above this is shown
_MOST_STEPS = 60  # of a slider: what lies closer together than a touch can tell is of no use
_MOST_COUNTED, _MOST_ML = 400, 9_500.0  # beyond these the ladder has only round numbers
_FINEST = 24  # a slider starts at about a twenty-fourth of its top, so that spoons do not crowd out cups


def volume(noun: str) -> float:
    """Return the size of a unit of volume. [mL]"""
    found = unit(noun)
    return found.size if found else 1.0


@dataclass(frozen=True, slots=True)
class KitchenStep:
    """One amount an ingredient can be set to: what it is called in the kitchen, and its grams."""

    label: str
    grams: float


@dataclass(frozen=True, slots=True)
class KitchenAmount:
    """An amount rounded to what a kitchen can measure, and by how much that is off. [fraction of it]."""

    text: str
    grams: float
    error: float


def _density(ingredient: Ingredient) -> float | None:
    """Return grams per millilitre for an ingredient counted in a volume, else None."""
    measured = unit(ingredient.noun)
    return ingredient.noun_grams / measured.size if measured and measured.kind == "volume" else None


def _metric(ingredient: Ingredient) -> tuple[str, float] | None:
    """Return an ingredient's metric measure and the grams of one; None for spoons and counted things, which stay."""
    if unit(ingredient.noun) is None or ingredient.noun in ("tsp", "tbsp", "pinch", "dash"):
        return None
    density = _density(ingredient)
    return ("mL", density) if density is not None and 0.88 < density < 1.1 else ("g", 1.0)


def _ladder(ingredient: Ingredient, top: float, system: str) -> list[KitchenStep]:
    """Return kitchen amounts of an ingredient from 0 until `top` grams is reached, few enough to be told apart."""
    metric = _metric(ingredient) if system == "metric" else None
    density = _density(ingredient)
    if metric:
        noun, each = metric
        counts = kitchen_steps(noun, top / each)
    elif density is not None and ingredient.noun not in ("mL", "L"):
        volumes = [(0.0, "cup"), *kitchen_volumes(min(top / density, _MOST_ML), top / density / _FINEST)]
        amounts = [(count, noun, count * volume(noun) * density) for count, noun in volumes]
        each, whole = volume("cup") * density, top / density <= _MOST_ML
        return [_step(*amount) for amount in (amounts if whole else _round_counts(top, each, "cup"))]
    else:
        noun, each = ingredient.noun, ingredient.noun_grams
        counts = kitchen_steps(noun, min(top / each, _MOST_COUNTED))
    if len(counts) > _MOST_STEPS:
        return [_step(*amount) for amount in _round_counts(top, each, noun)]
    return [_step(float(count), noun, float(count) * each) for count in counts]


def _step(count: float, noun: str, grams: float) -> KitchenStep:
    return KitchenStep(LEFT_OUT if grams == 0 else amount_text(count, noun), grams)


def _round_counts(top: float, each: float, noun: str) -> list[tuple[float, str, float]]:
    """Return round numbers of a measure until `top` grams is reached, as many as a slider can tell apart."""
    most = top / each
    power = 10.0 ** floor(log10(max(1.0, most / _MOST_STEPS)))
    step = next(step * power for step in (1, 2, 5, 10) if most / (step * power) <= _MOST_STEPS)
    return [(n * step, noun, n * step * each) for n in range(ceil(most / step) + 1)]


def _own_label(ingredient: Ingredient, grams: float, system: str) -> str:
    metric = _metric(ingredient) if system == "metric" else None
    if metric:
        noun, each = metric
        return amount_text(round(grams / each), noun)
    count, density = grams / ingredient.noun_grams, _density(ingredient)
    if density is not None and common_fraction(count) is None and not _is_measured(grams / density):
        return quantity(grams, "g", 1)  # "1.1 g": nobody measures 0.18 tsp
    return amount_text(count, ingredient.noun)


def _is_measured(size: float) -> bool:
    """Whether spoons and cups measure a volume, as near as is no rounding error. [mL]"""
    near = (1 - WORTH_SAYING) * size, (1 + WORTH_SAYING) * size
    return any(near[0] <= count * volume(noun) <= near[1] for count, noun in kitchen_volumes(near[1], near[0]))


def slider_steps(ingredient: Ingredient, system: str = "us") -> tuple[KitchenStep, ...]:
    """Return the amounts a slider of an ingredient runs through, "left out" first, the recipe's own among them.

    Parameters
    ----------
    ingredient : Ingredient
        Its `slider` gives the ends; by default it runs to twice the amount.
    system : {"us", "metric"}
        Cups and ounces, or grams and millilitres; spoons and counted things stay.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> lentils = recipe("Pot", ["1 cup lentils, dry"]).ingredients[0]
    >>> [step.label for step in slider_steps(lentils)][:3], slider_steps(lentils)[-1].label
    (['left out', '4 tsp', '5 tsp'], '2 cups')
    """
    low, high = ingredient.slider or (0.0, 2 * ingredient.grams or ingredient.noun_grams * 2)
    own = KitchenStep(_own_label(ingredient, ingredient.grams, system), ingredient.grams)
    near = 0.012 * max(ingredient.grams, high / _FINEST)  # a kitchen amount this near is the recipe's own
    steps = [step for step in _ladder(ingredient, high, system) if abs(step.grams - own.grams) > near]
    kept = [step for step in steps if step.grams == 0 or low <= step.grams <= high * 1.02]
    if own.grams > 0:
        kept.append(own)
    return (KitchenStep(LEFT_OUT, 0.0), *sorted((step for step in kept if step.grams > 0), key=lambda step: step.grams))


def offered_amounts(
    ingredient: Ingredient, grams: float, scale: float = 1.0, system: str = "us"
) -> tuple[KitchenStep, ...]:
    """Return the amounts that a slider offers in the pot that is cooked, the present one among them or near by.

    Parameters
    ----------
    ingredient : Ingredient
        As it is in the pot as written; its `slider` gives the ends there.
    grams : float
        How much of it there is now, in the pot as written. [g]
    scale : float
        How many times that pot is cooked.
    system : {"us", "metric"}
        The measures that amounts are named in.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> lentils = recipe("Pot", ["1 cup lentils, dry"]).ingredients[0]
    >>> [offered_amounts(lentils, lentils.grams, scale)[-1].label for scale in (1, 2)]
    ['2 cups', '4 cups']
    """
    low, high = ingredient.slider or (0.0, 2 * ingredient.grams or 2 * ingredient.noun_grams)
    cooked = grams * scale
    ends = low * scale, max(high * scale, cooked)
    scaled = replace(ingredient, grams=min(MOST_GRAMS, ingredient.grams * scale), slider=ends)
    steps = slider_steps(scaled, system)
    if abs(steps[nearest_amount(steps, cooked)].grams - cooked) <= WORTH_SAYING * cooked:
        return steps
    own = slider_steps(replace(scaled, grams=cooked), system)
    return tuple(sorted((*steps, own[nearest_amount(own, cooked)]), key=lambda step: step.grams))


def nearest_amount(steps: Sequence[KitchenStep], grams: float) -> int:
    """Return where among the amounts of a slider some grams stand. [g]"""
    return min(range(len(steps)), key=lambda place: abs(steps[place].grams - grams))


def kitchen_amount(ingredient: Ingredient, system: str = "us") -> KitchenAmount:
    """Return an ingredient's amount as the nearest one that a kitchen can measure.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> pot = recipe("Pot", ["1 cup lentils, dry"])
    >>> kitchen_amount(pot.with_grams(pot.grams * 2.5).ingredients[0]).text
    '2 1/2 cups'
    """
    grams = ingredient.grams
    if grams == 0:
        return KitchenAmount(LEFT_OUT, 0.0, 0.0)
    if system == "us" and ingredient.count > _MOST_COUNTED / 4:  # so many are counted, or weighed, one by one
        return _whole(ingredient)
    steps = [step for step in _ladder(ingredient, grams * 1.5, system) if step.grams > 0]
    finest = _ladder(ingredient, grams * 1.01, system)[1:] or steps
    own = KitchenStep(_own_label(ingredient, grams, system), grams)  # less than the smallest spoon
    nearest = min([*steps, *finest] or [own], key=lambda step: abs(step.grams - grams))
    if abs(nearest.grams - grams) > WORTH_SAYING * grams and _in_halves(ingredient.count):
        nearest = own  # "1 1/2 tbsp"
    return KitchenAmount(nearest.label, nearest.grams, nearest.grams / grams - 1)


def _in_halves(count: float) -> bool:
    common = common_fraction(count)
    return common is not None and common.denominator in (1, 2)


def _whole(ingredient: Ingredient) -> KitchenAmount:
    count = float(round(ingredient.count))
    grams = count * ingredient.noun_grams
    return KitchenAmount(amount_text(count, ingredient.noun), grams, grams / ingredient.grams - 1)


def kitchen_line(ingredient: Ingredient, system: str = "us") -> str:
    """Return an ingredient as a line to cook from, with the rounding error where it is over 5 %.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> pot = recipe("Pot", ["2 medium onions, sliced", "4 cups kale, chopped"])
    >>> [kitchen_line(part) for part in pot.with_grams(pot.grams * 1.5).ingredients]
    ['3 medium onions, sliced', '6 cups kale, chopped']
    """
    amount = kitchen_amount(ingredient, system)
    off = f" ({amount.error:+.0%} by rounding)" if abs(amount.error) > WORTH_SAYING else ""
    name = lowered(ingredient.food.name)
    if ingredient.food.state == "raw":  # goes without saying
        name = name.removesuffix(", raw")
    if ingredient.noun in (*SIZES, "piece") and "," not in name and not name.endswith("s"):
        name = plural(name, ingredient.count)
    if ingredient.cut == "trimmed":  # weighed so; behind a comma it would be done later
        name = f"trimmed {name}"
    elif ingredient.cut:
        name = f"{name}, {ingredient.cut}"
    return f"{amount.text} {name}{off}"

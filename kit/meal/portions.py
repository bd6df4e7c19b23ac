"""Servings: make more or share out differently, and the amounts that a kitchen can measure."""

from dataclasses import dataclass, replace

from kit.food.measures import amount_text, kitchen_steps, kitchen_volumes, unit
from kit.meal.recipe import Ingredient, Recipe

MAKE_MORE, SHARE_OUT = "make more", "share out"  # the two meanings of other servings
LEFT_OUT = "left out"
_MOST_STEPS = 60  # of a slider: what is wider apart than a touch can tell is of no use
_ROUND = (1, 2, 5, 10, 20, 25, 50, 100, 250, 500)
_FINEST = 24  # a slider starts at about a twenty-fourth of its top, so that spoons do not crowd out cups
WORTH_SAYING = 0.05  # a rounding error above this is shown


def make_more(recipe: Recipe, servings: float) -> Recipe:
    """Return the recipe for other servings, every amount scaled; a serving stays the same.

    Raises
    ------
    AmountError
        If the servings make no sense.
    """
    return recipe.with_grams(recipe.grams * (servings / recipe.servings), servings)


def share_out(recipe: Recipe, servings: float) -> Recipe:
    """Return the same pot shared out into other servings; a serving changes.

    Raises
    ------
    AmountError
        If the servings make no sense.
    """
    return replace(recipe, servings=servings)


@dataclass(frozen=True, slots=True)
class Step:
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
    poured = density is not None and 0.88 < density < 1.1
    return ("mL", density) if poured else ("g", 1.0)


def _ladder(ingredient: Ingredient, top: float, system: str) -> list[Step]:
    """Return kitchen amounts of an ingredient from 0 until `top` grams is reached."""
    metric = _metric(ingredient) if system == "metric" else None
    if metric:
        noun, each = metric
        return [Step(amount_text(count, noun), float(count * each)) for count in kitchen_steps(noun, top / each)]
    density = _density(ingredient)
    if density is not None and ingredient.noun not in ("mL", "L"):
        volumes = kitchen_volumes(top / density, top / density / _FINEST)
        return [Step(LEFT_OUT, 0.0)] + [
            Step(amount_text(n, noun), n * unit(noun).size * density) for n, noun in volumes
        ]
    counts = kitchen_steps(ingredient.noun, top / ingredient.noun_grams)
    return [Step(amount_text(float(n), ingredient.noun), float(n) * ingredient.noun_grams) for n in counts]


def _own_label(ingredient: Ingredient, grams: float, system: str) -> str:
    metric = _metric(ingredient) if system == "metric" else None
    if metric:
        noun, each = metric
        return amount_text(round(grams / each), noun)
    return amount_text(grams / ingredient.noun_grams, ingredient.noun)


def slider_steps(ingredient: Ingredient, system: str = "us") -> tuple[Step, ...]:
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
    (['left out', '2 tbsp', '3 tbsp'], '2 cups')
    """
    low, high = ingredient.slider or (0.0, 2 * ingredient.grams or ingredient.noun_grams * 2)
    own = Step(_own_label(ingredient, ingredient.grams, system), ingredient.grams)
    near = 0.012 * max(ingredient.grams, high / _FINEST)  # a kitchen amount this near is the recipe's own
    steps = [step for step in _ladder(ingredient, high, system) if abs(step.grams - own.grams) > near]
    kept = [step for step in steps if step.grams == 0 or low <= step.grams <= high * 1.02]
    if own.grams > 0:
        kept.append(own)
    return (Step(LEFT_OUT, 0.0), *sorted((step for step in kept if step.grams > 0), key=lambda step: step.grams))


def kitchen_amount(ingredient: Ingredient, system: str = "us") -> KitchenAmount:
    """Return an ingredient's amount as the nearest one that a kitchen can measure.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> pot = make_more(recipe("Pot", ["1 cup lentils, dry"], servings=4), 10)
    >>> kitchen_amount(pot.ingredients[0]).text
    '2 1/2 cups'
    """
    grams = ingredient.grams
    if grams == 0:
        return KitchenAmount(LEFT_OUT, 0.0, 0.0)
    steps = [step for step in _ladder(ingredient, grams * 1.5, system) if step.grams > 0]
    finest = _ladder(ingredient, grams * 1.01, system)[1:] or steps
    own = Step(_own_label(ingredient, grams, system), grams)  # less than the smallest spoon
    nearest = min([*steps, *finest] or [own], key=lambda step: abs(step.grams - grams))
    return KitchenAmount(nearest.label, nearest.grams, nearest.grams / grams - 1)


def kitchen_line(ingredient: Ingredient, system: str = "us") -> str:
    """Return an ingredient as a line to cook from, with the rounding error where it is over 5 %."""
    amount = kitchen_amount(ingredient, system)
    off = f" ({amount.error:+.0%} by rounding)" if abs(amount.error) > WORTH_SAYING else ""
    name = ingredient.food.name.lower()
    if ingredient.cut == "trimmed":  # weighed so; behind a comma it would be done later
        name = f"trimmed {name}"
    elif ingredient.cut:
        name = f"{name}, {ingredient.cut}"
    return f"{amount.text} {name}{off}"

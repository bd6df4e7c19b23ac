"""What goes in each container: a share of every ingredient in kitchen measures, grain and pulses as they are cooked."""

from dataclasses import dataclass, replace

from kit.errors import AmountError
from kit.food.composition import Food
from kit.food.cooking import weight_yield
from kit.food.measures import unit
from kit.food.names import short_name
from kit.food.three_weights import cooked_form
from kit.meal.eaten import eaten_grams
from kit.meal.kitchen_amounts import kitchen_amount
from kit.meal.recipe import Ingredient, Recipe
from kit.texts import listing, quantity

_LADLED = 0.3  # of the weight
_CUP = 240.0  # [g] of a soup: 21 CFR 101.9(b)(5)(viii) gives a cup 240 mL, and a soup weighs about 1 g/mL
_SMALLEST = 1.25  # [g] of a serving: about a quarter teaspoon, the least that is worth measuring out


@dataclass(frozen=True, slots=True)
class Share:
    """What one container gets of one ingredient.

    Attributes
    ----------
    food : Food
        As it goes in: cooked, where the recipe measures it dry.
    text : str
        In kitchen measures: "3/4 cup cooked barley".
    grams : float
        [g]
    error : float
        By how much the kitchen measure is off, as a fraction of it.
    part : str
        The part of the recipe it belongs to.
    """

    food: Food
    text: str
    grams: float
    error: float
    part: str


def each_container(recipe: Recipe, system: str = "us") -> tuple[Share, ...]:
    """Return what goes in each container, in the recipe's order; less than a quarter teaspoon is left to the stirring.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> box = recipe("Box", ["2/3 cup quinoa", "1/2 cup feta, crumbled", "1/8 tsp salt"], servings=4)
    >>> [share.text for share in each_container(box)]
    ['1/2 cup cooked quinoa', '2 tbsp feta cheese']
    """
    shares = (_share(part, recipe.servings, system) for part in recipe.ingredients if part.food.key != "water")
    return tuple(share for share in shares if share.grams >= _SMALLEST)


def container_lines(recipe: Recipe, system: str = "us") -> tuple[str, ...]:
    """Return the same in lines to read: a line for each, what is stirred in, and the weight of a container as eaten."""
    weight = eaten_grams(recipe).value / recipe.servings
    if _is_ladled(recipe):
        cups = kitchen_amount(replace(recipe.ingredients[0], grams=weight, noun="cup", noun_grams=_CUP)).text
        return (f"about {cups} ({quantity(round(weight, -1), 'g')}), ladled",)
    shares = each_container(recipe, system)
    told = {share.food.base or share.food.key for share in shares}
    small = [
        short_name(part.food)
        for part in recipe.ingredients
        if part.grams > 0 and part.food.key != "water" and (part.food.base or part.food.key) not in told
    ]
    rest = [f"and a share of the {listing(list(dict.fromkeys(small)))}"] if small else []
    return (*(share.text for share in shares), *rest, f"about {quantity(round(weight, -1), 'g')} in all")


def _share(part: Ingredient, servings: float, system: str) -> Share:
    one = replace(part, grams=part.grams / servings, slider=None)
    soaked = "oats" in part.food.base  # may be eaten without being cooked
    cooked = cooked_form(part.food) if part.food.state == "dry" and not soaked else None
    row = cooked.measure("cup") if cooked else None
    name = short_name(part.food)
    if cooked and row:
        try:
            grams = one.grams * weight_yield(part.food, cooked)
        except AmountError:
            return _told(one, name, system)
        one = replace(one, food=cooked, grams=grams, noun="cup", noun_grams=row.grams, cut=row.cut)
        name = f"cooked {name}"
    return _told(_in_cups(one), name, system)


def _in_cups(one: Ingredient) -> Ingredient:
    """Return a part of a can, a bunch or an onion in cups, where the table weighs a cup of it."""
    if unit(one.noun) is not None or one.count >= 1:
        return one
    row = one.food.measure("cup", cut=one.cut) or one.food.measure("cup")
    return replace(one, noun="cup", noun_grams=row.grams, cut=row.cut) if row else one


def _is_ladled(recipe: Recipe) -> bool:
    """Whether a dish is mostly water or stock with something in it, so that nothing of it is measured out alone."""
    poured = sum(part.grams for part in recipe.ingredients if part.food.group in ("beverage", "stock"))
    return poured > _LADLED * float(recipe.grams.sum())


def _told(one: Ingredient, name: str, system: str) -> Share:
    amount = kitchen_amount(one, system)
    return Share(one.food, f"{amount.text} {name}", one.grams, amount.error, one.part)

"""What to buy for a recipe: whole cans, bunches and pieces, and what is left of them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import ceil

from kit.food.composition import Food
from kit.food.measures import amount_text, plural, unit
from kit.food.names import short_name
from kit.lines.nearest_measure import SIZES
from kit.meal.kitchen_amounts import kitchen_amount
from kit.meal.recipe import Ingredient, Recipe
from kit.texts import quantity

# What each group is sold in, where the table weighs one: common practice.
_SOLD_IN = {
    "herb": ("bunch", "package"),
    "vegetable": ("bunch", "head", "package", "bag", "can"),
    "dairy": ("package", "stick", "carton"),
    "soy": ("block", "package"),
    "pulse": ("can",),
    "fish": ("can",),
    "fruit": ("can", "package", "bag"),
    "bread": ("loaf", "package"),
}
_LOOSE = ("piece", "fruit", "stalk", "rib", "ear", "thigh", "breast", "fillet", "fruit", *SIZES)
_WORTH_KEEPING = 0.03  # of a package: less is no leftover
_POUND = 453.59237  # [g], NIST SP 811
_AT_HAND = ("spice",)


@dataclass(frozen=True, slots=True)
class ToBuy:
    """One thing to buy.

    Attributes
    ----------
    food : Food
        What it is.
    text : str
        How much: "2 cans (15 oz)", "1 bunch", "1 1/2 cups (300 g)".
    bought, used : float
        Grams of the food as the table describes it that are bought, and that the recipe uses. [g]
    left : str
        What is left of it, in words; empty when nothing is.
    at_hand : bool
        Whether most kitchens have it: spices and salt.
    with_what : str
        What comes with it that is not eaten, in words.
    """

    food: Food
    text: str
    bought: float
    used: float
    left: str = ""
    at_hand: bool = False
    with_what: str = ""

    @property
    def line(self) -> str:
        """The whole of it on one line."""
        peel = f", {self.with_what}" if self.with_what else ""
        rest = f"; {self.left} left" if self.left else ""
        return f"{self.text} {self.name}{peel}{rest}"

    @property
    def name(self) -> str:
        """The food's name, of several where whole ones are bought."""
        name = short_name(self.food)
        loose = self.text.split(" ")[-1] in SIZES
        return plural(name, 2) if loose and not self.text.startswith("1 ") and not name.endswith("s") else name


def to_buy(recipe: Recipe, system: str = "us") -> tuple[ToBuy, ...]:
    """Return what to buy for a recipe, in its order: whole packages where it is sold so.

    Parameters
    ----------
    recipe : Recipe
        Scaled as it will be cooked.
    system : {"us", "metric"}
        The measures to name.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> pot = recipe("Pot", ["1 1/2 (15 oz) cans black beans, drained", "1/4 cup parsley, chopped", "1 cup quinoa"])
    >>> [one.line for one in to_buy(pot)]
    ['2 cans (15 oz) black beans; 1/2 can (15 oz) left', '1 bunch parsley; 40 g left', '1 cup (170 g) quinoa']
    """
    return tuple(_to_buy(part, system) for part in _together(recipe.ingredients) if part.food.key != "water")


def _together(parts: Iterable[Ingredient]) -> list[Ingredient]:
    """Return the ingredients with those of one food added up, in the first one's measure."""
    found: dict[str, Ingredient] = {}
    for part in parts:
        if part.grams > 0:
            first = found.get(part.food.key)
            found[part.food.key] = replace(first, grams=first.grams + part.grams) if first else part
    return list(found.values())


def _to_buy(part: Ingredient, system: str) -> ToBuy:
    food = part.food
    noun, each = _package(part)
    if noun:
        return _whole(part, noun, each)
    if food.refuse > 0.05 and food.state == "raw" and food.group in ("vegetable", "fruit", "herb"):
        bought = part.grams / (1 - food.refuse)
        return ToBuy(food, _weight(bought, system), part.grams, part.grams, with_what="with what is taken off")
    weighed = unit(part.noun) is not None and unit(part.noun).kind == "mass"  # type: ignore[union-attr]
    amount = kitchen_amount(part, system).text
    text = amount if weighed or food.group in _AT_HAND else f"{amount} ({quantity(part.grams, 'g')})"
    return ToBuy(food, text, part.grams, part.grams, at_hand=food.group in _AT_HAND)


def _package(part: Ingredient) -> tuple[str, float]:
    """Return what a food is sold in and the grams of one; nothing where it is sold by any weight."""
    if part.container or part.noun in ("bunch", "head", "block"):
        return part.noun, part.noun_grams
    if part.noun in _LOOSE:
        return part.noun, part.noun_grams
    row = part.food.measure(*_SOLD_IN.get(part.food.group, ()))
    return (row.measure, row.grams) if row else ("", 0.0)


def _whole(part: Ingredient, noun: str, each: float) -> ToBuy:
    needed = part.grams / each
    count = ceil(needed - 0.02)
    left = count - needed
    text = amount_text(float(max(1, count)), noun)
    rest = ""
    if left > _WORTH_KEEPING and noun in SIZES:
        rest = f"{amount_text(round(4 * left) / 4, 'piece')} of one"
    elif left > _WORTH_KEEPING and noun == part.noun:
        rest = kitchen_amount(replace(part, grams=left * each)).text
    elif left > _WORTH_KEEPING:
        rest = quantity(left * each, "g")
    return ToBuy(part.food, text, max(1, count) * each, part.grams, rest)


def _weight(grams: float, system: str) -> str:
    if system == "metric":
        return quantity(grams, "g") if grams < 1000 else quantity(grams / 1000, "kg", 1)
    return quantity(grams / _POUND, "lb", 1) if grams >= _POUND / 4 else quantity(grams, "g")

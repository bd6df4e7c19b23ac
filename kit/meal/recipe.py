"""A recipe as frozen values: foods, grams and servings. A change returns a new one."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kit.errors import AmountError, LineError, UnknownNameError
from kit.food.composition import Food, Foods
from kit.food.cooking import WAYS
from kit.lines.reader import read_each
from kit.lines.reading import Reading
from kit.lines.recipe_text import LEAST_SERVINGS, MOST_SERVINGS, WrittenRecipe
from kit.meal.makeup import Makeup, makeup
from kit.meal.ways import Mixture, Way, mixture_of
from kit.meal.ways import ways as ways_of

MOST_GRAMS = 1e6  # a tonne of one ingredient is a slip of the pen
KINDS_OF_DISH = ("main dish", "meal", "soup", "side", "dessert", "drink", "food")


@dataclass(frozen=True, eq=False)
class Ingredient:
    """One ingredient: a food and its grams.

    Attributes
    ----------
    food : Food
        Of the kit's table or of any other.
    grams : float
        Edible grams as the table describes the food, for the whole recipe. [g]
    relative_sd : float
        Relative standard deviation of the grams.
    line : str
        The line of the recipe.
    part : str
        The part of the recipe it belongs to.
    noun, noun_grams, cut : str, float, str
        The measure the amount is counted in, the grams of one, and the cut in which it is measured.
    treatment : str
        How it is cooked, where the cook says so: one of `kit.food.cooking.WAYS`, or the code of a treatment; empty for
        as it is worked out.
    swaps : tuple of str
        Keys of foods that may take its place.
    slider : tuple of float, optional
        Least and most grams to try on screen. [g]
    how : str
        The rule by which the line was read, or what was assumed about a change.
    container : str
        What it is sold in, where it is counted so: "can" of "can (15 oz)"; else empty.
    """

    food: Food
    grams: float
    relative_sd: float = 0.0
    line: str = ""
    part: str = ""
    noun: str = "g"
    noun_grams: float = 1.0
    cut: str = ""
    treatment: str = ""
    swaps: tuple[str, ...] = ()
    slider: tuple[float, float] | None = None
    how: str = ""
    container: str = ""

    def __post_init__(self) -> None:
        if not 0 <= self.grams <= MOST_GRAMS:  # false for NaN too
            raise AmountError(
                f'"{self.line or self.food.name}" is {self.grams:g} g; give 0 g or more, at most {MOST_GRAMS:,.0f} g'
            )

    @property
    def count(self) -> float:
        """The amount in the ingredient's own measure."""
        return self.grams / self.noun_grams


Value = TypeVar("Value", Ingredient, "Recipe")


def _with(old: Value, **facts: object) -> Value:
    """Return a frozen value with other facts that were checked, much faster than `dataclasses.replace`.

    What was worked out from the old facts is not taken along, unless it is given: sliders live on this.
    """
    new, values = object.__new__(type(old)), old.__dict__.copy()
    if len(values) > len(old.__dataclass_fields__):
        values = {name: values[name] for name in old.__dataclass_fields__}
    values.update(facts)
    object.__setattr__(new, "__dict__", values)
    return new


@dataclass(frozen=True, eq=False)
class Recipe:
    """A dish: a title, ingredients, and the number of servings they make.

    Attributes
    ----------
    title : str
        Its name.
    ingredients : tuple of Ingredient
        What is in it.
    servings, serving_is : float, str
        How many servings it makes, and what one is called.
    finished_grams : float, optional
        Weight of the finished dish, where she weighed it. [g]
    dish_is : str
        What kind of dish it is, one of `KINDS_OF_DISH`; empty when that is to be worked out.
    open_lines : tuple of Reading
        Lines that could not be read and are not in the numbers: every total is "at least" then.
    mixture : Mixture, optional
        What the dish was before anything was changed in it, by which it is worked out how it is cooked.
    """

    title: str
    ingredients: tuple[Ingredient, ...]
    servings: float = 1.0
    serving_is: str = "serving"
    finished_grams: float | None = None
    dish_is: str = ""
    open_lines: tuple[Reading, ...] = ()
    mixture: Mixture | None = None

    def __post_init__(self) -> None:
        if self.mixture is None:
            object.__setattr__(self, "mixture", mixture_of(self.ingredients))
        if not LEAST_SERVINGS <= self.servings <= MOST_SERVINGS:
            raise AmountError(
                f"servings is {self.servings:g}; give a number from {LEAST_SERVINGS:g} to {MOST_SERVINGS:,}"
            )
        if self.finished_grams is not None and not 0 < self.finished_grams <= MOST_GRAMS:
            raise AmountError(
                f"finished_grams is {self.finished_grams:g}; give the weight of the finished dish in grams, "
                f"from above 0 to {MOST_GRAMS:,.0f}"
            )

    @cached_property
    def grams(self) -> NDArray[np.float64]:
        """Grams of each ingredient in the whole recipe, shape (n_ingredients,). [g]"""
        return np.array([ingredient.grams for ingredient in self.ingredients], dtype=float)

    @cached_property
    def ways(self) -> tuple[Way, ...]:
        """How each ingredient is cooked: as the cook said, or as it is worked out for the recipe as written."""
        return ways_of(self.title, self.ingredients, self.mixture)

    @cached_property
    def makeup(self) -> Makeup:
        """What a gram of each ingredient holds when eaten, whatever the amounts."""
        parts = self.ingredients
        return makeup(
            tuple(part.food for part in parts),
            tuple(part.treatment or way.name for part, way in zip(parts, self.ways, strict=True)),
            tuple(part.relative_sd for part in parts),
        )

    @property
    def per_100g(self) -> NDArray[np.float64]:
        """What 100 g of each ingredient holds when eaten, shape (n_ingredients, n_nutrients); NaN where missing."""
        return self.makeup.per_100g

    def with_grams(self, grams: ArrayLike, servings: float | None = None) -> "Recipe":
        """Return the recipe with other amounts, shape (n_ingredients,), and other servings when given.

        A finished weight moves in the proportion of the whole.

        Raises
        ------
        AmountError
            If there is not one amount for each ingredient, or one makes no sense.
        """
        amounts = np.array(grams, dtype=float)
        if amounts.shape != (len(self.ingredients),):
            raise AmountError(f"{amounts.size} amounts for {len(self.ingredients)} ingredients; give one for each")
        values = amounts.tolist()
        pairs = zip(self.ingredients, values, strict=True)
        if values and not (min(values) >= 0 and max(values) <= MOST_GRAMS and sum(values) >= 0):  # NaN fails the sum
            changed = tuple(replace(old, grams=new) for old, new in pairs)  # says which of them makes no sense
        else:
            changed = tuple([old if old.grams == new else _with(old, grams=new) for old, new in pairs])
        finished = self.finished_grams
        if finished is not None:
            before, after = float(self.grams.sum()), float(amounts.sum())
            finished = finished * after / before if before > 0 and after > 0 else None
        other = self if servings is None else replace(self, servings=servings)
        # The foods are the same, and the amounts are at hand: a moved slider need not gather them again.
        kept = {"makeup": self.makeup, "ways": self.ways}
        return _with(other, ingredients=changed, finished_grams=finished, grams=amounts, **kept)

    def position(self, food: str) -> int:
        """Return the place of the first ingredient of a food.

        Raises
        ------
        UnknownNameError
            If the recipe does not hold that food.
        """
        keys = [ingredient.food.key for ingredient in self.ingredients]
        if food not in keys:
            raise UnknownNameError("ingredient", food, keys)
        return keys.index(food)


def ingredient_from(reading: Reading, **facts: object) -> Ingredient:
    """Make an ingredient from a line that was read, such as `swaps` or `treatment` beside it.

    Raises
    ------
    LineError
        If the line left the food or the amount open; the message is the reading's problem.
    """
    if reading.food is None or reading.grams is None:
        raise LineError(f'"{reading.line.strip()[:80]}": {reading.problem}')
    return Ingredient(
        food=reading.food,
        grams=reading.grams,
        relative_sd=reading.relative_sd,
        line=reading.line,
        part=reading.part,
        noun=reading.noun,
        noun_grams=reading.noun_grams,
        cut=reading.cut,
        how=reading.how,
        container=reading.container,
        **{"swaps": reading.swaps, **facts},  # type: ignore[arg-type]
    )


def recipe_from(written: WrittenRecipe) -> Recipe:
    """Make a recipe from a pasted text that was read; lines that cannot be read are its `open_lines`.

    Raises
    ------
    LineError
        If there is no ingredient line.
    """
    if not written.readings:
        raise LineError('no ingredient lines; write a title, "Serves 4", and one ingredient a line')
    return Recipe(
        title=written.title or "Untitled recipe",
        ingredients=tuple(ingredient_from(reading) for reading in written.readings if not reading.is_open),
        servings=written.servings or 1.0,
        serving_is=written.serving_is or "serving",
        open_lines=tuple(reading for reading in written.readings if reading.is_open),
    )


def recipe(
    title: str, lines: Iterable[str] | Sequence[str], servings: float = 1.0, table: Foods | None = None
) -> Recipe:
    """Make a recipe from ingredient lines.

    Raises
    ------
    LineError
        If there is no line, or lines that cannot be read: all of them, one a line of the message.

    Examples
    --------
    >>> dish = recipe("Oats", ["1 cup rolled oats", "2 cups whole milk"], servings=2)
    >>> dish.grams.tolist()
    [81.0, 488.0]
    """
    readings = tuple(reading for line in lines for reading in read_each(line, table=table))
    made = recipe_from(WrittenRecipe(title, servings, "", readings))
    if made.open_lines:
        raise LineError("\n".join(f'"{line.line.strip()[:80]}": {line.problem}' for line in made.open_lines))
    return made


def cooked_as(recipe: Recipe, part: str, way: str) -> Recipe:
    """Return the recipe with one part of it cooked in one way; the way "" takes back what was said.

    Parameters
    ----------
    recipe : Recipe
        The recipe.
    part : str
        A part of it as its lines name it; "" is what stands under no heading.
    way : str
        One of `kit.food.cooking.WAYS`, or empty.

    Raises
    ------
    UnknownNameError
        If there is no such way or no such part.
    """
    if way and way not in WAYS:
        raise UnknownNameError("way of cooking", way, WAYS)
    parts = {ingredient.part for ingredient in recipe.ingredients}
    if part not in parts:
        raise UnknownNameError("part of the recipe", part, parts)
    cooked = (replace(one, treatment=way) if one.part == part else one for one in recipe.ingredients)
    return replace(recipe, ingredients=tuple(cooked))

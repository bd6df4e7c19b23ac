"""What kind of dish it is: the rules judge a meal or main dish by 100 g, all else by the amount customarily eaten."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.food.vocabulary import singular
from kit.meal.certainty import Range
from kit.meal.eaten import taken_up
from kit.meal.nutrition import Nutrition
from kit.meal.recipe import Ingredient, Recipe
from kit.rules.make_up import MAIN_DISH, MEAL, POURED, made_up_as, serving_weight, weighs_less

SOUP, SIDE, DESSERT, DRINK, FOOD = "soup", "side", "dessert", "drink", "food"
_SAVOURY = ("meat", "poultry", "fish", "shellfish", "pulse", "vegetable", "stock")
_LITTLE, _MOST = 0.10, 0.60  # of the weight: common practice
# What a dish that is mostly one group is eaten as; anything else is a mixed dish.
_MOSTLY = {
    "grain": ("grain_prepared",),
    "pasta": ("pasta_prepared",),
    "vegetable": ("vegetables", "vegetables_sauce"),
    "potato": ("potatoes", "potatoes_sauce"),
    "fruit": ("fruit",),
    "pulse": ("beans_prepared", "beans_canned"),
    "meat": ("meat_cooked", "mixed_dish_piece"),
    "poultry": ("meat_cooked", "mixed_dish_piece"),
    "fish": ("fish_cooked", "mixed_dish_piece"),
    "shellfish": ("fish_cooked", "mixed_dish_piece"),
    "egg": ("egg_mixture",),
}
_SIDES = ("vegetables", "vegetables_sauce", "potatoes_sauce", "grain_prepared", "salad")
_BESIDE_A_MEAL = ("grain", "pasta", "vegetable", "potato", "fruit", "pulse")
_MIXED = ("mixed_dish_piece", "mixed_dish")
_OTHER_DESSERTS = ("cookies", "cake_light", "cake_medium", "cake_heavy", "pie", "pudding")


@dataclass(frozen=True, slots=True)
class DishKind:
    """What kind of dish it is taken for.

    Attributes
    ----------
    kind : str
        ``"meal"``, ``"main dish"``, ``"soup"``, ``"side"``, ``"dessert"``, ``"drink"`` or ``"food"``.
    because : str
        Why, in one sentence.
    stated : bool
        Whether the talk says so itself.
    references : tuple of str
        Ids of the reference amounts that it may be eaten by; none for a meal or main dish.
    or_main_dish : bool
        Whether it may as well count as a main dish: then only what holds both ways holds.
    """

    kind: str
    because: str
    stated: bool = False
    references: tuple[str, ...] = ()
    or_main_dish: bool = False

    @property
    def by_100_grams(self) -> bool:
        """Whether the rules for a meal or main dish count, which go by 100 g."""
        return self.kind in (MEAL, MAIN_DISH)


@dataclass(frozen=True, slots=True)
class _Form:
    """A row of ``data/dish_kinds.csv``: words of a title, and what they make of a dish."""

    words: tuple[str, ...]
    kind: str
    references: tuple[str, ...]
    main_dish: str


@cache
def _forms() -> tuple[_Form, ...]:
    return tuple(
        _Form(
            tuple(map(singular, row["words"].split())),
            row["kind"],
            tuple(row["references"].split("; ")),
            row["main_dish"],
        )
        for row in read_rows(files.bundled("data/dish_kinds.csv"))
    )


def kind_of_dish(numbers: Nutrition) -> DishKind:
    """Return what kind of dish it is: as the talk states it, else worked out from its title and what is in it.

    Parameters
    ----------
    numbers : Nutrition
        The dish as it is now.

    Notes
    -----
    What is stated to be a meal or main dish still has to weigh enough and hold enough of two food groups. A soup or a
    salad made up like a main dish may be either: it is judged both ways.

    References
    ----------
    21 CFR 101.13(l) and (m); reference amounts 21 CFR 101.12(b); words of titles: common practice.
    """
    recipe, weight = numbers.recipe, serving_weight(numbers)
    fits, why = made_up_as(MAIN_DISH, recipe, weight)
    form = _form(recipe, numbers)
    stated = recipe.dish_is
    if stated in (MEAL, MAIN_DISH):
        fits, why = made_up_as(stated, recipe, weight)
        if fits is False:
            because = f"the talk says that it is a {stated}, but {why}, so it counts as a food"
            return DishKind(FOOD, because, True, _eaten_as(form, recipe, FOOD))
        return DishKind(stated, f"the talk says that it is a {stated}", True)
    if stated:
        because = f"the talk says that it is a {stated}"
        return DishKind(stated, because, True, _eaten_as(form, recipe, stated))
    if form and (form.main_dish == "no" or fits is False):
        because = f'its title says "{" ".join(form.words)}"' + (f", and {why}" if form.main_dish != "no" else "")
        return DishKind(form.kind, because, False, form.references)
    if form and form.main_dish == "maybe":
        because = f'its title says "{" ".join(form.words)}", and it is made up like a main dish: {why}'
        return DishKind(form.kind, because, False, form.references, or_main_dish=True)
    kind = _by_what_is_in_it(recipe, weight)
    if kind in (DRINK, DESSERT):
        return DishKind(kind, f"it is made up like a {kind}", False, _eaten_as(form, recipe, kind))
    if fits:
        meal, why_meal = made_up_as(MEAL, recipe, weight, groups=3)
        return DishKind(MEAL, why_meal) if meal else DishKind(MAIN_DISH, why)
    return DishKind(kind, why, False, _eaten_as(form, recipe, kind), or_main_dish=fits is None)


def _eaten_as(form: _Form | None, recipe: Recipe, kind: str) -> tuple[str, ...]:
    """Return the reference amounts that a dish of a kind may be eaten by."""
    if form and (form.kind == kind or kind == FOOD):
        return form.references
    mostly = _mostly(recipe)
    return {
        SOUP: ("soup",),
        DRINK: ("milk", "juice_beverage", "beverage"),
        DESSERT: _OTHER_DESSERTS,
        SIDE: _MOSTLY.get(mostly, _SIDES),
    }.get(kind, _MOSTLY.get(mostly, _MIXED))


def _form(recipe: Recipe, numbers: Nutrition) -> _Form | None:
    """Return what the title's words make of a dish: its last word first, "lentil soup with greens" is a soup."""
    title = recipe.title.lower()
    for joint in (" with ", " in ", " on ", " over ", " for ", " of ", ", "):
        title = title.split(joint)[0]
    said = [singular(word) for word in title.replace("-", "").split()]
    for end in range(len(said), 0, -1):
        for form in _forms():
            size = len(form.words)
            if tuple(said[max(0, end - size) : end]) == form.words and _may_be(form, recipe, numbers):
                return form
    return None


def _may_be(form: _Form, recipe: Recipe, numbers: Nutrition) -> bool:
    """Return whether a dish can be what a word says: a shepherd's pie is no dessert, a tea-smoked fish no drink."""
    if form.kind == DESSERT:
        return _part_of(recipe, _SAVOURY) < _LITTLE or 4 * numbers["sugars"] > 0.25 * numbers["energy"]
    if form.kind == DRINK:
        return _part_of(recipe, (*POURED, "dairy", "fruit", "soy")) > _MOST
    return True


def _by_what_is_in_it(recipe: Recipe, weight: Range) -> str:
    drinkable = [part for part in recipe.ingredients if part.food.group == "beverage" or part.food.reference == "milk"]
    if _share(recipe, drinkable) > 0.7 and _part_of(recipe, (*POURED, "dairy", "soy", "fruit", "sweetener")) > 0.9:
        return DRINK
    sweet = [part for part in recipe.ingredients if part.food.group == "sweetener" or "chocolate" in part.food.key]
    if _share(recipe, sweet) > _LITTLE and _part_of(recipe, _SAVOURY) < _LITTLE:
        return DESSERT
    return SIDE if weighs_less(weight) and _mostly(recipe) in _BESIDE_A_MEAL else FOOD


def _share(recipe: Recipe, parts: Sequence[Ingredient]) -> float:
    whole = float(recipe.grams.sum())
    return sum(part.grams for part in parts) / whole if whole > 0 else 0.0


def _part_of(recipe: Recipe, groups: Sequence[str]) -> float:
    return _share(recipe, [part for part in recipe.ingredients if part.food.group in groups])


def _mostly(recipe: Recipe) -> str:
    """Return the group of foods that most of the dish is, as eaten; empty when none is."""
    grams: dict[str, float] = {}
    for part in recipe.ingredients:
        group = "potato" if part.food.reference.startswith("potatoes") else part.food.group
        if group not in POURED:
            grams[group] = grams.get(group, 0.0) + part.grams * taken_up(part.food)
    most = max(grams, key=lambda group: grams[group], default="")
    return most if most and grams[most] > _MOST * sum(grams.values()) else ""

"""A food or a dish as what a wording is said of."""

from math import inf, isnan

import numpy as np

from kit.errors import AmountError
from kit.food.alcohol import alcohol_of
from kit.food.composition import Food
from kit.food.measures import convert
from kit.food.vocabulary import words
from kit.lines.nearest_measure import VOLUMES
from kit.meal.certainty import ranges
from kit.meal.nutrition import Nutrition
from kit.rules.dish_kind import DESSERT, FOOD, DishKind, kind_of_dish
from kit.rules.make_up import MAIN_DISH, POURED, serving_weight
from kit.rules.naming import full_name
from kit.rules.protein import quality_of, quality_of_dish
from kit.rules.reference import LABEL_VOLUMES, ReferenceAmount, reference_amount, reference_amounts, reference_of
from kit.rules.subject import MIXED_PIECE, NOT_KNOWN, Span, Subject

_DISH_GRAMS_PER_ML = (0.85, 1.1)  # of a dish measured by the cup or spoon: common practice
_FROZEN_GRAMS_PER_ML = (0.5, 1.1)  # whipped as it freezes: common practice
_ADDED_SALT = ("salt",)  # reference amounts of what is added to salt a dish
# Words of a name that tell that a food was made to hold less of something.
_ALTERED = frozenset("low lower reduced free light nonfat skim part unsalted lean less diet no without".split())


def of_food(food: Food, serving_grams: float | None = None) -> Subject:
    """Return a single food as what a wording is said of.

    Parameters
    ----------
    food : Food
        The food.
    serving_grams : float, optional
        What a serving of the dish holds of it, when it is a food of the dish; its reference amount by default. [g]
    """
    wanted: ReferenceAmount | None
    try:
        wanted, grams = reference_of(food), reference_amount(food)
    except AmountError:
        wanted, grams = None, np.nan
    salt = food["sodium"] if food.reference in _ADDED_SALT else np.nan
    return Subject(
        name=full_name(food),
        is_dish=False,
        per_100g=food.per_100g,
        serving_grams=grams if serving_grams is None else serving_grams,
        reference=(grams, grams),
        small_reference=wanted is not None and wanted.is_small,
        liquid=food.group in POURED or (wanted is not None and wanted.unit == "mL"),
        grams_per_ml=_grams_per_ml(food),
        group=food.group,
        quality=quality_of(food),
        added_sodium=NOT_KNOWN if isnan(salt) else (salt, salt),
        alcohol=alcohol_of(food),
        in_dish=serving_grams is not None,
        altered=bool(_ALTERED & set(words(food.name))),
    )


def of_dish(numbers: Nutrition, name: str = "the dish") -> Subject:
    """Return a dish as it is eaten as what a wording is said of, by its kind."""
    weight, kind = serving_weight(numbers), kind_of_dish(numbers)
    scale = 100 / weight.value if weight.value > 0 else np.nan
    low, high = ranges(numbers)
    lacking, servings = numbers.at_least, numbers.recipe.servings
    salt = [part.food.reference in _ADDED_SALT for part in numbers.recipe.ingredients]
    sodium = float(np.nansum(numbers.brings("sodium")[salt])) * scale
    spread = (weight.low / weight.value, weight.high / weight.value) if weight.value > 0 else (1.0, 1.0)

    def as_kind(taken: DishKind, otherwise: Subject | None = None) -> Subject:
        reference, small, liquid = _references(taken)
        return Subject(
            name=name,
            is_dish=taken.by_100_grams,
            per_100g=numbers.per_serving * scale,
            low=low * scale,
            high=np.where(lacking, inf, high * scale),
            serving_grams=weight.value,
            heavier=spread,
            reference=reference,
            small_reference=small,
            liquid=liquid,
            grams_per_ml=1.0 if liquid else np.nan,
            group=MIXED_PIECE if taken.references == ("mixed_dish_piece",) and taken.kind == FOOD else "",
            kind=taken,
            quality=quality_of_dish(numbers),
            alcohol=sum(part.grams * alcohol_of(part.food) for part in numbers.recipe.ingredients)
            * scale
            / 100
            / servings,
            added_sodium=(sodium, sodium),
            otherwise=otherwise,
        )

    if not kind.or_main_dish:
        return as_kind(kind)
    return as_kind(kind, as_kind(DishKind(MAIN_DISH, kind.because)))


def _references(kind: DishKind) -> tuple[Span, bool, bool]:
    """Return the grams a dish may be eaten in, whether that may be a small amount, and whether it is drunk."""
    amounts = [reference_amounts()[name] for name in kind.references]
    if not amounts:
        return (np.nan, np.nan), False, False
    density = _FROZEN_GRAMS_PER_ML if kind.kind == DESSERT else _DISH_GRAMS_PER_ML
    liquid = all(amount.unit == "mL" for amount in amounts)
    ends: list[float] = []
    for amount in amounts:
        if amount.unit == "g":
            ends.append(amount.amount)
        else:
            millilitres = amount.amount * LABEL_VOLUMES[amount.unit]
            ends += [millilitres * grams for grams in ((1.0, 1.0) if liquid else density)]
    return (min(ends), max(ends)), any(amount.is_small for amount in amounts), liquid


def _grams_per_ml(food: Food) -> float:
    row = food.measure(*VOLUMES, cut="") or food.measure(*VOLUMES)
    return row.grams / convert(1, row.measure, "mL") if row else np.nan

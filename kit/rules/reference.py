"""Published reference values: daily values, distribution ranges and the amount of a food usually eaten at once."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

import numpy as np
from numpy.typing import ArrayLike, NDArray

from kit import files
from kit.errors import AmountError, UnknownNameError
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.daily_values import daily_values
from kit.food.measures import convert
from kit.food.nutrients import nutrients
from kit.lines.nearest_measure import VOLUMES

_SPICE_GRAMS = 0.5  # where a spoon does not measure it: 21 CFR 101.12(b), from memory
LABEL_VOLUMES: Mapping[str, float] = MappingProxyType({"mL": 1.0, "tsp": 5.0, "tbsp": 15.0, "cup": 240.0})  # [mL]


@dataclass(frozen=True, slots=True)
class ReferenceAmount:
    """The amount of a kind of food customarily eaten at once.

    Attributes
    ----------
    reference, name : str
        Our id and a plain name of the kind of food.
    amount : float
        The amount. [unit]
    unit : str
        ``"g"``, ``"mL"``, ``"cup"``, ``"tbsp"`` or ``"tsp"``.
    source, status : str
        The publication, and ``"published"`` or ``"from memory"``.
    """

    reference: str
    name: str
    amount: float
    unit: str
    source: str
    status: str

    @property
    def is_small(self) -> bool:
        """Whether it is 30 g or 2 tablespoons, or less: then "low" wordings must also hold for 50 g.

        References
        ----------
        21 CFR 101.60(b)(2)(i)(B) and its likes in 101.61 and 101.62; a label's tablespoon is 15 mL, 101.9(b)(5)(viii).
        """
        return self.amount <= 30 if self.unit == "g" else self.amount * LABEL_VOLUMES[self.unit] <= 30


@cache
def _day(rules: str) -> NDArray[np.float64]:
    """Return the daily values in the order of `nutrients`, NaN where there is none."""
    values = daily_values(rules)
    day = np.array([values[name].amount if name in values else np.nan for name in nutrients()])
    day.flags.writeable = False
    return day


def share_of_day(values: ArrayLike, rules: str = "us") -> NDArray[np.float64]:
    """Return amounts of nutrients as fractions of their daily values.

    Protein is counted as it stands; a wording about protein needs it corrected for its quality first.

    Parameters
    ----------
    values : array_like, shape (..., n_nutrients)
        Amounts in the order and units of `kit.food.nutrients.nutrients`, NaN where missing.
    rules : {"us", "eu"}
        Whose daily values.

    Returns
    -------
    numpy.ndarray, shape (..., n_nutrients)
        Fractions of a day. [-] NaN where the amount is missing or the nutrient has no daily value.

    Raises
    ------
    AmountError
        If the last axis does not hold one amount for each nutrient.
    """
    values = np.asarray(values, dtype=float)
    day = _day(rules)
    if values.shape[-1:] != day.shape:
        raise AmountError(f"values have shape {values.shape}; make the last axis the {len(day)} nutrients")
    return values / day


@cache
def distribution_ranges(who: str = "adults") -> Mapping[str, tuple[float, float]]:
    """Return the acceptable share of energy from protein, fat and carbohydrate.

    Parameters
    ----------
    who : {"adults", "4-18 y", "1-3 y"}
        Whose ranges.

    Returns
    -------
    mapping of str to (float, float)
        Lowest and highest fraction of energy by nutrient id. [-]

    Raises
    ------
    UnknownNameError
        If the table has no such group.

    References
    ----------
    Institute of Medicine, Dietary Reference Intakes for Energy, Carbohydrate, Fiber, Fat ..., 2002/2005.

    Examples
    --------
    >>> distribution_ranges()["protein"]
    (0.1, 0.35)
    """
    rows = read_rows(files.bundled("data/distribution_ranges.csv"))
    found = {row["nutrient"]: (float(row["low"]), float(row["high"])) for row in rows if row["who"] == who}
    if not found:
        raise UnknownNameError("group with distribution ranges", who, dict.fromkeys(row["who"] for row in rows))
    return MappingProxyType(found)


@cache
def reference_amounts() -> Mapping[str, ReferenceAmount]:
    """Return every reference amount by its id, in the table's order.

    References
    ----------
    21 CFR 101.12(b), 2016 revision; 9 CFR 317.312 and 381.412 for meat, poultry and egg mixtures.
    """
    return MappingProxyType(
        {
            row["reference"]: ReferenceAmount(
                row["reference"], row["name"], float(row["amount"]), row["unit"], row["source"], row["status"]
            )
            for row in read_rows(files.bundled("data/reference_amounts.csv"))
        }
    )


def reference_of(food: Food) -> ReferenceAmount:
    """Return the reference amount that a food belongs to.

    Raises
    ------
    AmountError
        If the food belongs to none.
    UnknownNameError
        If it names one that the table does not have.
    """
    if not food.reference:
        raise AmountError(f"{food.name} has no reference amount; give its kind in the column `reference`")
    known = reference_amounts()
    if food.reference not in known:
        raise UnknownNameError("reference amount", food.reference, known, where=f'food "{food.key}"')
    return known[food.reference]


def reference_amount(food: Food) -> float:
    """Return the grams of a food that count as its reference amount.

    A volume becomes grams by the food's own household measure: the same one if it has it, else the largest volume it
    has, by exact US volumes. A spice without one counts as half a gram.

    Parameters
    ----------
    food : Food
        The food; `food.reference` names the kind.

    Returns
    -------
    float
        The reference amount. [g]

    Raises
    ------
    AmountError
        If the food has no reference amount, or it is a volume and the food has no measure of volume.
    UnknownNameError
        If the food names a reference amount that the table does not have.
    """
    wanted = reference_of(food)
    if wanted.unit == "g":
        return wanted.amount
    # As it is comes before any cut: a reference amount is of the food as the table describes it.
    for cut in ("", None):
        measure = food.measure(wanted.unit, *VOLUMES, cut=cut)
        if measure is not None:
            return convert(wanted.amount, wanted.unit, measure.measure) * measure.grams
    if wanted.reference == "spice":
        return _SPICE_GRAMS
    raise AmountError(
        f"{food.name}: its reference amount is {wanted.amount:g} {wanted.unit}, "
        f"but no measure of volume is known for it; add what a cup of it weighs"
    )

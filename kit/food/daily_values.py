"""How much of each nutrient counts as 100 % of a day, by US or EU rules."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from kit import files
from kit.errors import UnknownNameError
from kit.food.cells import read_rows
from kit.food.nutrients import nutrient

DAILY_VALUE_TABLES: Mapping[str, str] = MappingProxyType(
    {"us": "data/daily_values.csv", "eu": "data/reference_intakes_eu.csv"}
)
_MINERALS_AND_VITAMINS_ARE_IN = ("mg", "µg")


@dataclass(frozen=True, slots=True)
class DailyValue:
    """How much of a nutrient counts as 100 % of a day.

    Attributes
    ----------
    nutrient, unit : str
        Our id and the unit the amount is in.
    amount : float
        The daily amount. [unit]
    kind : str
        ``"enough"`` for a nutrient to get enough of, ``"limit"`` for one to keep within, else empty.
    source, status : str
        The publication, and ``"published"`` or ``"from memory"``.
    """

    nutrient: str
    amount: float
    unit: str
    kind: str
    source: str
    status: str


@cache
def daily_values(rules: str = "us") -> Mapping[str, DailyValue]:
    """Return the daily value of every nutrient that has one.

    Parameters
    ----------
    rules : {"us", "eu"}
        Whose: US daily values, or EU nutrient reference values and reference intakes.

    Returns
    -------
    mapping of str to DailyValue
        By nutrient id, in the table's order.

    Raises
    ------
    UnknownNameError
        If there is no such set of rules, or the table names a nutrient that the kit does not know.

    References
    ----------
    21 CFR 101.9(c)(8)(iv) and (c)(9), adults and children from 4 years, 2,000 kcal;
    Regulation (EU) 1169/2011, Annex XIII.

    Examples
    --------
    >>> daily_values()["fiber"].amount, daily_values("eu")["potassium"].amount
    (28.0, 2000.0)
    """
    if rules not in DAILY_VALUE_TABLES:
        raise UnknownNameError("set of rules", rules, DAILY_VALUE_TABLES)
    return MappingProxyType(
        {
            nutrient(row["nutrient"]).id: DailyValue(
                row["nutrient"], float(row["amount"]), row["unit"], row["kind"], row["source"], row["status"]
            )
            for row in read_rows(files.bundled(DAILY_VALUE_TABLES[rules]))
        }
    )


def vitamins_and_minerals(rules: str = "us") -> tuple[str, ...]:
    """Return the vitamins and minerals to get enough of; ``data/wordings.csv`` calls them ``vitamins_minerals``.

    Examples
    --------
    >>> "choline" in vitamins_and_minerals("us"), "choline" in vitamins_and_minerals("eu")
    (True, False)
    """
    values = daily_values(rules).values()
    return tuple(v.nutrient for v in values if v.kind == "enough" and v.unit in _MINERALS_AND_VITAMINS_ARE_IN)

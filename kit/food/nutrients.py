"""The nutrients that are counted, and their order in every array of nutrients."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.errors import UnknownNameError
from kit.food.cells import read_rows


@dataclass(frozen=True, slots=True)
class Nutrient:
    """A nutrient.

    Attributes
    ----------
    id, unit, tagname : str
        Our id, the unit it is counted in, the INFOODS tagname.
    short_name : str
        Its name as it is said: "Vitamin A".
    form : str
        What it is counted as, where that must be told ("RAE"); else empty.
    decimals : int
        How many it is shown with.
    """

    id: str
    unit: str
    tagname: str
    short_name: str
    form: str
    decimals: int

    @property
    def name(self) -> str:
        """Its name with its form: "Vitamin A (RAE)"."""
        return f"{self.short_name} ({self.form})" if self.form else self.short_name


@cache
def nutrients() -> Mapping[str, Nutrient]:
    """Return every nutrient by id, in the order of all arrays of nutrients in the kit."""
    return {row["nutrient"]: _nutrient(row) for row in read_rows(files.bundled("data/nutrients.csv"))}


def _nutrient(row: Mapping[str, str]) -> Nutrient:
    decimals = int(row["decimals"])
    return Nutrient(row["nutrient"], row["unit"], row["tagname"], row["name"], row["form"], decimals)


def nutrient(name: str) -> Nutrient:
    """Return one nutrient.

    Raises
    ------
    UnknownNameError
        If there is none of that id; the nearest is offered.
    """
    try:
        return nutrients()[name]
    except KeyError:
        raise UnknownNameError("nutrient", name, nutrients()) from None


@cache
def nutrient_index(name: str) -> int:
    """Return the place of a nutrient in every array of nutrients."""
    return list(nutrients()).index(nutrient(name).id)

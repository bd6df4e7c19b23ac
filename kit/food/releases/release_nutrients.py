"""Which nutrients of an official composition release are the kit's, and how their units become the kit's."""

from dataclasses import dataclass

from kit import files
from kit.errors import ReleaseError
from kit.food.amount_units import into_ours
from kit.food.cells import read_rows
from kit.food.nutrients import nutrient, nutrient_index
from kit.food.releases.release_files import ReleaseFolder


@dataclass(frozen=True)
class Column:
    """Where a nutrient of the release goes: its place in our arrays, how much it is preferred, and its unit in ours."""

    place: int
    preference: int
    factor: float


def columns(release: ReleaseFolder) -> dict[str, Column]:
    """Return the nutrients the kit uses, by the id or the number by which ``food_nutrient.csv`` may call them.

    Raises
    ------
    ReleaseError
        If a unit cannot be turned into ours, or no nutrient is known.
    """
    numbers = {row["number"]: row for row in read_rows(files.bundled("data/release_numbers.csv"))}
    found: dict[str, Column] = {}
    for line, (release_id, unit, number_text) in release.rows("nutrient.csv"):
        plain = number_text.strip().removesuffix(".0")
        known = numbers.get(plain)
        if known:
            factor = _factor(known["nutrient"], unit.strip(), line)
            column = Column(nutrient_index(known["nutrient"]), int(known["preference"]), factor)
            found[release_id.strip()] = column
            found.setdefault(plain, column)  # some releases write the number where others write the id
    if not found:
        raise ReleaseError(
            "nutrient.csv has no nutrient_nbr the kit knows, such as 208 or 203; take the release's own file"
        )
    return found


def _factor(name: str, unit: str, line: int) -> float:
    """Return what a release's value is multiplied with to be in our unit."""
    found = into_ours(unit.partition("_")[0], name)  # MG_ATE is mg of alpha-tocopherol
    if found is not None:
        return found
    instead = "KCAL or kJ" if nutrient(name).unit == "kcal" else "G, MG or UG"
    raise ReleaseError(f'nutrient.csv, line {line}: {name} is in "{unit}"; write its unit_name as {instead}')

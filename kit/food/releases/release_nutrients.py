"""Which nutrients of an official composition release are the kit's, and how their units become the kit's."""

from dataclasses import dataclass

from kit import files
from kit.errors import ReleaseError
from kit.food.composition import nutrient, nutrient_index, read_rows
from kit.food.releases.release_files import ReleaseFolder

_GRAMS = {"g": 1.0, "mg": 1e-3, "ug": 1e-6, "mcg": 1e-6, "µg": 1e-6, "μg": 1e-6}
_KCAL = {"kcal": 1.0, "kj": 1 / 4.184}  # 4.184 kJ exactly: FAO Food and Nutrition Paper 77, 2003
_VITAMIN_D_UG_PER_IU = 0.025  # 800 IU = 20 µg, 21 CFR 101.9(c)(8)(iv)


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
    ours = nutrient(name).unit
    plain = unit.lower().partition("_")[0]  # MG_ATE is mg of alpha-tocopherol
    if ours in _KCAL and plain in _KCAL:
        return _KCAL[plain] / _KCAL[ours]
    if ours in _GRAMS and plain in _GRAMS:
        return _GRAMS[plain] / _GRAMS[ours]
    if name == "vitamin_d" and plain == "iu":
        return _VITAMIN_D_UG_PER_IU
    instead = "KCAL or kJ" if ours in _KCAL else "G, MG or UG"
    raise ReleaseError(f'nutrient.csv, line {line}: {name} is in "{unit}"; write its unit_name as {instead}')

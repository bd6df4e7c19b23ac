"""What a piece weighs of which a line gives the length or the width: an 8-inch tortilla, a 2-inch piece of daikon."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.food.measure import Measure
from kit.lines.nearest_measure import Written

_GROWS = {"flat": 2, "long": 2, "round": 3}  # the power of its length with which a whole one grows, common practice
_ALIKE = 1.09  # lengths nearer than this are one size
_FARTHEST = 1.7  # how far from a size of the table another may lie to be worked out from it
_ITSELF = ("", "head", "ear", "stalk", "spear", "rib", "root", "round", "loaf", "pocket", "link", "baguette")
_CUT_FROM_IT = ("piece", "knob", "chunk", "section", "length")
_THICKNESS = 0.9  # what is not longer says how thick something is cut [inch]


@dataclass(frozen=True, slots=True)
class Sized:
    """A size of a food: how long or wide one is, and what it weighs.

    Attributes
    ----------
    shape : str
        ``"flat"``, ``"long"`` or ``"round"``; ``"cut"`` where any length is cut off, as of ginger.
    inches, grams : float
        Length of a long one, width of another; weight of its edible part. [inch, g]
    source : str
        Where the two were found.
    """

    shape: str
    inches: float
    grams: float
    source: str


@dataclass(frozen=True, slots=True)
class OfLength:
    """The weight of one piece of a length.

    Attributes
    ----------
    measure : Measure
        What is weighed: an ``"8-inch"`` one, or an ``"inch"`` of what is cut off.
    times : float
        How many of them one piece is.
    as_listed : bool
        Whether the table has a size of that length.
    """

    measure: Measure
    times: float
    as_listed: bool


@cache
def _sizes() -> Mapping[str, tuple[Sized, ...]]:
    found = defaultdict(list)
    for row in read_rows(files.bundled("data/lengths.csv")):
        found[row["food"]].append(Sized(row["shape"], float(row["inches"]), float(row["grams"]), row["source"]))
    return {food: tuple(sizes) for food, sizes in found.items()}


def tells_its_size(food: Food, written: Written) -> bool:
    """Whether the length on a line is that of the thing itself, which then decides what it weighs.

    Parameters
    ----------
    food : Food
        What is counted; the stick of a spice is whole, that of a vegetable is cut.
    written : Written
        The amount with its length.
    """
    shortest = 0.0 if _sold_by_length(food) else _THICKNESS
    whole = written.measure in _ITSELF or (written.measure == "stick" and food.group == "spice")
    return written.length > shortest and (whole or _is_cut_off(food, written))


def _sold_by_length(food: Food) -> bool:
    return any(size.shape == "cut" for size in _sizes().get(food.key, ()))


def _is_cut_off(food: Food, written: Written) -> bool:
    return _sold_by_length(food) or written.measure in _CUT_FROM_IT or written.cut == "pieces"


def of_length(food: Food, written: Written) -> OfLength | None:
    """Return what one piece of a length weighs, or None when no size of the table is near.

    A length cut off a long food weighs in proportion. A whole one of another size is worked out from the nearest: flat
    and long things grow with the square of their length, round ones with its cube (common practice).

    Parameters
    ----------
    food : Food
        What is counted.
    written : Written
        The amount, whose length tells its size (`tells_its_size`).
    """
    sizes, inches = _sizes().get(food.key, ()), written.length
    if not sizes:
        return None
    if _is_cut_off(food, written):
        longest = max(sizes, key=lambda size: size.inches)
        if longest.shape not in ("long", "cut"):
            return None
        an_inch = Measure("inch", "", longest.grams / longest.inches, longest.source)
        return OfLength(an_inch, inches, as_listed=longest.shape == "cut")
    nearest = min(sizes, key=lambda size: max(inches / size.inches, size.inches / inches))
    ratio = inches / nearest.inches
    as_listed = 1 / _ALIKE <= ratio <= _ALIKE
    if not 1 / _FARTHEST <= ratio <= _FARTHEST:
        return None
    grams = nearest.grams * (1 if as_listed else ratio ** _GROWS[nearest.shape])
    return OfLength(Measure(f"{inches:.3g}-inch", "", grams, nearest.source), 1.0, as_listed)

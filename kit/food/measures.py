"""Units of the kitchen: what they are, how an amount is written, and which amounts a kitchen can measure.

pint reads the definitions in ``data/units.txt`` once; from then on a unit is its size in grams or millilitres.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

import numpy as np
import pint

from kit import files
from kit.errors import AmountError, UnknownNameError

SYSTEMS = ("us", "metric")
MEASURING_SPOONS_AND_CUPS = ("cup", "tablespoon", "teaspoon")
_PLURALS = {"pound": "pounds", "ounce": "ounces"}
_SHORT = {
    "tablespoon": "tbsp",
    "teaspoon": "tsp",
    "fluid_ounce": "fl oz",
    "pound": "lb",
    "ounce": "oz",
    "gram": "g",
    "kilogram": "kg",
    "milliliter": "mL",
    "liter": "L",
}
_NO_PLURAL = tuple(
    "small medium large extra cherry plum roma grape half baby persian kirby japanese chinese campari key".split()
)
_GLYPHS = {"½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5"}
_GLYPHS |= {"⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
FRACTION_GLYPHS: Mapping[str, str] = _GLYPHS
# The fractions printed on cup and spoon sets, and the ones people say of a whole thing (common practice).
CUP_FRACTIONS = (0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4)
PIECE_FRACTIONS = (0, 1 / 4, 1 / 2, 3 / 4)


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of mass or volume.

    Attributes
    ----------
    name : str
        Its full name, such as ``"cup"``.
    kind : str
        ``"mass"`` or ``"volume"``.
    size : float
        One of it. [g] or [mL]
    """

    name: str
    kind: str
    size: float

    @property
    def short(self) -> str:
        """The unit as a recipe prints it: ``"tbsp"``."""
        return _SHORT.get(self.name, self.name)


@cache
def registry() -> pint.UnitRegistry:
    """Return pint's registry of the kitchen's units."""
    return pint.UnitRegistry(str(files.bundled("data/units.txt")))


@cache
def units(system: str = "us") -> Mapping[str, Unit]:
    """Return every word for a unit, with the unit.

    Parameters
    ----------
    system : {"us", "metric"}
        Whose cups and spoons: US customary ones, or 250, 15 and 5 mL.

    Raises
    ------
    UnknownNameError
        If there is no such system.

    Examples
    --------
    >>> units()["cups"].size, units("metric")["cups"].size
    (236.5882365, 250.0)
    """
    if system not in SYSTEMS:
        raise UnknownNameError("system of measures", system, SYSTEMS)
    ureg = registry()
    words: dict[str, Unit] = {}
    for word in ureg._units:  # pint keeps each definition under its name and under each other name
        unit = ureg.Unit(word)
        kind = "mass" if unit.dimensionality == {"[mass]": 1} else "volume"
        name = str(unit)
        if system == "metric" and name in MEASURING_SPOONS_AND_CUPS:
            size = ureg.Quantity(1, f"metric_{name}").to_base_units().magnitude
        else:
            size = ureg.Quantity(1, unit).to_base_units().magnitude
        found = Unit(name, kind, float(size))
        words[word] = found
        if len(word) > 3 or word in ("cup", "tsp"):
            words[f"{word}s"] = found
    words["fl oz"] = words["fluid_ounce"]
    words["fluid ounce"] = words["fluid ounces"] = words["fluid_ounce"]
    words["pinches"], words["dashes"] = words["pinch"], words["dash"]
    return words


def unit(word: str, system: str = "us") -> Unit | None:
    """Return the unit that a word stands for, or None.

    ``T`` and ``t`` are told apart; otherwise capitals and a final point do not matter.

    Examples
    --------
    >>> unit("Tbsp.").name, unit("T").name, unit("t").name
    ('tablespoon', 'tablespoon', 'teaspoon')
    """
    word = word.rstrip(".")
    known = units(system)
    return known.get(word) or known.get(word.lower())


def unit_named(word: str, system: str = "us") -> Unit:
    """Return the unit that a word stands for.

    Raises
    ------
    UnknownNameError
        If it stands for none.
    """
    found = unit(word, system)
    if found is None:
        raise UnknownNameError("unit", word, units(system))
    return found


def convert(amount: float, source: str, target: str) -> float:
    """Return an amount of one unit as an amount of another of the same kind.

    Raises
    ------
    UnknownNameError
        If a unit is not known.
    AmountError
        If one is a mass and the other a volume.

    Examples
    --------
    >>> round(convert(2, "cups", "fl oz"), 6)
    16.0
    """
    pair = []
    for word in (source, target):
        found = unit(word)
        if found is None:
            raise UnknownNameError("unit", word, units())
        pair.append(found)
    if pair[0].kind != pair[1].kind:
        raise AmountError(
            f'"{source}" is a {pair[0].kind} and "{target}" a {pair[1].kind}; give the food to convert them'
        )
    return amount * pair[0].size / pair[1].size


def fraction_text(value: float) -> str:
    """Write a number as a cook does: whole, or whole and a common fraction, or with one or two decimals.

    Examples
    --------
    >>> fraction_text(1.5), fraction_text(2 / 3), fraction_text(0.125), fraction_text(3), fraction_text(2.3)
    ('1 1/2', '2/3', '1/8', '3', '2.3')
    """
    common = common_fraction(value)
    if common is not None:
        whole, rest = divmod(common, 1)
        return " ".join(str(part) for part in (whole, rest) if part) or "0"
    return f"{value:.2f}".rstrip("0").rstrip(".")


def common_fraction(value: float) -> Fraction | None:
    """Return a number in halves, thirds, quarters or eighths, as a cook measures; None when it is none of these.

    Examples
    --------
    >>> common_fraction(0.25), common_fraction(0.18)
    (Fraction(1, 4), None)
    """
    nearest = Fraction(value).limit_denominator(8)
    return nearest if nearest.denominator in (1, 2, 3, 4, 8) and abs(float(nearest) - value) < 0.005 else None


def plural(noun: str, count: float) -> str:
    """Return a measure's noun for a count: ``"cups"`` for more than one.

    Examples
    --------
    >>> plural("cup", 1.5), plural("cup", 0.5), plural("tbsp", 3), plural("bunch", 2), plural("leaf", 2)
    ('cups', 'cup', 'tbsp', 'bunches', 'leaves')
    """
    if count <= 1 or noun in _SHORT.values() or noun.split(" ")[0] in _NO_PLURAL or noun.endswith("-inch"):
        return noun
    head, *tail = noun.split(" (", 1)  # "can (15 oz)" -> "cans (15 oz)"
    if head.endswith(("ch", "sh", "s", "x", "tomato", "potato")):
        head += "es"
    elif head.endswith("y") and not head.endswith(("ay", "ey", "oy")):
        head = f"{head[:-1]}ies"
    elif head.endswith("f") and head not in ("roof",):
        head = f"{head[:-1]}ves"
    else:
        head += "s"
    return " (".join([head, *tail])


def amount_text(count: float, noun: str) -> str:
    """Write an amount: ``"1 1/2 cups"``; ``"2"`` when the thing is its own measure.

    Examples
    --------
    >>> amount_text(1.5, "cup"), amount_text(2, "piece"), amount_text(400, "g")
    ('1 1/2 cups', '2', '400 g')
    """
    number = f"{count:,.0f}" if noun in ("g", "mL") and count >= 10 else fraction_text(count)
    return number if noun == "piece" else f"{number} {plural(noun, count)}"


def _ladder(fractions: tuple[float, ...], top: float, fine_below: float = 3) -> np.ndarray:
    """Return rising amounts from 0 to `top`: whole ones, with `fractions` between them below `fine_below`."""
    wholes = np.arange(np.ceil(top) + 1)
    fine = np.add.outer(wholes[wholes < fine_below], fractions).ravel()
    steps = np.unique(np.concatenate([fine, wholes]).round(9))
    return steps[: np.searchsorted(steps, top - 1e-9) + 1]


def kitchen_volumes(top: float, low: float = 0.0) -> list[tuple[float, str]]:
    """Return the US volumes a kitchen can measure with its spoons and cups, smallest first.

    Parameters
    ----------
    top, low : float
        The largest and smallest volume wanted. [mL]

    Returns
    -------
    list of (count, noun)
        1/8 to 2 tsp, 4 and 5 tsp, 1 to 3 tbsp, then quarters, thirds and halves of a cup (common practice).

    Examples
    --------
    >>> [amount_text(*step) for step in kitchen_volumes(60)][-5:]
    ['4 tsp', '5 tsp', '2 tbsp', '3 tbsp', '1/4 cup']
    """
    known = units()
    cups = _ladder(CUP_FRACTIONS, max(1.0, np.ceil(top / known["cup"].size)), fine_below=6)
    ladder = [(step, "tsp") for step in (1 / 8, 1 / 4, 1 / 2, 3 / 4, 1, 1.5, 2)]
    ladder += [(1, "tbsp"), (4, "tsp"), (5, "tsp"), (2, "tbsp"), (3, "tbsp")]
    ladder += [(float(step), "cup") for step in cups if step > 0]
    sizes = [count * known[noun].size for count, noun in ladder]
    slack = 1.02  # 60 mL asks for a quarter cup of 59.1 mL
    return [step for step, size in zip(ladder, sizes, strict=True) if low / slack <= size <= top * slack]


def kitchen_steps(noun: str, top: float) -> np.ndarray:
    """Return the amounts of a weight or a counted measure that a kitchen can take, from 0 until `top` is reached.

    Parameters
    ----------
    noun : str
        The measure: ``"g"``, ``"mL"``, ``"oz"``, ``"lb"``, ``"clove"``, ``"medium"`` ...
    top : float
        The highest amount wanted, in that measure.

    Returns
    -------
    numpy.ndarray, shape (n,)
        Rising amounts, the first 0.

    Examples
    --------
    >>> [fraction_text(step) for step in kitchen_steps("clove", 2)]
    ['0', '1/4', '1/2', '3/4', '1', '1 1/4', '1 1/2', '1 3/4', '2']
    >>> kitchen_steps("g", 60).tolist()
    [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0]
    """
    if noun in ("g", "mL"):
        steps = (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 25, 50, 100, 250, 500, 1000)
        step = next((step for step in steps if top / step <= 20), steps[-1])
        return (np.arange(np.ceil(top / step) + 1) * step).round(3)
    if noun == "oz" and top > 8:
        return np.arange(np.ceil(top) + 1)
    return _ladder((0, 1 / 2) if noun == "oz" else PIECE_FRACTIONS, top, fine_below=8 if noun == "oz" else 3)

"""From an amount of a food to grams: which measure was used, how sure that is, and what had to be assumed."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from math import hypot
from typing import TypeVar

from kit import files
from kit.errors import UnknownNameError
from kit.food.amounts import ONE, Count
from kit.food.cells import read_rows
from kit.food.composition import Food, bundled_foods
from kit.food.cooking import drained_share, edible_grams
from kit.food.measure import Measure
from kit.food.measures import amount_text, fraction_text, units
from kit.lines.by_length import of_length, tells_its_size
from kit.lines.group_densities import density_of, handful_of, is_crushed_of_flakes
from kit.lines.nearest_measure import (
    CONTAINERS,
    SIZES,
    UNIT_OF,
    Written,
    counted_row,
    first_thing,
    is_of_the_part,
    share_of_usual,
    volume_row,
)
from kit.lines.refuse import thrown_away
from kit.texts import number

Z90 = 1.6448536269514722  # a normal value lies within this many standard deviations nine times in ten
UNMEASURED = ("pinch", "dash", "smidgen", "drop", "sprinkle", "squeeze", "drizzle", "splash", "glug", "dollop")
_COARSE_SALTS = ("salt-kosher", "salt-flaky")
_WITH_LIQUID = ("can", "jar")
_WITHOUT_LIQUID = "oil condiment stock beverage sweetener baking spice nut seed".split()
_POURED = ("oil", "beverage", "stock", "dairy", "condiment", "sweetener", "soy", "nut", "egg", "fruit")
_FAR = 1.5  # times: what a size and a length may be apart before the length is that of something else
_GRADED = ("egg", "bread", "snack")  # sold by size, or baked to one

_Given = TypeVar("_Given")


@dataclass(frozen=True, slots=True)
class Weight:
    """The grams of an amount, the way there, and how sure it is.

    Attributes
    ----------
    grams, low, high : float
        Edible weight as the table describes the food, and its 90 % range. [g]
    relative_sd : float
        Relative standard deviation of the weight.
    how : str
        The rule used, with its source.
    noun, noun_grams : str, float
        The measure the amount is counted in, and the grams of one.
    problem : str
        What has to be asked, or empty.
    container : str
        What it is sold in, where it is counted so: "can" of "can (15 oz)"; else empty.
    """

    grams: float
    low: float
    high: float
    relative_sd: float
    how: str
    noun: str
    noun_grams: float
    problem: str = ""
    container: str = ""


@cache
def _spread() -> Mapping[str, float]:
    return {row["how"]: float(row["relative_sd"]) for row in read_rows(files.bundled("data/amount_uncertainty.csv"))}


def spread(*how: str) -> float:
    """Return the relative standard deviation of an amount measured in a way, several reasons combined.

    Raises
    ------
    UnknownNameError
        If there is no such way in ``data/amount_uncertainty.csv``.
    """
    for way in how:
        if way not in _spread():
            raise UnknownNameError("way of measuring", way, _spread())
    return hypot(*(_spread()[way] for way in how))


def weigh(food: Food, written: Written) -> Weight | None:
    """Return the grams of an amount of a food, or None when the food has no weight for that measure.

    Weights stated on the line come first, then the food's own household measures (the exact cut, then one that fills
    a cup alike, then another volume), then the density of its group; each step away widens the range.
    """
    found = _weight_of(food, written)
    return replace(found, how=f"{found.how}; {food.changed_by}") if found and food.changed_by else found


def _weight_of(food: Food, written: Written) -> Weight | None:
    if written.package is not None and written.package_unit is not None:
        return _package(food, written)
    if written.unit is not None:
        return _mass(food, written) if written.unit.kind == "mass" else _volume(food, written)
    if written.measure == "handful":
        return _handfuls(food, written)
    return _counted(food, written)


def _weight(count: Count, noun: str, grams: float, spreads: tuple[str, ...], source: str, step: str = "") -> Weight:
    sd = spread(*spreads)
    total, low, high = (value * grams for value in (count.value, count.low, count.high))
    low, high = low * max(0.0, 1 - Z90 * sd), high * (1 + Z90 * sd)
    if count.high > count.low and total > 0:
        sd = (high - low) / (2 * Z90 * total)
    each = "" if noun in ("g", "piece") or count.value == 0 else f" x {number(grams, 2)} g"
    how = f"{amount_text(count.value, noun)}{each}{step} ({source})"
    return Weight(total, low, high, sd, how, noun, grams)


def _given(value: _Given | None) -> _Given:
    """Return what a line gives, where it is known that it does."""
    assert value is not None
    return value


def _mass(food: Food, written: Written) -> Weight:
    unit = _given(written.unit)
    refuse = thrown_away(food, written)
    step = f", less {number(refuse * 100)} % refuse: {food.refuse_part.lower()}" if refuse else ""
    return _weight(written.count, unit.short, edible_grams(unit.size, refuse), ("weighed",), "weighed", step)


def _volume(food: Food, written: Written) -> Weight | None:
    unit = _given(written.unit)
    small = unit.name in UNMEASURED
    row, reasons = volume_row(_as_measured(food, written), written)
    if row is None:
        density = density_of(food, written)
        if density is None:
            return None
        how = ("pinch",) if small else ("level_dry_measure", "group_density")
        return _weight(
            written.count,
            unit.short,
            density * unit.size,
            how,
            f"{density:g} g/mL, density of its group, common practice",
        )
    if is_crushed_of_flakes(food, written, row):
        return None
    of = units()[UNIT_OF[row.measure]]
    density, grams = row.grams / of.size, row.grams * (unit.size / of.size)
    poured = not row.cut and density > 0.88 and food.group in _POURED
    loose = row.cut not in ("", "ground", "sifted", "packed") or food.group in ("vegetable", "herb")
    base = _measured_by(food, small, poured, loose)
    source = row.source_words
    if reasons:
        kind = " ".join(part for part in (row.measure, row.cut) if part)
        source = f"{source}, from its {kind} of {number(row.grams, 1)} g"
    if food.key in _COARSE_SALTS:
        source = f"{source}: its grains lie loosely, table salt weighs 6 g a tsp"
    reasons = () if small or (poured and reasons == ("other_volume",)) else reasons
    return _weight(written.count, unit.short, grams, (base, *reasons), source)


def _measured_by(food: Food, small: bool, poured: bool, loose: bool) -> str:
    if small:
        return "pinch"
    if food.key in _COARSE_SALTS:
        return "coarse_salt"
    return "liquid_measure" if poured else "chopped_by_cup" if loose else "level_dry_measure"


def _as_measured(food: Food, written: Written) -> Food:
    """Return the food that fills the cup: of a canned one that is drained, what is cooked and has no liquid."""
    if not written.drained or food.state != "canned":
        return food
    forms = bundled_foods().forms(food.base)
    return next((form for form in forms if form.state in ("drained", "rinsed", "cooked") and form.measures), food)


def _handfuls(food: Food, written: Written) -> Weight | None:
    own = food.measure("handful")
    grams = own.grams if own else handful_of(food)
    return _weight(written.count, "handful", grams, ("pinch",), "common practice") if grams else None


def _counted(food: Food, written: Written) -> Weight | None:
    asked = written.measure
    if tells_its_size(food, written):
        by_length = _of_length(food, written)
        if by_length is None or not _is_length_of_another(food, written, by_length):
            return by_length
    row, sized = counted_row(food, written)
    if row is None and (asked or (written.length and written.cut == "pieces")):
        return None
    if row is None:
        sized = "piece"
        own = [measure.measure for measure in food.measures if measure.measure in food.name.lower()]
        of_a_loaf = ("slice",) if written.cut == "pieces" and food.group == "bread" else ()
        things = ("piece", "medium", *own, "large", "small", *of_a_loaf)
        row = next(
            (row for cut in (written.cut, "") for thing in things if (row := food.measure(thing, cut=cut))), None
        )
        row = row or food.measure(*things) or first_thing(food)
    if row is None:
        return None
    sized = "graded_piece" if food.group in _GRADED else sized
    if row.measure in CONTAINERS:
        return _usual_package(food, written, row)
    plain = not asked and row.measure not in SIZES
    noun = "piece" if row.measure == "piece" or plain else row.measure
    if written.size and asked and row.cut == written.size:
        noun = f"{written.size} {noun}"
    share = share_of_usual(food, row, written)
    step = f", a {written.size} one taken as {number(share, 2)} of the usual" if share != 1 else ""
    sized = "piece" if share != 1 else sized
    return _weight(written.count, noun, share * row.grams, (sized,), row.source_words, step)


def _is_length_of_another(food: Food, written: Written, by_length: Weight) -> bool:
    """Whether a length is far from the size that is said too: that of the half, in "1/2 small banana (4 inches)"."""
    of_its_size = food.measure(written.size) if written.size and not written.measure else None
    return of_its_size is not None and not 1 / _FAR < by_length.noun_grams / of_its_size.grams < _FAR


def _of_length(food: Food, written: Written) -> Weight | None:
    one = of_length(food, written)
    if one is None:
        return None
    sure = ("piece_with_size",) if one.as_listed else ("piece",)
    each = one.measure
    return _weight(written.count.times(one.times), each.measure, each.grams, sure, each.source_words)


def _usual_package(food: Food, written: Written, row: Measure) -> Weight:
    """Return the weight of a can or a packet without a size: the usual size; another container is asked about."""
    share = drained_share(food)[0] if written.drained and food.state == "canned" else 1.0
    drained = f", {number(share * 100)} % of it left when drained" if share < 1 else ""
    step = f", the usual size, since the line gives none{drained}"
    found = _weight(written.count, row.measure, row.grams * share, ("usual_package",), row.source_words, step)
    found = replace(found, container=row.measure)
    if written.measure == row.measure:
        return found
    container = written.measure or row.measure
    return replace(
        found,
        problem=f"no size for the {container}; a {row.measure} of {number(row.grams)} g is assumed, write for "
        f'instance "{fraction_text(written.count.value)} ({number(row.grams)} g) {container}"',
    )


def _package(food: Food, written: Written) -> Weight | None:
    unit, noun, size = _given(written.package_unit), written.measure or "package", _given(written.package)
    if unit.name == "ounce" and food.group == "beverage":
        unit = units()["fl oz"]  # drinks are sold by volume
    label = f"{noun} ({number(size, 2)} {unit.short})"
    grams, how, source = unit.size * size, ("package_net",), "net weight"
    count = ONE if is_of_the_part(food, written, grams) else written.count
    drained = food.state in ("drained", "rinsed") or (written.drained and food.state != "dry")
    poured_off = noun in _WITH_LIQUID and drained and not _sold_drained(food)
    if unit.kind == "volume" and poured_off:
        source = "net volume, 1 g/mL"  # what fills the can is food and its liquid
    elif unit.kind == "volume":
        inside = _volume(food, Written(unit=unit))
        if inside is None:
            return None
        grams, source = inside.noun_grams * size, f"net volume, {inside.how}"
    if poured_off:
        share, origin = drained_share(food)
        net = grams
        grams, how = grams * share, ("package_drained",)
        left = f"of which {number(share * 100)} % is left when drained" if share < 1 else "drained as the label says"
        source = f"net {number(net)} g, {left}: {origin}"
    return replace(_weight(count, label, grams, how, source), container=noun)


def _sold_drained(food: Food) -> bool:
    """Whether a jar of a food holds no liquid that could be poured off: an oil, a sauce, a nut butter."""
    return food.group in _WITHOUT_LIQUID or (food.group == "meat" and food.state not in ("canned", "drained"))

"""From an amount of a food to grams: which measure was used, how sure that is, and what had to be assumed."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from math import hypot, log

from kit import files
from kit.errors import UnknownNameError
from kit.food.amounts import ONE, Count
from kit.food.composition import Food, Measure, read_rows
from kit.food.cooking import drained_share, edible_grams
from kit.food.measures import Unit, amount_text, fraction_text, units
from kit.texts import number

Z90 = 1.6448536269514722  # a normal value lies within this many standard deviations nine times in ten
VOLUMES = ("cup", "tbsp", "tsp", "fl oz")
SIZES = ("small", "medium", "large", "extra large")
CONTAINERS = ("can", "jar", "package", "bag")
UNMEASURED = ("pinch", "dash", "smidgen", "drop", "sprinkle", "squeeze", "drizzle", "splash", "glug", "dollop")
_WITH_LIQUID = ("can", "jar")
_UNIT_OF = {"cup": "cup", "tbsp": "tablespoon", "tsp": "teaspoon", "fl oz": "fluid_ounce"}
# Cuts that fill a cup alike; the first group that holds a cut is its own.
_ALIKE = (
    {"chopped", "diced", "cubed", "minced", "pieces", "crumbled", "florets"},
    {"sliced", "rings", "rounds", "strips", "halves", "quarters", "sections"},
    {"grated", "shredded"},
    {"mashed", "pureed"},
    {"", "whole", "kernels", "shelled", "pitted"},
)
_POURED = ("oil", "beverage", "stock", "dairy", "condiment", "sweetener", "soy", "nut", "egg", "fruit")
_SOLD_WITH_BONES = (
    "whole, meat and skin",
    "wing",
    "drumstick",
    "chicken leg",
    "bone-in",
    "spareribs",
    "lamb loin chop",
    "duck, meat and skin",
)
_BONELESS_AS_SOLD = ("poultry", "meat", "fish", "shellfish", "nut", "seed")


@dataclass(frozen=True, slots=True)
class Written:
    """What a line says about an amount.

    Attributes
    ----------
    count : Count
        How many units, measures or packages.
    unit : Unit, optional
        The unit of mass or volume that is counted.
    measure : str
        Otherwise the counted measure: ``"clove"``, ``"can"``; empty when the food itself is counted.
    package : float, optional
        What one package is said to hold, with `package_unit`.
    size, cut : str
        ``"small"``, ``"medium"``, ``"large"``; ``"chopped"``, ``"sliced"``; or empty.
    length : float
        Length of a piece, 0 when not said. [inch]
    edible : bool
        Whether the line says that the food is weighed without its inedible part ("peeled", "boneless", "baby").
    as_bought : bool
        Whether the line says that it is weighed with it ("bone-in", "in the shell").
    drained : bool
        Whether the line says that the liquid of a can is poured off.
    """

    count: Count = ONE
    unit: Unit | None = None
    measure: str = ""
    package: float | None = None
    package_unit: Unit | None = None
    size: str = ""
    cut: str = ""
    length: float = 0.0
    edible: bool = False
    as_bought: bool = False
    drained: bool = False


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
    """

    grams: float
    low: float
    high: float
    relative_sd: float
    how: str
    noun: str
    noun_grams: float
    problem: str = ""


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


@cache
def _groups() -> Mapping[str, Mapping[str, str]]:
    return {row["group"]: row for row in read_rows(files.bundled("data/group_densities.csv"))}


def weigh(food: Food, written: Written) -> Weight | None:
    """Return the grams of an amount of a food, or None when the food has no weight for that measure.

    Weights stated on the line come first, then the food's own household measures (the exact cut, then one that fills
    a cup alike, then another volume), then the density of its group; each step away widens the range.
    """
    if written.package is not None and written.package_unit is not None:
        return _package(food, written)
    if written.unit is not None:
        return _mass(food, written) if written.unit.kind == "mass" else _volume(food, written)
    if written.measure == "handful":
        grams = _groups().get(food.group, {}).get("handful_grams")
        return _weight(written.count, "handful", float(grams), ("pinch",), "common practice") if grams else None
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


def _mass(food: Food, written: Written) -> Weight:
    unit = written.unit
    takes_off = food.refuse > 0 and not written.edible
    if food.group in _BONELESS_AS_SOLD or food.state not in ("raw", ""):
        bones = "bone" in food.refuse_part.lower() and any(part in food.name.lower() for part in _SOLD_WITH_BONES)
        takes_off = food.refuse > 0 and (written.as_bought or (bones and not written.edible))
    grams = edible_grams(unit.size, food.refuse) if takes_off else unit.size
    step = f", less {number(food.refuse * 100)} % refuse: {food.refuse_part.lower()}" if takes_off else ""
    return _weight(written.count, unit.short, grams, ("weighed",), "weighed", step)


def _volume(food: Food, written: Written) -> Weight:
    unit = written.unit
    small = unit.name in UNMEASURED
    row, reasons = _volume_row(food, written)
    if row is None:
        density = float(_groups().get(food.group, {"grams_per_ml": 1.0})["grams_per_ml"])
        how = ("pinch",) if small else ("level_dry_measure", "group_density")
        return _weight(
            written.count,
            unit.short,
            density * unit.size,
            how,
            f"{density:g} g/mL, density of its group, common practice",
        )
    of = units()[_UNIT_OF[row.measure]]
    density, grams = row.grams / of.size, row.grams * (unit.size / of.size)
    poured = not row.cut and density > 0.88 and food.group in _POURED
    loose = row.cut not in ("", "ground", "sifted", "packed") or food.group in ("vegetable", "herb")
    base = "pinch" if small else "liquid_measure" if poured else "chopped_by_cup" if loose else "level_dry_measure"
    source = row.source
    if reasons:
        kind = " ".join(part for part in (row.measure, row.cut) if part)
        source = f"{source}, from its {kind} of {number(row.grams, 1)} g"
    reasons = () if small or (poured and reasons == ("other_volume",)) else reasons
    return _weight(written.count, unit.short, grams, (base, *reasons), source)


def _volume_row(food: Food, written: Written) -> tuple[Measure | None, tuple[str, ...]]:
    """Return the household measure nearest to a volume and its cut, and in what it differs."""
    rows = [row for row in food.measures if row.measure in VOLUMES]
    if not rows:
        return None, ()
    one, cut = written.unit.size, written.cut
    volume = max(one * written.count.value, 1e-3)

    def distance(row: Measure) -> tuple[int, float]:
        alike = any(cut in group and row.cut in group for group in _ALIKE)
        away = 0 if row.cut == cut else 1 if alike else 2 if row.cut == "" else 3
        size = units()[_UNIT_OF[row.measure]].size
        return away, 0.0 if _same_size(size, one) else abs(log(size / volume))

    best = min(rows, key=distance)
    other_volume = not _same_size(units()[_UNIT_OF[best.measure]].size, one)
    return best, (("other_cut",) if distance(best)[0] else ()) + (("other_volume",) if other_volume else ())


def _same_size(size: float, other: float) -> bool:
    """Whether two volumes are one measure: a metric cup is a cup."""
    return abs(size / other - 1) < 0.1


def _counted(food: Food, written: Written) -> Weight | None:
    asked = written.measure
    inch = food.measure("inch") if written.length and asked in ("", "piece", "knob", "root") else None
    if inch:
        return _weight(written.count.times(written.length), "inch", inch.grams, ("piece_with_size",), inch.source)
    row, sized = _row(food, written)
    if row is None and (asked not in ("", "piece") or (asked and written.length)):
        return None
    if row is None:
        sized = "piece"
        own = [measure.measure for measure in food.measures if measure.measure in food.name.lower()]
        things = ("piece", "medium", *own, "large", "small")
        row = next(
            (row for cut in (written.cut, "") for thing in things if (row := food.measure(thing, cut=cut))), None
        )
        row = row or food.measure(*things) or _first_thing(food)
    if row is None:
        return None
    if row.measure in CONTAINERS:
        found = _weight(written.count, row.measure, row.grams, ("package_drained", "other_volume"), row.source)
        return replace(
            found,
            problem=f"no size for the {row.measure}; {number(row.grams)} g each is assumed, write for instance "
            f'"{fraction_text(written.count.value)} ({number(row.grams)} g) {row.measure}"',
        )
    noun = "piece" if row.measure == "piece" or (row.measure not in SIZES and not asked) else row.measure
    if written.size and asked and row.cut == written.size:
        noun = f"{written.size} {noun}"
    return _weight(written.count, noun, row.grams, (sized,), row.source)


def _row(food: Food, written: Written) -> tuple[Measure | None, str]:
    """Return the household measure of the counted thing, by its measure, length or size; and how sure that is."""
    asked = written.measure
    if asked in CONTAINERS:
        return food.measure(asked) or food.measure(*CONTAINERS), "package_net"
    if asked == "stick" and food.group in ("dairy", "oil"):
        return food.measure(asked), "package_net"
    if asked:
        cuts = (written.size, written.cut, "", "medium")
        return next(
            (row for cut in cuts if (row := food.measure(asked, cut=cut))), food.measure(asked)
        ), "piece_with_size"
    if written.length:
        return food.measure(f"{number(written.length, 1)}-inch"), "piece_with_size"
    if written.size:
        cuts = (written.cut, "")
        found = next((row for cut in cuts if (row := food.measure(written.size, cut=cut))), food.measure(written.size))
        return found, "piece_with_size"
    return None, "piece"


def _first_thing(food: Food) -> Measure | None:
    """Return the first measure that is a thing one can count, rather than a volume, a slice or a package."""
    rows = [row for row in food.measures if row.measure not in (*VOLUMES, *CONTAINERS, "slice", "pat", "bunch", "head")]
    return rows[0] if rows else None


def _package(food: Food, written: Written) -> Weight:
    unit, noun = written.package_unit, written.measure or "package"
    label = f"{noun} ({number(written.package, 2)} {unit.short})"
    grams, how, source = unit.size * written.package, ("package_net",), "net weight"
    if unit.kind == "volume":
        inside = _volume(food, Written(unit=unit))
        grams, source = inside.noun_grams * written.package, f"net volume, {inside.how}"
    drained = food.state in ("drained", "rinsed") or (written.drained and food.state != "dry")
    if noun in _WITH_LIQUID and drained and not _sold_drained(food):
        share, origin = drained_share(food)
        net = grams
        grams, how = grams * share, ("package_drained",)
        source = f"net {number(net)} g, of which {number(share * 100)} % is left when drained: {origin}"
    return _weight(written.count, label, grams, how, source)


def _sold_drained(food: Food) -> bool:
    """Whether a jar of a food holds no liquid that could be poured off: an oil, a sauce, a nut butter."""
    return food.group in ("oil", "condiment", "stock", "beverage", "sweetener", "baking", "spice", "nut", "seed")

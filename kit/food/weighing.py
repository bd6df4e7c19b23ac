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

    Weights stated on the line come first, then the food's own household measures (the exact cut, then one that fills a cup
    alike, then another volume), then the density of its group; each step away from the exact measure widens the range.
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
        takes_off = food.refuse > 0 and written.as_bought
    grams = edible_grams(unit.size, food.refuse) if takes_off else unit.size
    step = f", less {number(food.refuse * 100)} % refuse: {food.refuse_part.lower()}" if takes_off else ""
    return _weight(written.count, unit.short, grams, ("weighed",), "weighed", step)


def _volume(food: Food, written: Written) -> Weight:
    unit = written.unit
    small = unit.name in ("pinch", "dash", "smidgen")
    row, reasons = _volume_row(food, unit, written.cut)
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


def _volume_row(food: Food, unit: Unit, cut: str) -> tuple[Measure | None, tuple[str, ...]]:
    """Return the household measure nearest to the unit and cut, and in what it differs."""
    rows = [row for row in food.measures if row.measure in VOLUMES]
    if not rows:
        return None, ()

    def distance(row: Measure) -> tuple[int, float]:
        alike = any(cut in group and row.cut in group for group in _ALIKE)
        away = 0 if row.cut == cut else 1 if alike else 2 if row.cut == "" else 3
        return away, abs(log(units()[_UNIT_OF[row.measure]].size / unit.size))

    best = min(rows, key=distance)
    away, scale = distance(best)
    return best, (("other_cut",) if away else ()) + (("other_volume",) if scale > 0.1 else ())


def _counted(food: Food, written: Written) -> Weight | None:
    asked = written.measure
    row = None
    sized = "piece_with_size" if written.size or (asked and asked not in CONTAINERS) else "piece"
    if asked:
        row = next(
            (row for cut in (written.size, "", "medium") if (row := food.measure(asked, cut=cut))), food.measure(asked)
        )
        if row is None and asked in CONTAINERS:
            row = food.measure(*CONTAINERS)
    elif written.size:
        row = food.measure(written.size, cut="") or food.measure(written.size)
    if row is None and asked not in CONTAINERS and (not asked or asked == "piece"):
        sized = "piece"
        own = [measure.measure for measure in food.measures if measure.measure in food.name.lower()]
        row = food.measure("medium", "piece", *own, "large", "small") or _first_thing(food)
    if row is None:
        return None
    if row.measure in CONTAINERS:
        found = _weight(written.count, row.measure, row.grams, ("package_drained", "other_volume"), row.source)
        return replace(
            found,
            problem=f"no size for the {row.measure}; {number(row.grams)} g each is assumed, write for instance "
            f'"{fraction_text(written.count.value)} (15 oz) {row.measure}"',
        )
    noun = "piece" if row.measure == "piece" or (row.measure not in SIZES and not asked) else row.measure
    if written.size and asked and row.cut == written.size:
        noun = f"{written.size} {noun}"
    return _weight(written.count, noun, row.grams, (sized,), row.source)


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
    if noun == "can" and (food.state in ("drained", "rinsed") or (food.state == "canned" and written.drained)):
        share, origin = drained_share(food)
        net = grams
        grams, how = grams * share, ("package_drained",)
        source = f"net {number(net)} g, of which {number(share * 100)} % is left when drained: {origin}"
    return _weight(written.count, label, grams, how, source)

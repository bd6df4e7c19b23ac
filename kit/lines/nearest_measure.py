"""Which of a food's household measures comes nearest to what a line counts in."""

from dataclasses import dataclass, replace
from math import log

from kit.food.amounts import ONE, Count
from kit.food.composition import Food
from kit.food.cooking import drained_share
from kit.food.measure import Measure
from kit.food.measures import Unit, units

VOLUMES = ("cup", "tbsp", "tsp", "fl oz")
SIZES = ("small", "medium", "large", "extra large", "jumbo")
CONTAINERS = ("can", "jar", "package", "bag", "bottle")
UNIT_OF = {"cup": "cup", "tbsp": "tablespoon", "tsp": "teaspoon", "fl oz": "fluid_ounce"}
# What a small or a large one weighs of the usual one, where the table weighs one size only (common practice): of
# 20 vegetables and fruits that SR26 weighs in three sizes the small ones weigh 0.6 to 0.85, the large ones 1.2 to 1.7.
_OF_USUAL_SIZE = {"small": 0.8, "large": 1.25, "extra large": 1.5, "jumbo": 1.5}
_PARTS_AND_KINDS = ("slice", "pat", "bunch", "head", "baguette", "shell", "crown", "tail", "scoop")
_ONE_SERVING = 50.0  # what a packet of this and less holds is always small [g]
_LARGER = ("jumbo", "extra large", "large")
_OF_ONE_SIZE = (
    *CONTAINERS,
    *SIZES,
    "slice",
    "clove",
    "sprig",
    "leaf",
    "cube",
    "stalk",
    "wedge",
    "strip",
    "stick",
    "sheet",
)
# Cuts that fill a cup alike; the first group that holds a cut is its own.
_ALIKE = (
    {"chopped", "diced", "cubed", "minced", "pieces", "crumbled", "florets"},
    {"sliced", "rings", "rounds", "strips", "halves", "quarters", "sections"},
    {"grated", "shredded"},
    {"sliced", "shredded"},
    {"mashed", "pureed"},
    {"", "whole", "kernels", "shelled", "pitted"},
)


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
    skin_on : bool
        Whether nothing is peeled off: unpeeled, scrubbed, new or small.
    package_size : str
        The size of the can or bag itself: ``"large"``, of "1 large can".
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
    skin_on: bool = False

    @property
    def weight(self) -> float | None:
        """What is weighed, one and all of them; None where it is measured or counted otherwise. [g]"""
        return self._total if self.unit is not None and self.unit.kind == "mass" else None

    @property
    def volume(self) -> float | None:
        """What is measured by volume; None where it is weighed or counted. [mL]"""
        return self._total if self.unit is not None and self.unit.kind == "volume" else None

    @property
    def _total(self) -> float:
        return self.count.value * self.unit.size if self.unit is not None else 0.0

    package_size: str = ""


def volume_row(food: Food, written: Written) -> tuple[Measure | None, tuple[str, ...]]:
    """Return the household measure nearest to a volume and its cut, and in what it differs."""
    rows = [row for row in food.measures if row.measure in VOLUMES]
    if not rows or written.unit is None:
        return None, ()
    one, cut = written.unit.size, written.cut
    volume = max(one * written.count.value, 1e-3)

    def distance(row: Measure) -> tuple[int, float]:
        alike = any(cut in group and row.cut in group for group in _ALIKE)
        usual = row.cut == "" or (not cut and food.group == "dairy" and row.cut == "shredded")  # a cup of cheese
        away = 0 if row.cut == cut else 1 if alike else 2 if usual else 3
        size = units()[UNIT_OF[row.measure]].size
        return away, 0.0 if _same_size(size, one) else abs(log(size / volume))

    best = min(rows, key=distance)
    other_volume = not _same_size(units()[UNIT_OF[best.measure]].size, one)
    return best, (("other_cut",) if distance(best)[0] else ()) + (("other_volume",) if other_volume else ())


def _same_size(size: float, other: float) -> bool:
    """Whether two volumes are one measure: a metric cup is a cup."""
    return abs(size / other - 1) < 0.1


def counted_row(food: Food, written: Written) -> tuple[Measure | None, str]:
    """Return the household measure of the counted thing, by its measure, length or size; and how sure that is."""
    own = {said for row in food.measures for said in (row.measure, row.cut)}
    if written.size in _LARGER and written.size not in own:
        written = replace(written, size=next((size for size in _LARGER if size in own), written.size))
    asked = written.measure
    if asked in CONTAINERS and written.package_size:
        usual = food.measure(asked, cut="")
        one_serving = usual if usual and written.package_size == "small" and usual.grams <= _ONE_SERVING else None
        return food.measure(asked, cut=written.package_size) or one_serving, "package_net"
    if asked in CONTAINERS:
        of_no_size = [row for row in food.measures if row.cut not in SIZES]
        things = (asked, *CONTAINERS)
        return next((row for thing in things for row in of_no_size if row.measure == thing), None), "package_net"
    if asked == "stick" and food.group in ("dairy", "oil"):
        return food.measure(asked), "package_net"
    if asked:
        cuts = (*filter(None, (written.size, written.cut)), "", "medium")
        return next(
            (row for cut in cuts if (row := food.measure(asked, cut=cut))), food.measure(asked)
        ), "piece_with_size"
    if written.size:
        by_cut = (written.cut, "")
        found = next(
            (row for cut in by_cut if (row := food.measure(written.size, cut=cut))), food.measure(written.size)
        )
        return found, "piece_with_size"
    return None, "piece"


def first_thing(food: Food) -> Measure | None:
    """Return the first measure that is a thing one can count, rather than a volume, a slice or a package."""
    rows = [row for row in food.measures if row.measure not in (*VOLUMES, *CONTAINERS, *_PARTS_AND_KINDS)]
    return rows[0] if rows else None


def share_of_usual(food: Food, row: Measure, written: Written) -> float:
    """Return what a piece of a size weighs of the one in the table, where that weighs one size only."""
    alike = (other for other in food.measures if other.measure in (row.measure, *_OF_USUAL_SIZE))
    of_sizes = any(not _OF_USUAL_SIZE.keys().isdisjoint((other.measure, other.cut)) for other in alike)
    sized = of_sizes or row.measure in _OF_ONE_SIZE
    return 1.0 if sized else _OF_USUAL_SIZE.get(written.size, 1.0)


def is_of_the_part(food: Food, written: Written, net: float) -> bool:
    """Whether a net weight behind a part of a container is that of the part: "1/2 can (7 oz) coconut milk".

    Parameters
    ----------
    food : Food
        What is in it; its usual container tells.
    written : Written
        The part, its container and the weight.
    net : float
        The weight that the line gives. [g]
    """
    usual = food.measure(written.measure) or food.measure(*CONTAINERS)
    part = written.count.value
    if usual is None or not 0 < part < 1:
        return False
    whole = usual.grams / (drained_share(food)[0] if food.state in ("drained", "rinsed") else 1.0)
    return abs(log(net / (part * whole))) < abs(log(net / whole))

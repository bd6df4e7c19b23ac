"""The grams of a food that a phrase names, or what has to be asked about its amount."""

from dataclasses import replace
from math import hypot

from kit.food.amounts import ONE, Count
from kit.food.composition import Food
from kit.food.measures import amount_text, fraction_text, unit
from kit.food.vocabulary import line_words
from kit.lines.choosing import Choice
from kit.lines.covered import is_sold_covered, says_nothing_of_covers
from kit.lines.known_names import kind_of
from kit.lines.nearest_measure import CONTAINERS, VOLUMES, Written
from kit.lines.parsed_line import ParsedLine
from kit.lines.reading import Reading
from kit.lines.weighing import Z90, Weight, spread, weigh
from kit.texts import number, one

_DRY_ML = {"pint": 550.6105, "quart": 1101.221}  # NIST Handbook 44, Appendix C: dry volume
_FAR = 1.5  # times: what two amounts of one line may be apart before the pieces are doubted
_FAR_OF_LARGE = 1.3  # of heads and squashes, which differ more
_FAR_OF_JUICE = 1.05  # its volume is what is used, however many fruits give it
_LARGE = 500.0  # [g]
_DONE_LATER = ("whipped",)  # behind the comma it is measured first
_CUT_OFF = frozenset(  # some of a piece, and never all of it
    "slice strip ring tip cube chunk wedge side end core ribbon finger crown ball tail curl shaving coin disk".split()
)
_LIKE_SLICES = ("strip", "ring")
_MADE_INTO = ("in", "into", "cut", "with")  # behind it stands what a whole one becomes
_HALVED = ("fruit", "vegetable", "bread", "egg", "meat")  # "4 chicken breast halves" are four breasts
# What "to taste" and "for garnish" are counted as (common practice); other foods are left out, and that is said.
_UNMEASURED = {"spice": (0.25, "tsp"), "herb": (1.0, "tbsp"), "oil": (1.0, "tsp")}


def measured(line: str, phrase: ParsedLine, choice: Choice, food: Food, written: Written) -> Reading:
    """Return the reading of a food with its grams, or with what has to be asked about them."""
    reading = Reading(line, food)
    written = _with_cut(_dry_measure(written, food), phrase, choice, food)
    if is_sold_covered(food) and says_nothing_of_covers(phrase):
        written = replace(written, edible=True)
    if not phrase.counted and written.measure == "spray":
        written = replace(
            written, count=ONE, measure="spraying"
        )  # a pan is sprayed for longer than a third of a second
    elif not phrase.counted and (phrase.unmeasured or food.group == "spice" or food.key == "water"):
        return _unmeasured(reading, food)
    elif not phrase.counted:
        return replace(reading, problem=f'no amount of "{food.name}"; write for instance "{example_of(food)}"')
    weight = _by_its_volume(phrase, food, written, weigh(_as_counted(food, choice), written))
    if weight is None:
        size = written.package_size or written.size
        long = f"{number(written.length, 2)}-inch" if written.length else ""
        asked = " ".join(part for part in (size, long, written.measure or _unit_of(written)) if part)
        return replace(
            reading, problem=f'"{food.name}" has no weight for {one(asked)}; write for instance "{example_of(food)}"'
        )
    weight = _eaten(weight, phrase.share)
    trimmed = bool(written.edible and food.refuse and written.weight is not None)
    return replace(_with_weight(reading, weight, written.count), cut="trimmed" if trimmed else written.cut)


def _unit_of(written: Written) -> str:
    """Return the unit that a line counts in, as a recipe prints it; a piece where it counts things."""
    return f"{written.unit.short} {written.cut}".strip() if written.unit else "piece"


def _by_its_volume(phrase: ParsedLine, food: Food, written: Written, counted: Weight | None) -> Weight | None:
    """Return the weight of the cups that brackets give of something counted, where its pieces weigh far from that.

    Half a small watermelon may be anything; "about 4 cups" of it is an amount.
    """
    sized = written.unit is not None or written.package is not None or written.measure == "bunch"
    if phrase.volume is None or sized:
        return counted
    volume = weigh(food, replace(phrase.volume, cut=phrase.volume.cut or written.cut))
    if counted is None or volume is None or not counted.grams:
        return volume or counted
    far = _FAR_OF_JUICE if phrase.product else _FAR_OF_LARGE if counted.noun_grams >= _LARGE else _FAR
    if 1 / far < volume.grams / counted.grams < far:
        return counted
    return replace(volume, how=f"{volume.how}, as the brackets say; by its pieces {number(counted.grams)} g")


def _as_counted(food: Food, choice: Choice) -> Food:
    """Return a food that stands in for another with what a piece of that one weighs; by the cup they are alike."""
    if not choice.measures:
        return food
    own = () if any(row.measure in VOLUMES for row in choice.measures) else food.measures
    return replace(food, measures=(*choice.measures, *(row for row in own if row.measure in VOLUMES)))


def _eaten(weight: Weight, share: float) -> Weight:
    """Return the share of a weight that is eaten, where the line says so; how much a marinade leaves is not sure."""
    if share == 1.0:
        return weight
    sd = hypot(weight.relative_sd, spread("used_share"))
    grams = share * weight.grams
    return replace(
        weight,
        grams=grams,
        low=grams * max(0.0, 1 - Z90 * sd),
        high=min(weight.high, grams * (1 + Z90 * sd)),
        relative_sd=sd,
        how=f"{weight.how}; of it {number(100 * share)} % is used, as the line says",
        noun_grams=share * weight.noun_grams,
    )


def _dry_measure(written: Written, food: Food) -> Written:
    """Return an amount of fresh fruit with its pints and quarts as dry ones, in which it is sold."""
    if written.unit is None or written.unit.name not in _DRY_ML or food.group != "fruit":
        return written
    if food.state != "raw":
        return written
    return replace(written, unit=replace(written.unit, size=_DRY_ML[written.unit.name]))


def example_of(food: Food) -> str:
    """Return a line that would have been clear for a food."""
    row = next((row for row in food.measures if row.measure not in CONTAINERS), None)
    name = food.name.lower()
    if row is None:
        return f"100 g {name}"
    cut = f", {row.cut}" if row.cut else ""
    size = f"{row.measure} " if row.measure not in ("piece",) else ""
    return (
        f"1 {size}{name}{cut} ({number(row.grams)} g)"
        if row.measure in VOLUMES
        else f"{fraction_text(1)} {size}{name}{cut}"
    )


def _with_weight(reading: Reading, weight: Weight, count: Count) -> Reading:
    return replace(
        reading,
        grams=weight.grams,
        low=weight.low,
        high=weight.high,
        relative_sd=weight.relative_sd,
        how=weight.how,
        problem=weight.problem,
        count=count.value,
        noun=weight.noun,
        noun_grams=weight.noun_grams,
        container=weight.container,
    )


def _unmeasured(reading: Reading, food: Food) -> Reading:
    """Count "to taste" as a stated small amount, or leave it out and say so."""
    if food.group not in _UNMEASURED:
        how = "no amount given, left out of the numbers"
        return replace(reading, grams=0.0, low=0.0, high=0.0, how=how, count=0.0)
    count, noun = _UNMEASURED[food.group]
    weight = weigh(food, Written(count=Count(count, 0.0, 2 * count), unit=unit(noun)))
    if weight is None:
        return replace(reading, grams=0.0, low=0.0, high=0.0, how="no amount given, left out of the numbers", count=0.0)
    counted = _with_weight(reading, weight, Count(count, 0.0, 2 * count))
    return replace(
        counted, how=f"no amount given, counted as {amount_text(count, noun)} (common practice); {weight.how}"
    )


def _with_cut(written: Written, phrase: ParsedLine, choice: Choice, food: Food) -> Written:
    """Add the cut and the measure that the words around the food's name tell."""
    cuts, measure = [], written.measure
    own = {row.cut for row in food.measures}
    cut_off = any(
        word in _CUT_OFF and word in choice.spare for word in phrase.name
    )  # slices of a breast are no breasts
    if not measure and written.unit is None:  # "10 cherry tomatoes", where the table weighs a cherry tomato
        kind = [word for word in phrase.after[:1] if kind_of(word) in ("food", "plain")]  # "tomatoes, cherry"
        told = (row.measure for row in food.measures if row.measure in (*phrase.name, *kind))
        measure = next((noun for noun in told if not cut_off or noun in _CUT_OFF), "")
    for word in (*phrase.name, *phrase.after):
        known = line_words().get(word)
        if word in own and (
            word not in _DONE_LATER or word in phrase.name
        ):  # also where the name holds it: "ground flaxseed"
            cuts.append(word)
        of_a_cup = word == "piece" and written.unit is not None  # walnut pieces, whose name holds the word
        if (
            known is None
            or (word not in choice.spare and not of_a_cup)
            or (word in _DONE_LATER and word not in phrase.name)
        ):
            continue
        if known.kind == "cut":
            cuts.append(known.meaning)
        elif known.kind == "measure" and not measure and written.unit is None and word in phrase.name:
            measure = known.meaning if not cut_off or known.meaning in _CUT_OFF else ""
    cut = next((cut for cut in cuts if cut in own), cuts[0] if cuts else "")
    return _cut_off(replace(written, cut=cut, measure=measure), phrase, choice, food)


def _cut_off(written: Written, phrase: ParsedLine, choice: Choice, food: Food) -> Written:
    """Return an amount of slices or halves of a food as such, where its table weighs none: never as whole pieces."""
    if phrase.written.measure or written.unit or written.package:
        return written
    told = [word for word in phrase.name if word in choice.spare or word in ("chunk", "ball")]  # part of a name
    if "half" in told and written.measure != "half" and food.group in _HALVED:
        return replace(written, count=written.count.times(0.5))
    if written.measure:
        return written
    made = next((place for place, word in enumerate(told) if word in _MADE_INTO), len(told))
    part = next((word for word in told[:made] if word in _CUT_OFF), "")
    if part in _LIKE_SLICES and not food.measure(part) and food.measure("slice"):
        part = "slice"
    return replace(written, measure=part)

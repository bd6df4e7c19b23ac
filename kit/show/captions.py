"""What the charts say in words: beside a bar, as the sentence under a chart, and whole for those who cannot see it."""

import math
from collections.abc import Collection, Mapping, Sequence

from kit.texts import listing, number, percent, quantity

CORNERS = ("protein", "fat", "carbohydrate")
_REGION = "the region where all three ranges for adults hold"
_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
# How a share is said in passing, from and to which share: the eye forgives this much on a bar.
_PARTS = (
    *((0.97, 1.03, "all"), (0.87, 0.93, "about nine tenths"), (0.72, 0.78, "about three quarters")),
    *((0.64, 0.69, "about two thirds"), (0.53, 0.64, "more than half"), (0.47, 0.53, "about half")),
    *((0.31, 0.36, "about a third"), (0.23, 0.27, "about a quarter"), (0.18, 0.225, "about a fifth")),
    (0.09, 0.11, "about a tenth"),
)


def changed(now: str, written: str) -> str:
    """Return the words at a bar: the number now and, where it reads differently, the number as written.

    Examples
    --------
    >>> changed("9 g", "8 g"), changed("9 g", "9 g")
    ('9 g, was 8 g', '9 g')
    """
    return now if now == written else f"{now}, was {written}"


def count(of: int) -> str:
    """Return a small number as a word.

    Examples
    --------
    >>> count(6), count(14)
    ('six', '14')
    """
    return _COUNTS[of] if of < len(_COUNTS) else number(of)


def part_words(share: float) -> str:
    """Return a share as it is said in passing.

    Examples
    --------
    >>> part_words(0.6), part_words(0.3), part_words(0.06)
    ('more than half', '30 %', '6 %')
    """
    return next((words for low, high, words in _PARTS if low <= share < high), percent(share))


def range_words(share: float, limits: tuple[float, float] | None) -> str:
    """Return where a share lies, in words that fit its percents; empty where that is unknown.

    Examples
    --------
    >>> [range_words(share, (0.45, 0.65)) for share in (0.5, 0.4, 0.652)]
    ['in the range', 'below the range', 'just above the range']
    """
    side = _side_words(share, limits)
    return f"{side} the range" if side else ""


def _side_words(share: float, limits: tuple[float, float] | None) -> str:
    """Return the side on which a share lies: "just above" where its percents read as those of the limit itself."""
    side = side_of(share, limits)
    if limits is None or side in ("", "in"):
        return side
    limit = limits[0] if side == "below" else limits[1]
    return f"just {side}" if percent(share) == percent(limit) else side


def side_of(share: float, limits: tuple[float, float] | None) -> str:
    """Return on which side of a range a share lies: "in", "below" or "above"; empty where that is unknown."""
    if limits is None or math.isnan(share):
        return ""
    low, high = limits
    return "below" if share < low else "above" if share > high else "in"


def day_words(now: float, written: float, at_least: bool) -> str:
    """Return the words at a bar of the share-of-the-day chart; shares in fractions of the daily value.

    Examples
    --------
    >>> day_words(0.5, 0.4, at_least=True), day_words(float("nan"), float("nan"), at_least=True)
    ('at least 50 %, was 40 %', 'unknown')
    """
    words = changed(percent(now), percent(written))
    return f"at least {words}" if at_least and not math.isnan(now) else words


def rest_words(amounts: Sequence[float], unit: str, decimals: int) -> str:
    """Return what the ingredients without a row of their own bring.

    Examples
    --------
    >>> rest_words([0.2, 0.3, 0.0, 0.0], "g", 1), rest_words([0.0] * 6, "g", 1)
    ('two more bring 0.5 g together, two bring nothing', 'six more bring nothing')
    """
    some = [amount for amount in amounts if amount > 0]
    known = len(some) + sum(amount == 0 for amount in amounts)
    groups = [
        (len(some), quantity(sum(some), unit, decimals) + (" together" if len(some) > 1 else "")),
        (known - len(some), "nothing"),
        (len(amounts) - known, "an unknown amount"),
    ]
    parts: list[str] = []
    for size, what in groups:
        if size:
            parts.append(f"{count(size)} {'' if parts else 'more '}{'brings' if size == 1 else 'bring'} {what}")
    return ", ".join(parts)


def say_energy_shares(now: Mapping[str, float], ranges: Mapping[str, tuple[float, float]]) -> str:
    """Say what the energy-shares chart shows.

    Examples
    --------
    >>> say_energy_shares({"protein": 0.2, "fat": 0.4}, {"protein": (0.1, 0.35), "fat": (0.2, 0.35)})
    'Shares of energy: protein 20 % (in the range for adults), fat 40 % (above the range for adults).'
    """

    def place(name: str, share: float) -> str:
        words = range_words(share, ranges.get(name))
        return f" ({words} for adults)" if words else ""

    return f"Shares of energy: {', '.join(f'{name} {percent(now[name])}{place(name, now[name])}' for name in now)}."


def energy_sentence(now: Mapping[str, float], ranges: Mapping[str, tuple[float, float]]) -> str:
    """Say in one short sentence where the energy comes from and which share lies outside its range.

    Examples
    --------
    >>> ranges = {"protein": (0.1, 0.35), "fat": (0.2, 0.35), "carbohydrate": (0.45, 0.65)}
    >>> energy_sentence({"protein": 0.13, "fat": 0.31, "carbohydrate": 0.56}, ranges)
    'More than half of the energy comes from carbohydrate; all three shares are in their usual ranges.'
    >>> energy_sentence({"protein": 0.1, "fat": 0.5, "carbohydrate": 0.4}, ranges)
    'About half of the energy comes from fat; fat is above its usual range, carbohydrate below.'
    >>> energy_sentence({"protein": 0.1, "fat": 0.248, "carbohydrate": 0.652}, ranges)
    'About two thirds of the energy comes from carbohydrate; carbohydrate is just above its usual range.'
    """
    if any(map(math.isnan, now.values())):
        return "There is no energy to share out."
    largest = max(now, key=lambda name: now[name])
    where = [(name, _side_words(now[name], ranges.get(name))) for name in now]
    out = [(name, side) for name, side in where if side not in ("", "in")]
    start = f"{part_words(now[largest]).capitalize()} of the energy comes from {largest}"
    if not out:
        return f"{start}; all {count(len(now))} shares are in their usual ranges."
    (first, side), *others = out
    rest = "".join(f", {name} {side}" for name, side in others)
    return f"{start}; {first} is {side} its usual range{rest}."


def say_balance(now: Mapping[str, float], ranges: Mapping[str, tuple[float, float]]) -> str:
    """Say whether the dish lies where all ranges hold.

    Examples
    --------
    >>> ranges = {"protein": (0.1, 0.35), "fat": (0.2, 0.35), "carbohydrate": (0.45, 0.65)}
    >>> say_balance({"protein": 0.1, "fat": 0.5, "carbohydrate": 0.4}, ranges)
    'Balance of energy: outside the region where all three ranges for adults hold, because of fat and carbohydrate.'
    """
    if any(math.isnan(now[name]) for name in CORNERS):
        return "Balance of energy: unknown, since there is no energy to share out."
    out = [name for name in CORNERS if not ranges[name][0] <= now[name] <= ranges[name][1]]
    return f"Balance of energy: {f'outside {_REGION}, because of {listing(out)}' if out else f'inside {_REGION}'}."


def balance_sentence(now: Mapping[str, float], ranges: Mapping[str, tuple[float, float]]) -> str:
    """Say in one short sentence whether the three shares are in balance.

    Examples
    --------
    >>> ranges = {"protein": (0.1, 0.35), "fat": (0.2, 0.35), "carbohydrate": (0.45, 0.65)}
    >>> balance_sentence({"protein": 0.2, "fat": 0.3, "carbohydrate": 0.5}, ranges)
    'Protein, fat and carbohydrate are in balance: all three are in their usual ranges.'
    """
    if any(math.isnan(now[name]) for name in CORNERS):
        return "There is no energy to share out."
    out = [(name, side_of(now[name], ranges[name])) for name in CORNERS]
    far = {side: [name for name, where in out if where == side] for side in ("above", "below")}
    if not any(far.values()):
        return "Protein, fat and carbohydrate are in balance: all three are in their usual ranges."
    told = [f"{'more' if side == 'above' else 'less'} {listing(names)}" for side, names in far.items() if names]
    return f"There is {listing(told)} in it than is usual."


def say_sources(names: Sequence[str], now: Sequence[float], nutrient: str, unit: str, decimals: int = 0) -> str:
    """Say which ingredients, three at most, bring most of a nutrient.

    Examples
    --------
    >>> say_sources(["Rice", "Peas", "Salt"], [3.0, 9.0, float("nan")], "Protein", "g")
    'Protein in a serving: most from Peas (9 g) and Rice (3 g); unknown for Salt.'
    """
    brings = sorted(((amount, name) for name, amount in zip(names, now, strict=True) if amount > 0), reverse=True)
    top = listing([f"{name} ({quantity(amount, unit, decimals)})" for amount, name in brings[:3]])
    unknown = listing([name for name, amount in zip(names, now, strict=True) if math.isnan(amount)])
    rest = f"; unknown for {unknown}" if unknown else ""
    return f"{nutrient} in a serving: {f'most from {top}' if top else f'{number(0)} {unit}'}{rest}."


def sources_sentence(names: Sequence[str], now: Sequence[float], nutrient: str) -> str:
    """Say in one short sentence which food brings how much of a nutrient; `names` as they are said.

    Examples
    --------
    >>> sources_sentence(["rice", "peas", "salt"], [3.0, 9.0, 0.0], "Protein")
    'About three quarters of the protein comes from peas.'
    >>> sources_sentence(["rice", "peas", "kale"], [3.0, 4.0, 2.9], "Protein")
    '71 % of the protein comes from peas and rice.'
    """
    brings = sorted(((-amount, name) for name, amount in zip(names, now, strict=True) if amount > 0))
    total = -sum(amount for amount, _ in brings)
    low = nutrient[:1].lower() + nutrient[1:]
    if not brings:
        return f"There is no {low} in it, as far as is known."
    most = 1 if -brings[0][0] >= 0.45 * total else min(2, len(brings))
    share = -sum(amount for amount, _ in brings[:most]) / total
    said = part_words(share)
    return f"{said[:1].upper()}{said[1:]} of the {low} comes from {listing([name for _, name in brings[:most]])}."


def say_share_of_day(now: Mapping[str, float], limit: Collection[str], at_least: Collection[str] = ()) -> str:
    """Say what a serving is of the day.

    Examples
    --------
    >>> say_share_of_day({"Fiber": 0.4, "Sodium": 0.2}, limit={"Sodium"}, at_least={"Fiber"})
    'One serving as a share of the day: Fiber at least 40 %; to keep down: Sodium 20 %.'
    """
    said = {name: f"{name} {day_words(share, share, name in at_least)}" for name, share in now.items()}
    enough = ", ".join(words for name, words in said.items() if name not in limit)
    less = ", ".join(words for name, words in said.items() if name in limit)
    parts = [part for part in (enough, f"to keep down: {less}" if less else "") if part]
    return f"One serving as a share of the day: {'; '.join(parts)}."


def day_sentence(now: Mapping[str, float], limit: Collection[str]) -> str:
    """Say in one short sentence what a serving gives most of, and what there is most of to keep down.

    Examples
    --------
    >>> day_sentence({"Fiber": 0.6, "Iron": 0.2, "Sodium": 0.22}, {"Sodium"})
    'One serving has more than half of the fiber for a day, and about a fifth of the most sodium.'
    """
    known = {name: share for name, share in now.items() if not math.isnan(share)}
    enough = max((name for name in known if name not in limit), key=lambda name: known[name], default=None)
    less = max((name for name in known if name in limit), key=lambda name: known[name], default=None)
    parts = []
    if enough:
        parts.append(f"{_of_day(known[enough])} of the {_low(enough)} for a day")
    if less:
        parts.append(f"{_of_day(known[less])} of the most {_low(less)}{'' if parts else ' for a day'}")
    return f"One serving has {', and '.join(parts)}." if parts else "Nothing of it has a daily value."


def _of_day(share: float) -> str:
    return "more than all" if share >= 1.03 else part_words(share)


def _low(name: str) -> str:
    """Return a nutrient's name within a sentence; a vitamin keeps its letter.

    Examples
    --------
    >>> _low("Saturated fat"), _low("Vitamin A")
    ('saturated fat', 'vitamin A')
    """
    return name[:1].lower() + name[1:]

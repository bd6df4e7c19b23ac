"""What the charts say in words: at a bar, and as one sentence for those who cannot see them."""

import math
from collections.abc import Collection, Mapping, Sequence

from kit.texts import listing, number, percent, quantity

CORNERS = ("protein", "fat", "carbohydrate")
_REGION = "the region where all three ranges for adults hold"


def changed(now: str, written: str) -> str:
    """Return the words at a bar: the number now and, where it reads differently, the number as written.

    Examples
    --------
    >>> changed("9 g", "8 g"), changed("9 g", "9 g")
    ('9 g, was 8 g', '9 g')
    """
    return now if now == written else f"{now}, was {written}"


def day_words(now: float, written: float, at_least: bool) -> str:
    """Return the words at a bar of the share-of-the-day chart; shares in fractions of the daily value.

    Examples
    --------
    >>> day_words(0.5, 0.4, at_least=True), day_words(float("nan"), float("nan"), at_least=True)
    ('at least 50 %, was 40 %', 'unknown')
    """
    words = changed(percent(now), percent(written))
    return f"at least {words}" if at_least and not math.isnan(now) else words


def say_energy_shares(now: Mapping[str, float], ranges: Mapping[str, tuple[float, float]]) -> str:
    """Say what the energy-shares chart shows.

    Examples
    --------
    >>> say_energy_shares({"protein": 0.2, "fat": 0.4}, {"protein": (0.1, 0.35), "fat": (0.2, 0.35)})
    'Shares of energy: protein 20 % (in the range for adults), fat 40 % (above the range for adults).'
    """

    def place(name: str, share: float) -> str:
        if name not in ranges or math.isnan(share):
            return ""
        low, high = ranges[name]
        return f" ({'below' if share < low else 'above' if share > high else 'in'} the range for adults)"

    return f"Shares of energy: {', '.join(f'{name} {percent(now[name])}{place(name, now[name])}' for name in now)}."


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

"""Amounts and shares of a nutrient the way they are said in a sentence."""

from math import isnan

from kit.food.nutrients import nutrient
from kit.meal.certainty import Range, round_step, said_number, spoken
from kit.rules.naming import thing_said
from kit.texts import UNKNOWN, counted, number

# Shares that people say as a fraction: common practice.
FRACTIONS = {
    1 / 10: "a tenth",
    1 / 5: "a fifth",
    1 / 4: "a quarter",
    1 / 3: "a third",
    2 / 5: "two fifths",
    1 / 2: "half",
    3 / 5: "three fifths",
    2 / 3: "two thirds",
    3 / 4: "three quarters",
}
_NEAR = 0.06  # of a fraction, beyond which the percentage is said instead
_ABOUT_ALL = 1.25  # of a day, up to which "about all" is said where the range reaches down to it
_HARDLY = 0.01  # of a day, below which "hardly any" is said
HARDLY_ANY = "hardly any"


def amount_words(name: str, of: Range, at_least: bool = False) -> str:
    """Return an amount of a nutrient: "about 425 calories", "about 18 grams of protein", "hardly any sodium".

    Examples
    --------
    >>> amount_words("protein", Range(18.2, 16.8, 19.6)), amount_words("sodium", Range(0.4, 0, 1))
    ('about 18 grams of protein', 'hardly any sodium')
    """
    return words_of(quantity_words(name, of, at_least), thing_said(name))


def words_of(quantity: str, thing: str) -> str:
    """Return a spoken quantity with what it is of; calories name themselves.

    Examples
    --------
    >>> words_of("about 2 grams", "salt"), words_of("hardly any", "salt"), words_of("about 425 calories", "calories")
    ('about 2 grams of salt', 'hardly any salt', 'about 425 calories')
    """
    if quantity == UNKNOWN:
        return f"an unknown amount of {thing}"
    if quantity == HARDLY_ANY:
        return f"{HARDLY_ANY} {thing}"
    return quantity if thing == thing_said("energy") else f"{quantity} of {thing}"


def quantity_words(name: str, of: Range, at_least: bool = False) -> str:
    """Return an amount of a nutrient without its name: "about 18 grams"; calories name themselves.

    Examples
    --------
    >>> quantity_words("protein", Range(18.2, 16.8, 19.6))
    'about 18 grams'
    """
    about = nutrient(name)
    return spoken(of.value, of.low, of.high, about.unit, about.decimals, at_least)


def range_words(name: str, of: Range) -> str:
    """Return the ends of a range: "17 to 19.5 grams of protein".

    Examples
    --------
    >>> range_words("protein", Range(18.2, 16.8, 19.6)), range_words("energy", Range(431, 401, 461))
    ('17 to 19.5 grams of protein', '400 to 460 calories')
    """
    if isnan(of.value) or of.low <= 0 or of.half_width <= 0:
        return amount_words(name, of)
    step = round_step(of.half_width / 2)
    low, high = (round(end / step) * step for end in (of.low, of.high))
    top = amount_words(name, Range(high, high, high)).removeprefix("about ")
    return f"{number(low, nutrient(name).decimals)} to {top}"


def share_words(of: Range, whole: str, at_least: bool = False) -> str:
    """Return a share of something: "about a fifth of a day's sodium", "about 28 percent of the energy".

    Examples
    --------
    >>> share_words(Range(0.196, 0.15, 0.24), "a day's sodium"), share_words(Range(0.29, 0.26, 0.32), "the energy")
    ("about a fifth of a day's sodium", 'about 29 percent of the energy')
    """
    about = "at least" if at_least else "about"
    if isnan(of.value):
        return f"an unknown part of {whole}"
    if of.low <= 0 or of.value < _HARDLY:
        return f"{HARDLY_ANY} of {whole}"
    if of.value >= 1.75:
        times = said_number(of.value, max(of.half_width, 0.5))
        times = int(of.value) if at_least and times > of.value else times
        if times == 1:
            return f"more than {whole}"
        return f"{about} {'twice' if times == 2 else f'{counted(times, 1)} times'} {whole}"
    if 0.97 < of.value <= _ABOUT_ALL and of.low <= 1 <= of.high and not at_least:
        return f"about all of {whole}"
    near = min(FRACTIONS, key=lambda fraction: abs(fraction - of.value))
    if abs(near - of.value) <= min(_NEAR * near, of.half_width) and (near <= of.value or not at_least):
        return f"{about} {FRACTIONS[near]} of {whole}"
    percent = said_number(100 * of.value, max(1.0, 100 * of.half_width))
    percent = int(100 * of.value) if at_least and percent > 100 * of.value else percent
    return f"{about} {number(percent)} percent of {whole}"


def fraction_words(value: float) -> str:
    """Return a share the way it is said: "about a third", "about 28 percent"."""
    words = share_words(Range(value, 0.93 * value, min(1.0, 1.07 * value) if value <= 1 else 1.07 * value), "it")
    return words.removesuffix(" of it").removesuffix(" it")

"""A claim: what is claimed of what, and the words that said it; and the finding on it."""

from dataclasses import dataclass

from kit.speech.words.foods_said import FoodWord

SERVING, WHOLE, WEIGHT, FOOD, UNKNOWN = "serving", "whole", "weight", "food", "unknown"


@dataclass(frozen=True, slots=True)
class About:
    """What a claim is about.

    Attributes
    ----------
    kind : str
        ``"serving"``: `count` servings; ``"whole"``: `count` of the whole recipe; ``"weight"``: `count` grams of the
        dish; ``"food"``: the foods, `count` of `measure` where one was said; ``"unknown"``: something the dish is not.
    count : float
        How many; half a plate is 0.5.
    foods : tuple of FoodWord
        The foods, several when they are taken together.
    measure : str
        ``"cup"``, ``"g"``, ``"piece"`` ...; empty when none was said.
    words : str
        What was said, for a thing that is not known.
    said_inside : bool
        Whether it was said to be in the dish ("the beans in it").
    or_dish : bool
        Whether "it" may as well be the dish; the claim is then told only where both come out the same.
    """

    kind: str = SERVING
    count: float = 1.0
    foods: tuple[FoodWord, ...] = ()
    measure: str = ""
    words: str = ""
    said_inside: bool = False
    or_dish: bool = False


THE_DISH = About()


@dataclass(frozen=True, slots=True)
class Claim:
    """One claim of a sentence; every family has its own kind.

    Attributes
    ----------
    places : tuple of int
        The tokens of the sentence that said it.
    about : About
        What it is about.
    negated : bool
        Whether the sentence denies it.
    """

    places: tuple[int, ...]
    about: About = THE_DISH
    negated: bool = False


@dataclass(frozen=True, slots=True)
class Choice:
    """A word that could mean several foods or measures, and what it can be pinned to: key and name."""

    word: str
    options: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Edit:
    """Other words for a piece of the sentence, by which its claim would hold."""

    start: int
    end: int
    words: str


@dataclass(frozen=True, slots=True)
class Finding:
    """The verdict on a claim: why, and what may be said instead.

    Attributes
    ----------
    verdict, because : str
        One of the four verdicts; one plain sentence with the numbers and the rule.
    edit : Edit or None
        A change of her own words that makes it hold.
    sentences : tuple of str
        Whole sentences that would hold in its place, the nearest first.
    choices : tuple of Choice
        Words to be pinned before it can be told.
    """

    verdict: str
    because: str
    edit: Edit | None = None
    sentences: tuple[str, ...] = ()
    choices: tuple[Choice, ...] = ()

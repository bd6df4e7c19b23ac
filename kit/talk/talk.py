"""The talk file: a recipe, the points that will be said, the plan on the day, and the questions to expect."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from kit.lines.reading import Reading
from kit.meal.recipe import Recipe


@dataclass(frozen=True, slots=True)
class Point:
    """One sentence that will be spoken.

    Attributes
    ----------
    say, part : str
        The sentence, and the part of the talk it belongs to.
    source : str
        On whose word she says what the kit cannot judge: "my own notes".
    pins : mapping of str to str
        Which food or measure a word of the sentence stands for, where it could be several.
    private : bool
        Whether it is for her alone and never sent.
    """

    say: str
    part: str = ""
    source: str = ""
    pins: Mapping[str, str] = field(default_factory=dict)
    private: bool = False


@dataclass(frozen=True, slots=True)
class Pot:
    """Something that cooks in the background.

    Attributes
    ----------
    name : str
        What the plan calls it: "barley", "tray".
    minutes : float
        How long it cooks. [min]
    before : float
        How long before the first word it is started; 0 for at its step. [min]
    oven : float, optional
        The temperature of the oven it stands in; None on the stove or the counter. [degrees Fahrenheit]
    at_start : bool
        Whether it goes on at the start of its step, and not at the end.
    """

    name: str
    minutes: float
    before: float = 0.0
    oven: float | None = None
    at_start: bool = False


@dataclass(frozen=True, slots=True)
class PlanStep:
    """One step of the plan: minutes or words of talk, minutes of hands-on work, pots started, pots needed.

    A private one is for her alone and never sent.
    """

    title: str
    part: str = ""
    say: str = ""
    say_minutes: float | None = None
    hands_minutes: float = 0.0
    pots: tuple[Pot, ...] = ()
    needs: tuple[str, ...] = ()
    private: bool = False


@dataclass(frozen=True, slots=True)
class Question:
    """What the audience is likely to ask, what to try on screen, and a prepared answer.

    Attributes
    ----------
    asks, answer : str
        The question, and what she will say.
    try_ : str
        What she would type on screen: "leave out the feta"; empty when there is nothing to try.
    private : bool
        Whether it is for her alone and never sent.
    """

    asks: str
    try_: str = ""
    answer: str = ""
    private: bool = False


@dataclass(frozen=True, eq=False)
class Talk:
    """A talk, ready to be shown.

    Attributes
    ----------
    name : str
        The file's name without its ending.
    recipe : Recipe
        What is cooked.
    readings : tuple of Reading
        How each ingredient line was read.
    points, steps, questions : tuple
        What will be said, the plan on the day, what may be asked.
    series, keeps_days, minutes, words_per_minute, rules, measures
        As the talk file gives them; `rules` is the set of regulated wordings, ``"us"`` or ``"eu"``.
    notes : str
        Her own notes, which are never sent.
    span : tuple of float, optional
        The least and most servings, where a pasted text gives a span: "Serves 6 to 8".
    passed_over : tuple of str
        Lines among the ingredients that name no food: "8 skewers".
    faults : tuple of str
        What is wrong with the file, a sentence each that begins with the place; the rest of the talk can be used.
    """

    name: str
    recipe: Recipe
    readings: tuple[Reading, ...] = ()
    points: tuple[Point, ...] = ()
    steps: tuple[PlanStep, ...] = ()
    questions: tuple[Question, ...] = ()
    series: str = ""
    keeps_days: float | None = None
    minutes: float | None = None
    words_per_minute: float = 140.0
    rules: str = "us"
    measures: str = "us"
    notes: str = ""
    path: Path | None = None
    span: tuple[float, float] | None = None
    passed_over: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()

    @property
    def title(self) -> str:
        """The recipe's title."""
        return self.recipe.title

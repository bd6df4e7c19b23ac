"""One ingredient line as it was read: a food and grams, the rule used, the range, and what has to be asked."""

from dataclasses import dataclass, replace

from kit.food.composition import Food
from kit.food.finding import Match
from kit.lines.weighing import Z90, spread


@dataclass(frozen=True, slots=True)
class Reading:
    """How one ingredient line was read.

    Attributes
    ----------
    line : str
        The line as written.
    food : Food or None
        None when it has to be asked.
    grams, low, high : float or None
        Edible grams of the food as the table describes it, and their 90 % range. [g]
    relative_sd : float
        Relative standard deviation of the grams.
    how : str
        The rule by which the line was read, with its source.
    problem : str
        What has to be asked, in one sentence; empty when the line is clear.
    choices : tuple of Match
        Foods to pick from, where there is a problem.
    swaps : tuple of str
        Foods that the line offers by "or".
    count, noun, noun_grams, cut : float, str, float, str
        The amount in its own measure, the grams of one of that, and the cut in which it is measured.
    part : str
        The part of the recipe the line stands in.
    container : str
        What the amount is sold in, where it is counted so: "can" of "can (15 oz)"; else empty.
    """

    line: str
    food: Food | None = None
    grams: float | None = None
    low: float | None = None
    high: float | None = None
    relative_sd: float = 0.0
    how: str = ""
    problem: str = ""
    choices: tuple[Match, ...] = ()
    swaps: tuple[str, ...] = ()
    count: float = 0.0
    noun: str = "g"
    noun_grams: float = 1.0
    cut: str = ""
    part: str = ""
    container: str = ""

    @property
    def key(self) -> str:
        """The key of the food; empty when it has to be asked."""
        return self.food.key if self.food else ""

    @property
    def food_name(self) -> str:
        """The name of the food; empty when it has to be asked."""
        return self.food.name if self.food else ""

    @property
    def is_open(self) -> bool:
        """Whether the food or the amount still has to be asked."""
        return self.food is None or self.grams is None

    def weighed(self, grams: float, how: str) -> "Reading":
        """Return the reading with grams that were weighed in the place of what the line says; `how` tells whose. [g]"""
        sd = spread("weighed")
        if self.count and grams:  # still so many cups, each of other grams
            noun, count, each, container = self.noun, self.count, grams / self.count, self.container
        else:
            noun, count, each, container = "g", grams, 1.0, ""
        return replace(
            self,
            grams=float(grams),
            low=grams * (1 - Z90 * sd),
            high=grams * (1 + Z90 * sd),
            relative_sd=sd,
            how=how,
            problem="",
            count=count,
            noun=noun,
            noun_grams=each,
            container=container,
        )

    def as_json(self) -> dict[str, object]:
        """Return the reading as the command line prints it."""
        return {
            "line": self.line,
            "food": self.key or None,
            "food_name": self.food_name or None,
            "grams": self.grams,
            "low": self.low,
            "high": self.high,
            "how": self.how,
            "problem": self.problem or None,
            "choices": [match.food for match in self.choices],
            "swaps": list(self.swaps),
        }

"""What comes back when something that will be said is checked: a verdict, why, and what can be said instead."""

from dataclasses import dataclass

from kit.talk.talk import Point


@dataclass(frozen=True, slots=True)
class Finding:
    """A verdict on what a sentence means: why, and a point that would hold in its place."""

    verdict: str
    because: str
    instead: Point | None = None


@dataclass(frozen=True, slots=True)
class Verdict:
    """The verdict on one point of a talk.

    Attributes
    ----------
    say : str
        The sentence, its placeholders filled.
    verdict : str
        One of `VERDICTS`.
    because : str
        One plain sentence with the numbers and where the rule is from; a question when the kit cannot tell.
    instead : str
        A sentence that would hold, when this one is off; else empty.
    point : Point
        The point as the talk file gives it.
    instead_point : Point, optional
        `instead` as it can be written into a talk file, with what it means.
    """

    say: str
    verdict: str
    because: str
    instead: str = ""
    point: Point | None = None
    instead_point: Point | None = None

    def as_json(self) -> dict[str, str]:
        """Return the verdict as the command line prints it."""
        return {"say": self.say, "verdict": self.verdict, "because": self.because, "instead": self.instead}

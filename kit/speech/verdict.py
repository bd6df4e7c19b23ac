"""What comes back when something that will be said is checked: a verdict, why, and what can be said instead."""

from collections.abc import Mapping
from dataclasses import dataclass

from kit.speech.claim import Choice
from kit.talk.talk import Point

POINT, STEP, ANSWER = "point", "step", "answer"


@dataclass(frozen=True, slots=True)
class ClaimFinding:
    """The finding on one claim of a sentence.

    Attributes
    ----------
    words : str
        The words that said it.
    family : str
        What kind of claim it is.
    about : str
        What it is about: "a serving", "the lentils".
    verdict, because : str
        The finding.
    spans : tuple of (int, int)
        Where its words stand in the sentence.
    """

    words: str
    family: str
    about: str
    verdict: str
    because: str
    spans: tuple[tuple[int, int], ...] = ()

    def as_json(self) -> dict[str, str]:
        """Return the finding as the command line prints it."""
        return {
            "words": self.words,
            "family": self.family,
            "about": self.about,
            "verdict": self.verdict,
            "because": self.because,
        }


@dataclass(frozen=True, slots=True)
class Verdict:
    """The verdict on one thing that is said.

    Attributes
    ----------
    say : str
        The words, their placeholders filled.
    verdict : str
        One of `VERDICTS`.
    because : str
        One plain sentence with the numbers and where the rule is from; a question when the kit cannot tell.
    instead : str
        Words that would hold, when these are off; else empty.
    where : str
        ``"point"``, ``"step"`` or ``"answer"``.
    claims : tuple of ClaimFinding
        What was found of each claim.
    choices : tuple of Choice
        Words that could mean several foods, to be pinned.
    point : Point
        The point as the talk file gives it; of a step or an answer, its words as a point.
    place : int
        Which point, step or question it is, from 0.
    """

    say: str
    verdict: str
    because: str
    instead: str = ""
    where: str = POINT
    claims: tuple[ClaimFinding, ...] = ()
    choices: tuple[Choice, ...] = ()
    point: Point | None = None
    place: int = 0

    @property
    def on_her_word(self) -> bool:
        """Whether it cannot be told here and she vouches for it by naming her source."""
        return self.verdict == "cannot tell" and self.point is not None and bool(self.point.source)

    def as_json(self) -> Mapping[str, object]:
        """Return the verdict as the command line prints it."""
        return {
            "say": self.say,
            "verdict": self.verdict,
            "because": self.because,
            "instead": self.instead,
            "where": self.where,
            "source": self.point.source if self.point else "",
            "claims": [claim.as_json() for claim in self.claims],
            "choices": {choice.word: [key for key, _ in choice.options] for choice in self.choices},
        }

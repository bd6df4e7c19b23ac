"""Verdicts while she writes: a sentence is checked again only when it, or what it is about, has changed."""

from collections.abc import Hashable, Sequence
from dataclasses import replace

from kit.meal.nutrition import Nutrition
from kit.speech.points import check_talk
from kit.speech.verdict import ANSWER, POINT, STEP, Verdict
from kit.talk.desk import Desk
from kit.talk.talk import PlanStep, Point, Question, Talk


class VerdictsKept:
    """The verdicts on all that is said in the talk on a desk.

    Examples
    --------
    >>> from kit.meal.nutrition import nutrition
    >>> from kit.talk.desk import empty_desk
    >>> desk = empty_desk(text="Oats" + chr(10) + "1 cup rolled oats").with_text("script", "It is vegan.")
    >>> [verdict.verdict for verdict in VerdictsKept().of(desk, nutrition(desk.reading.talk.recipe))]
    ['holds']
    """

    def __init__(self) -> None:
        self._about: Hashable = None
        self._kept: dict[Hashable, Verdict] = {}

    def of(self, desk: Desk, numbers: Nutrition | None) -> tuple[Verdict, ...]:
        """Return the verdicts on points, steps and answers, in their order; none where there are no numbers yet."""
        if numbers is None:
            return ()
        about = (desk.recipe, desk.settled, repr(sorted(desk.fields.items())), desk.text, id(desk.original.known))
        if about != self._about:
            self._about, self._kept = about, {}
        talk = desk.reading.talk
        self._check(talk, numbers)
        points = ((POINT, at, _key(point)) for at, point in enumerate(talk.points))
        steps = ((STEP, at, _key(step)) for at, step in enumerate(talk.steps))
        asked = ((ANSWER, at, _key(question)) for at, question in enumerate(talk.questions))
        return tuple(
            replace(self._kept[key], place=at)
            for where, at, key in (*points, *steps, *asked)
            if key in self._kept and self._kept[key].where == where
        )

    def _check(self, talk: Talk, numbers: Nutrition) -> None:
        """Check what is new."""
        points = tuple(each for each in talk.points if _key(each) not in self._kept)
        steps = tuple(each for each in talk.steps if _key(each) not in self._kept)
        questions = tuple(each for each in talk.questions if _key(each) not in self._kept)
        new = replace(talk, points=points, steps=steps, questions=questions)
        said: dict[str, Sequence[Point | PlanStep | Question]] = {POINT: points, STEP: steps, ANSWER: questions}
        for verdict in check_talk(new, numbers):
            self._kept[_key(said[verdict.where][verdict.place])] = verdict


def _key(said: Point | PlanStep | Question) -> Hashable:
    """Return all that a verdict depends on, but the dish."""
    if isinstance(said, Point):
        return POINT, said.say, said.part, said.source, tuple(sorted(said.pins.items()))
    if isinstance(said, PlanStep):
        return STEP, said.say, said.part
    return ANSWER, said.answer

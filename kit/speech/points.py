"""Everything that is said in a talk, checked: its points, the words of its steps, its prepared answers.

Placeholders in what is said
----------------------------
A pair of braces holds one of these and nothing else; it is filled in the form that can be said aloud, and then read
like any other words. NUTRIENT is an id of ``data/nutrients.csv``. INGREDIENT is a food of the recipe: its key
("cheese-feta"), or words that fit one ingredient only ("feta"). FOOD is any food's key.

===========================================  ==================================================================
``{energy}``  ``{protein}``  (a NUTRIENT)    what a serving holds: "about 425 calories", "about 18 grams of protein"
``{NUTRIENT.share_of_day}``                  "about a fifth of a day's sodium", "about 30 percent of a day's iron"
``{NUTRIENT.share_of_energy}``               "about 18 percent of the energy" (protein, fat, carbohydrate)
``{NUTRIENT.range}``                         "16 to 20 grams of protein"
``{NUTRIENT from INGREDIENT}``               what it brings to a serving: "about 11 grams of protein"
``{share of NUTRIENT from INGREDIENT}``      "about two thirds of the protein"
``{NUTRIENT in AMOUNT MEASURE of FOOD}``     ``{protein in one cup of lentils-boiled}``, ``{iron in 100 g of egg}``
``{grams of INGREDIENT}``                    in a serving: "about 45 grams"
``{amount of INGREDIENT}``                   in the whole recipe: "1 1/2 cups"
``{servings}``  ``{serving}``                "6", "one lidded box" (the talk's `serving_is`)
``{serving grams}``                          "about 350 grams", as the ingredients are listed
``{keeps}``                                  "3 days" (the talk's `keeps_days`), otherwise "3 to 4 days"
===========================================  ==================================================================

Verdicts
--------
"holds": every claim in it is true by the numbers and the published rules. "off": at least one is false. "cannot tell":
something in it cannot be judged, or was not understood; the reason asks in its own words. "nothing to check": it says
nothing about nutrients, allergens, kinds, keeping or safety. What cannot be told stays so when she names her source; it
is then listed as hers. An answer is judged on the dish as its `try` makes it, and filled from that. A placeholder that
cannot be looked up makes that one entry "cannot tell", and hides no other.
"""

from collections.abc import Iterator
from dataclasses import replace

from kit.errors import KitError
from kit.meal.changes import read_change
from kit.meal.nutrition import Nutrition, nutrition
from kit.meal.steps import applied
from kit.rules.verdicts import CANNOT_TELL, HOLDS
from kit.speech.checking import Tried, check_sentence
from kit.speech.verdict import ANSWER, POINT, STEP, Verdict
from kit.talk.dish import Dish
from kit.talk.placeholders import faults, fill, filled, pieces
from kit.talk.talk import Point, Question, Talk

NO_SENTENCES = "the talk has no sentences yet: write what you will say, one sentence a line, under Script"


def check_talk(talk: Talk, numbers: Nutrition | None = None) -> tuple[Verdict, ...]:
    """Check everything that is said in a talk: its points first, then the words of its steps, then its answers.

    Parameters
    ----------
    talk : Talk
        The talk.
    numbers : Nutrition, optional
        The dish as it is now, when it has been changed since the talk was written.
    """
    dish = Dish(talk, nutrition(talk.recipe) if numbers is None else numbers)
    found = [_check(where, place, point, dish) for where, place, point in _said(talk)]
    answers = ((place, question) for place, question in enumerate(talk.questions) if question.answer.strip())
    return (*found, *(_answer(place, question, dish) for place, question in answers))


def check_points(talk: Talk, numbers: Nutrition | None = None) -> tuple[Verdict, ...]:
    """Check the points of a talk, in their order; see `check_talk` for all that is said."""
    dish = Dish(talk, nutrition(talk.recipe) if numbers is None else numbers)
    return tuple(_check(POINT, place, point, dish) for place, point in enumerate(talk.points))


def check_point(point: Point, dish: Dish) -> Verdict:
    """Check one sentence against a dish."""
    return _check(POINT, 0, point, dish)


def _said(talk: Talk) -> Iterator[tuple[str, int, Point]]:
    yield from ((POINT, place, point) for place, point in enumerate(talk.points))
    yield from ((STEP, place, Point(step.say, step.part)) for place, step in enumerate(talk.steps) if step.say.strip())


def _answer(place: int, question: Question, dish: Dish) -> Verdict:
    """Check an answer about the dish as its question tries it; what a change brings, about the dish it is made of."""
    point = Point(question.answer)
    if not question.try_:
        return _check(ANSWER, place, point, dish)
    try:
        steps = read_change(question.try_, dish.numbers.recipe)
        tried = Dish(dish.talk, nutrition(applied(dish.numbers.recipe, steps)))
    except KitError as fault:
        found = _check(ANSWER, place, point, dish)
        doubt = f'what "{question.try_}" makes of the dish was not understood: {fault}.'
        return replace(found, verdict=CANNOT_TELL, because=doubt) if found.verdict == HOLDS else found
    return _check(ANSWER, place, point, tried, Tried(question.try_, dish))


def _check(where: str, place: int, point: Point, dish: Dish, tried: Tried | None = None) -> Verdict:
    wrong = list(faults(point.say, dish))
    if wrong:
        return Verdict(point.say, CANNOT_TELL, f"{'; '.join(wrong)}.", where=where, point=point, place=place)
    try:
        say = fill(point.say, dish)
    except KitError as fault:
        return Verdict(point.say, CANNOT_TELL, f"{fault}.", where=where, point=point, place=place)
    checked = check_sentence(say, dish, dict(point.pins), tried=tried)
    return Verdict(
        say=say,
        verdict=checked.verdict,
        because=checked.because,
        instead=checked.instead,
        where=where,
        claims=checked.claims,
        choices=checked.choices,
        point=point,
        place=place,
    )


def instead_as_written(verdict: Verdict, dish: Dish) -> str:
    """Return the words that hold instead as they go into the talk: placeholders stay where they say the same.

    Examples
    --------
    >>> from kit.talk.library import read_talk
    >>> talk = read_talk("barley_squash_box")
    >>> dish, point = Dish(talk, nutrition(talk.recipe)), Point("A box has {energy} and no fat.")
    >>> instead_as_written(Verdict("", "off", "", "A box has about 500 calories, some from fat.", point=point), dish)
    'A box has {energy}, some from fat.'
    """
    say = verdict.instead
    if verdict.point is None or not say or verdict.where == ANSWER:  # an answer is about the dish as it would be
        return say
    try:
        for piece in pieces(verdict.point.say):
            text = filled(piece, dish) if piece.in_braces else ""
            if text and say.count(text) == 1:
                say = say.replace(text, f"{{{piece.text}}}")
        return say if fill(say, dish) == verdict.instead else verdict.instead
    except KitError:
        return verdict.instead

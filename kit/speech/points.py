"""One spoken sentence and its verdict.

A point of a talk file is a sentence that will be said, `say`, and optionally what it claims, `means`. Both are looked
up and never evaluated: a talk file can run no code.

Placeholders in `say`
---------------------
A pair of braces holds one of these and nothing else; it is filled in the form that can be said aloud. NUTRIENT is an id
of ``data/nutrients.csv``. INGREDIENT is a food of the recipe: its key ("cheese-feta"), or words that fit one ingredient
only ("feta"). FOOD is any food's key.

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

Forms of `means`
----------------
Exactly one of these; the keys in brackets may be left out.

- ``{ number = 425, nutrient = "energy" [, unit, food, per] }``: a spoken number. It holds inside the 90 % range, or
  when it is the value rounded to the digits spoken. `unit` is the nutrient's own by default; "% of day", "% of energy"
  (protein, fat, carbohydrate) and, with `food`, "% of dish" are the others. With `food`: what that INGREDIENT, or a
  list of them, brings to a serving; with `food` and `per` ("cup", "tbsp", "piece" ... or "100 g"): what that much of
  any FOOD holds. With ``per = "100 g"`` alone: 100 g of the dish as eaten.
- ``{ number = 45, grams_of = "lentils-dry" }``: grams of an INGREDIENT in a serving.
- ``{ servings = 6 }``: how many servings the recipe makes.
- ``{ wording = "high", nutrient = "fiber" [, food, than] }``: a regulated wording of ``data/wordings.csv`` (high, good
  source, more, low, very low, free, reduced, light, lean ...), or a way it is said ("rich in"). `food` is any FOOD;
  without it the dish is judged. "reduced", "more" and "light" need `than`: a FOOD, or for the dish a change that makes
  the other dish, ``{ leave_out = INGREDIENT }`` or ``{ swap = INGREDIENT, for = FOOD }``.
- ``{ times = 3, nutrient = "protein", food = "lentils-boiled", than = "rice-white-boiled" [, per] }``: "about three
  times"; it holds from 0.85 to 1.15 times the number. `per` is "cup", "100 g", "100 kcal" or "serving" (of a food: the
  amount usually eaten, of the dish: a serving); left out, it has to hold on all of them. `food` or `than` may be
  "dish".
- ``{ more_than = "rice-white-boiled", nutrient = "protein", food = "lentils-boiled" [, per] }``, and `less_than`.
- ``{ main_source_of = "protein", food = INGREDIENT }``: the largest contributor; ``{ most_of = ... }``: over half;
  ``{ a_little_of = ... }``: 5 to 20 %. `food` may be a list of ingredients, which then count together.
- ``{ kind = "plant-based" [, food, but] }``: "plant-based" ("vegan"), "vegetarian" or "whole grain" (every grain in
  it); `but` is an INGREDIENT, or a list, that the sentence excepts.
- ``{ free_from = "milk" [, food] }``, ``{ contains = "milk" [, food] }``: an allergen of ``data/allergens.csv``, or a
  list.
- ``{ keeps_days = 3 }``: in the refrigerator.
- ``{ leave_out = "feta", nutrient = "sodium", saves = 90 }`` (or `adds`): the effect of a change on a serving; it
  holds inside the range of the difference. ``{ swap = INGREDIENT, for = FOOD, nutrient = ..., saves = ... }``: `swap`
  goes, `for` comes.
- ``{ balance = "all" }``: the shares of energy lie inside the acceptable ranges for adults;
  ``{ balance = ["protein", "fat"] }``: those do; ``{ balance = 2 }``: exactly two of the three do.

Verdicts
--------
"holds", "off", "cannot tell" and "nothing to check".

- A sentence without `means` whose numbers are all placeholders holds, since they are filled from the recipe.
- One that carries a word with a nutritional meaning of its own ("12 grams", "low in", "twice", "vegan" ...) gets
  "cannot tell", and `because` asks what is meant. "Nothing to check" is a sentence with neither.
- Words of health ("lowers cholesterol", "healthy") get "cannot tell" whatever is meant beside them.
- A sentence that says another number or wording than its `means`, or a second one beside it, gets "cannot tell" and
  the question which is meant. One about a food that a rule wants named, and that does not name it, is off.
"""

from collections.abc import Iterator

from kit.errors import TalkFileError
from kit.food.composition import nutrient, nutrients
from kit.meal.nutrition import Nutrition, nutrition
from kit.rules.naming import said
from kit.rules.verdicts import CANNOT_TELL, HOLDS, NOTHING_TO_CHECK
from kit.speech.matching import asks_for, disagreement
from kit.speech.meanings import FORMS, read_meaning
from kit.speech.scanning import health_words, telling_words
from kit.speech.verdict import Finding, Verdict
from kit.talk.dish import Dish
from kit.talk.placeholders import faults, fill, filled, pieces
from kit.talk.rehearsal import plan_faults
from kit.talk.talk import Point, Talk
from kit.texts import listing, number

_HEALTH = "a health claim, which needs its own authorisation"
_SHOWN = 40  # characters of a sentence that name it in a message


def validate(talk: Talk) -> None:
    """Check that every placeholder and meaning of a talk, and every pot, can be looked up.

    Raises
    ------
    TalkFileError
        With every fault: the file, the point, what is wrong, and the nearest right name.
    """
    _validate(talk, Dish(talk, nutrition(talk.recipe)))


def _validate(talk: Talk, dish: Dish) -> None:
    found = [fault for place, point in enumerate(talk.points, 1) for fault in _faults(place, point, dish)]
    found += plan_faults(talk)
    if found:
        raise TalkFileError(talk.path.name if talk.path else talk.name, found)


def _faults(place: int, point: Point, dish: Dish) -> Iterator[str]:
    words = point.say[:_SHOWN] + ("..." if len(point.say) > _SHOWN else "")
    wrong = [*faults(point.say, dish)]
    if point.means is not None:
        wrong += read_meaning(point.means, dish)[2]
    yield from (f'point {place} "{words}": {fault}' for fault in wrong)


def check_points(talk: Talk, numbers: Nutrition | None = None) -> tuple[Verdict, ...]:
    """Check every sentence of a talk.

    Parameters
    ----------
    talk : Talk
        The talk; its points are checked in their order.
    numbers : Nutrition, optional
        The dish as it is now, when it has been changed since the talk was written.

    Returns
    -------
    tuple of Verdict
        One for each point.

    Raises
    ------
    TalkFileError
        If a placeholder or a meaning cannot be looked up; see `validate`.
    """
    written = Dish(talk, nutrition(talk.recipe))
    _validate(talk, written)
    dish = written if numbers is None else Dish(talk, numbers)
    return tuple(_check(point, dish) for point in talk.points)


def _check(point: Point, dish: Dish) -> Verdict:
    say = fill(point.say, dish)
    finding = _finding(point, dish)
    instead = finding.instead
    return Verdict(
        say=say,
        verdict=finding.verdict,
        because=finding.because[:1].upper() + finding.because[1:] + ("" if finding.because.endswith("?") else "."),
        instead=fill(instead.say, dish) if instead else "",
        point=point,
        instead_point=instead,
    )


def _finding(point: Point, dish: Dish) -> Finding:
    health = health_words(point.say)
    if health:
        return Finding(CANNOT_TELL, _health_reason(*health))
    if point.means is not None:
        lead = next(key for key in FORMS if key in point.means)
        _, values, _ = read_meaning(point.means, dish)
        asked = disagreement(point.say, lead, values, dish.talk.rules)
        return Finding(CANNOT_TELL, asked) if asked else FORMS[lead].check(dish, values, point.say)
    told = telling_words(point.say, dish.talk.rules)
    if told:
        return Finding(CANNOT_TELL, asks_for(told[0]))
    return _filled(point, dish)


def _health_reason(words: str, kind: str, section: str) -> str:
    if kind == "regulated word":
        return f'"{words}" is a regulated word with conditions of its own ({section}), which the kit does not check'
    return f'{_HEALTH}: "{words}" ({section}); if nothing about health is meant, use another word'


def _filled(point: Point, dish: Dish) -> Finding:
    braces = [piece for piece in pieces(point.say) if piece.in_braces]
    placeholders = [piece.text for piece in braces]
    if not placeholders:
        return Finding(NOTHING_TO_CHECK, "it carries no number and no wording with a meaning of its own")
    unknown = [piece.text for piece in braces if "unknown" in filled(piece, dish)]
    if unknown:
        return Finding(CANNOT_TELL, f"the table has no value for {listing(unknown)}: where is it from?")
    names = dict.fromkeys(name for text in placeholders if (name := text.split(".")[0].split(" ")[0]) in nutrients())
    told = listing([_told(name, dish) for name in names])
    return Finding(
        HOLDS, f"its numbers are filled from the recipe{f': {told} a serving' if told else ''} ({dish.source})"
    )


def _told(name: str, dish: Dish) -> str:
    of, about = dish.range_of(name), nutrient(name)
    ends = f"{number(of.low, about.decimals)} to {number(of.high, about.decimals)}"
    return f"{said(name)} {number(of.value, about.decimals)} {about.unit} ({ends})"

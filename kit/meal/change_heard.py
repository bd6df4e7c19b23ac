"""Whether the steps of a what-if answer every telling word of its line; what none of them answers is asked back."""

import re
from collections.abc import Iterable, Sequence

from kit.errors import ChangeError
from kit.food.composition import Foods
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.spelling import english_words
from kit.meal.change_taken import ask_what_goes, ask_what_stays
from kit.meal.change_unclear import ask_if_unclear
from kit.meal.change_unsaid import ask_how_much, ask_whether
from kit.meal.ingredient_names import COOKED
from kit.meal.ingredient_words import state_meant, words_of, words_of_food
from kit.meal.recipe import Recipe
from kit.meal.steps import Add, Amount, LeaveOut, Servings, Step, Swap, applied

# Words that stand in names of foods too, but in a what-if say what is done, how much, or by whom it is asked.
_SAYS_HOW = frozenset(
    "all alternative another back box can cup cut dish double drop dry eat end extra good great half head hold home hot"
    " jar just keep large less make medium mix mixed more no not old one only other piece place pot quarter recipe"
    " second serving small splash stick stir sub substitute sweet third top total use whole out off up down go".split()
)
_NUMBER = re.compile(
    r"\d+(?:\.\d+)?%?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen|fifty|half|third|quarter"
    r"|double|twice|triple"
)
_DIET = frozenset("vegan vegetarian kosher halal keto paleo plant based homemade organic".split())
_STAYS = re.compile(  # what is named only to say that it stays
    r"\b(?:keep(?:ing)?|leav(?:e|ing)(?! (?:out|off|away)\b)|not|never)(?: in)?(?: the| my| any)? (?P<what>[a-z' -]+?)"
    r"(?=$|[,;.]|\b(?: in\b|and|but|then|instead)\b)"
)
_REASON = re.compile(r"\b(?:because(?: of)?|since|as (?:i|we|my|our)|so that|due to)\b.*?(?=$|[,;]| and | but )")
_A_MEASURE = re.compile(
    r"\b(?<!of )an? (?:\w+ )?(?:can|cup|jar|tin|bag|box|packet|package|bunch|tablespoon|teaspoon|pound)s? of\b"
)
_PART_OF_NONE = re.compile(r"^(?:half|a third|a quarter|\d+/\d+|\d+ ?%)(?: of)? (?:the|my|your) ")
_NONE_ADDED = re.compile(r"\b(?:no|without|not any)(?: any)? (?:added (?:salt|sugar)|(?:salt|sugar) added)\b")


def all_heard(line: str, text: str, recipe: Recipe, steps: Sequence[Step], table: Foods) -> tuple[Step, ...]:
    """Return the steps of a line, where they answer all that it says.

    Parameters
    ----------
    line : str
        The whole line, plain.
    text : str
        The same without politeness.
    recipe : Recipe
        As it was before.
    steps : sequence of Step
        What was read.
    table : Foods
        The foods at hand.

    Raises
    ------
    ChangeError
        If a word that tells of a food, a kind, a state or an amount is answered by none of the steps, if an animal's
        food would come for a plant's without being named, or if a swap without an amount changes the weight far.
    """
    told = _REASON.sub(" ", _STAYS.sub(lambda found: _unless_there(found, recipe), text))
    lost = _lost(told, recipe, steps, table)
    if lost:
        raise ChangeError(
            f'"{text}": "{" ".join(lost)}" would be lost, so nothing is changed; write one change after the other, '
            "each food as a recipe does"
        )
    ask_what_goes(told, recipe, steps, table)
    ask_what_stays(text, recipe, steps)
    if _NONE_ADDED.search(text) and any(_is_no_seasoning(step, recipe) for step in steps):
        raise ChangeError(f'"{text}" may be a kind of food, or leave something out; write which is meant')
    if any(
        isinstance(step, Swap | Add) and step.measured and _PART_OF_NONE.match(step.measured.line) for step in steps
    ):
        raise ChangeError(f'"{text}" takes a part of what is not in the recipe; write how much comes, such as "1 cup"')
    if _comes_back(steps):
        raise ChangeError(f'"{text}" changes one thing twice; write one of the two')
    ask_if_unclear(line)
    now = recipe
    for place, step in enumerate(steps):
        if isinstance(step, Swap):
            ask_whether(step, text, now, behind=place > 0)
            ask_how_much(step, now)
        now = applied(now, [step])
    return tuple(steps)


def _comes_back(steps: Sequence[Step]) -> bool:
    """Whether what one step leaves out is changed by another, "no sweet potatoes, add 1 cup potatoes", or twice."""
    gone = {step.row.at for step in steps if isinstance(step, LeaveOut)}
    changed = [step.row.at for step in steps if isinstance(step, Amount | Swap)]
    amounts = [step.row.at for step in steps if isinstance(step, Amount)]
    often = sum(isinstance(step, Servings) for step in steps)  # "for 4 adults and 3 kids"
    return any(at in gone for at in changed) or len(amounts) > len(set(amounts)) or often > 1


def _is_no_seasoning(step: Step, recipe: Recipe) -> bool:
    return isinstance(step, LeaveOut) and not {"salt", "sugar"} & set(
        words(short_name(recipe.ingredients[step.row.at].food))
    )


def _lost(told: str, recipe: Recipe, steps: Sequence[Step], table: Foods) -> list[str]:
    answered = _answered(recipe, steps)
    states = {state_meant(word) for word in answered} | ({"dry"} if COOKED & set(words(told)) else set())
    telling = [word for word in dict.fromkeys(words(told)) if _tells(word, table)]
    lost = [word for word in telling if not _fits(word, answered, table) and state_meant(word) not in states]
    return lost if _numbers_used(told, answered, steps) else [*lost, *_amounts(told)[:1]]


def _amounts(told: str) -> list[str]:
    return [*_NUMBER.findall(told), *_A_MEASURE.findall(told)]


def _unless_there(found: re.Match[str], recipe: Recipe) -> str:
    """Return the words of what stays, unless the recipe holds it: then they ask for nothing."""
    own = {word for part in recipe.ingredients for word in words_of(part)}
    said = set(words(found["what"])) - SMALL_WORDS
    return " " if said and said <= own else found[0]


def _tells(word: str, table: Foods) -> bool:
    if word in SMALL_WORDS or word in _SAYS_HOW or _NUMBER.fullmatch(word):
        return False
    known = line_words().get(word)
    if known is not None and known.kind not in ("state", "other"):
        return False
    return word in index(table).by_word or word in _DIET or known is not None


def _answered(recipe: Recipe, steps: Sequence[Step]) -> frozenset[str]:
    found: set[str] = set()
    now = recipe
    for step in steps:
        if isinstance(step, Servings):
            found |= {*words(recipe.title), *words(recipe.serving_is)}
        if isinstance(step, LeaveOut | Amount | Swap):
            found |= words_of(now.ingredients[step.row.at])
        if isinstance(step, Swap | Add):
            found |= words_of_food(step.food)
        if not isinstance(step, LeaveOut | Servings) and step.measured is not None:
            found |= set(words(step.measured.line))
        now = applied(now, [step])
    return frozenset(found)


def _fits(word: str, answered: frozenset[str], table: Foods) -> bool:
    if word in answered:
        return True
    return word not in english_words() and index(table).nearest_word(word) in answered


def _numbers_used(text: str, answered: frozenset[str], steps: Iterable[Step]) -> bool:
    numbers = [word for word in words(text) if _NUMBER.fullmatch(word) and word != "one"]
    said = [
        word for word in numbers if word not in answered or word.isdigit()
    ]  # digits of the line that goes say nothing
    return not (said or _A_MEASURE.search(text)) or any(_has_amount(step) for step in steps)


def _has_amount(step: Step) -> bool:
    return isinstance(step, Amount | Add | Servings) or (isinstance(step, Swap) and step.measured is not None)

"""Whether the steps of a what-if answer every telling word of its line; what none of them answers is asked back."""

import re
from collections.abc import Iterable, Sequence

from kit.errors import ChangeError
from kit.food.composition import Food, Foods, foods
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.spelling import english_words
from kit.meal.change_places import does_same_work
from kit.meal.change_unclear import ask_if_unclear
from kit.meal.ingredient_names import COOKED, kinds_of, state_word
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Add, Amount, LeaveOut, Servings, Step, Swap, applied
from kit.texts import listing, number

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
_TAKES = re.compile(r"\b(?:no|without|not|omit|skip|leave out|leaving out|minus|drop|remove|hold)\b(?! more than)")
_A_MEASURE = re.compile(
    r"\b(?<!of )an? (?:\w+ )?(?:can|cup|jar|tin|bag|box|packet|package|bunch|tablespoon|teaspoon|pound)s? of\b"
)
_SERVED = re.compile(r"^(?:to )?serv(?:e|ed|ing)(?: it| this)? (?:with|over|on|alongside)\b")
_PART_OF_NONE = re.compile(r"^(?:half|a third|a quarter|\d+/\d+|\d+ ?%)(?: of)? (?:the|my|your) ")
_KINDS_OF = (  # a kind that is there goes only where the line speaks of it
    frozenset("whole wheat grain brown white refined multigrain".split()),
    frozenset("sodium salt unsalted salted".split()),
    frozenset("fat nonfat skim lean whole light lite".split()),
)
_PLAIN = frozenset("regular plain full normal ordinary usual".split())
_BESIDE = re.compile(r"\bhandful\b|\bon the side$|\btoo$")
_NONE_ADDED = re.compile(r"\b(?:no|without|not any)(?: any)? (?:added (?:salt|sugar)|(?:salt|sugar) added)\b")
_EXCHANGES = re.compile(r"\b(?:instead|rather|swap|replac\w+|substitut\w+|place|for|not|no|be|where|rinse|drain)\b")
_PLANTS = frozenset("grain pasta pulse soy vegetable fruit herb nut seed".split())
_FLESH = frozenset("meat poultry fish shellfish".split())
_ANIMALS = frozenset("chicken beef pork turkey fish bacon ham lamb veal shrimp clam crab egg".split())
_GRAINS = ("grain", "pasta")
_LEAVES = ("herb", "spice")  # light by any measure, and heaped or packed
_FAR = 3.0  # times the weight, where no amount was said


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
    if _TAKES.search(told) and not _takes_away(steps):
        raise ChangeError(f'"{text}" says that something should not be there; write what, such as "leave out the ..."')
    if _NONE_ADDED.search(text) and any(_is_no_seasoning(step, recipe) for step in steps):
        raise ChangeError(f'"{text}" may be a kind of food, or leave something out; write which is meant')
    if any(
        isinstance(step, Swap | Add) and step.measured and _PART_OF_NONE.match(step.measured.line) for step in steps
    ):
        raise ChangeError(f'"{text}" takes a part of what is not in the recipe; write how much comes, such as "1 cup"')
    if _comes_back(steps):
        raise ChangeError(f'"{text}" leaves out what it changes; write one of the two')
    ask_if_unclear(line)
    now = recipe
    for place, step in enumerate(steps):
        if isinstance(step, Swap):
            _ask_whether(step, text, now, behind=place > 0)
            _ask_how_much(step, now)
        now = applied(now, [step])
    return tuple(steps)


def _comes_back(steps: Sequence[Step]) -> bool:
    """Whether what one step leaves out is changed by another: "no sweet potatoes, add 1 cup potatoes"."""
    gone = {step.row.at for step in steps if isinstance(step, LeaveOut)}
    return any(step.row.at in gone for step in steps if isinstance(step, Amount | Swap))


def _is_no_seasoning(step: Step, recipe: Recipe) -> bool:
    return isinstance(step, LeaveOut) and not {"salt", "sugar"} & set(
        words(short_name(recipe.ingredients[step.row.at].food))
    )


def _lost(told: str, recipe: Recipe, steps: Sequence[Step], table: Foods) -> list[str]:
    answered = _answered(recipe, steps)
    states = {_meaning(word) for word in answered} | ({"dry"} if COOKED & set(words(told)) else set())
    telling = [word for word in dict.fromkeys(words(told)) if _tells(word, table)]
    lost = [word for word in telling if not _fits(word, answered, table) and _meaning(word) not in states]
    return lost if _numbers_used(told, answered, steps) else [*lost, *_amounts(told)[:1]]


def _amounts(told: str) -> list[str]:
    return [*_NUMBER.findall(told), *_A_MEASURE.findall(told)]


def _meaning(word: str) -> str:
    """Return the state that a word means: dry of "dried"; the word itself where it means none."""
    known = line_words().get(word)
    return known.meaning if known is not None and known.kind == "state" else word


def _unless_there(found: re.Match[str], recipe: Recipe) -> str:
    """Return the words of what stays, unless the recipe holds it: then they ask for nothing."""
    own = {word for part in recipe.ingredients for word in _words_of(part)}
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
            found |= _words_of(now.ingredients[step.row.at])
        if isinstance(step, Swap | Add):
            found |= _words_of_food(step.food)
        if not isinstance(step, LeaveOut | Servings) and step.measured is not None:
            found |= set(words(step.measured.line))
        now = applied(now, [step])
    return frozenset(found)


def _words_of(part: Ingredient) -> set[str]:
    return {*words(part.line), *_words_of_food(part.food)}


def _words_of_food(food: Food) -> set[str]:
    texts = (food.name, *food.other_names, food.key.replace("-", " "), state_word(food), *kinds_of(food))
    return {word for text in texts for word in words(text)}


def _fits(word: str, answered: frozenset[str], table: Foods) -> bool:
    if word in answered:
        return True
    return word not in english_words() and index(table).nearest_word(word) in answered


def _numbers_used(text: str, answered: frozenset[str], steps: Iterable[Step]) -> bool:
    said = [word for word in words(text) if _NUMBER.fullmatch(word) and word not in ("one", *answered)]
    return not (said or _A_MEASURE.search(text)) or any(_has_amount(step) for step in steps)


def _has_amount(step: Step) -> bool:
    return isinstance(step, Amount | Add | Servings) or (isinstance(step, Swap) and step.measured is not None)


def _takes_away(steps: Iterable[Step]) -> bool:
    named = {word for step in steps if isinstance(step, Swap | Add) for word in _words_of_food(step.food)}
    return any(
        isinstance(step, LeaveOut | Swap | Servings) or (isinstance(step, Amount) and (step.times < 1 or step.plus < 0))
        for step in steps
    ) or bool({"no", "not", "without"} & named)


def _ask_whether(step: Swap, text: str, recipe: Recipe, behind: bool) -> None:
    """Ask whether a swap is meant that the words do not say: no word is of what comes, or none of what goes."""
    old = recipe.ingredients[step.row.at]
    said = {word for word in words(text) if word not in SMALL_WORDS}
    kind = said & {"dairy", "lactose"}  # "no dairy, use oat milk" where there is cheese
    guessed = not said & _words_of(old) and (behind or _BESIDE.search(text))
    if (
        guessed
        or (kind and not does_same_work(step.food, old.food))
        or _SERVED.search(text)
        or _brings_an_animal(old, step.food, said)
        or _stays_besides(step, text, recipe)
        or (step.measured is None and _changes_form(old, step.food, said))
        or not (_EXCHANGES.search(text) or _wishes(old, step.food, said))
    ):
        there, comes = short_name(old.food), _to_type(step.food)
        choice = f"{comes} instead of the {there}"
        raise ChangeError(f'"{text}": should {comes} take the place of the {there}? write "{choice}"', [choice])


def _to_type(food: Food) -> str:
    """Return the first name of a food that a choice can hold: "no salt added" in it would leave salt out."""
    names = (food.name.lower(), *food.other_names)
    return next((name for name in names if "no" not in words(name)), names[0])


def _brings_an_animal(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether an animal's food would come that nobody named: chicken broth for "broth" in the place of vegetables'."""
    unnamed = (_ANIMALS & set(words(food.name))) - {*words(old.line), *words(old.food.name)} - said
    flesh = old.food.group in _PLANTS and food.group in _FLESH and not said & _words_of_food(food)
    return flesh or bool(unnamed and not said & _names_apart(food))


def _names_apart(food: Food) -> set[str]:
    """Return the words of names of a food that hold none for an animal: "ham" of pork, "bacon"."""
    return {word for name in food.other_names if not _ANIMALS & set(words(name)) for word in words(name)}


def _stays_besides(step: Swap, text: str, recipe: Recipe) -> bool:
    """Whether what comes is there already, so that "2 cups corn, not potatoes" may be an amount and a leave-out."""
    there = any(
        part.food.base == step.food.base and part.grams > 0
        for at, part in enumerate(recipe.ingredients)
        if at != step.row.at
    )
    return there and step.measured is not None and bool(re.search(r"\bnot\b", text))


def _changes_form(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether a fresh food would become a canned one, or so, that no word asks for: "low-sodium beets"."""
    heads = {words(short_name(one))[-1:] for one in (old.food, food)}
    same = food.base == old.food.base or (len(heads) == 1 and food.group in ("vegetable", "fruit"))
    asked = any(line_words()[word].kind == "state" for word in said if word in line_words())
    return same and not asked and state_word(food) != state_word(old.food)


def _wishes(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether words without "instead" ask for what comes: some are its own, and no kind that is there goes unsaid."""
    own = {*words(old.line), *words(old.food.name)}
    if food.group != old.food.group and not does_same_work(food, old.food) and food.key not in old.swaps:
        return False
    return _says_what_comes(said, own, _words_of_food(food)) and not _loses_kind(own, old.food, food, said)


def _loses_kind(own: set[str], there: Food, food: Food, said: set[str]) -> bool:
    """Whether whole grain, low sodium or low fat would go unsaid: "thin spaghetti" where it is whole-wheat."""
    new = set(words(food.name))
    alike = words(short_name(food))[-1:] == words(short_name(there))[-1:]
    if _PLAIN & said or any("%" in word for word in said) or not alike:
        return False
    kinds = (*(_KINDS_OF[:1] if food.group in _GRAINS else ()), *(_KINDS_OF[1:] if food.base == there.base else ()))
    return any(own & kind and not said & kind and not own & kind & new for kind in kinds)


def _says_what_comes(said: set[str], goes: set[str], enters: set[str]) -> bool:
    new = enters - goes
    if said & (new | _PLAIN) or {_meaning(word) for word in said} & {_meaning(word) for word in new}:
        return True
    spelled = {index(foods()).nearest_word(word) for word in said if word not in english_words()}
    return bool(spelled & new)


def _ask_how_much(step: Swap, recipe: Recipe) -> None:
    """Ask for the amount where as much by measure weighs far more, or far less, than what goes."""
    old = recipe.ingredients[step.row.at]
    if step.measured is not None or old.grams <= 0 or old.food.group in _LEAVES:
        return
    grams = applied(recipe, [step]).ingredients[step.row.at].grams
    binder = old.food.base.startswith("egg") and step.food.group in ("seed", "nut", "grain", "spice")
    if 1 / _FAR <= grams / old.grams <= _FAR and not binder:
        return
    there, comes = short_name(old.food), _to_type(step.food)
    choices = [f"{number(many)} g {comes} instead of the {there}" for many in (grams, old.grams)]
    shown = listing([f'"{choice}"' for choice in choices], "or")
    raise ChangeError(
        f"how much {comes}? by measure it would be {number(grams)} g where there are {number(old.grams)} g of "
        f"{there}; write {shown}",
        choices,
    )

"""Which ingredients of a recipe some words mean: by its line, any name of its food, or the kind of food it is."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from kit.errors import ChangeError
from kit.food.composition import Food, Foods, foods
from kit.food.finding import Name, index
from kit.food.measures import unit
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.choosing import choose
from kit.lines.parsed_line import take_apart
from kit.lines.spelling import english_words
from kit.meal.ingredient_words import KINDS, state_word
from kit.meal.recipe import Ingredient, Recipe
from kit.texts import listing

_ALL = frozenset("all both every whole".split())
_PREPARED = ("cut", "size", "plain", "edible", "measure", "container", "spelling")
COOKED = frozenset(("cooked", "roasted", "boiled", "baked", "grilled", "toasted", "fried", "steamed", "simmered"))
_ANOTHER_CHANGE = re.compile(r"\b(?:use|add|instead|swap|replace|double|leave out)\b")
_AND = re.compile(r"(?<!half)[ ,]and\b|&")
_NO_THING = frozenset(("sodium", "low", "reduced"))  # "25 % less sodium" is less of no ingredient
_SAID_ALONE = frozenset(("cheese",))  # two cheeses are asked back, two foods with milk are "dairy"


@dataclass(frozen=True, slots=True)
class Called:
    """Ingredients that some words mean.

    Attributes
    ----------
    places : tuple of int
        Where they are among the ingredients.
    together : bool
        Whether all of them are meant: "both cheeses", "dairy".
    """

    places: tuple[int, ...]
    together: bool = False


def ingredients_called(text: str, recipe: Recipe) -> Called:
    """Return the ingredients that words mean; every word has to belong to them.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> pot = recipe("Pot", ["1 cup brown lentils, dry", "2 tbsp olive oil", "1/2 cup feta, crumbled"])
    >>> ingredients_called("the feta", pot).places, ingredients_called("oil", pot).places
    ((2,), (1,))
    >>> ingredients_called("oil painting", pot).places
    ()
    """
    if _ANOTHER_CHANGE.search(text) or (
        _AND.search(text) and not any(_AND.search(part.line) for part in recipe.ingredients)
    ):
        return Called(())  # "salt, and use regular broth" is no broth
    said = [word for word in words(text) if word not in SMALL_WORDS and word not in ("this", "that", "these", "those")]
    together = bool(_ALL & set(said))
    said = [word for word in said if word not in _ALL]
    for asked in _lighter_and_lighter(said):
        kind = KINDS.get(next(iter(asked))) if len(asked) == 1 else None
        if kind:
            named = set(_named(asked, recipe))
            alone = asked <= _SAID_ALONE
            places = (
                at for at, part in enumerate(recipe.ingredients) if kind(part.food) or (at in named and not alone)
            )
            return Called(tuple(places), together or not alone)
        found = _named(asked, recipe) or _in_the_state(asked, recipe)
        if found:
            return Called(found, together)
    spelled = [_spelled(word) for word in said]
    return Called(_named(frozenset(spelled), recipe) if spelled != said else (), together)


def _in_the_state(asked: frozenset[str], recipe: Recipe) -> tuple[int, ...]:
    """Return the ingredients that are in the state that words say: "the fresh pears", where the line says "pears"."""
    states = {word for word in asked if word in line_words() and line_words()[word].kind == "state"}
    meant = {line_words()[word].meaning for word in states}
    named = _named(asked - states, recipe) if states and asked != states else ()
    return tuple(at for at in named if state_word(recipe.ingredients[at].food) in meant)


def _spelled(word: str) -> str:
    """Return the word of a food that an unknown word is misspelt from: "avacado"."""
    known = word in index(foods()).by_word or word in line_words() or word in KINDS or word in english_words()
    return word if known else index(foods()).nearest_word(word) or word


def _lighter_and_lighter(said: list[str]) -> Iterable[frozenset[str]]:
    """Yield the words, then without those that say how it is cut or measured, then without how it is cooked."""
    yield frozenset(said)
    kinds = {word: line_words()[word].kind for word in said if word in line_words()}
    named = {own for name in index(foods()).within(said) for own in name.words}  # the thigh of "chicken thigh" stays
    food = [word for word in said if word in named or (kinds.get(word) not in _PREPARED)]
    if any(unit(word) is not None for word in said):  # "teaspoon of salt" is an amount and no ingredient
        return
    if food and len(food) < len(said):
        yield frozenset(food)
    raw = [word for word in food if word not in COOKED]
    if raw and len(raw) < len(food):
        yield frozenset(raw)


def _named(asked: frozenset[str], recipe: Recipe) -> tuple[int, ...]:
    if all(line_words()[word].kind == "state" if word in line_words() else False for word in asked):
        return ()  # "fresh" alone names no food
    if asked <= _NO_THING:
        return ()
    own = [_own_words(ingredient.line, ingredient.food) for ingredient in recipe.ingredients]
    for fits in (_is_called, _is_called_elsewhere, _is_head_of, _is_part_of):
        found = [at for at, names in enumerate(own) if fits(asked, names)]
        used = [at for at in found if recipe.ingredients[at].grams > 0]
        if used or found:
            return tuple(used or found)
    return ()


@dataclass(frozen=True, slots=True)
class _Words:
    """Words of an ingredient: of its line, of all its food's names, and of those with the word that says what it is."""

    line: frozenset[str]
    headed: tuple[tuple[frozenset[str], str], ...]
    loose: frozenset[str]


@lru_cache(maxsize=500)
def _own_words(written: str, food: Food) -> _Words:
    """Return the words of an ingredient, whatever its amount is: a slider makes a new ingredient with every move."""
    line, head = _line_words(written)
    texts = [food.name, *food.other_names, food.key.replace("-", " ")]
    names = [Name(food, text, frozenset(words(text)) - SMALL_WORDS, 0) for text in texts]
    heads = {name.head for name in names[:-1]}
    key = names[-1]  # says it in any order: "tortilla-corn" is no corn
    headed = (*((name.words, name.head) for name in names[:-1]), (key.words, key.head if key.head in heads else ""))
    return _Words(line, ((line, head), *headed) if head else headed, line | names[0].words | names[-1].words)


def _line_words(written: str) -> tuple[frozenset[str], str]:
    """Return the words of a line that name its food, and the last of them; none of a line that names several."""
    phrases = take_apart(written) if written else []
    if len(phrases) != 1 or phrases[0].others:
        return frozenset(), ""
    name = [word for word in phrases[0].name if word not in SMALL_WORDS and _names_something(word)]
    after = [word for word in phrases[0].after if _names_something(word) and word not in SMALL_WORDS]
    lies_in = next((place for place, word in enumerate(phrases[0].name) if word in ("in", "with")), None)
    thing = [word for word in phrases[0].name[:lies_in] if word in name]  # "tuna in oil" is no oil
    return frozenset((*name, *after)), thing[-1] if thing else ""


def _names_something(word: str) -> bool:
    known = line_words().get(word)
    return known is None or known.kind in ("other", "state")


def _is_called(asked: frozenset[str], names: _Words) -> bool:
    return asked == names.line or asked == names.headed[-1][0] or any(asked == own for own, _ in names.headed[:2])


def _is_called_elsewhere(asked: frozenset[str], names: _Words) -> bool:
    """Whether two words and more are another name of it: "white flour" is no white whole-wheat flour."""
    return len(asked) > 1 and any(asked == own for own, _ in names.headed)


def _is_head_of(asked: frozenset[str], names: _Words) -> bool:
    return any(asked <= own and (head in asked or asked == own) for own, head in names.headed)


def _is_part_of(asked: frozenset[str], names: _Words) -> bool:
    return asked <= names.loose


def the_ingredient(text: str, recipe: Recipe, table: Foods, line: str = "") -> int:
    """Return the place of the one ingredient that words mean.

    Parameters
    ----------
    text : str
        The words.
    recipe : Recipe
        Whose ingredients.
    table : Foods
        The foods that the words could mean otherwise.
    line : str
        The line they stand in, so that it can be offered with clearer words.

    Raises
    ------
    ChangeError
        If it has none, or several that fit; then with a choice for each.
    """
    found = ingredients_called(text, recipe).places
    if not found:
        raise ChangeError(f'no "{text.strip()}" in the recipe; it holds {held(recipe)}')
    if len(found) > 1:
        names = [recipe.ingredients[at].food.name for at in found]
        choices = clearer(line, text, [name.lower() for name in names])
        raise ChangeError(f'"{text.strip()}" fits {listing(names)}; write which one', choices)
    ingredient = recipe.ingredients[found[0]]
    if is_another_food(text, ingredient, table):
        name = ingredient.food.name.lower()
        raise ChangeError(
            f'no "{text.strip()}" in the recipe, but {name}; write which you mean', clearer(line, text, [name])
        )
    return found[0]


def is_another_food(text: str, ingredient: Ingredient, table: Foods) -> bool:
    """Whether words by themselves name something else: "butter" where there is peanut butter, "olives" beside oil."""
    asked, headed = frozenset(words(text)) - SMALL_WORDS, _own_words(ingredient.line, ingredient.food).headed
    if asked in (own for own, _ in headed):
        return False
    if text.split()[-1:] == ["pepper"] and len(asked) == 1 and ingredient.food.group == "vegetable":
        return True  # "salt and pepper" are no bell peppers
    by_itself = choose(words(text), (), table).food
    if by_itself is not None and by_itself.allergens != ingredient.food.allergens:
        return not _is_kind_of(ingredient.food, by_itself, headed, asked)
    if any(head in asked for _, head in headed) or "juice" in words(ingredient.food.name):
        return False  # "no lemon" means its juice where there is only that
    called = {place for word in asked for place in index(table).by_word.get(word, ())}
    names = (index(table).names[place] for place in called)
    groups = {name.food.group for name in names if name.head in asked and asked <= name.words}
    return bool(groups) and ingredient.food.group not in groups


def _is_kind_of(food: Food, other: Food, headed: Iterable[tuple[frozenset[str], str]], asked: frozenset[str]) -> bool:
    """Whether a food is a kind of what words mean by themselves: wine vinegar of vinegar, not oat milk of milk."""
    alike = (food.group, food.reference) == (other.group, other.reference)
    return alike and any(head in asked for _, head in headed)


def clearer(line: str, text: str, names: Iterable[str]) -> tuple[str, ...]:
    """Return a line once for each name, with the name where some words stand."""
    at = line.find(text)
    return tuple(f"{line[:at]}{name}{line[at + len(text) :]}" for name in names) if text and at >= 0 else ()


def held(recipe: Recipe) -> str:
    """Return what a recipe holds, in words for people."""
    return listing(
        list(dict.fromkeys(short_name(part.food) for part in recipe.ingredients if part.grams > 0)) or ["nothing"]
    )

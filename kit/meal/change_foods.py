"""Which food is meant to come into a recipe, in which form, and whose place it would take."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from kit import files
from kit.errors import ChangeError, KitError
from kit.food.cells import read_rows
from kit.food.composition import Food, Foods
from kit.food.finding import food as food_by_key
from kit.food.finding import index
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.accounting import FREE_FROM
from kit.lines.choosing import choose
from kit.lines.lighter import lighter
from kit.lines.parsed_line import take_apart
from kit.lines.reader import read
from kit.lines.reading import Reading
from kit.meal.change_forms import AS_COOKED, drained, ready_to_eat, says_form, used_alike
from kit.meal.ingredient_names import clearer, ingredients_called
from kit.meal.recipe import Ingredient, Recipe
from kit.texts import listing

# The words that ask for the form in which the food that goes was used.
_SAME_FORM = {
    "rinsed": ", canned, drained and rinsed",
    "drained": ", canned, drained",
    "canned": ", canned",
    "cooked": ", cooked",
    "dry": ", dry",
    "frozen": ", frozen",
    "raw": ", fresh",
}
_AS_GOOD = {  # states of the food that comes, best first, for each state of the one that goes
    "rinsed": ("rinsed", "drained", "cooked", "canned"),
    "drained": ("drained", "rinsed", "cooked", "canned"),
    "cooked": ("cooked", "rinsed", "drained", "canned"),
    "canned": ("canned", "drained", "rinsed", "cooked"),
    "dry": ("dry",),
    "frozen": ("frozen", "raw"),
    "raw": ("raw", "frozen"),
}
# Groups of reference amounts (21 CFR 101.12) whose foods do the same work in a dish: common practice.
_SAME_WORK = (
    {"grain_dry", "grain_prepared", "pasta_dry", "pasta_prepared", "hot_cereal", "hot_cereal_dry"},
    {"beans_canned", "beans_dry", "beans_prepared"},
    {"meat_raw", "meat_cooked", "meat_canned", "fish_raw", "fish_cooked", "fish_canned", "tofu_tempeh"},
    {"cheese", "cottage_cheese", "grated_hard_cheese", "ricotta"},
    {"cream", "half_and_half", "sour_cream", "yogurt"},
    {"milk", "evaporated_milk", "juice_beverage"},
    {"nuts_seeds"},
    {"nut_butter"},
    {"butter_oil"},
    {"sugar", "honey_jam", "syrup", "powdered_sugar"},
    {"fruit", "fruit_ingredient"},
    {"dried_fruit"},
    {"lemon_juice"},
    {"flour", "nut_flour"},
    {"soup"},
    {"bread", "tortilla_biscuit", "bagel_muffin"},
    {"sausage", "bacon_raw", "bacon_cooked"},
    {"olives", "pickles"},
    {"vegetable_garnish"},
)


@dataclass(frozen=True, slots=True)
class Newcomer:
    """A food that comes into a recipe.

    Attributes
    ----------
    food : Food
        The food.
    note : str
        What was assumed: a stand-in, a spelling.
    """

    food: Food
    note: str = ""


def newcomer(text: str, table: Foods, *, like: Ingredient | None = None, line: str = "") -> Newcomer:
    """Return the food that words mean, in the form of the ingredient whose place it takes.

    Parameters
    ----------
    text : str
        The words, without an amount.
    table : Foods
        The foods to choose from.
    like : Ingredient, optional
        What it takes the place of: without words of its own it comes in that form, dry for dry, canned for canned.
    line : str
        The line the words stand in, so that it can be offered with clearer words.

    Raises
    ------
    ChangeError
        If no food, or more than one, fits the words; then with a choice for each.
    """
    own = _own_swap(text, table, like)
    if own is not None:
        return Newcomer(own)
    food, _ = understood(f"100 g {text}", text, table, line, besides=like.food if like else None)
    if like is not None and not says_form(text) and used_alike(food, like.food):
        food = _in_the_form_of(like, text, food, table)
    food = drained(food, text, like, table) if like is not None else food
    ready = ready_to_eat(food, text, table) if like is not None and like.food.state != "dry" else None
    notes = [_notes(text, table), AS_COOKED if ready else ""]
    return Newcomer(ready or food, "; ".join(note for note in notes if note))


def understood(
    amount_and_food: str, text: str, table: Foods, line: str, besides: Food | None = None
) -> tuple[Food, Reading]:
    """Return the food of a line and how it is read, and raise where the reader would have to ask, or left a word out.

    A food that is there already, `besides`, is no choice.

    Raises
    ------
    ChangeError
        See `newcomer`.
    """
    reading = read(amount_and_food, table=table)
    if reading.food is None or reading.problem:
        near = [match for match in reading.choices if _is_named(text, match.name, table)]
        foods = [match.name.lower() for match in near if besides is None or match.food != besides.key]
        free = {FREE_FROM[word] for word in words(text) if word in FREE_FROM}
        if free:
            foods = [match.name.lower() for match in near if not free & set(table[match.food].allergens)]
            raise ChangeError(f'the table has no "{text}"; name a food that is free of it', clearer(line, text, foods))
        if reading.choices and not near:
            raise ChangeError(f'"{text}" is no food of the table; write one as a recipe does')
        raise ChangeError(f'"{text}": {reading.problem}', clearer(line, text, foods))
    strange = {word for word in words(text) if not _belongs(word, reading.food, table)}
    left_over = [said for said in text.split() if strange & set(words(said))] or sorted(strange)
    if left_over:
        raise ChangeError(
            f'"{text}" is not all understood: "{" ".join(left_over)}" says nothing of '
            f"{reading.food.name}; write the food as a recipe does",
            clearer(line, text, [reading.food.name.lower()]),
        )
    return reading.food, reading


def _is_named(text: str, name: str, table: Foods) -> bool:
    """Whether some words name the thing that a food's name begins with: not "vegan" for bacon, nor "freeze it"."""
    thing = set(words(name.split(",")[0]))
    return any(word in thing or index(table).nearest_word(word) in thing for word in words(text))


def _belongs(word: str, food: Food, table: Foods) -> bool:
    """Whether a word is one of lines in general, of the food's names, of a stand-in's, or is misspelt from one."""
    if word in SMALL_WORDS or word in line_words() or word.isdigit() or lighter([word]):
        return True
    names = {own for name in (food.name, *food.other_names, *_stand_ins().get(food.key, ())) for own in words(name)}
    return word in names or index(table).nearest_word(word) in names


@cache
def _stand_ins() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for row in read_rows(files.bundled("data/stand_ins.csv")):
        found[row["food"]] = (*found.get(row["food"], ()), row["words"])
    return found


def _notes(text: str, table: Foods) -> str:
    """Return what was assumed about a food: a stand-in, a spelling, a form that the table lacks."""
    phrase = take_apart(f"100 g {text}")[0]
    return "; ".join(choose(phrase.name, phrase.after, table, by_weight=True).notes)


def _own_swap(text: str, table: Foods, like: Ingredient | None) -> Food | None:
    """Return the food that the recipe itself offers for an ingredient, where the words mean it."""
    asked = frozenset(words(text)) - SMALL_WORDS
    fitting = []
    for key in like.swaps if like else ():
        food = table[key] if key in table else food_by_key(key)
        names = [frozenset(words(name)) - SMALL_WORDS for name in (food.name, *food.other_names, short_name(food))]
        if asked in names:
            fitting.append(food)
    return fitting[0] if len(fitting) == 1 else None


def _in_the_form_of(like: Ingredient, text: str, food: Food, table: Foods) -> Food:
    good = _AS_GOOD.get(like.food.state, ())
    if not good or food.state == good[0]:
        return food
    try:
        asked, _ = understood(f"100 g {text}{_SAME_FORM[like.food.state]}", text, table, "")
    except ChangeError:
        asked = food
    forms = [asked, food, *table.forms(food.base)]
    return next((form for state in good for form in forms if form.state == state and form.base == food.base), food)


def refined(text: str, recipe: Recipe, table: Foods) -> tuple[int, str] | None:
    """Return the ingredient that some words want in another form, and the words for that form.

    "Low-sodium broth" means the chicken broth of the recipe with less sodium, "brown rice" its rice, "fresh tomatoes"
    its tomatoes: the last words name one ingredient, those before say how else it should be.
    """
    said = text.split()
    for split in range(1, len(said)):
        places = ingredients_called(" ".join(said[split:]), recipe).places
        if len(places) != 1:
            continue
        thing = short_name(recipe.ingredients[places[0]].food)
        for wish in (text, f"{' '.join(said[:split])} {thing}"):
            reading = read(f"100 g {wish}", table=table)
            food = None if reading.problem else reading.food
            if food is not None and all(_belongs(word, food, table) for word in words(wish)):
                return places[0], wish
    return None


def takes_place_of(food: Food, recipe: Recipe) -> tuple[int, ...]:
    """Return the ingredients whose place a food would take: the nearest in kind, several where several are as near."""
    parts = [(at, part) for at, part in enumerate(recipe.ingredients) if part.grams > 0]
    head = words(short_name(food))[-1:]
    nearness = (
        lambda part: food.key in part.swaps,
        lambda part: bool(food.base) and part.food.base == food.base,
        lambda part: words(short_name(part.food))[-1:] == head and does_same_work(food, part.food),
        lambda part: _alike(food) is not None and _alike(part.food) == _alike(food),
        lambda part: words(short_name(part.food))[-1:] == head,
        lambda part: part.food.group == food.group and does_same_work(food, part.food),
        lambda part: does_same_work(food, part.food),
    )
    for near in nearness:
        found = tuple(at for at, part in parts if near(part))
        if found:
            return found
    return ()


def does_same_work(food: Food, other: Food) -> bool:
    """Whether two foods do the same work in a dish, by the groups of their reference amounts."""
    return any({food.reference, other.reference} <= work for work in _SAME_WORK)


@cache
def _families() -> Mapping[str, str]:
    return {row["base"]: row["family"] for row in read_rows(files.bundled("data/alike.csv"))}


def _alike(food: Food) -> str | None:
    return _families().get(food.base)


def suggestions(ingredient: Ingredient, table: Foods) -> Iterable[str]:
    """Return names of foods that the recipe offers for an ingredient."""
    for key in ingredient.swaps:
        try:
            yield (table[key] if key in table else food_by_key(key)).name.lower()
        except KitError:
            continue


def instead_of_what(text: str, places: Iterable[int], recipe: Recipe, amount: str = "") -> ChangeError:
    """Return the question which ingredient a food should take the place of."""
    names = [short_name(recipe.ingredients[at].food) for at in places]
    what = f"{amount} {text}".strip()
    choices = [f"{what} instead of the {name}" for name in names]
    if amount:
        choices.append(f"add {what}")
    told = f" ({listing(names, 'or')})" if names else ""
    return ChangeError(
        f'"{text}" instead of what{told}? write for instance "{text} instead of the '
        f'{names[0] if names else "..."}", or "add" and how much',
        choices,
    )

"""Words that fit an ingredient and mean it in another form: cooked where it is dry, whole where it is low in fat."""

from kit.errors import ChangeError
from kit.food.composition import Food
from kit.food.names import short_name
from kit.food.vocabulary import SMALL_WORDS, words
from kit.lines.reader import read
from kit.meal.change_asked import Asked
from kit.meal.change_places import refined
from kit.meal.ingredient_names import COOKED, ingredients_called
from kit.texts import listing


def one_is_meant(name: str, asked: Asked) -> None:
    """Ask which is meant where the last words are a kind of which there are several: "frozen berries"."""
    said = name.split()
    for split in range(1, len(said)):
        called = ingredients_called(" ".join(said[split:]), asked.recipe)
        foods = [short_name(asked.recipe.ingredients[at].food) for at in called.places]
        if called.together and len(foods) > 1:
            kind = " ".join(said[:split])
            choices = [f"{kind} {food} instead of the {food}" for food in foods]
            raise ChangeError(f'"{name}" may mean {listing(foods, "or")}; write which one', choices)


def is_kind(name: str) -> bool:
    """Return whether a name ends in a word for a whole kind of foods: "reduced-fat cheese"."""
    return words(name)[-1:] == ("cheese",)


def another_form(name: str, found: tuple[int, ...], asked: Asked) -> bool:
    """Return whether words that fit an ingredient name it in another form: "whole yogurt" where it is low in fat."""
    wish = refined(name, asked.recipe, asked.table) if len(found) == 1 else None
    if wish is None or wish[0] != found[0]:
        return False
    there = asked.recipe.ingredients[found[0]].food
    return read(f"100 g {wish[1]}", table=asked.table).food not in (None, there)


def cooked_form_of(name: str, found: tuple[int, ...], asked: Asked) -> str:
    """Return the name, its cooking ahead, where it means the cooked form of an ingredient that is not; else none."""
    said = name.replace(",", " ").split()
    how = [word for word in said if COOKED & set(words(word))]
    wish = " ".join([*how, *(word for word in said if word not in how)])
    return wish if how and another_form(wish, found, asked) else ""


def another_kind(old: str, new: str, at: int, asked: Asked) -> Food | None:
    """Return the food that comes, told from what goes by another word: "a can of diced tomatoes, not crushed"."""
    if not set(words(old)) - set(words(new)) - SMALL_WORDS:
        return None
    there = asked.recipe.ingredients[at]
    reading = read(f"100 g {new}, canned", table=asked.table)
    return reading.food if reading.food is not there.food and not reading.problem else None

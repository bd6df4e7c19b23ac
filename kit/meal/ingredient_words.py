"""The words that a food and an ingredient answer to: of its names, its state, and the kinds of food it is."""

from collections.abc import Callable, Mapping

from kit.food.composition import Food
from kit.food.vocabulary import line_words, words
from kit.meal.recipe import Ingredient

_CHEESES = ("cheese", "cottage_cheese", "grated_hard_cheese", "ricotta")


def _brings(*allergens: str) -> Callable[[Food], bool]:
    return lambda food: any(allergen in food.allergens for allergen in allergens)


def _grouped(*groups: str) -> Callable[[Food], bool]:
    return lambda food: food.group in groups


# Words that mean every ingredient of a kind: "no dairy" leaves out the milk and the yogurt.
KINDS: Mapping[str, Callable[[Food], bool]] = {
    "dairy": _brings("milk"),
    "lactose": _brings("milk"),
    "nut": _brings("tree_nut", "peanut"),
    "gluten": _brings("gluten", "wheat"),
    "soy": _brings("soy"),
    "seafood": _grouped("fish", "shellfish"),
    "shellfish": _grouped("shellfish"),
    "fish": _grouped("fish"),
    "meat": _grouped("meat", "poultry"),
    "poultry": _grouped("poultry"),
    "herb": _grouped("herb"),
    "spice": lambda food: food.group == "spice" and food.key != "salt",
    "seed": _grouped("seed"),
    "sweetener": _grouped("sweetener"),
    "fruit": _grouped("fruit"),
    "berry": lambda food: food.group == "fruit" and food.base.endswith(("berries", "berry")),
    "vegetable": _grouped("vegetable"),
    "grain": _grouped("grain", "pasta"),
    "pulse": _grouped("pulse"),
    "legume": _grouped("pulse"),
    "cheese": lambda food: food.reference in _CHEESES,
    "fat": lambda food: food.reference == "butter_oil",
}


def kinds_of(food: Food) -> tuple[str, ...]:
    """Return the words for kinds of food that mean this one: dairy, nut, vegetable."""
    return tuple(word for word, fits in KINDS.items() if fits(food))


def state_word(food: Food) -> str:
    """Return the word that says in which state a food is."""
    return {"raw": "fresh", "drained": "canned", "rinsed": "canned", "dried": "dry"}.get(food.state, food.state)


def words_of(part: Ingredient) -> set[str]:
    """Return every word that an ingredient answers to: those of its line and of its food."""
    return {*words(part.line), *words_of_food(part.food)}


def words_of_food(food: Food) -> set[str]:
    """Return every word that a food answers to: of its names, its state and its kinds."""
    texts = (food.name, *food.other_names, food.key.replace("-", " "), state_word(food), *kinds_of(food))
    return {word for text in texts for word in words(text)}


def state_meant(word: str) -> str:
    """Return the state that a word means: dry of "dried"; the word itself where it means none."""
    known = line_words().get(word)
    return known.meaning if known is not None and known.kind == "state" else word

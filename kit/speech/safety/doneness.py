"""How hot a food gets inside, by its facts, or by a word that names no food of the dish: "chicken", "fish"."""

from kit.food.composition import Food, foods
from kit.rules.keeping import doneness_of
from kit.speech.values import alone, called, present
from kit.speech.words.foods_said import FoodWord
from kit.talk.dish import Dish

# A food that stands for all that a word may name.
_NAMED = {"chicken": "chicken-whole", "poultry": "chicken-whole", "turkey": "turkey-whole", "fish": "cod"}


def doneness(food: Food) -> float:
    """Return the temperature inside at which a raw food is done, 0 where none is published. [°F]

    References
    ----------
    USDA FSIS, safe minimum internal temperatures.
    """
    found = doneness_of(food, raw_only=False)
    return found.fahrenheit if found else 0.0


def needs(dish: Dish, word: FoodWord) -> list[tuple[str, float]]:
    """Return the names of the foods that a word may mean and how hot they get: of chicken and its broth the chicken.

    Parameters
    ----------
    dish : Dish
        The dish, whose own foods are meant first.
    word : FoodWord
        A food that was named.
    """
    for meant in (present(dish, word), alone(dish, word)):
        found = [(called(dish, food), doneness(food)) for food in meant if doneness(food)]
        if found:
            return found
    key = _NAMED.get(word.text, "")
    return [(word.text, doneness(foods()[key]))] if key else []

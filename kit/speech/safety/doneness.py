"""How hot a food gets inside, by its facts, or by a word that names no food of the dish: "chicken", "fish"."""

from kit.food.composition import Food, foods
from kit.rules.keeping import doneness_of
from kit.speech.values import alone, called, present
from kit.speech.words.foods_said import FoodWord
from kit.talk.dish import Dish

# Things made of meat, and the rule for how hot they get.
DONE_THINGS = {
    **dict.fromkeys(
        "burgers burger hamburgers hamburger patties patty meatballs meatball meatloaf sausages sausage".split(),
        "doneness_ground_meat",
    ),
    **dict.fromkeys("steaks steak chops chop roasts roast brisket".split(), "doneness_whole_cuts"),
    **dict.fromkeys("nuggets drumsticks wings stuffing".split(), "doneness_poultry"),
    **dict.fromkeys("quiche omelet omelette custard".split(), "doneness_egg_dishes"),
}
DONE_GROUPS = {  # foods taken together, that are named in a list of temperatures
    "poultry": "doneness_poultry",
    "ground meat": "doneness_ground_meat",
    "whole cuts": "doneness_whole_cuts",
    "fish": "doneness_fish",
    "egg dishes": "doneness_egg_dishes",
}

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

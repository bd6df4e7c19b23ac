"""Whether two foods are alike in the numbers that matter."""

from kit.food.composition import Food
from kit.food.nutrients import nutrient_index

# A twentieth of the daily value in 100 g, 21 CFR 101.9(c)(8)(iv) and (9); for sugars, of the one of added sugars.
_A_TWENTIETH = {
    "energy": 100.0,
    "protein": 2.5,
    "fat": 3.9,
    "saturated_fat": 1.0,
    "carbohydrate": 13.75,
    "fiber": 1.4,
    "sugars": 2.5,
    "sodium": 115.0,
    "potassium": 235.0,
    "calcium": 65.0,
    "iron": 0.9,
    "vitamin_a": 45.0,
    "vitamin_c": 4.5,
}


def unlike(food: Food, other: Food) -> tuple[str, ...]:
    """Return the nutrients in which two foods differ by a twentieth of the daily value or more in 100 g.

    Parameters
    ----------
    food, other : Food
        The two foods, compared per 100 g.
    """
    differing = []
    for nutrient, most in _A_TWENTIETH.items():
        place = nutrient_index(nutrient)
        if abs(food.per_100g[place] - other.per_100g[place]) > most:
            differing.append(nutrient)
    return tuple(differing)

"""What hypothesis may draw: foods of the table, amounts as cooks write them, whole dishes, and any text at all."""

from hypothesis import strategies as st

from kit.food.composition import bundled_foods
from kit.meal.recipe import Ingredient, Recipe

FOODS = tuple(bundled_foods().values())

foods = st.sampled_from(FOODS)
grams = st.just(0.0) | st.floats(0.01, 5_000.0)
servings = st.floats(0.5, 500.0)
texts = st.text(max_size=120) | st.text(alphabet="0123456789 ½/.,-()cupgozan", max_size=60)


@st.composite
def ingredients(draw: st.DrawFn) -> Ingredient:
    """Return an ingredient of any food and amount, and how sure that is."""
    food = draw(foods)
    return Ingredient(food, draw(grams), relative_sd=draw(st.floats(0.0, 0.5)), line=food.name)


@st.composite
def dishes(draw: st.DrawFn, most: int = 8) -> Recipe:
    """Return a dish of different foods."""
    parts = draw(st.lists(ingredients(), min_size=1, max_size=most, unique_by=lambda part: part.food.key))
    return Recipe("Any dish", tuple(parts), draw(servings))

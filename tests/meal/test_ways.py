"""How each ingredient is cooked, where nobody says so."""

from each import for_each

from kit.meal.recipe import recipe
from kit.meal.ways import ways


def way_of(title, *lines):
    dish = recipe(title, lines)
    return [way.name for way in ways(dish.title, dish.ingredients)]


@for_each(
    ("title", "lines", "expected"),
    [
        ("Carrot soup", ("4 carrots", "2 cups water"), ["stewed", "stewed"]),
        ("Roast carrots", ("1 lb carrots",), ["baked"]),
        ("Roasted carrot soup", ("1 lb carrots",), ["stewed"]),
        ("Grilled chicken with green chili sauce", ("1 lb boneless skinless chicken breast",), ["fried"]),
        ("Carrot salad", ("1 lb carrots", "1 lb boneless skinless chicken breast"), ["raw", ""]),
        ("Monday", ("1 lb carrots", "2 cups romaine lettuce, shredded"), ["", "raw"]),
        ("Roast vegetables with barley", ("1 cup pearled barley, dry", "1 lb carrots"), ["boiled", "baked"]),
        ("Monday", ("2 cups all-purpose flour", "2 eggs", "1 tsp baking powder"), ["baked", "baked", "baked"]),
        ("Monday", ("1 lb carrots", "4 cups water"), ["stewed", "stewed"]),
    ],
)
def test_the_title_the_food_and_the_liquid_tell_the_way(title, lines, expected):
    assert way_of(title, *lines) == expected


def test_what_the_cook_says_goes_before_what_the_title_tells():
    dish = recipe("Roast carrots", ["1 lb carrots"])
    way = ways(dish.title, dish.ingredients, {"": "boiled"})[0]
    assert (way.name, way.stated) == ("boiled", True)


def test_raw_is_said_of_no_raw_meat():
    dish = recipe("Salad", ["1 lb boneless skinless chicken breast"])
    way = ways(dish.title, dish.ingredients)[0]
    assert way.name == ""
    assert not way.eaten_raw

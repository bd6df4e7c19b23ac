"""Talks for the tests of this folder."""

from dataclasses import replace

from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.speech.points import check_points
from kit.talk.dish import Dish
from kit.talk.library import talks_folder
from kit.talk.talk import Point, Talk

LINES = (
    "1 1/2 cups lentils, dry",
    "4 cups kale, chopped",
    "2 tbsp olive oil",
    "1/2 tsp salt",
    "1/2 cup feta, crumbled",
)


def a_talk(*points, lines=LINES, servings=4, **facts):
    """A talk about a lentil pot with these points: sentences, or whole points."""
    made = tuple(Point(point) if isinstance(point, str) else point for point in points)
    dish = replace(recipe("Lentil pot", lines, servings=servings), serving_is="bowl")
    return Talk("lentil_pot", dish, points=made, **facts)


def a_dish(**facts):
    talk = a_talk(**facts)
    return Dish(talk, nutrition(talk.recipe))


def own_talk(name, text):
    """Write a talk file into her own folder."""
    talks_folder().mkdir(parents=True)
    path = talks_folder() / f"{name}.toml"
    path.write_text(text, encoding="utf-8")
    return path


def verdict_on(say, numbers=None, **facts):
    return check_points(a_talk(say, **facts), numbers)[0]


# A talk file in which a word could mean two foods, sentences are off, and a step needs a pot that nobody starts.
TWO_BEANS = """title = "Two beans"
servings = 2

[[ingredient]]
line = "1 cup kidney beans, cooked"

[[ingredient]]
line = "1 cup black beans, cooked"

[[ingredient]]
line = "1/2 cup feta, crumbled"

[[point]]
say = "The beans bring about 8 grams of protein."

[[point]]
say = "It is vegan."

[[point]]
say = "A serving has {energy} and about 90 grams of protein."

[[step]]
title = "Boil"
say = "Start. It is vegan."
hands_minutes = 1
pots = [{ name = "rice", minutes = 3 }]

[[step]]
title = "Fill"
hands_minutes = 2
needs = ["rice", "peas"]

[[question]]
asks = "Vegan?"
answer = "It is vegan."
"""

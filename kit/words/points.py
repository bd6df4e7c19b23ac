"""One spoken sentence and its verdict.

A point of a talk file is a sentence that will be said, `say`, and optionally what it claims, `means`. Both are looked
up and never evaluated: a talk file can run no code.

Placeholders in `say`
---------------------
A pair of braces holds one of these and nothing else; it is filled in the form that can be said aloud. NUTRIENT is an id
of ``data/nutrients.csv``. INGREDIENT is a food of the recipe: its key ("cheese-feta"), or words that fit one ingredient
only ("feta"). FOOD is any food's key.

===========================================  ==================================================================
``{energy}``  ``{protein}``  (a NUTRIENT)    what a serving holds: "about 425 calories", "about 18 grams of protein"
``{NUTRIENT.share_of_day}``                  "about a fifth of a day's sodium", "about 30 percent of a day's iron"
``{NUTRIENT.share_of_energy}``               "about 18 percent of the energy" (protein, fat, carbohydrate)
``{NUTRIENT.range}``                         "16 to 20 grams of protein"
``{NUTRIENT from INGREDIENT}``               what it brings to a serving: "about 11 grams of protein"
``{share of NUTRIENT from INGREDIENT}``      "about two thirds of the protein"
``{NUTRIENT in AMOUNT MEASURE of FOOD}``     ``{protein in one cup of lentils-boiled}``, ``{iron in 100 g of oats-rolled}``
``{grams of INGREDIENT}``                    in a serving: "about 45 grams"
``{amount of INGREDIENT}``                   in the whole recipe: "1 1/2 cups"
``{servings}``  ``{serving}``                "6", "one lidded box" (the talk's `serving_is`)
``{serving grams}``                          "about 350 grams"
``{keeps}``                                  "3 days" (the talk's `keeps_days`), otherwise "3 to 4 days"
===========================================  ==================================================================

Forms of `means`
----------------
Exactly one of these; the keys in brackets may be left out.

- ``{ number = 425, nutrient = "energy" [, unit, food, per] }``: a spoken number. It holds inside the 90 % range, or when
  it is the value rounded to the digits spoken. `unit` is the nutrient's own by default; "% of day", "% of energy" (protein,
  fat, carbohydrate) and, with `food`, "% of dish" are the others. With `food`: what that INGREDIENT brings to a serving;
  with `food` and `per` ("cup", "tbsp", "piece" ... or "100 g"): what that much of any FOOD holds. With ``per = "100 g"`` alone:
  100 g of the dish.
- ``{ number = 45, grams_of = "lentils-dry" }``: grams of an INGREDIENT in a serving.
- ``{ servings = 6 }``: how many servings the recipe makes.
- ``{ wording = "high", nutrient = "fiber" [, food, than] }``: a regulated wording of ``data/wordings.csv`` (high, good
  source, more, low, very low, free, reduced, light, lean ...). `food` is any FOOD, without it the dish is judged. "reduced",
  "more" and "light" need `than`: a FOOD, or for the dish a change that makes the other dish, ``{ leave_out = INGREDIENT }``
  or ``{ swap = INGREDIENT, for = FOOD }``.
- ``{ times = 3, nutrient = "protein", food = "lentils-boiled", than = "rice-white-boiled" [, per] }``: "about three times";
  it holds from 0.85 to 1.15 times the number. `per` is "cup", "100 g", "100 kcal" or "serving" (of a food: the amount
  customarily eaten, of the dish: a serving); left out, it has to hold on all of them. `food` or `than` may be "dish".
- ``{ more_than = "rice-white-boiled", nutrient = "protein", food = "lentils-boiled" [, per] }``, and `less_than`.
- ``{ main_source_of = "protein", food = INGREDIENT }``: the largest contributor; ``{ most_of = ... }``: over half;
  ``{ a_little_of = ... }``: 5 to 20 %. `food` may be a list of ingredients, which then count together.
- ``{ kind = "plant-based" [, food] }``: "plant-based" ("vegan"), "vegetarian" or "whole grain" (every grain in it).
- ``{ free_from = "milk" [, food] }``, ``{ contains = "milk" [, food] }``: an allergen of ``data/allergens.csv``, or a list.
- ``{ keeps_days = 3 }``: in the refrigerator.
- ``{ leave_out = "feta", nutrient = "sodium", saves = 90 }`` (or `adds`): the effect of a change on a serving; it holds inside
  the range of the difference. ``{ swap = INGREDIENT, for = FOOD, nutrient = ..., saves = ... }``: `swap` goes, `for` comes.
- ``{ balance = "all" }``: the shares of energy lie inside the acceptable ranges for adults; ``{ balance = ["protein", "fat"] }``:
  those do; ``{ balance = 2 }``: two of the three do.

Verdicts
--------
"holds", "off", "cannot tell" and "nothing to check". A sentence without `means` whose numbers are all placeholders holds,
since they are filled from the recipe. One that carries a word with a nutritional meaning of its own ("12 grams",
"low in", "twice", "vegan" ...) gets "cannot tell", and `because` asks what is meant. "Nothing to check" is a sentence with neither.
Words of health ("lowers cholesterol", "healthy") get "cannot tell" whatever is meant beside them. A sentence that
says another number than its `means`, or does not name the food that it must name, is asked about or told so.
"""

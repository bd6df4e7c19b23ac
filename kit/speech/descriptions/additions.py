"""What a dish is said to be made without adding: "unsalted", "no added sugar", "no added fat"."""

from dataclasses import replace

from kit.food.composition import Food
from kit.rules.naming import short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.exceptions import excepted
from kit.speech.claim import FOOD, Claim, Finding
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.values import alone, present
from kit.speech.words.sentence import Sentence
from kit.talk.dish import Dish
from kit.texts import listing

ADDITIONS = ("unsalted", "no added sugar", "no added fat")  # judged by what the recipe adds
_SWEET = ("sweetener",)


def additions(claim: WordingClaim, dish: Dish) -> Finding:
    """Judge "unsalted" and "no added sugar" by what the recipe adds and what its foods were made with."""
    apart = {key for word in claim.excepted for key in word.inside}
    used = [food for food in _used(claim, dish) if food.key not in apart]
    if claim.wording == "no added fat":
        return _no_fat(used)
    but = f" but the {listing([word.text for word in claim.excepted])}" if claim.excepted else ""
    return _no_salt(used, but) if claim.wording == "unsalted" else _no_sugar(used, but)


def _no_salt(used: list[Food], but: str) -> Finding:
    section = "21 CFR 101.61(c)(2), from memory"
    salt = [food for food in used if food.base == "salt" or food.key.startswith("salt")]
    salted = [food for food in used if food.salted and food not in salt]
    if salt or salted:
        because = f'"unsalted" asks for no salt added, and there is {_names([*salt, *salted])} ({section})'
        return Finding(OFF, because, None, ("{serving} has {sodium}.",))
    return Finding(HOLDS, f"no salt is added, nor to any food in it{but} ({section})")


def _no_sugar(used: list[Food], but: str) -> Finding:
    section = "21 CFR 101.60(c)(2)"
    sweet = [
        food for food in used if food.group in _SWEET or "sweetened" in food.name.lower().replace("unsweetened", "")
    ]
    if sweet:
        because = f'"no added sugar" asks for none, and there is {_names(sweet)} ({section})'
        return Finding(OFF, because, None, ("{serving} has {sugars}.",))
    unsure = [
        food for food in used if food.group in ("condiment", "snack", "baking", "beverage") and food["sugars"] > 5
    ]
    if unsure:
        because = f"whether the {_names(unsure)} holds added sugar is told by the package ({section})"
        return Finding(CANNOT_TELL, because)
    return Finding(HOLDS, f"no sugar, syrup or honey is added{but} ({section})")


def _names(foods: list[Food]) -> str:
    return listing([short_name(food) for food in foods])


def _no_fat(used: list[Food]) -> Finding:
    fats = [food for food in used if food.reference == "butter_oil"]
    if fats:
        return Finding(OFF, f"there is {_names(fats)} in it", None, ("{serving} has {fat}.",))
    return Finding(
        CANNOT_TELL, "no oil or butter is in the list; whether a food was made with fat is told by its package"
    )


def _used(claim: WordingClaim, dish: Dish) -> list[Food]:
    if claim.about.kind == FOOD:
        return present(dish, claim.about.foods[0]) or alone(dish, claim.about.foods[0])
    return list({part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}.values())


def but_what_is_set_apart(sentence: Sentence, claim: Claim) -> Claim:
    """Return a claim of nothing added with what is set apart from it: "no added salt other than the soy sauce"."""
    if not isinstance(claim, WordingClaim) or claim.wording not in ADDITIONS:
        return claim
    last = max(claim.places)
    foods, places = excepted(sentence, last)
    if not foods:
        return claim
    sentence.used.update(range(last + 1, max(places) + 1) if max(places) > last else places)
    return replace(claim, excepted=tuple(foods))

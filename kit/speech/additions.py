"""What a dish is said to be made without adding: "unsalted", "no added sugar", "no added fat"."""

from dataclasses import replace

from kit.food.composition import Food
from kit.rules.naming import short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.claim import FOOD, Claim, Finding
from kit.speech.exceptions import excepted
from kit.speech.sentence import Sentence
from kit.speech.values import alone, present
from kit.speech.wordings_claim import WordingClaim
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
    if claim.wording == "unsalted":
        salt = [food for food in used if food.base == "salt" or food.key.startswith("salt")]
        salted = [food for food in used if food.salted and food not in salt]
        section = "21 CFR 101.61(c)(2), from memory"
        if salt or salted:
            names = listing([short_name(food) for food in [*salt, *salted]])
            return Finding(
                OFF,
                f'"unsalted" asks for no salt added, and there is {names} ({section})',
                None,
                ("{serving} has {sodium}.",),
            )
        but = f" but the {listing([word.text for word in claim.excepted])}" if claim.excepted else ""
        return Finding(HOLDS, f"no salt is added, nor to any food in it{but} ({section})")
    sweet = [
        food for food in used if food.group in _SWEET or "sweetened" in food.name.lower().replace("unsweetened", "")
    ]
    unsure = [
        food for food in used if food.group in ("condiment", "snack", "baking", "beverage") and food["sugars"] > 5
    ]
    section = "21 CFR 101.60(c)(2)"
    if sweet:
        return Finding(
            OFF,
            f'"no added sugar" asks for none, and there is {listing([short_name(food) for food in sweet])} ({section})',
            None,
            ("{serving} has {sugars}.",),
        )
    if unsure:
        return Finding(
            CANNOT_TELL,
            f"whether the {listing([short_name(food) for food in unsure])} holds added sugar is told by the "
            f"package ({section})",
        )
    but = f" but the {listing([word.text for word in claim.excepted])}" if claim.excepted else ""
    return Finding(HOLDS, f"no sugar, syrup or honey is added{but} ({section})")


def _no_fat(used: list[Food]) -> Finding:
    fats = [food for food in used if food.reference == "butter_oil"]
    if fats:
        return Finding(
            OFF, f"there is {listing([short_name(food) for food in fats])} in it", None, ("{serving} has {fat}.",)
        )
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

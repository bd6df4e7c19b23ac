"""Allergens judged by the facts of each food; never "safe": read the package, and ask."""

from dataclasses import dataclass

from kit.food.composition import Food
from kit.rules.allergens import allergen_names, facts_unknown
from kit.rules.naming import is_plural, short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.claim import FOOD, Claim, Finding
from kit.speech.values import alone, present
from kit.talk.dish import Dish
from kit.texts import listing

GROUPS = {"nuts": ("tree_nut", "peanut"), "shellfish": ("crustacean", "mollusc"), "any": ()}


_PACKAGED = ("condiment", "stock", "snack", "bread", "spice", "baking", "beverage")


@dataclass(frozen=True, slots=True)
class AllergenClaim(Claim):
    """The dish, or a food, contains an allergen, is free of it, or is safe for those who avoid it."""

    allergen: str = ""
    free: bool = False
    safe: bool = False
    foods: tuple = ()
    packages: bool = False


def _used(dish: Dish) -> list[Food]:
    return list({part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}.values())


def _name(allergen: str) -> str:
    return {"nuts": "nuts (tree nuts or peanuts)", "shellfish": "shellfish", "any": "allergens"}.get(
        allergen
    ) or allergen_names()[allergen].split(" (")[0]


def _brings(food: Food, allergen: str) -> bool:
    if allergen == "any":
        return bool(food.allergens)
    return any(one in food.allergens for one in GROUPS.get(allergen, (allergen,)))


def judge(claim: AllergenClaim, dish: Dish) -> Finding:
    """Judge an allergen by the facts of each food; never "safe": read the package, and ask."""
    foods = _used(dish)
    if claim.about.kind == FOOD:
        foods = [food for word in claim.about.foods for food in (present(dish, word) or alone(dish, word))]
    name = _name(claim.allergen)
    there = [food for food in foods if _brings(food, claim.allergen)]
    unknown = [food for food in foods if facts_unknown(food)]
    told = _told(there, name)
    free = claim.free != claim.negated
    if claim.free and claim.negated and claim.safe:
        return Finding(HOLDS if there else CANNOT_TELL, told if there else f"no food in it brings {name}")
    if not free:
        if there:
            wrong = [
                word for word in claim.foods if not any(food.key in (*word.inside, *word.outside) for food in there)
            ]
            if wrong:
                return Finding(
                    OFF,
                    f"{told}, and not the {wrong[0].text}",
                    None,
                    (f"It contains {name}, from the {listing([short_name(food) for food in there])}.",),
                )
            return Finding(HOLDS, f"{told}, by the facts of each food")
        if unknown:
            return Finding(
                CANNOT_TELL, f"the allergens of the {short_name(unknown[0])} are not known: what does the package say?"
            )
        return Finding(OFF, f"no food in it brings {name}", None, (f"No food in it brings {name.split(' (')[0]}.",))
    oats = [food for food in there if "oat" in food.name.lower() and claim.allergen == "gluten"]
    if there and len(oats) == len(there):
        return Finding(
            CANNOT_TELL,
            f"the {listing([short_name(food) for food in oats])} may hold wheat from the field or the mill: only a "
            f"package that says so is free of gluten (21 CFR 101.91)",
        )
    if there:
        return Finding(
            OFF,
            f"{told}, by the facts of each food",
            None,
            (
                f"It contains {name.split(' (')[0] if claim.allergen == 'nuts' else name}, from the "
                f"{listing([short_name(food) for food in there])}.",
            ),
        )
    if unknown or not foods:
        return Finding(
            CANNOT_TELL,
            f"the allergens of the {listing([short_name(food) for food in unknown]) or 'food'} are not known: what "
            f"does the package say?",
        )
    if claim.safe:
        return Finding(
            CANNOT_TELL,
            f"no food in it brings {name}, but nobody can say safe: read every package, and ask those who must "
            f"avoid it",
        )
    if claim.packages or (
        claim.about.kind == FOOD
        and claim.allergen == "gluten"
        and any(food.group in ("dairy", *_PACKAGED) for food in foods)
    ):
        return Finding(CANNOT_TELL, f"no food in it brings {name} by its kind; what was bought is told by its package")
    return Finding(HOLDS, f"no food in it brings {name}; read every package for traces all the same")


def _told(foods: list[Food], name: str) -> str:
    names = listing([short_name(food) for food in foods])
    return f"the {names} {'bring' if len(foods) > 1 or is_plural(names) else 'brings'} {name}"

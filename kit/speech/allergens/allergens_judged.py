"""Allergens judged by the facts of each food; never "safe": read the package, and ask."""

from dataclasses import dataclass, replace

from kit.food.allergens import allergen_names
from kit.food.composition import Food, foods
from kit.rules.allergens import bringing, must_be_asked
from kit.rules.naming import is_plural, short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.allergens.allergens_listed import all_of, left_out
from kit.speech.claim import FOOD, UNKNOWN, Claim, Finding
from kit.speech.values import alone, called, not_there, present
from kit.speech.words.foods_said import FoodWord
from kit.talk.dish import Dish
from kit.texts import listing

GROUPS = {
    "nuts": ("tree_nut", "pine_nut", "peanut"),
    "shellfish": ("crustacean", "mollusc"),
    "seafood": ("fish", "crustacean", "mollusc"),
    "any": (),
}


NUTS = "nuts (tree nuts or peanuts)"
_PACKAGED = ("condiment", "stock", "snack", "bread", "spice", "baking", "beverage")


@dataclass(frozen=True, slots=True)
class AllergenClaim(Claim):
    """The dish, or a food, contains an allergen, is free of it, or is safe for those who avoid it."""

    allergen: str = ""
    free: bool = False
    safe: bool = False
    foods: tuple[FoodWord, ...] = ()
    packages: bool = False
    only: bool = False  # "only the noodles have gluten"
    listed: tuple[str, ...] = ()  # all allergens that the sentence says are in the dish
    whole: bool = False  # whether it says that these are all
    named: tuple[FoodWord, ...] = ()  # foods named beside them: "egg, wheat and walnuts"
    but: tuple[FoodWord, ...] = ()  # "nut-free except the almonds"
    perhaps: bool = False  # "may contain", "traces of"
    lost: bool = False  # "drop the cod and you lose the fish": it was there


def brought_by(word: FoodWord) -> tuple[str, ...]:
    """Return the allergens that every food brings which a word names in the dish; none where it names none there."""
    table = foods()
    named = [table[key].allergens for key in word.inside if key in table]
    return tuple(one for one in named[0] if all(one in other for other in named)) if named else ()


def _used(dish: Dish) -> list[Food]:
    return list({part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}.values())


def _name(allergen: str) -> str:
    told = {
        "gluten": "gluten",
        "peanut": "peanuts",
        "egg": "egg",
        "nuts": NUTS,
        "shellfish": "shellfish",
        "seafood": "fish or shellfish",
        "any": "allergens",
    }
    return told.get(allergen) or allergen_names()[allergen]


def plain_name(allergen: str) -> str:
    """Return an allergen as it is said."""
    return _plain(_name(allergen))


def _plain(name: str) -> str:
    return "nuts" if name == NUTS else name


def _sorted_out(foods: list[Food], allergen: str) -> tuple[list[Food], list[Food]]:
    """Return the foods that bring an allergen, or one of a group of them, and those that have to be asked."""
    if allergen == "any":
        return [food for food in foods if food.allergens], [food for food in foods if must_be_asked(food)]
    brings: dict[str, Food] = {}
    asked: dict[str, Food] = {}
    for one in GROUPS.get(allergen, (allergen,)):
        there, unsure = bringing(foods, one)
        brings |= {food.key: food for food in there}
        asked |= {food.key: food for food in unsure}
    return list(brings.values()), [food for key, food in asked.items() if key not in brings]


def judge(claim: AllergenClaim, dish: Dish) -> Finding:
    """Judge an allergen by the facts of each food; never "safe": read the package, and ask."""
    if claim.about.kind == UNKNOWN:
        return Finding(CANNOT_TELL, f'what is in "{claim.about.words}" is not known')
    foods = _used(dish)
    if claim.about.kind == FOOD:
        foods = [food for word in claim.about.foods for food in (present(dish, word) or alone(dish, word))]
    if claim.only and claim.about.kind == FOOD and not any(present(dish, word) for word in claim.about.foods):
        words = listing([word.text for word in claim.about.foods])
        return Finding(CANNOT_TELL, f"which foods are in the {words} is not known")
    apart = {key for word in claim.but for key in (*word.inside, *word.outside)}
    foods = [food for food in foods if food.key not in apart]
    name = _name(claim.allergen)
    there, asked = _sorted_out(foods, claim.allergen)
    if claim.lost and not any(_sorted_out([part.food for part in dish.talk.recipe.ingredients], claim.allergen)):
        return Finding(OFF, f"no food in the recipe brings {name}")
    if claim.but and (gone := [word for word in claim.but if not present(dish, word)]):
        return not_there(gone[0])  # "no dairy but the cheese and the butter", where there is no butter
    if claim.but and claim.free and not claim.negated:
        found = _free(claim, foods, there, asked, name, dish)
        return replace(found, because=f"apart from the {listing([word.text for word in claim.but])}, {found.because}")
    if claim.free and claim.negated and claim.safe:
        return Finding(HOLDS if there else CANNOT_TELL, _told(there, name) if there else f"no food in it brings {name}")
    if claim.free != claim.negated:
        return _free(claim, foods, there, asked, name, dish)
    if there and claim.only and claim.foods:
        meant = {key for word in claim.foods for key in (*word.inside, *word.outside)}
        others = [food for food in there if food.key not in meant]
        if others:
            return Finding(OFF, f"{_told(others, name)} too", None, (_contains(there, name, dish),))
    if there and claim.only:
        others, unsure = _sorted_out([food for food in _used(dish) if food not in foods], claim.allergen)
        if others:
            return Finding(OFF, f"{_told(others, name)} too", None, (_contains([*there, *others], name, dish),))
        if unsure:
            return Finding(CANNOT_TELL, _ask(unsure, name))
    if there and claim.perhaps and not claim.free:
        return Finding(OFF, f"{_told(there, name)}, and not only perhaps", None, (_contains(there, name, dish),))
    if there:
        wrong = [word for word in claim.foods if not any(food.key in (*word.inside, *word.outside) for food in there)]
        if wrong:
            return Finding(
                OFF, f"{_told(there, name)}, and not the {wrong[0].text}", None, (_contains(there, name, dish),)
            )
        return _listed(claim, dish, f"{_told(there, name)}, by the facts of each food")
    if asked:
        return Finding(CANNOT_TELL, _ask(asked, name))
    sentences = (
        ()
        if claim.allergen == "any"
        else (f"There {'are' if is_plural(_plain(name)) else 'is'} no {_plain(name)} in it.",)
    )
    return Finding(OFF, f"no food in it brings {name}", None, sentences)


def _listed(claim: AllergenClaim, dish: Dish, because: str) -> Finding:
    """Judge an allergen that is there: a list that is said to be whole has to be; what another leaves out is told."""
    if claim.about.kind == FOOD or not claim.listed or claim.allergen != claim.listed[-1]:
        return Finding(HOLDS, because)
    named = [food for word in claim.named for food in present(dish, word)]
    rest = listing(left_out((*claim.listed, *(one for food in named for one in food.allergens)), dish))
    unsure = [food for food in _used(dish) if must_be_asked(food)] if claim.whole and not rest else []
    if unsure:
        return Finding(CANNOT_TELL, _ask(unsure, "more of them"))
    if rest and claim.whole:
        return Finding(OFF, f"it brings {rest} too", None, (f"It contains {listing(all_of(dish))}.",))
    return Finding(HOLDS, f"{because}; it brings {rest} too, which is not said here" if rest else because)


def _free(
    claim: AllergenClaim, foods: list[Food], there: list[Food], asked: list[Food], name: str, dish: Dish
) -> Finding:
    if there and claim.packages and claim.about.kind == FOOD:
        return Finding(CANNOT_TELL, f"{_told(there, name)} as a rule; what was bought is told by its package")
    if there:
        return Finding(OFF, f"{_told(there, name)}, by the facts of each food", None, (_contains(there, name, dish),))
    if asked or not foods:
        return Finding(CANNOT_TELL, _ask(asked, name))
    if claim.safe:
        because = f"no food in it brings {name}, but nobody can say safe"
        return Finding(CANNOT_TELL, f"{because}: read every package, and ask those who must avoid it")
    of_maker = claim.about.kind == FOOD and claim.allergen == "gluten"
    if claim.packages or (of_maker and any(food.group in ("dairy", *_PACKAGED) for food in foods)):
        return Finding(CANNOT_TELL, f"no food in it brings {name} by its kind; what was bought is told by its package")
    return Finding(HOLDS, f"no food in it brings {name}; read every package for traces all the same")


def _ask(foods: list[Food], name: str) -> str:
    names = listing([short_name(food) for food in foods]) or "food"
    verb = "bring" if is_plural(names) or len(foods) > 1 else "brings"
    return f"whether the {names} {verb} {name} is told by the package"


def _contains(foods: list[Food], name: str, dish: Dish) -> str:
    if name == _name("any"):
        return f"It contains {listing(list(dict.fromkeys(_name(one) for food in foods for one in food.allergens)))}."
    if [short_name(food) for food in foods] == [_plain(name)]:
        return f"It contains {_plain(name)}."
    return f"It contains {_plain(name)}, from the {listing([called(dish, food) for food in foods])}."


def _told(foods: list[Food], name: str) -> str:
    names = listing([short_name(food) for food in foods])
    return f"the {names} {'bring' if len(foods) > 1 or is_plural(names) else 'brings'} {name}"

"""Whether an amount suits a food: nobody dices peppercorns, and six pieces of chicken are not six chickens."""

from kit.food.composition import Food, Foods
from kit.food.vocabulary import words
from kit.lines.asking import Doubt, forms_of, matches
from kit.lines.before_cooking import is_weighed_before_or_after
from kit.lines.choosing import Choice
from kit.lines.known_names import kind_of
from kit.lines.nearest_measure import CONTAINERS, Written
from kit.lines.parsed_line import ParsedLine
from kit.lines.sold_as import (
    as_a_can_holds,
    in_a_small_jar,
    in_its_pods,
    in_their_shells,
    piece_of_one,
    thin_ones,
)
from kit.lines.states import BOUGHT_DRY

_VEGETABLE_CUTS = frozenset(
    "diced chopped sliced minced seeded cored deseeded halved strip ring quartered julienned".split()
)
_PEPPERS = ("bell-pepper-green-raw", "bell-pepper-red-raw", "jalapeno-raw", "chili-red-raw")
_IN_A_SHELL = ("soy", "nut", "seed")
_CUT_FROM_IT = frozenset("cutlet fillet filet steak escalope tenderloin medallion slice strip".split())
_ANY_MEAT_OF_A_BIRD = ("chicken-whole", "chicken-meat", "turkey-whole")
_MEAT_OF_A_BIRD = ("chicken-meat-cooked", "turkey-cooked", "chicken-meat")
_PARTS_OF_A_BIRD = ("chicken-breast", "chicken-thigh", "chicken-drumstick", "chicken-wing", "chicken-leg")
_BONELESS = _CUT_FROM_IT | {"boneless", "roll", "ground", "deli", "sliced"}
_NO_BONES = {"boneless", "boned", "meat", "deboned"}
_BONELESS_BREAST = 1600.0  # the most that a boneless half of a turkey's breast weighs, common practice [g]
_A_BIRD = 700.0  # the least that a whole bird's edible part weighs [g]
_TELLS_DRY = frozenset("soaked picked sorted overnight soak bag".split())
_TELLS_CANNED = {*CONTAINERS, "canned", "tinned", "tin"}
_TELLS_DRIED = frozenset("dried dry ground rubbed crumbled crushed powdered powder flake".split())
_TAKEN_OFF = ("skin", "bone", "crust", "peel", "rind")
_BESIDE = ("with", "on", "in", "and", "no", "without")
_PORTIONS_OF_FISH = frozenset("fillet filet steak portion piece loin cutlet chunk strip slice".split())
_A_SMALL_FISH = 60.0  # more than one of these weighs: a fillet of what is sold whole or in portions [g]
_ROASTS = ("beef-tenderloin", "beef-tri-tip")  # counted, a whole one weighs six times a steak cut from it
_QUARTER_CUP = 59.0  # [mL]
_MANY_SPOONS = 60.0  # more ground spice than anybody measures for one pot [g]

_NONE: Doubt = ("", ())


def doubtful(phrase: ParsedLine, choice: Choice, table: Foods) -> Doubt:
    """Return what has to be asked because the amount does not suit the food, with choices; an empty text if it does.

    Parameters
    ----------
    phrase : ParsedLine
        The line, taken apart.
    choice : Choice
        The food chosen for its words.
    table : Foods
        Where the choices are from.
    """
    food = choice.food
    if food is None or not phrase.counted:
        return _NONE
    return next((doubt for ask in _QUESTIONS if (doubt := ask(phrase, food, table))), _NONE)


def _which_pepper(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if food.key != "pepper-black" or not _is_vegetable(phrase, phrase.written):
        return None
    problem = 'not sure which pepper is meant; write for instance "1 green bell pepper" or "1 jalapeño"'
    return problem, matches(_PEPPERS, table)


def _fresh_or_dried(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    dried_herb = food.group == "spice" and food.key.endswith("-dried")
    if not dried_herb or not _is_much(phrase.written) or _TELLS_DRIED & phrase.said:
        return None
    fresh = next((key for key in (food.key.replace("-dried", "-fresh"), "mint-fresh") if key in table), "")
    problem = f'so much of "{food.name}" may be meant fresh; write "dried" or "fresh"'
    return problem, matches((food.key, fresh), table)


def _dry_or_dissolved(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    told = _TELLS_DRIED | {"granule", "cube", "base"}
    if not food.key.startswith("bouillon-") or not _is_much(phrase.written) or told & phrase.said:
        return None
    broth = food.key.replace("bouillon", "broth").removesuffix("-powder").removesuffix("-cube")
    problem = f'so much "{food.name}" may be meant dissolved; write broth, or the teaspoons or grams of it dry'
    return problem, matches((broth, "broth-vegetable", food.key), table)


def _green_or_dry(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if food.group != "pulse" or food.state != "dry" or "pod" not in phrase.said:
        return None
    forms = [form.key for form in table.values() if form.key.startswith(food.base) and "green" in form.key]
    problem = f'not sure whether fresh or dry "{food.name}" is meant; write the shelled weight, fresh or dry'
    return problem, matches((*forms, food.key), table)


def _without_its_shell(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    in_shell = food.group in _IN_A_SHELL and {"pod", "shell"} & phrase.said
    if not in_shell or _named_in_its_shell(food):
        return None
    problem = f'how much of "{food.name}" shells or pods leave, the table does not say; write the shelled weight'
    return problem, matches((food.key,), table)


def _what_is_taken_off(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if not _names_what_is_taken_off(phrase, food):
        return None
    problem = f'no "{" ".join(phrase.name)}" in the table; write the weight of what is eaten of "{food.name}"'
    return problem, matches((food.key,), table)


def _how_small(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    counted = not _is_sized(phrase.written) and not phrase.written.measure
    if "baby" not in phrase.name or not counted or _has_baby_ones(food):
        return None
    problem = f'what a baby one of "{food.name}" weighs, the table does not say; write the weight of all'
    return problem, matches((food.key,), table)


def _before_or_after_cooking(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if not is_weighed_before_or_after(phrase, food):
        return None
    problem = f'the weight of "{food.name}" may be that before or after cooking; write "cooked" or "raw" before it'
    return problem, forms_of(food, table)


def _how_much_bone(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if _has_unknown_bones(phrase, food):
        problem = f'how much of "{food.name}" is bone, the table does not say; write the weight without its bones'
        return problem, matches((food.key,), table)
    if food.key == "turkey-breast" and _is_on_the_bone(phrase, phrase.written):
        problem = "a turkey breast so heavy is sold on its bone; write which it is, with its bone or without"
        return problem, matches(("turkey-breast-skin", "turkey-breast"), table)
    return None


def _raw_or_cooked(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if food.base not in _ANY_MEAT_OF_A_BIRD or food.state != "raw" or not _by_the_cup(phrase, phrase.written):
        return None
    problem = f'by the cup "{food.name}" may be raw or cooked; write for instance "2 cups cooked chicken, diced"'
    return problem, matches(_MEAT_OF_A_BIRD, table)


def _dry_cooked_or_canned(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    written = phrase.written
    told = _TELLS_CANNED & {*phrase.said, written.measure} or written.package is not None
    rinsed = food.state in ("canned", "drained") and food.base in BOUGHT_DRY  # "lentils, rinsed" may be dry ones
    either = food.state == "dry" and food.group == "pulse" and _dry_or_cooked(phrase, food, table)
    swollen = "soaked" in phrase.name and food.state == "dry" and food.group == "pulse"  # measured once it has drunk
    swollen = swollen and {"dry", "dried"}.isdisjoint(phrase.name)
    if not either and not swollen and (told or not rinsed):
        return None
    problem = f'a cup of "{food.name}" may be dry, cooked or canned; write which, as in "1 cup cooked beans"'
    return problem, forms_of(food, table)


def _how_heavy(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    if _is_sized(phrase.written) or not _is_uncut(phrase, food):
        return None
    problem = f'one "{food.name}" may weigh little or much; write its weight, for instance "1 lb {food.name.lower()}"'
    return problem, matches((food.key,), table)


def _which_part(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    weighed = phrase.written.unit is not None or phrase.written.package is not None
    if food.group != "poultry" or weighed or not _counts_parts(phrase, food):
        return None
    problem = f'a piece of "{food.name}" may be a breast or a wing; write which, for instance "4 chicken thighs"'
    return problem, matches(_PARTS_OF_A_BIRD, table)


_QUESTIONS = (
    *(_which_pepper, _fresh_or_dried, _dry_or_dissolved, _green_or_dry, _without_its_shell, _what_is_taken_off),
    *(_how_small, _how_much_bone, _raw_or_cooked, _dry_cooked_or_canned, _how_heavy, _which_part),
    *(_before_or_after_cooking, piece_of_one, in_its_pods, in_a_small_jar, in_their_shells, as_a_can_holds),
    thin_ones,
)


def _is_sized(written: Written) -> bool:
    return written.unit is not None or written.package is not None or written.measure in CONTAINERS


def _names_what_is_taken_off(phrase: ParsedLine, food: Food) -> bool:
    """Whether a line names as the thing itself what is usually taken off: "potato skins"."""
    if len(phrase.name) < 2 or phrase.name[-1] not in _TAKEN_OFF or phrase.name[-2] in _BESIDE:
        return False
    return all(words(text)[-2:] != phrase.name[-2:] for text in (food.name, *food.other_names))


def _has_baby_ones(food: Food) -> bool:
    """Whether the table tells of small ones of a food."""
    told = any("baby" in words(text) for text in (food.name, *food.other_names))
    return told or any("baby" in (row.measure, row.cut) for row in food.measures)


def _is_much(written: Written) -> bool:
    """Whether a quarter of a cup or more is measured."""
    return written.volume is not None and written.volume >= _QUARTER_CUP


def _has_unknown_bones(phrase: ParsedLine, food: Food) -> bool:
    """Whether meat is weighed with bones that the table takes no account of: "1 rabbit, cut up (3 lb)"."""
    bones = phrase.written.as_bought and ("bone" in phrase.said or food.base == "rabbit")
    told = not phrase.said.isdisjoint(_NO_BONES) or "bone" in food.refuse_part.lower() or food.state == "cooked"
    return food.group in ("meat", "poultry") and _is_sized(phrase.written) and bones and not told


def _is_on_the_bone(phrase: ParsedLine, written: Written) -> bool:
    """Whether one breast of a turkey is heavier than what is sold without its bone."""
    heavy = written.weight is not None and written.weight > _BONELESS_BREAST
    return heavy and "breast" in phrase.name and not _BONELESS & phrase.said


def _dry_or_cooked(phrase: ParsedLine, food: Food, table: Foods) -> bool:
    """Whether beans that are sold dry and in cans are measured by the cup, and the line does not say which."""
    if phrase.written.volume is None or food.base in BOUGHT_DRY:
        return False
    told = any(kind_of(word) == "state" for word in phrase.said) or not phrase.said.isdisjoint(_TELLS_DRY)
    return not told and any(form.state == "canned" for form in table.forms(food.base))


def _is_uncut(phrase: ParsedLine, food: Food) -> bool:
    """Whether a whole fish or a breast of turkey is counted, which weigh many times what is sold cut from them."""
    said = phrase.said | {phrase.written.measure}
    if food.group == "fish":
        heavy = any(row.grams > _A_SMALL_FISH for row in food.measures if row.measure in ("fillet", "piece"))
        return heavy and food.state == "raw" and _PORTIONS_OF_FISH.isdisjoint(said)
    if food.base in _ROASTS and food.state == "raw":
        return _CUT_FROM_IT.isdisjoint(said - {"tenderloin"}) and "mignon" not in said
    return food.base == "turkey-breast" and "breast" in phrase.name and _CUT_FROM_IT.isdisjoint(phrase.name)


def _named_in_its_shell(food: Food) -> bool:
    return "shell" in food.key or any("in shell" in name for name in food.other_names)


def _by_the_cup(phrase: ParsedLine, written: Written) -> bool:
    """Whether meat is cut up and measured by volume, and the line does not say that it is raw."""
    cut_up = any(kind_of(word) == "cut" for word in phrase.said)
    return written.volume is not None and cut_up and not {"raw", "uncooked"} & phrase.said


def _is_vegetable(phrase: ParsedLine, written: Written) -> bool:
    """Whether "pepper" is counted, weighed or cut as only the vegetable is."""
    if {"black", "white", "ground", "peppercorn", "cracked", "grind", "twist"} & phrase.said:
        return False
    if written.unit is None:
        return written.measure not in ("pinch", "dash", "grind", "twist")
    much = written.count.value * written.unit.size >= _MANY_SPOONS
    return much or not _VEGETABLE_CUTS.isdisjoint(phrase.said)


def _counts_parts(phrase: ParsedLine, food: Food) -> bool:
    """Whether pieces of a bird are counted and the table weighs whole birds."""
    said = phrase.said
    heavy = any(row.measure in ("piece", "medium", "small") and row.grams >= _A_BIRD for row in food.measures)
    if not heavy:
        return bool({"piece", "part"} & set(phrase.name)) and not any(kind_of(word) == "measure" for word in said)
    return bool({"piece", "part", "pieces"} & said) and "whole" not in said and not {"cut", "into"} <= said

"""Swaps that the words of a line do not say, or whose weight would be far from what goes: they are asked about."""

import re

from kit.errors import ChangeError
from kit.food.composition import Food, foods
from kit.food.finding import index
from kit.food.measures import unit
from kit.food.names import short_name
from kit.food.three_weights import cooked_form
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.lines.spelling import english_words
from kit.meal.change_less import ask_which_kind, to_type
from kit.meal.change_places import does_same_work
from kit.meal.ingredient_names import COOKED
from kit.meal.ingredient_words import state_meant, state_word, words_of, words_of_food
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Swap, applied
from kit.texts import listing, number

_SERVED = re.compile(r"^(?:to )?serv(?:e|ed|ing)(?: it| this)? (?:with|over|on|alongside)\b")
_WITH_SO_MUCH = re.compile(
    r"(?:^|\b(?:and|but) |, )with (?!.*\b(?:instead|place|rather|for|not)\b)"
)  # may come on top of all there is
_KINDS_OF = (  # a kind that is there goes only where the line speaks of it
    frozenset("whole wheat grain brown white refined multigrain".split()),
    frozenset("sodium salt unsalted salted".split()),
    frozenset("fat nonfat skim lean whole light lite".split()),
)
_PLAIN = frozenset("regular plain full normal ordinary usual".split())
_BESIDE = re.compile(r"\bhandful\b|\bon the side$|\btoo$")
_EXCHANGES = re.compile(
    r"\b(?:instead|rather|swap|switch|change|replac\w+|substitut\w+|place|for|not|no|be|where|rinse|drain)\b"
)
_PLANTS = frozenset("grain pasta pulse soy vegetable fruit herb nut seed".split())
_FLESH = frozenset("meat poultry fish shellfish".split())
_ANIMALS = frozenset("chicken beef pork turkey fish bacon ham lamb veal shrimp clam crab egg".split())
_GRAINS = ("grain", "pasta")
_LEAVES = ("herb", "spice")  # light by any measure, and heaped or packed
_FAR = 2.1  # times the weight, where no amount was said
_FAR_LEAVES = 3.0  # a cup of kale weighs more than twice one of spinach
_FAR_COUNTED = 1.8  # the same, piece for piece
_CONCENTRATES = frozenset("paste powder cube bouillon concentrate".split())
_SWELLING = ("pulse", "grain", "pasta")  # groups whose dry foods weigh more when they are cooked


def ask_whether(step: Swap, text: str, recipe: Recipe, behind: bool) -> None:
    """Ask whether a swap is meant that the words do not say: no word is of what comes, or none of what goes.

    Parameters
    ----------
    step : Swap
        What was read.
    text : str
        The line it was read from, without politeness.
    recipe : Recipe
        As it is before the step.
    behind : bool
        Whether another step goes before it.

    Raises
    ------
    ChangeError
        With the swap written out as its choice.
    """
    old = recipe.ingredients[step.row.at]
    said = {word for word in words(text) if word not in SMALL_WORDS and not word.isdigit() and unit(word) is None}
    ask_which_kind(step, text, old)
    kind = said & {"dairy", "lactose"}  # "no dairy, use oat milk" where there is cheese
    guessed = not said & words_of(old) and (behind or _BESIDE.search(text))
    if (
        guessed
        or (kind and not does_same_work(step.food, old.food))
        or _SERVED.search(text)
        or (step.measured is not None and _WITH_SO_MUCH.search(text))
        or _brings_an_animal(old, step.food, said)
        or _stays_besides(step, text, recipe)
        or (step.measured is None and _changes_form(old, step.food, said))
        or _only_cooks(old, step.food, said)
        or _changes_kind(old, step.food, said)
        or not (_EXCHANGES.search(text) or _wishes(old, step.food, said))
    ):
        there, comes = short_name(old.food), to_type(step.food)
        choice = f"{comes} instead of the {there}"
        raise ChangeError(f'"{text}": should {comes} take the place of the {there}? write "{choice}"', [choice])


def _brings_an_animal(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether an animal's food would come that nobody named: chicken broth for "broth" in the place of vegetables'."""
    unnamed = (_ANIMALS & set(words(food.name))) - {*words(old.line), *words(old.food.name)} - said
    flesh = old.food.group in _PLANTS and food.group in _FLESH and not said & words_of_food(food)
    return flesh or bool(unnamed and not said & _names_apart(food))


def _names_apart(food: Food) -> set[str]:
    """Return the words of names of a food that hold none for an animal: "ham" of pork, "bacon"."""
    return {word for name in food.other_names if not _ANIMALS & set(words(name)) for word in words(name)}


def _stays_besides(step: Swap, text: str, recipe: Recipe) -> bool:
    """Whether what comes is there already, so that "2 cups corn, not potatoes" may be an amount and a leave-out."""
    there = any(
        part.food.base == step.food.base and part.grams > 0
        for at, part in enumerate(recipe.ingredients)
        if at != step.row.at
    )
    return there and step.measured is not None and bool(re.search(r"\bnot\b", text))


def _changes_form(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether a fresh food would become a canned one, or so, that no word asks for: "low-sodium beets"."""
    heads = {words(short_name(one))[-1:] for one in (old.food, food)}
    same = food.base == old.food.base or (len(heads) == 1 and food.group in ("vegetable", "fruit"))
    asked = any(line_words()[word].kind == "state" for word in said if word in line_words())
    return same and not asked and state_word(food) != state_word(old.food)


def _only_cooks(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether words may only say how a vegetable that is there is cooked: "roasted carrots"."""
    ways = (COOKED - {"cooked", "boiled"}) & said
    return bool(ways) and food.base == old.food.base and food.group in _PLANTS and not ways & set(words(food.name))


def _changes_kind(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether another kind of the same thing would come that no word asks for: whole milk for "lactose-free milk"."""
    if food.state != old.food.state:
        return False
    same = food.base == old.food.base or {food.base.split("-")[0], old.food.base.split("-")[0]} == {"milk"}
    return same and not _says_what_comes(said, {*words(old.line), *words(old.food.name)}, words_of_food(food))


def _wishes(old: Ingredient, food: Food, said: set[str]) -> bool:
    """Whether words without "instead" ask for what comes: some are its own, and no kind that is there goes unsaid."""
    own = {*words(old.line), *words(old.food.name)}
    if food.group != old.food.group and not does_same_work(food, old.food) and food.key not in old.swaps:
        return False
    return _says_what_comes(said, own, words_of_food(food)) and not _loses_kind(own, old.food, food, said)


def _loses_kind(own: set[str], there: Food, food: Food, said: set[str]) -> bool:
    """Whether whole grain, low sodium or low fat would go unsaid: "thin spaghetti" where it is whole-wheat."""
    new = set(words(food.name))
    alike = words(short_name(food))[-1:] == words(short_name(there))[-1:]
    if _PLAIN & said or any("%" in word for word in said) or not alike:
        return False
    kinds = (*(_KINDS_OF[:1] if food.group in _GRAINS else ()), *(_KINDS_OF[1:] if food.base == there.base else ()))
    return any(own & kind and not said & kind and not own & kind & new for kind in kinds)


def _says_what_comes(said: set[str], goes: set[str], enters: set[str]) -> bool:
    new = enters - goes
    if said & (new | _PLAIN) or {state_meant(word) for word in said} & {state_meant(word) for word in new}:
        return True
    spelled = {index(foods()).nearest_word(word) for word in said if word not in english_words()}
    return bool(spelled & new)


def ask_how_much(step: Swap, recipe: Recipe) -> None:
    """Ask for the amount where as much by measure weighs far more, or far less, than what goes.

    Parameters
    ----------
    step : Swap
        What was read.
    recipe : Recipe
        As it is before the step.

    Raises
    ------
    ChangeError
        With both weights as its choices.
    """
    old = recipe.ingredients[step.row.at]
    if step.measured is not None or old.grams <= 0 or old.food.group in _LEAVES:
        return
    new = applied(recipe, [step]).ingredients[step.row.at]
    grams = new.grams
    far = _FAR_LEAVES if {step.food.group, old.food.group} == {"vegetable"} else _FAR
    if unit(old.noun) is None and not _are_alike(step.food, old):
        far = _FAR_COUNTED
    swells = {old.food.state, step.food.state} & {"dry"} and old.food.state != step.food.state
    if swells and _cooks_to(old.food, step.food):
        return
    silly = _is_concentrated(step.food, old.food) or (swells and _is_dry_swelling(old.food, step.food))
    silly = silly or _is_counted_no_more(old, new)
    binder = old.food.base.startswith("egg") and step.food.group in ("seed", "nut", "grain", "spice")
    if 1 / far <= grams / old.grams <= far and not binder and not silly:
        return
    there, comes = short_name(old.food), to_type(step.food)
    many = dict.fromkeys(number(one) for one in (grams, old.grams))
    choices = [f"{one} g {comes} instead of the {there}" for one in many]
    shown = listing([f'"{choice}"' for choice in choices], "or")
    raise ChangeError(
        f"how much {comes}? by measure it would be {number(grams)} g where there are {number(old.grams)} g of "
        f"{there}; write {shown}",
        choices,
    )


def _are_alike(food: Food, old: Ingredient) -> bool:
    """Whether two foods are counted alike: tortillas of wheat and of corn, not slices of every bread."""
    return words(short_name(food))[-1:] == words(short_name(old.food))[-1:] and old.noun != "slice"


def _is_concentrated(food: Food, old: Food) -> bool:
    """Whether a paste, a powder or a cube comes for what is none."""
    return bool(_CONCENTRATES & set(words(food.name))) and not _CONCENTRATES & set(words(old.name))


def _cooks_to(old: Food, food: Food) -> bool:
    """Whether the one is dry and the other ready to eat, so that as much comes as it makes when it is cooked."""
    dry, other = (old, food) if old.state == "dry" else (food, old)
    return other.state in ("cooked", "canned", "drained", "rinsed") and cooked_form(dry) is not None


def _is_dry_swelling(old: Food, food: Food) -> bool:
    """Whether the dry one of two foods is of pulses or grain, which weigh more when they are cooked."""
    dry, other = (old, food) if old.state == "dry" else (food, old)
    return dry.group in _SWELLING and other.state != "ready"


def _is_counted_no_more(old: Ingredient, new: Ingredient) -> bool:
    """Whether slices or pieces of bread go, and by weight something comes that is not counted so: lettuce."""
    return old.food.group == "bread" and unit(old.noun) is None and unit(new.noun) is not None

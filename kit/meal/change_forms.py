"""The form in which a food comes into a recipe: as dry, cooked, canned or drained as what it takes the place of."""

from kit.food.composition import Food, Foods
from kit.food.vocabulary import line_words, words
from kit.meal.recipe import Ingredient

AS_COOKED = "taken as cooked; of dry ones write so"  # what is said of pulses by themselves
_LIQUID = frozenset(("liquid", "undrained", "juice", "brine"))
_FROM_CANS = frozenset("can canned tin tinned jar jarred drained".split())
_PLANTS = {"grain", "pasta", "pulse", "soy", "vegetable", "fruit", "herb", "nut", "seed"}
_FLESH = {"meat", "poultry", "fish", "shellfish"}


def used_alike(food: Food, other: Food) -> bool:
    """Whether two foods are of plants both, or of animals both, so that the one may come in the other's form.

    What takes a canned food's place comes canned only where it is of the same group: mushrooms for beans do not.
    """
    if other.state in ("canned", "drained", "rinsed"):
        return food.group == other.group
    return any({food.group, other.group} <= kind for kind in (_PLANTS, _FLESH))


def as_used(part: Ingredient) -> str:
    """Return the state in which an ingredient was used: canned beans that the line drains are drained."""
    said = set(words(part.line)) if part.food.state == "canned" else set()
    if part.food.state == "canned" and part.food.group in ("fruit", "vegetable") and not _is_from_can(part):
        return ""  # applesauce
    return next((state for state in ("rinsed", "drained") if state in said or state[:-2] in said), part.food.state)


def _is_from_can(part: Ingredient) -> bool:
    """Whether the line or the name of an ingredient says that it is from a can or a jar."""
    return bool(part.container) or bool(_FROM_CANS & {*words(part.line), *words(part.food.name)})


def drained(food: Food, text: str, like: Ingredient, table: Foods) -> Food:
    """Return a canned food without its liquid, where what it takes the place of has none and no word says otherwise."""
    if food.state != "canned" or _LIQUID & set(words(text)):
        return food
    states = {"rinsed": ("rinsed", "drained")} | dict.fromkeys(
        ("drained", "cooked", "raw", "frozen", "dry"), ("drained",)
    )
    forms = table.forms(food.base)
    found = (form for state in states.get(as_used(like), ()) for form in forms if form.state == state)
    return next((form for form in found if _same_kind(form, food)), food)


def _same_kind(form: Food, food: Food) -> bool:
    """Whether a form of a food is of the same kind: as low in sodium."""
    return frozenset(words(form.name)) >= frozenset(words(food.name)) - _LIQUID - {"with"}


def says_form(text: str) -> bool:
    """Whether some words say in which form a food is meant: fresh, dry, canned, cooked."""
    known = (line_words().get(word) for word in words(text))
    return any(word.kind == "state" for word in known if word)


def ready_to_eat(food: Food, text: str, table: Foods) -> Food | None:
    """Return the cooked form of dry pulses where nothing says that they are meant dry; else None."""
    if food.group != "pulse" or food.state != "dry" or says_form(text):
        return None
    return next((form for form in table.forms(food.base) if form.state == "cooked"), None)

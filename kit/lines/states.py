"""The form of a food that a line asks for: cooked, dry, frozen, canned, drained, rinsed."""

from collections.abc import Iterable, Sequence

from kit.food.composition import Food, Foods
from kit.food.finding import Name
from kit.food.vocabulary import line_words
from kit.food.vocabulary import words as said_in

_STATES = {  # the states that answer a wish, best first
    "cooked": ("cooked",),
    "dry": ("dry", "dried"),
    "raw": ("raw", "dry"),
    "fresh": ("raw",),
    "frozen": ("frozen",),
    "canned": ("canned", "drained", "rinsed"),
    "drained": ("drained", "rinsed", "canned"),
    "rinsed": ("rinsed", "drained", "canned"),
}
_STATE_OF = {"dry": "dry", "dried": "dry", "cooked": "cooked", "frozen": "frozen"}
_CANNED_OTHERWISE = ("vegetable", "fish", "shellfish")  # a can of it is salted, and lies in a liquid
_POURED_OFF = ("drained", "rinsed")
BOUGHT_DRY = ("lentils",)  # also by the cup; other pulses with a canned form are rinsed out of it
_DRY_HEAT = ("roasted", "toasted")  # "dry-roasted" says how, and not in which state
_SOFTENED = ("mashed", "pureed")  # a vegetable is cooked first
_PULLED_APART = ("shredded", "flaked", "pulled")  # only cooked meat and fish come apart so
_BOUGHT_IN = ("package", "bag", "box")
_STATES_THAT_MATTER = (
    "cooked",
    "dry",
    "frozen",
    "canned",
    "fresh",
)  # without such a form the weight would be another food's


def in_state(
    best: Name, name: Sequence[str], after: Sequence[str], table: Foods, container: str, by_weight: bool
) -> tuple[Food, list[str], str]:
    """Return the form of a food that the line's words of state ask for.

    Parameters
    ----------
    best : Name
        The name that was found, with its food.
    name, after : sequence of str
        Words before the first comma, and behind it.
    table : Foods
        Where the other forms are.
    container : str
        ``"can"`` and the like, when the line counts them.
    by_weight : bool
        Whether "roasted" behind a comma says what is done with the raw food, rather than how it is measured.

    Returns
    -------
    food : Food
        The form asked for, or the found food where the table has none.
    notes : list of str
        What was assumed.
    problem : str
        What has to be asked, or empty.
    """
    food = best.food
    wishes = _wishes(best, name, after, by_weight)
    if container in _BOUGHT_IN and food.state == "dry":  # "1 package (8 oz) noodles, cooked" is bought dry
        wishes = [wish for wish in wishes if wish[0] != "cooked" or wish[1] in name]
    asked = {wish for wish, _ in wishes}
    if container == "can" and not asked & {"canned", "drained", "rinsed"}:
        wishes.append(("canned", "can"))
    notes: list[str] = []
    for wish, word in wishes:
        answers = _STATES[wish][:1] if word == "undrained" else _STATES[wish]
        if food.state in (answers if wish == "canned" else answers[:1]):
            continue
        forms = table.forms(food.base)
        better = answers[: answers.index(food.state)] if food.state in answers else answers
        fitting = [form for state in better for form in forms if form.state == state]
        if not fitting and word in _SOFTENED:
            continue
        if (
            not fitting
            and food.group == "pulse"
            and food.state == "dry"
            and (container == "can" or wish in ("canned", "drained"))
        ):
            fitting = [form for form in forms if form.state == "cooked"]
            notes.append("the table has none from a can, so it is read as cooked: a can may hold much more salt")
        if fitting:
            said = [
                form for form in fitting if word in form.name.lower() or any(word == row.cut for row in form.measures)
            ]
            food = (said or fitting)[0]
        elif word == "undrained" or (
            wish in _STATES_THAT_MATTER and food.state not in _STATES[wish] and word != "can" and _matters(wish, food)
        ):
            return food, notes, f'no {word} form of "{food.name}" in the table; its weight is read as "{food.name}"'
    if container == "can" and food.state == "raw" and food.group in _CANNED_OTHERWISE:
        return food, notes, f'no "{food.name}" from a can in the table; its weight is read as "{food.name}"'
    if food.state == "canned" and asked & {"drained", "rinsed"}:
        notes.append("the table has it with its liquid only, so protein is a little understated and sodium overstated")
    elif food.state == "canned" and container == "can" and _in_liquid(food, table):
        notes.append("with its liquid")
    return food, notes, ""


def _wishes(best: Name, name: Sequence[str], after: Sequence[str], by_weight: bool) -> list[tuple[str, str]]:
    """Return the states asked for with the words that do, those before the comma first."""
    before, behind = _states_in(name, best), _states_in(after, best)
    if not by_weight and best.food.group == "vegetable":
        soft = (
            *(word for word in name if word in _SOFTENED),
            *(word for word in after if word == "mashed" and not before),
        )
        before += [("cooked", word) for word in soft if word not in best.words]
    if not by_weight and best.food.state == "raw" and best.food.group in ("poultry", "meat", "fish") and not before:
        before += [("cooked", word) for word in (*name, *after) if word in _PULLED_APART][:1]
    if by_weight:  # "2 beets, roasted" are weighed raw, "2 beets, cooked" were not
        behind = [(wish, word) for wish, word in behind if wish != "cooked" or word == "cooked"]
    if {"cooked", "dry"} <= {wish for wish, _ in before} | {_STATE_OF.get(best.food.state, "")}:
        before = [wish for wish in before if wish[0] != "dry"]  # "cooked dry beans" were dry before
    if before or _says_state(best.words):  # what stands behind the comma is then done to that form
        behind = [wish for wish in behind if wish[0] in _POURED_OFF or wish[1] == "undrained"]
    asked = {wish for wish, _ in (*before, *behind)} | (
        {_STATE_OF.get(best.food.state, "")} if _says_state(best.words) else set()
    )
    not_from_a_can = best.food.group != "pulse" or best.food.base in BOUGHT_DRY  # fresh peas and dry lentils are rinsed
    if not_from_a_can and not asked & {"canned", "drained"}:
        before, behind = ([wish for wish in said if wish[0] != "rinsed"] for said in (before, behind))
    poured = not asked & {"dry", "cooked", "raw", "fresh", "frozen"} and "soaked" not in (*name, *after)
    both = {"rinsed", "drained"} <= asked
    return [
        wish
        for wish in (*before, *behind)
        if wish[0] not in _POURED_OFF or (poured and not (both and wish[0] == "drained"))
    ]


def _states_in(words: Sequence[str], best: Name) -> list[tuple[str, str]]:
    own = best.words if best.food.state != "ready" else best.words | {*said_in(best.food.name)}  # dry breadcrumbs
    pairs = zip(words, (*words[1:], ""), strict=False)
    said = [word for word, following in pairs if word not in own and not (word == "dry" and following in _DRY_HEAT)]
    known = ((line_words().get(word), word) for word in said)
    return [(found.meaning, word) for found, word in known if found and found.kind == "state"]


def _says_state(words: Iterable[str]) -> bool:
    """Whether words of a name say a state ("dried black beans")."""
    return any(known.kind == "state" for word in words if (known := line_words().get(word)))


def _in_liquid(food: Food, table: Foods) -> bool:
    """Whether a canned food lies in a liquid that could be poured off."""
    poured = any(form.state in ("drained", "rinsed") for form in table.forms(food.base))
    return poured or any(word in food.name.lower() for word in ("liquid", "juice"))


def _matters(wish: str, food: Food) -> bool:
    """Whether a form that the table lacks would weigh otherwise: a dried fruit does, frozen berries hardly."""
    if wish == "frozen":
        return food.group in ("dairy", "beverage") or (
            food.state in ("dry", "dried") and food.group in ("pulse", "soy")
        )
    if food.state in ("cooked", "ready", "canned", "drained", "rinsed"):
        return wish == "dry"
    if wish == "fresh":
        return food.state in ("dry", "dried") and food.group != "spice"
    return not (wish == "dry" and food.state == "dry")

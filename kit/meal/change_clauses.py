"""What one clause of a what-if does to a recipe: its words looked up, its amounts read."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from kit.errors import ChangeError, KitError
from kit.food.composition import Foods
from kit.food.names import short_name
from kit.food.vocabulary import line_words, words
from kit.lines.parsed_line import ParsedLine, take_apart
from kit.lines.reader import read
from kit.lines.reading import Reading
from kit.meal.change_foods import (
    Newcomer,
    instead_of_what,
    newcomer,
    refined,
    suggestions,
    takes_place_of,
    understood,
)
from kit.meal.change_shapes import Clause
from kit.meal.change_words import part_in
from kit.meal.in_place_of import in_place_of, poured_off
from kit.meal.ingredient_names import held, ingredients_called, the_ingredient
from kit.meal.portions import MAKE_MORE
from kit.meal.recipe import Ingredient, Recipe
from kit.meal.steps import Add, Amount, LeaveOut, Measured, Row, Servings, Step, Swap
from kit.texts import listing

_VAGUE = frozenset("a an bit little some lot lots much slightly way few tad touch good even of far still only".split())


@dataclass(frozen=True)
class Asked:
    """A clause in its surroundings.

    Attributes
    ----------
    clause : Clause
        What it seems to ask for.
    recipe : Recipe
        As it is after the clauses before it.
    table : Foods
        The foods to choose from.
    line : str
        The whole line, so that it can be offered with clearer words.
    """

    clause: Clause
    recipe: Recipe
    table: Foods
    line: str

    def row(self, at: int) -> Row:
        """Return what a step about an ingredient has to know of it."""
        return Row(at, self.recipe.ingredients[at].food.key)

    def place(self, text: str) -> int:
        """Return the place of the one ingredient that words mean."""
        return the_ingredient(text, self.recipe, self.table, self.line)


def steps_of(asked: Asked) -> tuple[Step, ...]:
    """Return the steps that a clause asks for.

    Raises
    ------
    ChangeError
        If its words do not fit the recipe, or leave open what is meant.
    """
    return _WAYS[asked.clause.kind](asked)


def _servings(asked: Asked) -> tuple[Step, ...]:
    return (Servings(asked.clause.number, asked.clause.how),)


def _batch(asked: Asked) -> tuple[Step, ...]:
    return (Servings(asked.recipe.servings * asked.clause.number, MAKE_MORE),)


def _leave_out(asked: Asked) -> tuple[Step, ...]:
    old, recipe = asked.clause.old, asked.recipe
    counted = take_apart(old)[0]
    if counted.counted and counted.name:  # "leave out 1 egg", "remove 1 tbsp of the oil"
        at = asked.place(" ".join((*counted.name, *counted.after)))
        grams = _measured(old, recipe.ingredients[at], asked.table).grams
        if grams < recipe.ingredients[at].grams:
            return (Amount(asked.row(at), plus=-grams),)
        return (LeaveOut(asked.row(at)),)
    found = ingredients_called(old, recipe)
    places = found.places if found.together and found.places else (asked.place(old),)
    used = [at for at in places if recipe.ingredients[at].grams > 0]
    if not used:
        raise ChangeError(f'"{old}" is left out already; the recipe holds {held(recipe)}')
    return tuple(LeaveOut(asked.row(at)) for at in used)


def _free(asked: Asked) -> tuple[Step, ...]:
    kind, recipe = asked.clause.old, asked.recipe
    places = ingredients_called(kind, recipe).places
    if not places:
        raise ChangeError(f'nothing in the recipe is known to bring "{kind}"; it holds {held(recipe)}')
    names = [short_name(recipe.ingredients[at].food) for at in places]
    swaps = [
        f"{name} instead of the {short_name(recipe.ingredients[at].food)}"
        for at in places
        for name in suggestions(recipe.ingredients[at], asked.table)
    ]
    raise ChangeError(
        f'"{kind}" comes from {listing(names)}; write whether to leave that out, or what takes its place',
        [f"leave out the {listing(names)}", *swaps],
    )


def _need(asked: Asked) -> tuple[Step, ...]:
    at = asked.place(asked.clause.old)
    name = short_name(asked.recipe.ingredients[at].food)
    swaps = [f"{other} instead of the {name}" for other in suggestions(asked.recipe.ingredients[at], asked.table)]
    example = swaps[0] if swaps else f"... instead of the {name}"
    raise ChangeError(
        f'the {name} can be left out, or something can be used instead of it; write "leave out the {name}" or "{example}"',
        [f"leave out the {name}", *swaps],
    )


def _times(asked: Asked) -> tuple[Step, ...]:
    found = ingredients_called(asked.clause.old, asked.recipe)
    places = found.places if found.together and found.places else (asked.place(asked.clause.old),)
    return tuple(Amount(asked.row(at), times=asked.clause.number) for at in places)


def _set(asked: Asked) -> tuple[Step, ...]:
    at = asked.place(asked.clause.old)
    measured = _measured(asked.clause.new, asked.recipe.ingredients[at], asked.table)
    return (Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured),)


def _by(asked: Asked) -> tuple[Step, ...]:
    at = asked.place(asked.clause.old)
    return (_more_by(asked, at, asked.clause.new),)


def _more_by(asked: Asked, at: int, amount: str) -> Step:
    old = asked.recipe.ingredients[at]
    grams = _measured(amount, old, asked.table).grams
    if asked.clause.number < 0 and grams > old.grams * 1.001:
        raise ChangeError(
            f"that is more {short_name(old.food)} than there is; write a smaller amount, or "
            f'"leave out the {short_name(old.food)}"'
        )
    return Amount(asked.row(at), plus=asked.clause.number * grams)


def _more(asked: Asked) -> tuple[Step, ...]:
    clause = asked.clause
    amount = [word for word in clause.new.split() if word not in _VAGUE or word in ("a", "an")]
    text = f"{' '.join(amount)} {clause.old}" if amount and set(amount) - {"a", "an"} else clause.old
    phrase = take_apart(text)[0]
    name = " ".join((*phrase.name, *phrase.after)) if phrase.counted else clause.old
    if clause.number > 0 and phrase.counted and not ingredients_called(name, asked.recipe).places:
        return _add(replace(asked, clause=Clause("add", new=text)))
    at = asked.place(name)
    if not phrase.counted:
        food = short_name(asked.recipe.ingredients[at].food)
        less = clause.number < 0
        raise ChangeError(
            f"how much {'less' if less else 'more'} {food}? write for instance "
            f'"{"half" if less else "double"} the {food}", or how much of it',
            [f"half the {food}", f"leave out the {food}"]
            if less
            else [f"1 1/2 times the {food}", f"double the {food}"],
        )
    return (_more_by(asked, at, text),)


def _add(asked: Asked) -> tuple[Step, ...]:
    text = asked.clause.new
    phrase = take_apart(text)[0]
    name = _named(phrase)
    places = ingredients_called(name, asked.recipe).places
    if not phrase.counted:
        food = name if places else newcomer(name, asked.table, line=asked.line).food.name.lower()
        raise ChangeError(f'how much {food}? write for instance "add 1/4 cup {food}"', [f"add 1/4 cup {food}"])
    if len(places) > 1:
        asked.place(name)
    if places:
        grams = _measured(text, asked.recipe.ingredients[places[0]], asked.table).grams
        return (Amount(asked.row(places[0]), plus=grams),)
    reading = understood(text, name, asked.table, asked.line)
    return (Add(reading.food, _as_measured(reading), newcomer(name, asked.table).note),)


def _use(asked: Asked) -> tuple[Step, ...]:
    text, recipe = asked.clause.new, asked.recipe
    phrase = take_apart(text)[0]
    name = _named(phrase) if phrase.counted else text
    found = ingredients_called(name, recipe).places
    if found and phrase.counted:
        at = asked.place(name)
        measured = _measured(text, recipe.ingredients[at], asked.table)
        return (Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured),)
    if found:
        food = short_name(recipe.ingredients[found[0]].food)
        raise ChangeError(
            f"{food} is in the recipe already; write what to change about it",
            [f"leave out the {food}", f"half the {food}", f"double the {food}"],
        )
    wish = refined(name, recipe, asked.table)
    wished = newcomer(wish[1] if wish else name, asked.table, line=asked.line).food
    places = takes_place_of(wished, recipe)
    if wish and (wish[0] in places or not places):
        places = (wish[0],)
    amount = text if phrase.counted else ""
    if len(places) != 1 or (phrase.counted and asked.clause.how != "verb"):
        raise instead_of_what(name, places, recipe, amount.removesuffix(name).strip())
    return _swapped(asked, places[0], wish[1] if wish else name, amount)


def _swap(asked: Asked) -> tuple[Step, ...]:
    old, new = _direction(asked)
    recipe = asked.recipe
    phrase = take_apart(new)[0]
    new_name = _named(phrase) if phrase.counted else new
    old_phrase = take_apart(old)[0]
    if old_phrase.counted and not old_phrase.name and phrase.counted:  # "2 cups of kale instead of 4"
        return _use(replace(asked, clause=Clause("use", new=new, how="verb")))
    share, old_name = _share(old)
    if share is None and old_phrase.counted:
        old_name = _named(old_phrase)
    places = ingredients_called(old_name, recipe).places
    if phrase.counted and not new_name:  # "1 tbsp instead of 3 tbsp olive oil"
        return _set(replace(asked, clause=Clause("set", old_name, new)))
    if len(places) != 1:
        at, new_name = _by_form(asked, old_name, new_name) or (asked.place(old_name), new_name)
    else:
        at = places[0]
    if phrase.counted and ingredients_called(new_name, recipe).places == (at,):  # another amount of the same
        return _set(replace(asked, clause=Clause("set", new_name, new)))
    if share is None and old_phrase.counted and old_phrase.name:
        part = _measured(old, recipe.ingredients[at], asked.table).grams / max(recipe.ingredients[at].grams, 1e-9)
        share = None if part > 0.98 else part
    if share is not None and not phrase.counted:
        return _partly(asked, at, new_name, share)
    return _swapped(asked, at, new_name, new if phrase.counted else "")


def _direction(asked: Asked) -> tuple[str, str]:
    """Return the words of what goes and of what comes; what the recipe holds tells where the words leave it open."""
    clause, recipe = asked.clause, asked.recipe
    if clause.how == "unmarked":
        return _unmarked(asked)
    if not clause.how:
        return clause.old, clause.new
    there = [bool(ingredients_called(_share(side)[1], recipe).places) for side in (clause.old, clause.new)]
    if clause.how == "weak" and there[0] == there[1]:
        raise ChangeError(f'"{clause.old} {clause.new}" says no change')
    if there == [False, True] or (all(there) and clause.how == "substitute for"):
        return clause.new, clause.old
    if all(there) and clause.how == "substitute with":
        raise ChangeError(f'both are in the recipe; write "{clause.new} instead of the {clause.old}"')
    return clause.old, clause.new


def _unmarked(asked: Asked) -> tuple[str, str]:
    said = asked.clause.old.split()
    for split in range(len(said) - 1, 0, -1):
        old, new = " ".join(said[:split]), " ".join(said[split:])
        if ingredients_called(old, asked.recipe).places:
            return old, new
    raise ChangeError(f'"{asked.clause.old}" does not say what goes and what comes')


def _share(text: str) -> tuple[float | None, str]:
    """Return the part of an ingredient that words ask for, and the words for it: "half of the beef"."""
    said = text.split()
    for many in (3, 2, 1):
        part = part_in(" ".join(said[:many])) if len(said) > many else None
        rest = " ".join(said[many:]).removeprefix("of ")
        if part is not None and 0 < part < 1 and not take_apart(text)[0].written.unit:
            return part, rest.removeprefix("the ")
    return None, text


def _by_form(asked: Asked, old: str, new: str) -> tuple[int, str] | None:
    """Return the ingredient meant where one side only says a form: "frozen spinach instead of fresh", "fresh instead of jarred"."""
    recipe, table = asked.recipe, asked.table
    wish = refined(new, recipe, table)
    said = frozenset(words(old))
    if wish and _only_form(old):
        return wish
    if wish and said <= _said_of(recipe.ingredients[wish[0]]):
        return wish
    states = {known.meaning for word in said if (known := line_words().get(word)) and known.kind == "state"}
    if not states or not _only_form(old) or not _only_form(new):
        return None
    fitting = [
        (at, f"{new} {short_name(part.food)}")
        for at, part in enumerate(recipe.ingredients)
        if part.grams > 0 and (_state_word(part) in states or said <= set(words(part.line)))
    ]
    able = [(at, text) for at, text in fitting if _comes_in(text, recipe.ingredients[at], table)]
    if len(able) > 1:
        names = [short_name(recipe.ingredients[at].food) for at, _ in able]
        choices = [f"{text} instead of the {name}" for (_, text), name in zip(able, names, strict=True)]
        raise ChangeError(f'"{old}" fits {listing(names)}; write which one', choices)
    return able[0] if able else None


def _comes_in(text: str, old: Ingredient, table: Foods) -> bool:
    try:
        return newcomer(text, table, like=old).food is not old.food
    except ChangeError:
        return False


def _state_word(part: Ingredient) -> str:
    return {"raw": "fresh", "drained": "canned", "rinsed": "canned", "dried": "dry"}.get(
        part.food.state, part.food.state
    )


def _only_form(text: str) -> bool:
    known = [line_words().get(word) for word in words(text)]
    return bool(known) and all(word is not None and word.kind in ("state", "cut", "plain") for word in known)


def _said_of(part: Ingredient) -> frozenset[str]:
    return frozenset((*words(part.line), *words(part.food.name)))


def _swapped(asked: Asked, at: int, name: str, amount: str) -> tuple[Step, ...]:
    old = asked.recipe.ingredients[at]
    came = _coming(asked, name, old)
    if came.food.key == old.food.key:
        if not amount:
            raise ChangeError(f"that is {short_name(old.food)} as the recipe has it; write what should be different")
        measured = _measured(amount, old, asked.table)
        return (Amount(asked.row(at), times=0.0, plus=measured.grams, measured=measured),)
    if amount:
        reading = read(amount, food=came.food.key, table=asked.table)
        if reading.grams is None or reading.problem:
            raise ChangeError(f'"{amount}": {reading.problem}')
        return (Swap(asked.row(at), came.food, _as_measured(reading), came.note),)
    if came.food.group == "spice" and old.food.group not in ("spice", "herb"):
        food = short_name(came.food)
        raise ChangeError(
            f'how much {food}? write for instance "1/4 tsp {food} instead of the {short_name(old.food)}"',
            [f"1/4 tsp {food} instead of the {short_name(old.food)}"],
        )
    return (Swap(asked.row(at), came.food, None, came.note),)


def _coming(asked: Asked, name: str, old: Ingredient) -> Newcomer:
    """Return the food that comes; "brown" instead of white rice is brown rice."""
    try:
        return newcomer(name, asked.table, like=old, line=asked.line)
    except ChangeError as fault:
        thing = short_name(old.food).split()
        for tail in (thing[-1:], thing[-2:], thing):
            try:
                came = newcomer(f"{name} {' '.join(tail)}", asked.table, like=old)
            except ChangeError:
                continue
            if came.food.group == old.food.group:
                return came
        raise fault


def _partly(asked: Asked, at: int, name: str, share: float) -> tuple[Step, ...]:
    old = asked.recipe.ingredients[at]
    came = newcomer(name, asked.table, like=old, line=asked.line)
    new = in_place_of(replace(old, grams=old.grams * share), came.food)
    measured = Measured(new.grams, new.relative_sd, new.noun, new.noun_grams, new.cut, came.food.name)
    return Amount(asked.row(at), times=1 - share), Add(came.food, measured, came.note)


def _rinse(asked: Asked) -> tuple[Step, ...]:
    at = asked.place(asked.clause.old)
    old = asked.recipe.ingredients[at]
    name = short_name(old.food)
    undone, rinses = asked.clause.how.startswith("not"), "rins" in asked.clause.how
    wanted = ("canned" if not rinses else "drained") if undone else ("rinsed" if rinses else "drained")
    if old.food.state not in ("canned", "drained", "rinsed"):
        raise ChangeError(f"{name} that is not from a can changes nothing in the numbers by rinsing or draining")
    if old.food.state == wanted or (wanted == "drained" and not undone and old.food.state == "rinsed"):
        raise ChangeError(f"the {name} is taken as {wanted} already")
    form = next((form for form in asked.table.forms(old.food.base) if form.state == wanted), None)
    if form is None:
        raise ChangeError(f"the table has no {wanted} {name}; the numbers stay those of {old.food.name.lower()}")
    grams = poured_off(old, form, asked.table)
    measured = Measured(grams, old.relative_sd, old.noun, grams / old.count if old.count else 1.0, old.cut, old.line)
    return (Swap(asked.row(at), form, measured),)


def _named(phrase: ParsedLine) -> str:
    return " ".join((*phrase.name, *phrase.after))


def _measured(text: str, old: Ingredient, table: Foods) -> Measured:
    """Return an amount of an ingredient's food, measured as it is in the recipe where nothing else is said."""
    if "," not in text and old.cut and old.cut != "trimmed":
        text = f"{text}, {old.cut}"
    try:
        reading = read(text, food=old.food.key, table=table)
    except KitError as fault:
        raise ChangeError(f'"{text}": {fault}') from fault
    if reading.grams is None or reading.problem or not take_apart(text)[0].counted:
        problem = reading.problem or f'write how much, such as "half the {short_name(old.food)}"'
        raise ChangeError(f'"{text}": {problem}')
    measured = _as_measured(reading)
    if measured.noun == old.noun and old.noun_grams > 0:
        return replace(measured, grams=reading.count * old.noun_grams, noun_grams=old.noun_grams)
    return measured


def _as_measured(reading: Reading) -> Measured:
    return Measured(
        float(reading.grams or 0.0), reading.relative_sd, reading.noun, reading.noun_grams, reading.cut, reading.line
    )


_WAYS: Mapping[str, Callable[[Asked], tuple[Step, ...]]] = {
    "servings": _servings,
    "batch": _batch,
    "leave out": _leave_out,
    "free": _free,
    "need": _need,
    "times": _times,
    "set": _set,
    "by": _by,
    "more": _more,
    "add": _add,
    "use": _use,
    "swap": _swap,
    "rinse": _rinse,
}

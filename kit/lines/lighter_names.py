"""The form of a food with less salt, fat or sugar, or of another percentage, that a line asks for."""

from kit.food.composition import Food
from kit.food.finding import Name
from kit.food.nutrients import nutrient_index
from kit.food.vocabulary import words
from kit.lines.fitting import Asked, best_name
from kit.lines.known_names import KnownNames, kind_of
from kit.lines.lighter import THINGS, Lighter, every_lighter, lighter_form, matters

_SAME_FAT = 0.6  # [g per 100 g]: labels round, and the table's foods are means


def as_light_as_said(best: Name, asked: Asked, names: KnownNames) -> tuple[Name, tuple[str, ...], str]:
    """Return the low-sodium, reduced-fat or unsweetened form where one is asked for, with notes, or the problem.

    Parameters
    ----------
    best : Name
        The name that fits best.
    asked : Asked
        What the line says.
    names : KnownNames
        All names.
    """
    percent = next((word for word in asked.all_words if word.endswith("%") and not names.belongs(word, best)), None)
    if percent and percent != "100%" and best.food.group in ("dairy", "meat", "poultry", "beverage", "nut", "baking"):
        if other := _of_percent(percent, best, names):
            return other, (), ""
        if _holds_percent(best.food, percent):
            return best, (f'"{percent}" read as {best.food.name.lower()}',), ""
        return best, (), f'no {percent} form of "{best.food.name}" in the table; read as that one'
    notes: tuple[str, ...] = ()
    earlier: list[Lighter] = []
    for kind, phrase in every_lighter(asked.name, asked.after):
        if _is_said(kind, phrase, best):
            earlier.append(kind)
            continue
        if best.food.state == "cooked" and not matters(kind, best.food):
            continue
        if earlier and not matters(kind, best.food, phrase):
            continue
        other, form = _form(kind, phrase, best, asked, names)
        if other is None or any(matters(before, other.food) for before in earlier):  # low in one, but not in both
            if problem := lighter_form(kind, phrase, best.food):
                return best, notes, problem
            continue
        notes = (*notes, f'"{phrase}" read as "{form}"') if form != phrase else notes
        best = other
        earlier.append(kind)
    return best, notes, ""


def _is_said(kind: Lighter, phrase: str, best: Name) -> bool:
    """Whether a name, or another name of its food, says what there is less of in it."""
    less = THINGS.intersection(phrase.split())
    none_at_all = kind.free if kind.free and kind.free.search(phrase) else None  # low-fat yogurt is not fat-free
    if less & best.words and (none_at_all is None or none_at_all.search(" ".join(words(best.text)))):
        return True
    own = (" ".join(words(text)) for text in (best.food.name, *best.food.other_names))
    return any(less <= set(said.split()) and (none_at_all or kind.said).search(said) for said in own)


def _form(kind: Lighter, phrase: str, best: Name, asked: Asked, names: KnownNames) -> tuple[Name | None, str]:
    """Return the name of the lighter form that a phrase asks for, and the words of it; None where there is none."""
    plain = tuple(word for word in asked.name if word not in phrase.split())
    own = [{word for word in said if kind_of(word) in ("food", "deciding")} for said in names.said_of(best)]
    for form in kind.forms_for(phrase):
        other = best_name(Asked((*form.split(), *plain), asked.after, asked.head), names)
        if other and kind.free and kind.free.search(phrase) and _is_sweet_drink(kind, other):
            continue
        if (
            other
            and any(said <= {*other.words, *(names.lies_in(best) & {*words(other.food.name)})} for said in own)
            and set(form.split()) <= other.words
            and other.food is not best.food  # "light tahini" tells of its colour
        ):
            return other, form
    return None, ""


def _is_sweet_drink(kind: Lighter, found: Name) -> bool:
    """Whether a drink has sugars of its own: a cranberry juice that is unsweetened is not one without sugar."""
    return kind.nutrient == "sugars" and found.food.group == "beverage" and matters(kind, found.food)


def _of_percent(percent: str, best: Name, names: KnownNames) -> Name | None:
    """Return the name of the same meat with that percentage: ground sirloin of 95 % is ground beef of 95 %."""
    same = {"lean", percent, *words(best.food.name)}
    meat = best.food.group in ("meat", "poultry")
    own = set() if meat else {word for word in best.words if kind_of(word) in ("food", "deciding")}
    near = (names.names[place] for place in names.by_word.get(percent, ()))
    return next((found for found in near if own <= found.words <= same and found.food.state == best.food.state), None)


def _holds_percent(food: Food, percent: str) -> bool:
    """Whether a milk food holds about as much fat as is said: low-fat yogurt is the one of 1 and of 2 %."""
    held = float(food.per_100g[nutrient_index("fat")])
    return food.group == "dairy" and abs(held - float(percent.rstrip("%"))) <= _SAME_FAT

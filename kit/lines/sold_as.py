"""What has to be asked about how a food is sold: whole or in pieces, in its pods, by the can."""

from kit.food.composition import Food, Foods
from kit.food.vocabulary import words
from kit.lines.asking import Doubt, forms_of, matches
from kit.lines.covered import is_sold_covered, says_nothing_of_covers
from kit.lines.known_names import kind_of
from kit.lines.parsed_line import ParsedLine
from kit.texts import number

_PIECES = frozenset(("piece", "chunk", "hunk"))
_IN_SMALL_JARS = frozenset(("pimento", "pimiento"))
_IN_SHELLS = ("mussels", "clams")
_A_POT_OF_SHELLS = 400.0  # less is hardly bought in the shell, common practice [g]
_OUT_OF_SHELLS = frozenset("shelled shucked meat raw chopped minced diced frozen strip".split())
_MORE_THAN_A_BITE = 50.0  # [g]
_ODD_OUNCES = (14.5, 14.75, 15.25, 15.5)  # nothing fresh is weighed so
_OUNCES_OF_CANS = (*_ODD_OUNCES, 14.0, 15.0, 28.0, 29.0)
_USUALLY_CANNED = ("tomatoes", "pumpkin", "sweetcorn")


def piece_of_one(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    """Ask about pieces that are cut from something the table weighs whole: "2 pieces watermelon"."""
    written = phrase.written
    before = phrase.name[: next((n for n, word in enumerate(phrase.name) if kind_of(word) == "food"), 0)]
    sized = written.unit or written.package or phrase.volume or written.length or written.measure not in ("", "piece")
    if sized or _PIECES.isdisjoint(before):
        return None
    whole = food.measure("piece") or food.measure("medium", "head")
    block = food.measure("stick", "block") if food.group in ("oil", "dairy", "soy") else None
    of_a_plant = food.group in ("vegetable", "fruit")
    if not any(row and row.grams > _MORE_THAN_A_BITE for row in (whole if of_a_plant else None, block)):
        return None
    problem = f'a piece of "{food.name}" may be small or large; write its weight, or which part of a whole one it is'
    return problem, matches((food.key,), table)


def in_a_small_jar(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    """Ask about a jar of pimentos without a size: they are sold in other jars than roasted peppers."""
    written = phrase.written
    if written.package or written.measure not in ("jar", "can") or _IN_SMALL_JARS.isdisjoint(phrase.name):
        return None
    problem = (
        f'no size for the {written.measure} of "{phrase.name[-1]}"; write for instance "1 (4 oz) {written.measure}"'
    )
    return problem, matches((food.key,), table)


def in_its_pods(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    """Ask whether fresh peas or corn are weighed with their pods, husks and cobs, where a line does not say it."""
    written = phrase.written
    by_weight = written.weight is not None and not written.edible
    fresh = "fresh" in phrase.name and all("fresh" not in words(name) for name in food.other_names)
    if not (by_weight and fresh and is_sold_covered(food) and says_nothing_of_covers(phrase)):
        return None
    problem = f'not sure whether "{food.name}" is weighed with pods or husks; write "shelled", "kernels" or "in pods"'
    return problem, matches((food.key, food.key.replace("-raw", "-frozen")), table)


def in_their_shells(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    """Ask whether mussels and clams are weighed in their shells, three quarters and more of what is bought."""
    written = phrase.written
    if food.base not in _IN_SHELLS or food.state != "raw" or (written.weight or 0.0) < _A_POT_OF_SHELLS:
        return None
    if written.as_bought or written.skin_on or not _OUT_OF_SHELLS.isdisjoint(phrase.said):
        return None
    problem = f'not sure whether "{food.name}" is weighed in the shell; write "in the shell" or "shelled"'
    return problem, matches((food.key,), table)


def as_a_can_holds(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    """Ask about ounces that are those of a can, of what was read fresh or dry: "15 oz black beans"."""
    unit, count = phrase.written.unit, phrase.written.count
    if unit is None or unit.name != "ounce" or count.low != count.high or food.state not in ("raw", "dry"):
        return None
    usual = food.group == "pulse" or food.base in _USUALLY_CANNED
    told = any(kind_of(word) == "state" for word in phrase.said)
    forms = table.forms(food.base)
    if told or count.value not in (_OUNCES_OF_CANS if usual else _ODD_OUNCES):
        return None
    if all(form.state != "canned" for form in forms):
        return None
    ounces = number(count.value, 2)
    problem = f'{ounces} oz is what a can holds; write "1 ({ounces} oz) can", or "fresh" or "dry"'
    return problem, forms_of(food, table)


def thin_ones(phrase: ParsedLine, food: Food, table: Foods) -> Doubt | None:
    """Ask about thin slices, rolls and bagels of which the table weighs the usual ones only."""
    written = phrase.written
    counted = written.unit is None and written.package is None and not written.length
    if not counted or food.group != "bread" or "thin" not in (written.size, *phrase.name):
        return None
    if any("thin" in (row.measure, row.cut) for row in food.measures) or "thin" in words(food.name):
        return None
    problem = f'how much a thin one of "{food.name}" weighs, the table does not say; write the weight of all'
    return problem, matches((food.key,), table)

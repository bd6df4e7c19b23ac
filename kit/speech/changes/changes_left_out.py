"""What a sentence says to leave out: "without the cream", "if you skip the salt", "once the almonds are left out"."""

from kit.speech.about.parts import DETERMINERS, is_dish
from kit.speech.about.slots import foods_from
from kit.speech.words.clauses import is_stop
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at

_MADE = frozenset("make have eat cook serve try do order want take".split())  # "have it without the cream"
_AVOID = frozenset("avoid avoids avoiding allergic allergy intolerant".split())  # "those who avoid egg skip it"
_DOES_WITHOUT = ("goes without", "does without")  # a dish that has none
_OTHERWISE = frozenset("would could less more fewer lower higher".split())  # "it has less fat without the cheese"
_GONE = frozenset("left out|left off|taken|omitted|skipped|dropped|removed|out|gone".split("|"))
_IS = frozenset("is are be being was were get gets all both completely taken".split())
_MADE_SO = frozenset("made baked cooked prepared mixed built put".split())
_MEANS = ("means", "mean", "saves", "save", "would", "cuts", "takes")
_OUT_OF_IT = ("out", "off", "away", "out of")
_ONCE = ("once", "if", "when", "with", "provided", "unless", "until")


def skip_to(sentence: Sentence, at: int, more: frozenset[str] = frozenset()) -> int:
    """Return the place behind determiners and some more words."""
    while (
        at < len(sentence)
        and (sentence.text_at(at) in DETERMINERS or sentence.text_at(at) in more)
        and not is_stop(sentence.tokens[at])
    ):
        at += 1
    return at


_RESIZES = frozenset("double doubling halve halving triple tripling".split())
_THEN_IS = frozenset("is has have goes comes gets ends".split())


def effect_elsewhere(sentence: Sentence, at: int, over: int) -> bool:
    """Return whether something follows, or came before, that the change does: a bare "half the oats" brings nothing."""
    rest = [place for place in range(len(sentence)) if place < at or place > over]
    opens = sentence.text_at(at) in _RESIZES if at == 0 else at == 1 and sentence.text_at(0) == "with"
    leads = opens and sentence.text_at(over + 1) in (",", "and", "it", "you", "there")
    return any(
        sentence.tokens[place].is_a("verb_save")
        or sentence.tokens[place].is_a("verb_add")
        or sentence.text_at(place) == "would"
        or (leads and place > over and sentence.text_at(place) in _THEN_IS)
        for place in rest
    ) and any(sentence.tokens[place].is_a("nutrient") or sentence.tokens[place].quantity is not None for place in rest)


def _counted_behind(sentence: Sentence, at: int) -> bool:
    """Return whether an amount is said of what is left: "a plate without potatoes is 220 calories"."""
    first, last = at + 1, sentence.clause_of(at)[-1] + 1
    return sentence.text_at(first) in ("is", "has", "comes", "would", "holds") and any(
        sentence.tokens[place].amount.unit in ("kcal", "g", "mg") for place in range(first, last)
    )


_ALSO_SAID_OTHERWISE = frozenset(
    "not|drop|dropping|lose|losing|remove|removing|hold|holds|holding|minus|pass on".split("|")
)


def _kind_behind(sentence: Sentence, at: int, over: int) -> bool:
    """Return whether an order leads to an allergen or a kind: "drop the cod and you lose the fish"."""
    told = [*range(sentence.clause_of(over)[-1] + 1, len(sentence))]
    if sentence.text_at(at - 2) in _ONCE:  # "dairy-free if you hold the feta"
        told += range(at)
    return _orders(sentence, at) and any(sentence.is_a(place, kind) for place in told for kind in ("allergen", "kind"))


def _orders(sentence: Sentence, at: int) -> bool:
    return at == 0 or sentence.text_at(at - 1) in ("you", "we", "just")


def _named_before(sentence: Sentence, at: int) -> list[FoodWord]:
    """Return the one food that "leave it off" goes back to; none where several were named."""
    named = [
        word for place in range(at) if (word := food_at(sentence, place)) is not None and not is_dish(sentence, place)
    ]
    inside = [word for word in named if word.inside]
    return inside if len({word.inside for word in inside}) == 1 else []


def left_out(sentence: Sentence) -> tuple[tuple[FoodWord, ...], tuple[int, ...]] | None:
    """Return the foods that a sentence says to leave out and the places that say so; None where none is."""
    if sentence.text_at(0) == "no":  # "no almonds means three grams less fat"
        foods, places = foods_from(sentence, 1, len(sentence))
        if foods and sentence.text_at(places[-1] + 1) in _MEANS and effect_elsewhere(sentence, 0, places[-1]):
            return tuple(foods), (0, *places)
    supposed = [at for at in sentence.where(("left",), 2) if _is_supposed(sentence, at)]
    supposed += [at for at in sentence.where(("not",)) if _is_not_done(sentence, at)]
    for at in (*supposed, *sentence.places("verb_leave_out")):
        text = sentence.text_at(at)
        over = skip_to(sentence, at + 1, _BEFORE_FOOD)
        foods, places = foods_from(sentence, over, sentence.clause_of(min(over, len(sentence) - 1))[-1] + 1)
        alone = sentence.text_at(at + 1) in ("that", "those") and sentence.text_at(at + 2) in (",", "and", ".", "")
        it = at + 1 if alone else over  # "if you skip that, there's no milk in it"
        if not foods and (alone or sentence.text_at(over) in ("it", "them")) and not sentence.words & _AVOID:
            foods, places = _named_before(sentence, at), [it]
        if not foods:
            continue
        if text == "takes" and sentence.tokens[at + 1].quantity is not None:
            continue  # "it takes one egg, a cup of oats and"
        foods, places = _without_the_next(sentence, at, foods, places)
        behind, put_away = sentence.text_at(places[-1] + 1), False
        if text in _DOES_WITHOUT or (text == "without" and at == 0 and behind in ("", ".", "!")):
            continue  # "Without any nuts."
        if (
            text == "without"
            and sentence.text_at(at - 1) in _MADE_SO
            and sentence.text_at(at - 2) in ("is", "are", "was")
        ):
            continue  # "and it's made without eggs"
        if (
            text in ("leave", "leaving", "left", "take", "taking", "holding", "hold", "holds", "keep")
            and behind not in _OUT_OF_IT
            and not (text == "hold" and _orders(sentence, at))
            and not (put_away := _stays_put(sentence, places[-1] + 1))
        ):
            continue
        tells = effect_elsewhere(sentence, at, places[-1]) or _kind_behind(sentence, at, places[-1])
        tells = tells or (at == 0 and _then_there_is(sentence, places[-1] + 1))
        if (text in _ALSO_SAID_OTHERWISE or put_away) and not tells:
            continue
        if (
            text == "without"
            and not (all(word.inside for word in foods) and _counted_behind(sentence, places[-1]))
            and not (at == 0 or sentence.text_at(at - 1) in (",", "and", "even", "but", "or"))
            and not (sentence.text_at(at - 1) in ("it", "this", "them") and sentence.text_at(at - 2) in _MADE)
            and not any(sentence.tokens[spot].quantity is not None for spot in range(at))
            and not any(sentence.text_at(spot) in _OTHERWISE for spot in range(at))
        ):
            continue
        return tuple(foods), (at, *places)
    return _passive(sentence)


_BEFORE_FOOD = frozenset("added out extra adding using pinch dash splash knob drizzle sprinkle handful of".split())


def _is_not_done(sentence: Sentence, at: int) -> bool:
    """Return whether it is said what is then not put in: "not adding the salt takes ..."."""
    led = at == 0 or sentence.text_at(at - 1) in ("by", "from", "and")
    done = sentence.text_at(at + 1) in ("adding", "using") and sentence.text_at(at + 2) in ("the", "any", "that")
    return led and done


def _then_there_is(sentence: Sentence, at: int) -> bool:
    """Return whether what there is then is told behind an order: "drop the salt and a plate has 120 milligrams"."""
    at = next((place for place in range(at, at + 4) if sentence.text_at(place) in ("and", ",")), at)
    joined = sentence.text_at(at) in ("and", ",")
    has = any(sentence.text_at(place) in ("has", "have", "is", "holds") for place in range(at + 1, at + 7))
    counted = any(token.amount.unit in ("kcal", "g", "mg") for token in sentence.tokens[at + 1 :])
    return joined and has and counted


def _stays_put(sentence: Sentence, at: int) -> bool:
    """Return whether what is left stays where it is kept: "leave the salt in the cupboard"."""
    where = sentence.text_at(at + 1) in ("the", "its", "your") and sentence.text_at(at + 2) in _KEPT_IN
    return sentence.text_at(at) in ("in", "on") and where


_KEPT_IN = frozenset(
    "box jar cupboard cabinet shaker drawer packet package pantry cellar shelf bottle tin can carton bag shop store "
    "fridge refrigerator".split()
)


def _is_supposed(sentence: Sentence, at: int) -> bool:
    """Return whether something is supposed to be left out: "if you left the cream out"; "we left the egg out" is so."""
    return sentence.text_at(at - 1) in ("you", "we", "i") and sentence.text_at(at - 2) in ("if", "when", "once")


def _without_the_next(
    sentence: Sentence, at: int, foods: list[FoodWord], places: list[int]
) -> tuple[list[FoodWord], list[int]]:
    """Return the foods without those that the next statement is about: "leave out the butter and the milk is gone"."""
    verb = sentence.text_at(places[-1] + 1)
    goes = verb in ("goes", "go") and sentence.text_at(places[-1] + 2) in ("too", "with", "as")
    if len(places) < 2 or not (goes or verb in ("is", "are")) or sentence.text_at(at).split()[0].endswith("ing"):
        return foods, places
    kept = 1 if verb == "are" else len(places) - 1
    return foods[:kept], places[:kept]


def _passive(sentence: Sentence) -> tuple[tuple[FoodWord, ...], tuple[int, ...]] | None:
    """Return foods that are told to be gone: "once the almonds are left out", "with the eggs and the honey gone"."""
    for at in sentence.where(_GONE, 2):
        if sentence.text_at(at + 1) == "of":  # "out of the oven"
            continue
        last = at - 1
        while sentence.text_at(last) in _IS:
            last -= 1
        first = last
        while first > 0 and (sentence.text_at(first) in ("and", ",", *DETERMINERS) or food_at(sentence, first)):
            first -= 1
        spots = [spot for spot in range(first, last + 1) if food_at(sentence, spot) is not None]
        if last in spots and sentence.text_at(first) in _ONCE and not is_dish(sentence, last):
            return tuple(word for spot in spots if (word := food_at(sentence, spot)) is not None), (*spots, at)
    return None

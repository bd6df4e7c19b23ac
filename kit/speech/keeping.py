"""Keeping and food safety: days in the refrigerator, months in the freezer, hours out, reheating, doneness."""

from kit.speech.claim import THE_DISH, About, Claim
from kit.speech.foods_said import FoodWord
from kit.speech.keeping_judged import FREEZER, FRIDGE, OUT, DegreesClaim, ThawClaim, TimeClaim
from kit.speech.parts import is_dish, is_food
from kit.speech.sentence import Sentence, food_at
from kit.speech.tokens import NO_QUANTITY, Quantity

FAMILY = "keeping and safety"
_KEEP = frozenset(
    "keep keeps last lasts stay stays hold holds good fine safe store stores stored storing fresh refrigerate "
    "leftover leftovers eat use finish safely chilled chill freeze freezes frozen freezer kept survive survives".split()
)
_FRIDGE = frozenset("fridge refrigerator refrigerate refrigerated chilled cold refrigerating icebox".split())
_FREEZER = frozenset("freezer freeze freezes frozen freezing".split())
_OUT = frozenset(
    "stove stovetop hob sink windowsill porch garage out counter "
    "desk table room bench countertop car bag backpack unrefrigerated sideboard".split()
)
_DONE = frozenset(
    "inside middle center centre internal thickest safe done "
    "cooked through reaches reach reads read thermometer core".split()
)
_REHEAT = frozenset("reheat reheats reheated reheating rewarm warm warmed warming heat leftovers".split())
_OVEN = frozenset("oven bake bakes preheat roast broil rack tray turn set gas griddle burner degree-oven sheet".split())
_DAYS = {"hour": 1 / 24, "day": 1.0, "week": 7.0, "month": 30.4, "year": 365.0, "minute": 1 / 1440}
_VAGUE = {"overnight": 0.5, "fortnight": 14.0}
_SOME_DAY = frozenset(
    "monday tuesday wednesday thursday friday saturday sunday weekend payday christmas easter".split()
)
_WHOLE = ("all", "whole", "entire", "the whole", "the entire", "full", "a full")
_ALL = {
    "day": 0.4,
    "week": 7.0,
    "month": 30.4,
    "afternoon": 0.25,
    "morning": 0.25,
    "night": 0.5,
    "year": 365.0,
    "winter": 90.0,
    "summer": 90.0,
}
_COLD_WORDS = frozenset("cold chilled warm hot".split())
MINUTES_REST = 3


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return what a sentence claims about keeping and food safety."""
    words = {token.text for token in sentence.tokens} | {
        word for token in sentence.tokens for word in token.text.split()
    }
    claims: list[Claim] = []
    for at, said in list(sentence.quantities()):
        if at in sentence.used:
            continue
        if not said.unit and not said.is_fraction and 100 <= said.value <= 220 and _is_heat(sentence, at, words):
            said = Quantity(said.low, said.high, "degree", said.relation)
        if said.unit in ("degree", "celsius"):
            claims += _degrees(sentence, at, said, words)
        elif said.unit in _DAYS and said.unit not in ("minute",):
            claims += _time(sentence, at, said, words)
    claims += _vague(sentence, words)
    return claims + _thaw(sentence, words)


def _is_heat(sentence: Sentence, at: int, words: set[str]) -> bool:
    """Return whether a bare number is a temperature: "bring it back up to 165 when you reheat it"."""
    told = words & {
        "reheat",
        "reheats",
        "reheated",
        "reheating",
        "thermometer",
        "inside",
        "internal",
        "middle",
        "thickest",
    }
    before = sentence.text_at(at - 1) in ("to", "at", "reads", "hits", "reaches", "read", "reach", "hit")
    led = sentence.tokens[at].text.startswith("up to") or before
    following = at + 1
    free = following >= len(sentence) or not (
        sentence.tokens[following].is_a("nutrient") or sentence.tokens[following].food is not None
    )
    return bool(told or words & {"cook", "cooked"}) and led and free


def _clause_words(sentence: Sentence, at: int) -> set[str]:
    return {word for place in sentence.clause_of(at) for word in sentence.text_at(place).split()}


def _near_place(sentence: Sentence, at: int, words: set[str]) -> str | None:
    """Return where it is kept: the place named nearest to the time."""
    places = []
    for spot in range(len(sentence)):
        for word in sentence.text_at(spot).split():
            kind = FREEZER if word in _FREEZER else FRIDGE if word in _FRIDGE else OUT if word in _OUT else None
            if (
                kind == OUT
                and word in ("table", "room", "bag", "car")
                and sentence.text_at(spot - 1) not in ("the", "your", "a", "at")
            ):
                continue
            if (
                kind == OUT
                and word == "out"
                and (
                    (sentence.text_at(spot - 1) in ("cool", "spread", "take", "turns", "left") and False)
                    or sentence.text_at(spot + 1) == "of"
                )
            ):
                continue
            if kind is not None:
                same = sentence.clauses[spot] == sentence.clauses[at]
                places.append((not same, abs(spot - at), kind))
    return min(places)[2] if places else None


def _foods(sentence: Sentence) -> tuple[FoodWord, ...]:
    found = []
    for place in range(len(sentence)):
        food = food_at(sentence, place)
        if (
            food is not None
            and is_food(sentence, place)
            and not is_dish(sentence, place)
            and not sentence.tokens[place].is_a("nutrient")
        ):
            found.append(food)
    return tuple(found)


def _time(sentence: Sentence, at: int, said: Quantity, words: set[str]) -> list[Claim]:
    near = _clause_words(sentence, at)
    place = _near_place(sentence, at, words)
    verbs = words & _KEEP
    if said.unit == "hour" and place is None and not words & {"leave", "sit", "sits", "stand", "left"}:
        return []
    if not verbs and place is None:
        return []
    if place is None and not near & _KEEP:
        return []
    if said.unit == "hour" and place == FREEZER:
        return []
    days = Quantity(said.low * _DAYS[said.unit], said.high * _DAYS[said.unit], "day", said.relation)
    text = " ".join(token.text for token in sentence.tokens)
    hot = bool(near & {"hot", "heat", "ninety", "90", "warm"}) or any(
        sentence.tokens[spot].quantity is not None
        and sentence.tokens[spot].amount.unit in ("", "degree")
        and sentence.tokens[spot].amount.value in (90.0, 32.0)
        for spot in sentence.clause_of(at)
    )
    warned = any(word in near for word in ("not", "never")) and (
        place == OUT or "longer" in text or said.relation in ("over", "at most")
    )
    within = said.relation in ("under", "at most") or any(
        sentence.text_at(spot) in ("within", "before", "inside") for spot in (at - 1, at - 2)
    )
    if within and place in (FRIDGE, OUT, None) and said.unit == "hour":
        # "Into the fridge within two hours": what is timed is how long it may be out.
        place = OUT
    if place is None:
        place = FRIDGE
    if said.unit == "month" and words & _FREEZER:
        place = FREEZER
    if said.unit == "hour" and place == FRIDGE and not within:
        return []
    limit = within or warned
    raw = "raw" in words or any("raw" in food.text for food in _foods(sentence)) or "uncooked" in words
    used = {at}
    for spot in sentence.clause_of(at):
        quantity = sentence.tokens[spot].quantity
        if hot and quantity is not None and quantity.value in (90.0, 32.0):
            used.add(spot)
    sentence.used.update(used)
    return [TimeClaim((at,), THE_DISH, False, place, days, hot, limit, warned, _foods(sentence), raw)]


def _vague(sentence: Sentence, words: set[str]) -> list[Claim]:
    """Return times without a number: "overnight on the counter", "all day", "until the weekend"."""
    claims: list[Claim] = []
    for at, token in enumerate(sentence.tokens):
        days = _VAGUE.get(token.text)
        if days is None and sentence.text_at(at - 1) in _WHOLE:
            days = _ALL.get(token.text)
        some_day = token.text in _SOME_DAY and bool(
            {"until", "till", "through"} & {sentence.text_at(spot) for spot in range(at - 4, at)}
        )
        if (days is None and not some_day) or at in sentence.used:
            continue
        place = _near_place(sentence, at, words)
        if some_day:
            if place != OUT and (place or words & {"keep", "keeps", "last", "lasts"}):
                sentence.used.add(at)
                claims.append(TimeClaim((at,), THE_DISH, False, place or FRIDGE, NO_QUANTITY))
            continue
        assert days is not None
        keeps = bool(words & (_KEEP - {"eat", "use", "good", "out", "fine", "cold", "chill", "chilled"}))
        left = bool(words & {"leave", "left", "sit", "sits", "stand", "keep", "keeps", "stay", "stays"})
        if (
            place == OUT
            and left
            and (
                "out" in words
                or words
                & {"counter", "desk", "unrefrigerated", "countertop", "stove", "stovetop", "hob", "table", "sink"}
                or {"room", "temperature"} <= words
            )
        ):
            warned = bool(_clause_words(sentence, at) & {"not", "never"})
            sentence.used.add(at)
            claims.append(
                TimeClaim(
                    (at,), THE_DISH, False, OUT, Quantity(days, days, "day"), False, warned, warned, _foods(sentence)
                )
            )
        elif (
            place in (FRIDGE, FREEZER, None)
            and keeps
            and days >= 2
            and (place or words & {"keep", "keeps", "last", "lasts"})
        ):
            sentence.used.add(at)
            claims.append(
                TimeClaim(
                    (at,),
                    THE_DISH,
                    False,
                    place or FRIDGE,
                    Quantity(days, days, "day"),
                    False,
                    False,
                    False,
                    _foods(sentence),
                )
            )
    return claims


def _degrees(sentence: Sentence, at: int, said: Quantity, words: set[str]) -> list[Claim]:
    near = _clause_words(sentence, at)
    celsius = said.unit == "celsius"
    said = Quantity(said.low * 1.8 + 32, said.high * 1.8 + 32, "degree", said.relation) if celsius else said
    foods = _foods(sentence)
    if sentence.text_at(at).startswith("up to"):  # "warm it up to 165 degrees" is no ceiling
        said = Quantity(said.low, said.high, "degree", "about")
    if near & _OVEN and not near & {"inside", "middle", "internal", "thickest"}:
        return []
    if words & _FREEZER and said.value < 20:
        what = "freezer"
    elif near & (_FRIDGE - {"cold", "chilled"}) and said.value < 100:
        what = "fridge"
    elif words & {
        "reheat",
        "reheats",
        "reheated",
        "reheating",
        "rewarm",
        "leftovers",
        "leftover",
        "warm",
        "again",
        "next",
    } and not near & {"raw"}:
        what = "reheat"
    elif (
        said.value < 200
        and (foods or words & _DONE)
        and (
            words & _DONE or words & {"cook", "cooks", "cooked", "to", "brown"} or said.relation in ("at least", "over")
        )
    ):
        what = "done"
    else:
        return []
    if what == "done" and not words & _DONE and not words & {"cook", "cooks", "cooked", "until", "brown"}:
        return []
    sentence.used.add(at)
    return [
        DegreesClaim((at,), THE_DISH, bool(near & {"not", "never"}) and said.relation == "about", what, said, foods)
    ]


def _thaw(sentence: Sentence, words: set[str]) -> list[Claim]:
    for at, token in enumerate(sentence.tokens):
        if (
            token.text in ("thaw", "thaws", "thawed", "thawing", "defrost", "defrosting", "defrosted")
            and at not in sentence.used
        ):
            place = _near_place(sentence, at, words)
            if place in (FRIDGE, OUT):
                sentence.used.add(at)
                return [ThawClaim((at,), THE_DISH, bool(words & {"not", "never"}), place)]
    return []

"""Keeping and food safety judged by the published advice."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.rules.dish_kind import kind_of_dish
from kit.rules.keeping import keeping
from kit.rules.naming import is_plural, short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.claim import Claim, Finding
from kit.speech.safety.doneness import DONE_GROUPS, DONE_THINGS, doneness, needs
from kit.speech.values import alone, called, present
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish
from kit.texts import number

FRIDGE, FREEZER, OUT = "fridge", "freezer", "out"


_HELD = 140  # hot food on the table or in a slow cooker [°F]; USDA FSIS, "Danger Zone (40 °F - 140 °F)"
_BOILS = 212  # water [°F]
_NOT_NEEDED = 10  # so much more than the rule asks for is another rule [°F]
_OUT_AT_MOST = "food is out of the refrigerator 2 hours at most, 1 hour above 90 °F (32 °C) (USDA FSIS)"
_BAKED = frozenset(("bagel_muffin", "bread", "cookies", "crackers", "coffee_cake", "tortilla_biscuit", "brownie"))
_HARD_COOKED = (7, 7)  # days; USDA FSIS, "Shell Eggs from Farm to Table"
_FROZEN_AT_LEAST = 2  # months that a frozen dish keeps its quality
_FAR_SHORT = 0.6  # of the shortest time: "a day and no longer" is no more what is published
_RAW_DAYS = {"fish": (1, 2), "shellfish": (1, 2), "poultry": (1, 2), "meat": (3, 5)}  # raw; ground meat 1-2: USDA FSIS


@dataclass(frozen=True, slots=True)
class TimeClaim(Claim):
    """The dish, or a food, keeps so long somewhere; `limit`: the words set a limit ("within two hours")."""

    place: str = FRIDGE
    days: Quantity = NO_QUANTITY
    hot: bool = False
    limit: bool = False
    warned: bool = False
    foods: tuple[FoodWord, ...] = ()
    raw: bool = False
    hard_cooked: bool = False  # eggs in their shells
    allowed: bool = False  # "it can sit out for ..."
    thrown: bool = False  # "if it has been out for five hours, throw it away"


@dataclass(frozen=True, slots=True)
class DegreesClaim(Claim):
    """A temperature: of the refrigerator, for reheating, or at which a food, or a thing made of one, is done."""

    what: str = ""
    said: Quantity = NO_QUANTITY
    foods: tuple[FoodWord, ...] = ()
    thing: str = ""
    of_dish: bool = True
    needed: bool = False  # "or it isn't safe": less will not do


@dataclass(frozen=True, slots=True)
class ThawClaim(Claim):
    """Where something is thawed."""

    place: str = ""
    thing: str = "it"


@cache
def _rules() -> Mapping[str, tuple[float, float]]:
    rows = read_rows(files.bundled("data/storage.csv"))
    return {
        row["rule"]: (float(row["value"]), float(row["value_high"] or row["value"])) for row in rows if row["value"]
    }


def _keeps_days() -> str:
    least, most = _rules()["keeps_days"]
    return (
        f"a cooked dish keeps {number(least)} to {number(most)} days in the refrigerator at 40 °F (4 °C) or below "
        "(USDA FSIS)"
    )


def judge(claim: TimeClaim | DegreesClaim | ThawClaim, dish: Dish) -> Finding:
    """Judge keeping and food safety by the published advice."""
    if isinstance(claim, ThawClaim):
        right = (claim.place == FRIDGE) != claim.negated
        return Finding(
            HOLDS if right else OFF,
            "food is thawed in the refrigerator, in cold water or in the microwave, not on the counter (USDA FSIS)",
            None,
            () if right else (f"Thaw {claim.thing} in the refrigerator.", "Thaw it in the refrigerator."),
        )
    if isinstance(claim, DegreesClaim):
        return _judge_degrees(claim, dish)
    if claim.days == NO_QUANTITY and claim.place == OUT:
        return Finding(CANNOT_TELL, f"{_OUT_AT_MOST}: say how long")
    if claim.days == NO_QUANTITY:
        return Finding(CANNOT_TELL, "how long that is depends on the day it was cooked; say how many days")
    if claim.thrown and claim.place != FREEZER:
        return _thrown(claim)
    if claim.thrown:  # "after five days in the freezer, throw it out"
        claim = replace(claim, days=replace(claim.days, relation="at most"))
    found = {FRIDGE: _fridge, FREEZER: _freezer, OUT: _out}[claim.place](claim, dish)
    if claim.negated and found.verdict in (HOLDS, OFF):
        return Finding(OFF if found.verdict == HOLDS else HOLDS, found.because)
    return found


def _thrown(claim: TimeClaim) -> Finding:
    """Judge after how long food is thrown away: not before the advice says so, and not later."""
    if claim.place == OUT:
        because, least, most = _OUT_AT_MOST, *[_rules()["hours_out_hot" if claim.hot else "hours_out"][0] / 24] * 2
    else:
        because, (least, most) = _keeps_days(), _rules()["keeps_days"]
    later = claim.days.relation in ("over", "at least", "well over") and claim.days.high > most + 0.01
    if later or claim.days.high >= least - 0.01:
        return Finding(OFF if later else HOLDS, because)
    return Finding(CANNOT_TELL, f"{because}: it need not be thrown away before")


def _raw_food(claim: TimeClaim, dish: Dish) -> tuple[Food, tuple[float, float]] | None:
    for word in claim.foods:
        for food in present(dish, word) or alone(dish, word):
            if food.group in _RAW_DAYS and (food.state == "raw" or claim.raw) and claim.raw:
                ground = any(word in food.name.lower() for word in ("ground", "sausage"))
                return food, (1, 2) if ground else _RAW_DAYS[food.group]
    return None


def _raw_dish(dish: Dish) -> str:
    return "raw fish, meat or egg" if keeping(dish.numbers.recipe).raw else ""


def _fridge(claim: TimeClaim, dish: Dish) -> Finding:
    raw = _raw_food(claim, dish)
    if raw is not None:
        food, (least, most) = raw
        because = f"raw {short_name(food)} keeps {number(least)} to {number(most)} days in the refrigerator (USDA FSIS)"
    elif claim.hard_cooked:
        least, most = _HARD_COOKED
        because = f"hard-cooked eggs keep {number(most)} days in the refrigerator (USDA FSIS)"
    elif claim.raw and claim.days.high <= _rules()["keeps_days"][1]:
        return Finding(CANNOT_TELL, "how long raw meat, fish or eggs keep is published, and not what is made of them")
    else:
        least, most = _rules()["keeps_days"]
        because = _keeps_days()
        if _raw_dish(dish):
            return Finding(
                CANNOT_TELL if claim.days.high <= 1 else OFF,
                f"{_raw_dish(dish)} is eaten the day it is made; {because} once it is cooked",
            )
        own = dish.talk.keeps_days
        if own is not None and own < claim.days.high <= most:
            return Finding(
                OFF,
                f"the talk says {number(own, 1)} days elsewhere; {because}",
                None,
                ("It keeps {keeps} in the refrigerator.",),
            )
    days = claim.days
    if days.relation in ("over", "at least", "well over"):
        right = days.high <= least if days.relation == "at least" else days.high < most
    else:
        right = days.high <= most + 0.01
    if claim.warned:
        right = days.high >= least - 0.01 if days.relation in ("over", "at most", "about") else right
        if days.high > most + 0.01:
            right = False
    if right and days.relation == "at most" and days.high < _FAR_SHORT * least and not (claim.warned or claim.limit):
        return Finding(CANNOT_TELL, f"{because}, so that it may be kept longer")
    if right:
        return Finding(HOLDS, because)
    own_words = _raw_keeps(called(dish, raw[0]), number(least), number(most)) if raw else ""
    if claim.hard_cooked:
        own_words = f"Hard-cooked eggs keep {number(most)} days in the refrigerator."
    sentences = (own_words,) if own_words else () if claim.raw else ("It keeps {keeps} in the refrigerator.",)
    return Finding(OFF, f"{because}, not {number(days.high, 1)}", None, sentences)


def _raw_keeps(name: str, least: str, most: str) -> str:
    name = name.removeprefix("raw ")
    return f"Raw {name} {'keep' if is_plural(name) else 'keeps'} {least} to {most} days in the fridge."


def _freezer(claim: TimeClaim, dish: Dish) -> Finding:
    low, high = _rules()["freezer_months"]
    months = claim.days.high / 30.4
    because = (
        f"frozen, a cooked dish keeps its quality about {_FROZEN_AT_LEAST} to {number(high)} months; "
        "it stays safe longer (USDA FSIS)"
    )
    instead = (f"Frozen, it keeps its quality for {number(low)} months.",)
    if claim.days.relation in ("under", "at most", "well under") and months < _FROZEN_AT_LEAST:
        short = OFF if months < _FAR_SHORT * _FROZEN_AT_LEAST and not claim.warned else CANNOT_TELL
        return Finding(short, f"{because}, so that it keeps longer", None, instead)
    longer = claim.days.relation in ("over", "well over") and months > low - 0.1
    longer = longer or (claim.days.relation == "at least" and months > low + 0.1)
    if longer and not (claim.warned or claim.limit):
        return Finding(CANNOT_TELL if months <= high + 0.1 else OFF, because)
    if months <= high + 0.1:
        return Finding(HOLDS, because)
    return Finding(OFF, f"{because}, not {number(months)}", None, instead)


def _out(claim: TimeClaim, dish: Dish) -> Finding:
    most = _rules()["hours_out_hot" if claim.hot else "hours_out"][0]
    hours = claim.days.high * 24
    because = _OUT_AT_MOST
    references = set(kind_of_dish(dish.numbers).references)
    if not claim.foods and references and references <= _BAKED:
        return Finding(
            CANNOT_TELL, f"{because}; how long baked goods like these may stand about is not in the kit's advice"
        )
    put = ("Put it into the refrigerator within two hours.",)
    right = hours <= most + 0.01
    above = claim.days.relation in ("over", "at least", "well over") and not (claim.warned or claim.limit)
    if right and above and (claim.days.relation != "at least" or hours >= most - 0.01):  # "fine for over two hours"
        return Finding(OFF if claim.allowed and claim.days.relation != "at least" else CANNOT_TELL, because, None, put)
    if claim.warned and claim.days.relation not in ("at most",):
        right = right if claim.days.relation == "over" else True if hours > most else right
    if right:
        return Finding(HOLDS, because)
    return Finding(OFF, f"{because}, not {number(hours)} hours", None, put)


def _judge_degrees(claim: DegreesClaim, dish: Dish) -> Finding:
    degrees = claim.said.value
    if claim.what == "zone":
        zones = [[_rules()[f"danger_zone_{scale}"][end] for end in (0, 1)] for scale in "fc"]
        right = any(abs(claim.said.low - low) <= 1 and abs(claim.said.high - high) <= 1 for low, high in zones)
        because = "between 40 and 140 °F (4 and 60 °C) germs grow fast (USDA FSIS)"
        return Finding(HOLDS if right != claim.negated else OFF, because)
    if claim.what == "freezer":
        return Finding(HOLDS if degrees <= 0.5 else OFF, "a freezer is kept at 0 °F (-18 °C) or below (USDA FSIS)")
    if claim.what == "fridge":
        limit = _rules()["refrigerator_f"][0]
        right = degrees <= limit + 0.5 and claim.said.relation not in ("over", "at least")
        if claim.negated:
            right = degrees > limit
        return Finding(
            HOLDS if right else OFF,
            f"a refrigerator is kept at {number(limit)} °F (4 °C) or below (USDA FSIS)",
            None,
            () if right else ("Keep the refrigerator at 40 degrees or below.",),
        )
    if claim.what == "hold":
        because = f"hot food is held at {_HELD} °F (60 °C) or above (USDA FSIS)"
        return _floor(claim, _HELD, because, f"Hold it at {_HELD} degrees or above.")
    if claim.what == "reheat":
        limit = _rules()["reheat_f"][0]
        return _floor(
            claim,
            limit,
            f"what is reheated reaches {number(limit)} °F (74 °C) (USDA FSIS)",
            "Reheat it to 165 degrees right through.",
        )
    if claim.thing:
        limit = _rules()[(DONE_THINGS | DONE_GROUPS)[claim.thing]][0]
        because = f"{claim.thing}: done at {number(limit)} °F inside (USDA FSIS); 165 °F when of poultry"
        return _floor(claim, limit, because, f"Cook the {claim.thing} to {number(limit)} degrees inside.")
    known = [pair for word in claim.foods for pair in needs(dish, word)]
    if not known and (cuts := [word for word in claim.foods if word.text.split(" ")[-1] in DONE_THINGS]):  # "lamb chop"
        known = [(word.text, _rules()[DONE_THINGS[word.text.split(" ")[-1]]][0]) for word in cuts]
    if not known:
        said = {piece for word in claim.foods for piece in word.text.split()}
        parts = [part.food for part in dish.numbers.recipe.ingredients if doneness(part.food)]
        named = [food for food in parts if said & set(food.name.lower().replace(",", "").split())]  # "beef cubes"
        meant = named or (parts if claim.of_dish or not claim.foods else [])
        known = [(called(dish, food), doneness(food)) for food in meant]
    if not known:
        return Finding(CANNOT_TELL, "no doneness temperature is published for it here")
    name, limit = max(known, key=lambda pair: pair[1])
    alike = len({degrees for _, degrees in known}) == 1
    what = [f"the {word.text}" for word in claim.foods[:1] if alike] + ["it"] * (not claim.foods) + [f"the {name}"]
    told = tuple(f"Cook {one} to {number(limit)} degrees inside." for one in what)
    return _floor(claim, limit, f"{name} is done at {number(limit)} °F inside (USDA FSIS)", *told)


def _floor(claim: DegreesClaim, limit: float, because: str, *instead: str) -> Finding:
    degrees, relation = claim.said.low, claim.said.relation
    right = degrees >= limit - 0.5
    if degrees > _BOILS and not claim.negated:
        return Finding(OFF, f"{because}; nothing moist gets hotter than {_BOILS} °F (100 °C) inside", None, instead)
    if claim.needed and degrees > limit + _NOT_NEEDED and not claim.negated:
        return Finding(CANNOT_TELL, f"{because}; more than that is not needed to be safe", None, instead)
    if relation in ("under", "at most", "well under"):
        right = False
    if relation in ("nearly",) and degrees <= limit:
        right = False
    if claim.negated:
        right = degrees < limit
    return Finding(HOLDS if right else OFF, because, None, () if right else instead)

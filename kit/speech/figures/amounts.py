"""Spoken amounts: "about 430 calories", "thirty-four grams of protein", "under 100 mg of sodium", "a gram of salt"."""

import re
from dataclasses import dataclass, replace

from kit.food.composition import foods
from kit.rules.spoken import HARDLY_ANY
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.parts import is_dish, is_food
from kit.speech.about.slots import Named, negated, nutrient_before, nutrients_after, share_at
from kit.speech.about.telling import spoons
from kit.speech.claim import THE_DISH, WEIGHT, About, Claim, Edit, Finding
from kit.speech.figures.amounts_of import (
    AMOUNT_UNITS,
    ENERGY_UNITS,
    about_of,
    gapped,
    is_aim,
    only_one,
    part_of_it,
    told_behind,
    unit_of_energy,
)
from kit.speech.figures.amounts_told import sentences, spoken_quantity
from kit.speech.figures.energy_given import energy_from, energy_given
from kit.speech.values import KJ_PER_KCAL, Amount, amount_of, ends, said_thing, unit_of
from kit.speech.words.agreement import fits
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence
from kit.speech.words.tokens import NO_QUANTITY, Quantity
from kit.talk.dish import Dish, measure_grams
from kit.texts import UNKNOWN, number

FAMILY = "amount"
SPOONS = ("tsp", "tbsp")
_OF_SPOONS = {"sugars": "sugar-white", "salt": "salt"}  # "six teaspoons of sugar": the food that fills them
_EXACT = re.compile(r"\bto be (?:exact|precise)\b|\b(?:plus or minus|give or take) (?:nothing|zero|none)\b")


@dataclass(frozen=True, slots=True)
class AmountClaim(Claim):
    """So much of a nutrient; `given_by`: of the energy, only what this nutrient gives."""

    nutrient: str = ""
    said: Quantity = NO_QUANTITY
    start: int = 0
    end: int = 0
    given_by: str = ""


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the amounts that a sentence claims."""
    found: list[Claim] = []
    last_unit = ""
    for at, said in list(sentence.quantities()):
        unit = said.unit
        if not unit and not said.is_fraction and _counts_calories(sentence, at):
            unit = unit_of_energy(sentence)
            said = replace(said, unit=unit)
        if (
            not unit
            and not said.is_fraction
            and last_unit
            and (_of_a_nutrient(sentence, at) or part_of_it(sentence, at) is not None)
        ) or (not unit and not said.is_fraction and last_unit and gapped(sentence, at)):
            said, unit = Quantity(said.low, said.high, last_unit, said.relation), last_unit
        if unit in SPOONS and spoons(sentence, at) and sentence.tokens[at + 2].parts["nutrient"] in _OF_SPOONS:
            filled = Named(sentence.tokens[at + 2].parts["nutrient"], at + 2)
        elif unit not in AMOUNT_UNITS or is_aim(sentence, at):
            continue
        else:
            filled = None
        said = _bounded_by_than(sentence, at, said)
        if said.relation == "about" and _EXACT.search(sentence.plain):
            said = replace(said, relation="exactly")
        giver = energy_from(sentence, at) if unit in ENERGY_UNITS else None
        named = filled or (Named("energy", at) if giver else _nutrient(sentence, at, unit))
        if named is None:
            continue
        last_unit = unit if unit not in ENERGY_UNITS else last_unit
        places = (at,) if named.place == at else (min(at, named.place), max(at, named.place))
        token = sentence.tokens[at]
        told_from = sentence.text_at(at - 1) == "but" and at > 1 and sentence.tokens[at - 2].quantity is not None
        claim = AmountClaim(
            places,
            THE_DISH if _of_the(sentence, at) else about_of(sentence, at, about[at]),
            negated(sentence, at) != _none_of(sentence, at),
            named.nutrient,
            said,
            token.start + len("up to ") * (token.text.startswith("up to ") and said.relation != "at most"),
            0 if told_from or giver else token.end,  # "not 36 but 20 grams" is not mended by another number
            giver.nutrient if giver else "",
        )
        sentence.used.update({at, named.place, giver.place if giver else at, *_per_weight(sentence, at, claim.about)})
        if named.place < at:
            sentence.counted.add(named.place)
        found.append(claim)
        found += _part_of_amount(sentence, about, at, claim)
    return found


_THAN = {"less": "under", "fewer": "under", "lower": "under", "more": "over", "higher": "over"}


def _bounded_by_than(sentence: Sentence, at: int, said: Quantity) -> Quantity:
    """Return an amount as the bound that "than" makes of it: "less sodium than 200 milligrams"."""
    if sentence.text_at(at - 1) != "than" or said.relation != "about":
        return said
    told = [place for place in range(max(0, at - 6), at - 1) if sentence.text_at(place) in _THAN]
    if not told:
        return said
    relation = _THAN[sentence.text_at(told[-1])]
    if sentence.text_at(told[-1] - 1) == "no":  # "no more fat than ten grams"
        relation = "at least" if relation == "under" else "at most"
    return replace(said, relation=relation)


def _of_a_nutrient(sentence: Sentence, at: int) -> bool:
    return sentence.text_at(at + 1) == "of" and sentence.is_a(at + 2, "nutrient")


def _per_weight(sentence: Sentence, at: int, about: About) -> list[int]:
    """Return where the weight stands that an amount is said for: "per hundred grams it's 130 calories"."""
    if about.kind != WEIGHT and about.measure != "g":
        return []
    leads = ("per", "every", "each", "in") if about.measure else ("per", "every", "each")
    return [
        place
        for place in sentence.clause_of(at)
        if place != at
        and (said := sentence.tokens[place].amount).unit in WEIGHTS
        and (sentence.text_at(place - 1) in leads or sentence.text_at(place - 2) == "by")
        and abs(said.value * WEIGHTS[said.unit] - about.count) < 1e-6
    ]


def _part_of_amount(sentence: Sentence, about: list[About], at: int, whole: AmountClaim) -> list[Claim]:
    """Return so many of an amount, which is then the dish's: "the salmon brings eighteen of the 26 grams"."""
    if not _of_the(sentence, at):
        return []
    part = sentence.tokens[at - 3].amount
    sentence.used.add(at - 3)
    said = Quantity(part.low, part.high, whole.said.unit, part.relation)
    return [replace(whole, places=(at - 3, *whole.places), about=about[at], said=said, end=0)]


def _of_the(sentence: Sentence, at: int) -> bool:
    """Return whether so many of an amount stand before it: "eighteen of the twenty-six grams"."""
    part = sentence.tokens[at - 3].amount if at > 2 else NO_QUANTITY
    led = sentence.text_at(at - 2) == "of" and sentence.text_at(at - 1) in ("the", "its", "those", "our", "your")
    return led and part.value > 0 and not part.unit and not part.is_fraction and at - 3 not in sentence.used


def _none_of(sentence: Sentence, at: int) -> bool:
    """Return whether the statement is of none of them: "no plate goes over 450 calories"."""
    first = sentence.clause_of(at)[0]
    return any(
        sentence.text_at(place) == "no" and place + 1 < at and is_dish(sentence, place + 1)
        for place in (first, first + 1)
    )


def _counts_calories(sentence: Sentence, at: int) -> bool:
    """Return whether a bare number counts calories: "calories run between 150 and 250 a bowl"."""
    wise = sentence.is_a(0, "nutrient", "energy") and sentence.text_at(1) == "wise"
    before = Named("energy", 0) if wise else nutrient_before(sentence, at)
    if (
        before is None
        or before.nutrient != "energy"
        or before.place in sentence.used
        or sentence.tokens[before.place].text == "energy"
    ):
        return False
    following = at + 1
    if following < len(sentence) and (is_dish(sentence, following) or is_food(sentence, following)):
        return False
    if any(sentence.tokens[place].quantity is not None for place in range(before.place + 1, at)):
        return False
    sentence.used.add(before.place)
    return True


def _nutrient(sentence: Sentence, at: int, unit: str) -> Named | None:
    energy = unit in ENERGY_UNITS
    after = nutrients_after(sentence, at + 1, frozenset("of the a your total dietary pure worth in plain good".split()))
    if after and not energy and after[0].place not in sentence.used:
        return after[0]
    if not energy and (named := told_behind(sentence, at)) is not None:
        return named
    if energy:
        following = sentence.text_at(at + 1)
        if following in ("from", "of", "as") and after and after[0].nutrient != "energy":
            return None
        return Named("energy", at)
    if sentence.text_at(at + 1) == "of" and not sentence.is_a(at + 2, "pronoun"):
        return None
    part = part_of_it(sentence, at)
    if part is not None:
        return part
    pronoun = sentence.text_at(at + 1) == "of" or sentence.is_a(at + 1, "pronoun")
    before = nutrient_before(sentence, at, whole=pronoun) or only_one(sentence, at)
    if before is None or sentence.is_a(at + 1, "beyond"):
        return None
    between = range(before.place + 1, at)
    if not pronoun and any(
        (q := sentence.tokens[place].quantity) is not None and q.unit in AMOUNT_UNITS and place not in sentence.used
        for place in between
    ):
        return None
    # "Salt-wise, one plate holds": a number of plates between is no amount of it.
    both = not any(sentence.tokens[place].quantity is not None for place in between) and _and_its_share(sentence, at)
    return before if pronoun or both or before.place not in sentence.used else None


def _and_its_share(sentence: Sentence, at: int) -> bool:
    """Return whether an amount is told as a share too: "sodium runs 735 milligrams, close to a third of a day"."""
    joined = sentence.text_at(at + 1) in (",", "or", "—", "–")
    return joined and any(share_at(sentence, place) is not None for place in (at + 2, at + 3) if place < len(sentence))


def in_unit(said: Quantity, name: str) -> Quantity | None:
    """Return a spoken quantity in the nutrient's own unit; None when it cannot be turned into it."""
    unit = unit_of(name)
    factor = {"kcal": {"kcal": 1.0, "kJ": 1 / KJ_PER_KCAL, "MJ": 1000 / KJ_PER_KCAL}}.get(unit, {}).get(said.unit)
    if said.unit in SPOONS and name in _OF_SPOONS:
        factor = measure_grams(foods()[_OF_SPOONS[name]], said.unit)
    if factor is None and said.unit in WEIGHTS and unit in WEIGHTS:
        factor = WEIGHTS[said.unit] / WEIGHTS[unit]
    if factor is None:
        return None
    return Quantity(round(said.low * factor, 9), round(said.high * factor, 9), unit, said.relation, said.is_fraction)


def judge(claim: AmountClaim, dish: Dish) -> Finding:
    """Judge an amount against what there is."""
    if claim.negated and claim.said.low == claim.said.high == 1 and claim.said.relation == "about":
        claim = replace(claim, negated=False, said=replace(claim.said, relation="under"))  # "not one gram of fat"
    name = claim.nutrient
    said = in_unit(claim.said, name)
    if said is None:
        return Finding(CANNOT_TELL, f"{said_thing(name)} is worked in {unit_of(name)}; say it in that unit")
    found = amount_of(dish, claim.given_by or name, claim.about)
    if isinstance(found, Finding):
        return found
    if claim.given_by:
        found = energy_given(found, claim.given_by)
    because = f"{found.begin} {ends(found.of, unit_of(name))} of {said_thing(name)}"
    if claim.given_by:
        because += f" from {said_thing(claim.given_by)}, by the factors 4, 9 and 4"
    if name == "salt":
        because += ", which is sodium x 2.5"
    if found.open_above:
        because += ", at least, since a part of it has no value in the table"
    because = f"{because} ({found.source})"
    if claim.said.relation == "exactly" and not claim.negated:
        return Finding(
            OFF,
            f"{because}: an estimate is never exact",
            _edit(claim, found),
            _told(claim, found),
        )
    result = fits(said, found.of, found.open_above)
    if claim.negated and result is not None:
        result = not result
    if result is None:
        return Finding(CANNOT_TELL, f"{because}: too near {_number(said)} to tell")
    if result:
        return Finding(HOLDS, because)
    return Finding(
        OFF,
        f"{because}, not {_relation(claim.said)}{_number(claim.said)}",
        _edit(claim, found),
        _told(claim, found),
    )


def _relation(said: Quantity) -> str:
    if said.relation in ("about", "exactly", "between"):
        return ""
    return "under " if said.relation == "short of" else f"{said.relation} "


def _number(said: Quantity) -> str:
    text = number(said.low, 3) if said.low == said.high else f"{number(said.low, 3)} to {number(said.high, 3)}"
    return f"{text} {said.unit}".strip()


def _edit(claim: AmountClaim, found: Amount) -> Edit | None:
    words = spoken_quantity(claim.nutrient, found.of, found.open_above)
    if claim.negated or claim.end == 0 or words in (HARDLY_ANY, UNKNOWN) or claim.said.unit != unit_of(claim.nutrient):
        return None
    return Edit(claim.start, claim.end, words)


def _told(claim: AmountClaim, found: Amount) -> tuple[str, ...]:
    return sentences(claim.nutrient, claim.about, found, claim.given_by)

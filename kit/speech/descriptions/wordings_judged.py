"""Content wordings judged by the rules, for the dish, a food in it and a food by itself; what to say instead."""

from collections.abc import Sequence
from itertools import islice

from kit.errors import UnknownNameError
from kit.food.composition import Food, foods
from kit.food.nutrients import nutrients
from kit.rules.beside import AMOUNT
from kit.rules.claim_texts import phrase
from kit.rules.claims import Judgement, judge
from kit.rules.naming import full_name, is_plural, thing_said
from kit.rules.reference import daily_values
from kit.rules.subjects import Subject, of_food
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.rules.wordings import DISH, rule_for
from kit.speech.claim import FOOD, UNKNOWN, Edit, Finding
from kit.speech.descriptions.additions import ADDITIONS, additions
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.proportions.dish_shares_judged import by_what_they_bring
from kit.speech.values import alone, called, choices, not_there, present, said_thing
from kit.talk.dish import Dish
from kit.texts import listing, percent

MUCH = 0.20  # of a day: what "high" asks for of a food, 21 CFR 101.54(b)
HARDLY, NOT_HARDLY = 0.05, 0.10  # of a day in a serving: FDA teaches that 5 % is low
_LEAN = ("lean", "extra lean")
_ALONE = ("high", "good source", "low", "very low", "free")  # wordings that are said of the dish as it is
_FORMS = ("raw", "dry", "cooked", "ready")
_NEAREST = {"good source": ("high",), "high": ("good source",), "free": ("very low", "low"), "very low": ("low",)}


def judge_wording(claim: WordingClaim, dish: Dish, said: frozenset[str]) -> Finding:
    """Judge a content wording.

    Parameters
    ----------
    claim : WordingClaim
        The wording, its nutrient and what it is said of.
    dish : Dish
        The dish as it is now.
    said : frozenset of str
        The nutrients whose amounts are said beside it, which some rules ask for.
    """
    if claim.about.kind == UNKNOWN:
        return Finding(CANNOT_TELL, f'what "{claim.about.words}" holds is not known')
    if claim.wording in ADDITIONS:
        return _turned(claim, additions(claim, dish), dish)
    if claim.wording == "hardly any":
        return _turned(claim, _hardly(claim, dish), dish)
    if claim.about.kind != FOOD:
        return _turned(claim, _of_subject(claim, dish, dish.subject, None, said), dish)
    word = claim.about.foods[0]
    here = present(dish, word)
    if word.inside and not here:
        return not_there(word)
    if not here and claim.about.said_inside:
        return not_there(word)
    if claim.wording in _LEAN and claim.by_itself and word.inside and len(word.outside) > 1:
        here = []  # "pork is lean": which pork?
        options = [dish.food(key) for key in word.outside]
    else:
        options = here or _forms(alone(dish, word))
    if not options:
        return Finding(CANNOT_TELL, f"the table has no {word.text}")
    if len(claim.about.foods) > 1:
        several = [food for one in claim.about.foods for food in (present(dish, one) or _forms(alone(dish, one)))]
        findings = [_turned(claim, _of_food(claim, dish, food, said), dish) for food in several]
        return next(one for verdict in (OFF, CANNOT_TELL, HOLDS) for one in findings if one.verdict == verdict)
    findings = [_turned(claim, _of_food(claim, dish, food, said), dish) for food in options]
    if len({one.verdict for one in findings}) == 1:
        return findings[0]
    told = next(one for one in findings if one.verdict != HOLDS)
    return Finding(
        CANNOT_TELL, f"which {word.text} is meant? {told.because}", choices=choices([word], dish, bool(here))
    )


def _forms(options: Sequence[Food]) -> list[Food]:
    """Return a food with its plain raw, dry or cooked forms, when one food was named without its state."""
    if len(options) != 1 or options[0].state not in _FORMS:
        return list(options)
    named = options[0]
    others = [
        food
        for food in foods().forms(named.base)
        if food.state in _FORMS and food.key != named.key and food.group == named.group
    ]
    return [named, *others[:2]]


def _turned(claim: WordingClaim, finding: Finding, dish: Dish) -> Finding:
    """Return the finding on a denied wording: it holds when the wording does not, and the other way round."""
    if not claim.negated:
        return finding
    if finding.verdict == HOLDS:
        return Finding(OFF, finding.because)
    if "has no US definition" in finding.because and _hardly(claim, dish).verdict != OFF:
        return Finding(CANNOT_TELL, finding.because)  # "not low in carbohydrate" of what has little of it
    return Finding(HOLDS, finding.because) if finding.verdict == OFF else finding


def _of_food(claim: WordingClaim, dish: Dish, food: Food, said: frozenset[str]) -> Finding:
    inside = bool(dish.places([food])) and not claim.by_itself
    subject = of_food(food, dish.grams(food).value if inside else None)
    return _of_subject(claim, dish, subject, food, said)


def _judgement(claim: WordingClaim, dish: Dish, subject: Subject) -> Judgement | str:
    try:
        return judge(claim.wording, claim.nutrient, subject, dish.talk.rules, said=claim.percent or None)
    except UnknownNameError as fault:
        return str(fault)


def _of_subject(claim: WordingClaim, dish: Dish, subject: Subject, food: Food | None, said: frozenset[str]) -> Finding:
    judged = _judgement(claim, dish, subject)
    if isinstance(judged, str):
        return Finding(CANNOT_TELL, judged)
    if judged.verdict == OFF and claim.negated and food is None and _has_much(claim, dish):
        return Finding(CANNOT_TELL, f"{judged.because}; there is much of it all the same")
    if judged.verdict == OFF and claim.negated and claim.wording == "free" and food is None and _has_none(claim, dish):
        return Finding(CANNOT_TELL, f"{judged.because}; there is none of it all the same")
    if judged.verdict == OFF:
        return Finding(OFF, judged.because, _edit(claim, dish, food), _sentences(claim, dish, food))
    if judged.verdict == CANNOT_TELL:
        return Finding(CANNOT_TELL, judged.because)
    return Finding(HOLDS, judged.because + _said_beside(judged, said))


def _has_much(claim: WordingClaim, dish: Dish) -> bool:
    """Return whether a serving has a high share of a day of what the dish is said not to be high in."""
    if claim.wording not in ("high", "good source") or claim.nutrient not in (values := daily_values(dish.talk.rules)):
        return False
    return dish.range_of(claim.nutrient).value >= MUCH * values[claim.nutrient].amount


def _said_beside(judged: Judgement, said: frozenset[str]) -> str:
    """Return what is, or on a label would be, said beside a wording that holds; none of it changes the verdict."""
    unsaid = [one for one in judged.beside if one.what != AMOUNT or one.nutrient not in said]
    told = [f"say {listing([one.words for one in unsaid])} beside it, as the rule wants"] if unsaid else []
    if judged.advice:
        told.append(f"a label would point to {listing(judged.advice)}")
    if judged.worded:
        told.append(f'a label words it "{judged.worded}", as all of its kind are')
    return "".join(f"; {one}" for one in told)


def _name(dish: Dish, food: Food) -> tuple[str, str]:
    inside = bool(dish.places([food]))
    name = called(dish, food) if inside else full_name(food)
    return (f"The {name} in it" if inside else name[:1].upper() + name[1:]), name


def _said(claim: WordingClaim, dish: Dish) -> str:
    """Return what she calls the food, where that is one food of the dish only."""
    words = claim.about.foods
    return words[0].text if len(words) == 1 and len(present(dish, words[0])) == 1 else ""


def _sentence(wording: str, nutrient: str, food: Food | None, dish: Dish) -> str:
    words = phrase(wording, nutrient)
    if food is None:
        return f"It is {words}."
    begin, name = _name(dish, food)
    return f"{begin} {'are' if is_plural(name) else 'is'} {words}."


def as_worded(claim: WordingClaim, dish: Dish) -> str:
    """Return a wording of the dish, or of one food of it, in a sentence; empty where it is of several or of none."""
    found = [food for word in claim.about.foods for food in present(dish, word)] if claim.about.kind == FOOD else []
    if not claim.nutrient or claim.wording not in _ALONE or claim.about.kind == UNKNOWN:
        return ""
    if claim.about.kind == FOOD and (len(found) != 1 or claim.by_itself):
        return ""
    if not found:
        return _sentence(claim.wording, claim.nutrient, None, dish)
    name = _said(claim, dish) or called(dish, found[0])
    return f"The {name} in it {'are' if is_plural(name) else 'is'} {phrase(claim.wording, claim.nutrient)}."


def _holds(wording: str, nutrient: str, food: Food | None, dish: Dish) -> bool:
    rule = rule_for(wording, nutrient, DISH if food is None else "food", dish.talk.rules)
    if rule is None or rule.needs_comparison:
        return False
    subject = dish.subject if food is None else of_food(food, dish.grams(food).value if dish.places([food]) else None)
    judged = judge(wording, nutrient, subject, rules=dish.talk.rules)
    return judged.verdict == HOLDS


def _has_none(claim: WordingClaim, dish: Dish) -> bool:
    """Return whether there is none of what the dish may not be called free of, as with cholesterol beside much fat."""
    return bool(claim.nutrient) and dish.range_of(claim.nutrient).high <= 0


def _edit(claim: WordingClaim, dish: Dish, food: Food | None) -> Edit | None:
    """Return a weaker or stronger wording in her own sentence, when that holds."""
    if claim.adjective or claim.negated or not claim.nutrient:
        return None
    for word in _NEAREST.get(claim.wording, ()):
        if _holds(word, claim.nutrient, food, dish):
            return Edit(claim.start, claim.end, phrase(word, claim.nutrient))
    return None


def _sentences(claim: WordingClaim, dish: Dish, food: Food | None) -> tuple[str, ...]:
    name = claim.nutrient
    found: list[str] = []
    rule = rule_for(claim.wording, name, DISH, dish.talk.rules) if name in nutrients() else None
    if food is None and claim.wording in ("high", "good source") and rule is not None:
        for word in (claim.wording, *_NEAREST.get(claim.wording, ())):
            good = (one for one in by_what_they_bring(dish, name) if _holds(word, name, one, dish))
            found += [_sentence(word, name, one, dish) for one in islice(good, 2)]
    if not name and food is not None and dish.places([food]):
        short = _said(claim, dish) or called(dish, food)
        return (*found, f"The {short} {'bring' if is_plural(short) else 'brings'} {{fat from {food.key}}}.")
    if not name:
        return (*found, "{serving} has {fat}.")
    if food is None:
        return (*found, f"{{serving}} has {{{name}}}.")
    short = _said(claim, dish) or _name(dish, food)[1]
    if dish.places([food]):
        return (
            *found,
            *_next_to_none(dish, food, name, short),
            f"The {short} {'bring' if is_plural(short) else 'brings'} {{{name} from {food.key}}}.",
            f"An ounce of {full_name(food)} has {{{name} in 1 oz of {food.key}}}.",
        )
    return (*found, f"An ounce of {full_name(food)} has {{{name} in 1 oz of {food.key}}}.")


def _next_to_none(dish: Dish, food: Food, name: str, short: str) -> tuple[str, ...]:
    """Return that a food brings hardly any of a nutrient, when it is under 1 % of a day: nobody says "0.16 grams"."""
    day = daily_values(dish.talk.rules).get(name)
    if day is None or dish.brought([food], name).value >= 0.01 * day.amount:
        return ()
    return (f"The {short} {'bring' if is_plural(short) else 'brings'} hardly any {said_thing(name)}.",)


def _hardly(claim: WordingClaim, dish: Dish) -> Finding:
    name, values = claim.nutrient, daily_values(dish.talk.rules)
    about = claim.about.foods if claim.about.kind == FOOD else ()
    day = {"energy": 2000.0, "sugars": 50.0}.get(name) if name not in values else values[name].amount
    if day is None:
        return Finding(CANNOT_TELL, f"{said_thing(name)} has no daily value to measure it by; say the amount")
    of = dish.brought([food for word in about for food in present(dish, word)], name) if about else dish.range_of(name)
    share = of.value / day
    because = f"a serving has {percent(share, 1)} of a day's {thing_said(name)}; 5 % or less counts as little"
    if share <= HARDLY:
        return Finding(HOLDS, because)
    return (
        Finding(OFF, because, None, (f"{{serving}} has {{{name}}}.",))
        if share > NOT_HARDLY
        else Finding(CANNOT_TELL, because)
    )

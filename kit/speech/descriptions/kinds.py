"""Kinds of dish: vegan, vegetarian, plant-based, whole grain."""

from dataclasses import dataclass, replace

from kit.food.composition import Food
from kit.rules.kinds import VEGAN, VEGETARIAN, WHOLE_GRAIN, fits, is_grain, part_fits
from kit.rules.naming import is_plural, short_name
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.about.exceptions import excepted, only_reason
from kit.speech.about.parts import DETERMINERS, after_determiners, dish_named, food_part, is_dish, is_food, leads_on
from kit.speech.about.slots import foods_from, negated
from kit.speech.about.unread import asked
from kit.speech.claim import FOOD, THE_DISH, UNKNOWN, About, Claim, Edit, Finding
from kit.speech.descriptions.kinds_eaters import shuns
from kit.speech.values import alone, called, not_there, present
from kit.speech.words.foods_said import FoodWord
from kit.speech.words.sentence import Sentence, food_at
from kit.talk.dish import Dish
from kit.texts import listing

FAMILY = "kind"
_SEA = ("fish", "shellfish")
_SHUN = ("skip", "avoid", "beware")
_GOES_ON = frozenset(", and or nor . without with except but if because apart".split())
_UNFIT = frozenset("unsuitable unfit unsafe wrong bad limits bounds".split())
_EAT = frozenset("eat eats eating have has".split())
_LISTED = frozenset("and or , some any".split())
_EATEN_BY_VEGETARIANS = (
    frozenset("who that do does also still egg eggs dairy milk cheese butter yogurt honey".split()) | _EAT | _LISTED
)
_ENDS = (".", "!", ";", "")
_SET_APART = frozenset(", except for apart aside from but bar barring besides other than the with without".split())
_CAUSES = ("because of", "thanks to", "due to", "owing to", "on account of", "courtesy of")
_AS_IT_STANDS = frozenset(", as it is stands here though either".split())
_PLAIN = frozenset("vegan vegetarian pescatarian".split())


@dataclass(frozen=True, slots=True)
class KindClaim(Claim):
    """The dish, or a food, is of a kind."""

    kind: str = ""
    but: tuple[FoodWord, ...] = ()
    word: str = ""  # hers: "vegan"
    start: int = 0  # where what she sets apart begins, else where that may be put; 0 where nothing may
    end: int = 0

    @property
    def said(self) -> str:
        """The kind in her word."""
        return self.word or self.kind


def read(sentence: Sentence, about: list[About]) -> list[Claim]:
    """Return the kinds that a sentence claims."""
    claims: list[Claim] = []
    for at in sentence.places("kind"):
        if at in sentence.used or (
            sentence.text_at(at - 1) in ("any", "our", "for") and sentence.text_at(at + 1) in ("friends", "guests")
        ):
            continue
        if sentence.text_at(at - 1) in ("of", "in", "with") and sentence.is_a(at - 2, "wording"):
            sentence.used.update({at - 2, at})  # "a good source of whole grains": no rule says how much that is
            claims.append(asked(sentence, (at - 2, at)))
            continue
        if _does_something(sentence, at):
            continue  # "whole grains protect your heart"
        kind = sentence.tokens[at].parts["kind"]
        people = sentence.text_at(at) in ("vegans", "vegetarians", "pescatarians")
        eaten = _who_eat(sentence, at)
        if eaten and not (kind == VEGETARIAN and _EATEN_BY_VEGETARIANS.issuperset(map(sentence.text_at, eaten))):
            sentence.used.update({at, *eaten})
            claims.append(asked(sentence, (at, *eaten)))
            continue
        but, places = only_reason(sentence, at)
        if but:  # "the honey is the only reason it isn't vegan": all but the honey is
            sentence.used.update({at, *places})
            claims.append(KindClaim((at,), THE_DISH, False, kind, tuple(but)))
            continue
        but, places = excepted(sentence, at)
        sentence.used.update({at, *places, *eaten})
        if people and _denied_twice(sentence, at):
            claims.append(asked(sentence, (at,), (max(0, at - 4), at)))
            continue
        shunned = shuns(sentence, at) if not people else False
        if shunned is None:
            claims.append(asked(sentence, (at,), (max(0, at - 3), min(at + 4, len(sentence) - 1))))
            continue
        denied = negated(sentence, at) or (people and _warned(sentence, at)) or shunned
        word = sentence.text_at(at) if not people and sentence.text_at(at) in _PLAIN else ""
        subject = THE_DISH if eaten else _subject(sentence, about, at, denied)
        end = (0, 0) if people else _behind(sentence, at, places)
        claims.append(KindClaim((at,), subject, denied, kind, tuple(but), word, *end))
    claims += _all_of_whole_grain(sentence)
    for at, token in enumerate(sentence.tokens):
        if token.text not in ("animal", "animals") or at in sentence.used:
            continue
        # "Nothing in here comes from an animal."
        none = [
            spot for spot in range(max(0, at - 8), at) if sentence.text_at(spot) in ("nothing", "none", "no", "not")
        ]
        if none:
            but, places = excepted(sentence, at)
            sentence.used.update({none[0], at, *places})
            claims.append(KindClaim((none[0], at), THE_DISH, False, "plant-based", tuple(but)))
    return claims


def _behind(sentence: Sentence, at: int, apart: list[int]) -> tuple[int, int]:
    """Return from where to where what does not fit may be set apart: "it's vegan[ apart from the feta]."."""
    end, last = sentence.tokens[at].end, max(apart, default=0)
    if sentence.text_at(at - 1) in ("a", "an", "any", "for", "to"):
        return (0, 0)
    if last > at:
        told = all(text in _SET_APART for text in sentence.texts[at + 1 : min(apart)])
        return (end, sentence.tokens[last].end) if told and sentence.text_at(last + 1) in _ENDS else (0, 0)
    return (end, end) if sentence.text_at(at + 1) in _ENDS and not apart else (0, 0)


def _who_eat(sentence: Sentence, at: int) -> range:
    """Return the places of who is meant of those who eat so: "vegetarians who eat eggs", "a vegan that eats honey"."""
    verb = next((spot for spot in (at + 2, at + 3, at + 4) if sentence.text_at(spot) in _EAT), None)
    if sentence.text_at(at + 1) not in ("who", "that") or verb is None:
        return range(0)
    end = verb
    while sentence.is_a(end + 1, "food") or sentence.is_a(end + 1, "allergen") or sentence.text_at(end + 1) in _LISTED:
        end += 1
    return range(at + 1, end + 1)


def _does_something(sentence: Sentence, at: int) -> bool:
    """Return whether whole grains begin a statement of what they do, not of what is of that kind."""
    opens = sentence.text_at(at) in ("whole grains", "wholegrains") and at - sentence.clause_of(at)[0] <= 1
    return opens and sentence.text_at(at + 1) not in ("", ".", ",", "!", "only", "are", "all", "throughout")


def _all_of_whole_grain(sentence: Sentence) -> list[Claim]:
    """Return flour, pasta or bread of which all is said to be whole grain: "made with all whole-grain flour"."""
    found: list[Claim] = []
    for at in sentence.places("food"):
        whole = sentence.text_at(at).startswith(("whole grain", "whole wheat", "wholegrain"))
        before = sentence.text_at(at - 1)
        if (
            whole
            and at not in sentence.used
            and (before in _NOTHING_ELSE or sentence.tokens[at - 1].amount.unit == "%")
        ):
            sentence.used.update({at - 1, at})
            if sentence.text_at(at - 2) in _WITH and sentence.text_at(at - 3) != "made":
                found.append(asked(sentence, (at - 2, at)))  # "using all whole-wheat flour" is another dish
                continue
            found.append(KindClaim((at - 1, at), THE_DISH, negated(sentence, at - 1), "whole grain"))
    return found


_WITH = ("using", "use", "with", "if")
_NOTHING_ELSE = ("all", "only", "nothing but", "entirely", "purely", "just", "solely")


def _subject(sentence: Sentence, about: list[About], at: int, denied: bool) -> About:
    """Return what is said to be of a kind; "not vegan because of the honey" says it of the honey."""
    why = at + 1
    while sentence.text_at(why) in _AS_IT_STANDS:
        why += 1
    if denied and sentence.text_at(why) in _CAUSES:
        over = why + 1 + (sentence.text_at(why + 1) in DETERMINERS)
        foods, places = foods_from(sentence, over, sentence.clause_of(over)[-1] + 1)
        if foods:
            sentence.used.update(places)
            return About(FOOD, 1.0, tuple(foods), said_inside=True)
    for place in range(at + 1, min(len(sentence), at + 4)):
        if is_dish(sentence, place):
            return dish_named(sentence, place)
        if not denied and leads_on(sentence, place):
            break
        if is_food(sentence, place) and not is_dish(sentence, place + 1):
            return About(FOOD, 1.0, food_part(sentence, place).foods)
        if sentence.text_at(place) in _GOES_ON:
            break
    subject = about[at]
    if subject.kind == FOOD:
        return About(FOOD, 1.0, subject.foods, or_dish=subject.or_dish)
    return subject if subject.kind == UNKNOWN else THE_DISH


def _warned(sentence: Sentence, at: int) -> bool:
    """Return whether those people are told to leave it: "don't serve it to vegans", "vegetarians can't"."""
    shunned = [spot for spot in sentence.clause_of(at) if sentence.text_at(spot) in _SHUN]
    near = [sentence.text_at(place) for place in range(at + 1, min(at + 4, len(sentence)))]
    before = {sentence.text_at(place) for place in range(max(0, at - 6), at)}
    return (
        "not" in near
        or sentence.text_at(at - 3) == "no"  # "no good for vegetarians"
        or bool(before & {"not", "never", "nor", "skip", "avoid", *_UNFIT})
        or any(_shuns_dish(sentence, spot) for spot in shunned)
    )


def _denied_twice(sentence: Sentence, at: int) -> bool:
    """Return whether it is denied to be unfit for them: "it is not unsuitable for vegetarians"."""
    before = {sentence.text_at(place) for place in range(max(0, at - 6), at)}
    return not before.isdisjoint(_UNFIT) and not before.isdisjoint(("not", "never", "no"))


def _shuns_dish(sentence: Sentence, at: int) -> bool:
    """Return whether it is the dish that they skip: "skip it", and not "skip the salt"."""
    over = after_determiners(sentence, at + 1)
    return food_at(sentence, over) is None or is_dish(sentence, over)


def _used(dish: Dish) -> list[Food]:
    return list({part.food.key: part.food for part in dish.numbers.recipe.ingredients if part.grams > 0}.values())


def _fits(kind: str, food: Food, dish: Dish) -> bool | None:
    if kind == "plant-based":
        return fits(food, VEGAN)
    if kind == "vegetarian":
        return fits(food, VEGETARIAN)
    if kind == "meatless":  # cheese made with rennet is no meat; of fish not everybody says so
        return True if food.group == "dairy" else None if food.group in _SEA else fits(food, VEGETARIAN)
    if kind == "pescatarian":
        return True if food.group in _SEA else fits(food, VEGETARIAN)
    parts = [part for part in dish.numbers.recipe.ingredients if part.food.key == food.key and part.grams > 0]
    found = [part_fits(part, WHOLE_GRAIN) for part in parts] or [fits(food, WHOLE_GRAIN)]
    return False if False in found else None if None in found else True


def judge(claim: KindClaim, dish: Dish) -> Finding:
    """Judge a kind by the facts of each food."""
    if claim.about.kind == UNKNOWN:
        return Finding(CANNOT_TELL, f'what is in "{claim.about.words}" is not known')
    absent = [word for word in claim.about.foods if claim.about.said_inside and not present(dish, word)]
    absent += [word for word in claim.but if not present(dish, word)]
    if absent:
        return not_there(absent[0])  # "not vegan because of the butter", "vegan apart from the butter"
    finding = _judge_kind(claim, dish)
    if not claim.negated:
        return finding
    if claim.about.kind == FOOD and len(claim.about.foods) > 1:  # each of them has to be no such food
        each = [_judge_kind(replace(claim, about=About(FOOD, 1.0, (word,))), dish) for word in claim.about.foods]
        others = [one for one in each if one.verdict != OFF]
        finding = others[0] if others else finding
        if finding.verdict == HOLDS:
            return Finding(OFF, finding.because)
    if finding.verdict == HOLDS:
        names = listing([word.text for word in claim.about.foods]) if claim.about.kind == FOOD else ""
        it_is = f"The {names} {'are' if is_plural(names) or len(claim.about.foods) > 1 else 'is'}" if names else "It is"
        return Finding(OFF, finding.because, None, (f"{it_is} {claim.said}.",))
    return Finding(HOLDS, finding.because) if finding.verdict == OFF else finding


def _judge_kind(claim: KindClaim, dish: Dish) -> Finding:
    kind = claim.kind
    foods = _used(dish)
    if claim.about.kind == FOOD:
        foods = [food for word in claim.about.foods for food in (present(dish, word) or alone(dish, word))]
    excepted = {key for word in claim.but for key in (*word.inside, *word.outside)}
    apart = [food for food in foods if food.key in excepted]
    foods = [food for food in foods if food.key not in excepted]
    if kind == "whole grain":
        foods = [food for food in foods if is_grain(food)]
        if not foods:
            return Finding(OFF, "there is no grain in it")
    against = [food for food in foods if _fits(kind, food, dish) is False]
    unknown = [food for food in foods if _fits(kind, food, dish) is None]
    if against:
        names = listing([called(dish, food) for food in against])
        verb = "are" if len(against) > 1 or is_plural(names) else "is"
        because = f"the {names} {verb} not {kind}, by the facts of each food"
        if claim.about.kind == FOOD or len(against) == len(foods):
            return Finding(OFF, because)
        what = "All the grain in it" if kind == "whole grain" else "Everything in it"
        also = [food for food in apart if _fits(kind, food, dish) is False]
        names = listing([called(dish, food) for food in (*also, *against)])
        edit = Edit(claim.start, claim.end, f" except for the {names}") if claim.end and not claim.negated else None
        return Finding(
            OFF, because, edit, (f"{what} is {claim.said} except for the {names}.", f"It is not {claim.said}.")
        )
    if unknown or not foods:
        names = listing([short_name(food) for food in unknown]) or "what is meant"
        return Finding(CANNOT_TELL, f"nothing is known about the {names}: what does the package say?")
    told = (
        f"all {len(foods)} foods are"
        if len(foods) > 1
        else f"{short_name(foods[0])} {'are' if is_plural(short_name(foods[0])) else 'is'}"
    )
    return Finding(HOLDS, f"{told} {kind}, by the facts of each food")

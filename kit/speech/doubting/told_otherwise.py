"""Turns of speech by which a claim is told otherwise than it was read: they are asked about beside it."""

import re
from collections.abc import Iterator, Sequence

from kit.speech.about.parts import after_determiners, before_determiners
from kit.speech.about.unread import asked
from kit.speech.allergens.allergens_judged import AllergenClaim
from kit.speech.changes.changes_said import AMOUNT, LEAVE_OUT, SaidChange
from kit.speech.changes.effects_judged import EffectClaim
from kit.speech.claim import Claim
from kit.speech.descriptions.kinds import KindClaim
from kit.speech.descriptions.wordings_claim import WordingClaim
from kit.speech.doubting.counted import AMOUNTS, COUNTED
from kit.speech.doubting.told_numbers import numbers_told
from kit.speech.figures.amounts import AmountClaim
from kit.speech.figures.comparisons_claim import ComparisonClaim
from kit.speech.proportions.day_shares import DayShareClaim
from kit.speech.proportions.dish_shares_judged import DishShareClaim
from kit.speech.proportions.energy_shares import EnergyShareClaim
from kit.speech.safety.keeping_judged import DegreesClaim, TimeClaim
from kit.speech.words.sentence import Sentence, food_at

_KINDS = (AllergenClaim, KindClaim, WordingClaim)
_SAFETY = (DegreesClaim, TimeClaim)
_ROUGHLY = r"(?:only |just |about |around |roughly |some |nearly |almost |a little |over |under |close to |an? )*"
# By a word that stands in each: what is said, and the claims beside which it is asked about.
_TURNS: Sequence[tuple[frozenset[str], re.Pattern[str], tuple[type[Claim], ...]]] = tuple(
    (frozenset(gates.split()), re.compile(pattern), kinds)
    for gates, pattern, kinds in (
        ("lack lacks", r"\blacks?\b", (AmountClaim, DayShareClaim, DishShareClaim)),
        ("lack lacks", r"\blacks? \w+ , (?:which|that|and (?:those|that|they))\b", (AllergenClaim,)),
        (
            "free",
            rf"\bfree of {_ROUGHLY}(?:\d|\w+ (?:hundred|thousand|calorie|gram|milligram|percent))",
            (AmountClaim,),
        ),
        (
            "away off",
            rf"(?<!leaving )(?<!that )\btakes? (?:away|off) {_ROUGHLY}(?:[\w.,-]+ ){{1,6}}"
            r"(?:calorie|gram|milligram)s?\b",
            (AmountClaim,),
        ),
        (
            "neither",
            r".+\b(?:is|are|of|do|does|has|have) neither(?= ?[.,;!]| safe| done|$)|.+[:;,] neither (?:is|are|of)\b",
            (*_KINDS, *_SAFETY),
        ),
        ("one", r".+\b(?:is|are|of) only one\b", (*_KINDS, *_SAFETY)),
        (
            "freeze frozen",
            r"\b(?:not|never)(?: be| really| even)? (?:freeze|frozen)\b"
            r"(?! (?:it |them )?(?:again|for (?:more|longer)))",
            (TimeClaim,),
        ),
        (
            "out",
            r"\b(?:should|can|may|must|could|will|ought to|has to) (?:sit|stand|stay|be left|be kept) out\b",
            (TimeClaim, DegreesClaim),
        ),
        (
            "belong belongs goes go put",
            r"\b(?:belongs?|goes|go|put (?:it|them|the rest|what is left)) (?:back )?(?:in|into|on|onto|to) the "
            r"(?:counter|countertop|cupboard|pantry|car|garage|shelf|table|windowsill|larder|porch)\b",
            _SAFETY,
        ),
        (
            "after beyond past",
            r"\b(?:nobody|no one|never|not)\b.*\bafter (?:it|they)\b|\bafter you (?:eat|serve|ate|served)\b"
            r"|\b(?:have|eat|use|finish|drink|serve)(?: \w+){0,2} (?:after|beyond|past) [\w -]+ (?:hour|day|week)s?\b",
            _SAFETY,
        ),
        (
            "theory paper best worst",
            r"\b(?:in theory|on paper|at (?:best|worst))(?= ?[.,;!:]|$)",
            (*COUNTED, *_KINDS, ComparisonClaim, EffectClaim),
        ),
        (
            "entirely solely purely exclusively wholly",
            r", (?:entirely|solely|purely|exclusively|wholly) (?:from )?the \w+(?: \w+)?(?= ?[.!]|$)",
            (EnergyShareClaim, AmountClaim, DayShareClaim),
        ),
        ("weight volume", r"\bby (?:weight|volume)\b", (AllergenClaim, KindClaim)),
        ("cooking baking", r"\bbefore (?:cooking|baking)\b", AMOUNTS),
        ("over", r"\bwith (?:the|some|half the) \w+(?: \w+)? left over\b", AMOUNTS),
        ("but", r"\bbut not the \w+(?: \w+)?(?= ?[.!]|$)", AMOUNTS),
        ("version", r"\b(?:in|for) the (?:\w+ ){1,3}version\b", (*COUNTED, *_KINDS)),
        ("table family crowd", r"\bfor the (?:whole |entire )?(?:table|family|crowd)(?= ?[.,;!]|$)", (AmountClaim,)),
        ("again", r"\band the same again\b", AMOUNTS),
        ("lid uncovered", r"\bwith the lid off\b|\bwithout (?:a|the|its) lid\b|\buncovered\b", (TimeClaim,)),
        (
            "counter table countertop",
            r"\bin the (?:fridge|refrigerator|freezer) ?,? on the (?:counter|table|countertop)\b",
            (TimeClaim,),
        ),
        ("day", r"^(?:and |so )?a whole day (?:is|are|has|gives?|gets?|brings?|holds?|comes?)\b", COUNTED),
        ("lower cooler less", r", (?:that|which) is (?:lower|cooler|less) than for\b", (DegreesClaim,)),
        ("pink", r"\b(?:some|the|a little|a bit of|slightly|little|plenty of|all the) pink is\b", _SAFETY),
        (
            "way through",
            r"\b(?:not|hardly|none|half|almost|nearly|part|partway|barely)(?: all| any| of| quite)* "
            r"(?:the way|through)\b",
            (DegreesClaim,),
        ),
        (
            "degree degrees",
            r"(?<!not )(?<!no )(?<!never )\b(?:a|one|two|five|ten|few|some) degrees? "
            r"(?:less|lower|under|below|short|shy)\b",
            _SAFETY,
        ),
        ("gluten", r"\b(?:nothing|none|no \w+) without (?:any )?gluten\b", (AllergenClaim,)),
        (
            "it this them",
            r"^(?:and |but |so )?(?:hardly any|little|very little|not all|none|some|most|half|part|much|a little) "
            r"of (?:it|this|them|the \w+) (?:is|are)\b",
            (KindClaim,),
        ),
        (
            "grain grains",
            r"\b(?:none|half|some|hardly any|little|not all|not|most|a little|few)(?: of)? "
            r"(?:the|its) (?:only )?grains?\b"
            r"|\bwithout whole grains?\b|\brefined (?:grains?|flour)\b",
            (*_KINDS,),
        ),
        ("any", r"\bwith any\b", (KindClaim, AllergenClaim)),
        (
            "anything other else",
            r"^(?:less|fewer|little) of\b.*\bthan (?:from )?any",
            (ComparisonClaim, DishShareClaim),
        ),
        (
            "behind",
            r"\b(?:most|main|biggest|largest)\b.*, (?:right |just |close |well |far )*behind\b",
            (DishShareClaim,),
        ),
        ("every one", r"\b(?:not|hardly|nearly|almost) every one of\b", COUNTED),
        (
            "ounces ounce kilogram kilograms kilo kilos pound pounds",
            r"(?:\bsalt|sugars?|fat|protein|carbs?|carbohydrates?|fiber|sodium|potassium|calcium|saturates)\b[ ,:]*"
            r"(?:is |are |has |comes to |at |about |around )*[\w.-]+(?: [\w.-]+)? "
            r"(?:ounces?|kilograms?|kilos?|pounds?)\b"
            r"(?! of)|\b(?:ounces?|kilograms?|kilos?|pounds?) of (?:salt|sugars?|fat|protein|carbs?|"
            r"carbohydrates?|fiber|sodium|potassium|calcium|cholesterol|iron)\b|\b(?:there|it) "
            r"(?:is|are|has) [\w -]*(?<!per )(?<!an )(?<!every )(?<!each )(?:ounces?|kilograms?|"
            r"kilos?)(?= ?[.,;!]|$)",
            (Claim,),
        ),
        (
            "roll bread milk toast salad soda juice wine beer dessert",
            r"(?:\ball told |, |^|[a-z] )(?<!well )(?<!good )(?<!great )with "
            r"(?:an? |some )?(?:\w+ )?(?:slice |glass |piece |side |cup )?(?:of )?"
            r"(?:roll|bread|milk|toast|salad|soda|juice|wine|beer|dessert)(?= ?[.,;!]|$)",
            (AmountClaim, DayShareClaim, AllergenClaim, KindClaim),
        ),
    )
)
_RISES = re.compile(
    r"\b(?:climbs?|rises?|goes up|go up|jumps?|increases?|soars?|shoots up|(?:are|is|be) up) (?:to|by)\b"
    r"|\b(?:takes?|brings?|bring|pushes|puts?) (?:the |your |its )?\w+ up to\b|\bgo(?:es)? up to\b"
)
_IF_YOU = re.compile(
    r"\b(?:if|when|once|as long as) (?:you|we|i) (?:use|rinse|double|halve|triple|drain|skin|peel|swap|add)s? "
    r"(?:\w+ )?(?:less|more|half|twice|the|some|no) \w+"
)
_CAUSED = ("thanks to", "because of", "due to", "owing to")


def told_otherwise(sentence: Sentence, claims: Sequence[Claim], change: SaidChange | None) -> list[Claim]:
    """Return what is asked about where a claim is told otherwise than it was read.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    claims : sequence of Claim
        What every family has read in it.
    change : SaidChange or None
        The change of the dish that it names.
    """
    ways = (_turned, _and_all, _of_the_cause, _unknown_milk, _ahead_of, _joined_before, numbers_told)
    found = [claim for way in ways for claim in way(sentence, claims)]
    if change is None and not sentence.words.isdisjoint(("if", "when", "once")):
        told = [one for one in claims if isinstance(one, (*COUNTED, *_KINDS))]
        found += [asked(sentence, one.places) for one in told[:1] if _IF_YOU.search(sentence.plain)]
    less = change is not None and (change.kind == LEAVE_OUT or (change.kind == AMOUNT and change.factor < 1))
    if less and any(isinstance(one, (AmountClaim, EffectClaim)) for one in claims):
        rise = _RISES.search(sentence.plain)
        found += [asked(sentence, one.places) for one in claims if rise and isinstance(one, (AmountClaim, EffectClaim))]
    return found


def _turned(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    for gates, pattern, kinds in _TURNS:
        if gates.isdisjoint(sentence.words):
            continue
        told = [claim for claim in claims if isinstance(claim, kinds) and (kinds == (Claim,) or not claim.negated)]
        told = [claim for claim in told if not (isinstance(claim, AllergenClaim) and claim.free and "lack" in gates)]
        if told and pattern.search(sentence.plain) is not None:
            yield asked(sentence, told[0].places)


def _and_all(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield a food that is not in the dish and is told to be counted in: "430 calories, octopus and all"."""
    if not any(isinstance(claim, AMOUNTS) for claim in claims):
        return
    for at in sentence.where(("and",), 1):
        food = food_at(sentence, at - 1)
        if sentence.text_at(at + 1) == "all" and food is not None and not food.inside:
            yield asked(sentence, (at - 1, at + 1))


def _of_the_cause(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield a food that is not in the dish and is said to be why: "thanks to the octopus there's more than a day's"."""
    for at in sentence.where(_CAUSED):
        over = at + 1 + (sentence.text_at(at + 1) in ("the", "all", "our"))
        food = food_at(sentence, over)
        if claims and food is not None and not food.inside:
            yield asked(sentence, (at, over))


def _unknown_milk(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield a percentage before a food that no food of that name has: "20% milk"."""
    for at in range(len(sentence) - 1) if claims and "%" in sentence.text else ():
        if _PERCENT.fullmatch(sentence.text_at(at)) and food_at(sentence, at + 1) is not None:
            yield asked(sentence, (at, at + 1))


_PERCENT = re.compile(r"\d{1,2}%")


def _ahead_of(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield a food that is not in the dish, and that the main source is said to be ahead of."""
    ranked = any(isinstance(claim, DishShareClaim) and claim.rank for claim in claims)
    for at in sentence.where(("ahead", "ahead of")) if ranked else ():
        over = after_determiners(sentence, at + 1, ("of",))
        food = food_at(sentence, over)
        if food is not None and not food.inside:
            yield asked(sentence, (at, over))


def _joined_before(sentence: Sentence, claims: Sequence[Claim]) -> Iterator[Claim]:
    """Yield a food that is joined before the one that is compared: "mustard and the mayonnaise has more fat than"."""
    taken = {at for claim in claims for at in claim.places} | sentence.used
    for claim in claims:
        if not isinstance(claim, ComparisonClaim) or len(claim.about.foods) != 1:
            continue
        named = [at for at in range(min(claim.places)) if food_at(sentence, at) == claim.about.foods[0]]
        link = before_determiners(sentence, named[-1]) if named else 0
        other = food_at(sentence, link - 1) if sentence.text_at(link) in ("and", "or", "plus") else None
        if other is not None and link - 1 not in taken and not sentence.is_a(link - 1, "nutrient"):
            yield asked(sentence, (link - 1, named[-1]))

"""What holds of any sentence."""

import os
import re
from collections import defaultdict
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kit.rules.verdicts import CANNOT_TELL, HOLDS, NOTHING_TO_CHECK, OFF, VERDICTS
from kit.speech.checking import check_sentence
from kit.speech.claim import THE_DISH
from kit.speech.figures.amounts import AmountClaim
from kit.speech.reading import read
from tests.speech.corpus import SETS, dish, rows

ROWS = [row for name in SETS for row in rows(name)]
CLAIMS, KITCHEN = defaultdict(list), defaultdict(list)
for one in ROWS:
    (KITCHEN if one["expected"] == NOTHING_TO_CHECK else CLAIMS)[one["dish"]].append(one["say"])
NOT_WRONG = (HOLDS, NOTHING_TO_CHECK)
WORSE_FIRST = (OFF, CANNOT_TELL, HOLDS, NOTHING_TO_CHECK)
# Pairs of a statement and its denial.
DENIED = (
    ("This plate is low in fat.", "This plate is not low in fat."),
    ("It's vegan.", "It isn't vegan."),
    ("It's dairy-free.", "It isn't dairy-free."),
    ("The bulgur in it is high in fiber.", "The bulgur in it is not high in fiber."),
    ("A plate has 430 calories.", "A plate does not have 430 calories."),
    ("The oil is the main source of fat.", "The oil is not the main source of fat."),
    ("Most of the fiber comes from the bulgur.", "It is not true that most of the fiber comes from the bulgur."),
    ("It contains milk.", "It does not contain milk."),
    ("Olive oil has more fat than chicken breast.", "Olive oil does not have more fat than chicken breast."),
    ("It serves four.", "It does not serve four."),
)
NUMBERS = (
    ("It has about 34 grams of protein.", "It has about thirty-four grams of protein."),
    ("It has 1,720 calories.", "It has one thousand seven hundred and twenty calories."),
    ("It has 16.5 grams of fat.", "It has sixteen and a half grams of fat."),
    ("50 percent of the fiber comes from the bulgur.", "Fifty percent of the fiber comes from the bulgur."),
    ("It keeps 4 days in the fridge.", "It keeps four days in the fridge."),
    ("It serves 4.", "It serves four."),
    ("It has 1/2 a gram of salt.", "It has half a gram of salt."),
)
PRONOUN = re.compile(r"(?:it|they|that|these|those|this|call it)\b", re.IGNORECASE)
# `TALK_KIT_TRIES=5000` for a long run, of others each time.
TRIES = settings(max_examples=int(os.environ.get("TALK_KIT_TRIES", "60")), deadline=None)


@cache
def verdict(say, of="main"):
    return check_sentence(say, dish(of), find_instead=False).verdict


def joined(first, second, link=", and"):
    return f"{first.rstrip('.!?')}{link} {second[:1].lower()}{second[1:]}"


def of_one_dish(*tables):
    """A dish, and a sentence about it from each of some tables."""
    known = sorted(set.intersection(*(set(table) for table in tables)))
    return st.sampled_from(known).flatmap(
        lambda name: st.tuples(st.just(name), *(st.sampled_from(table[name]) for table in tables))
    )


@TRIES
@given(of_one_dish(CLAIMS, CLAIMS))
def test_joining_two_sentences_never_gives_a_better_verdict_than_the_worse_of_the_two(drawn):
    name, first, second = drawn
    worse = min(verdict(first, name), verdict(second, name), key=WORSE_FIRST.index)
    # "They" may be who the first was about, and behind a change what follows may be about the changed dish.
    alone = not PRONOUN.match(second)
    changes = any(one.change is not None for one in read(first, dish(name)))
    if alone and not changes:
        better = [
            say
            for say in (joined(first, second), joined(first, second, " and"))
            if verdict(say, name) == HOLDS and worse not in NOT_WRONG
        ]
        assert better == []
    if alone:
        assert verdict(f"{first} {second}", name) == worse


# Joined by a bare "and": a word of one half ("no", "not", a food) may be taken to belong to the other.
JOINED = (
    ("haddock", "Is it low in sodium? Sadly not", "leave it to cool on the counter overnight, then chill it."),
    ("pork", "A slice or two can still be a bit pink at 145", "skip the soy sauce, no doubt about it."),
    ("haddock", "The fish is done as soon as it turns white", "give it a day or two in the fridge, no more."),
    ("pork", "Leave out the cashews and there are no tree nuts", "a slice or two can still be a bit pink at 145."),
    (
        "pork",
        "Muslims and Jews won't eat this one as it stands",
        "marinate the raw pork on the counter for four hours.",
    ),
    ("pork", "Pork is lean", "Muslims won't eat this one."),
    ("satay", "Got egg in it? Not a bit", "vegans can eat it."),
    ("satay", "You won't find any soy in here", "egg? None at all."),
    ("barley", "The barley in it is high in fiber", "no nuts in this one."),
    ("turkey", "The sweet potatoes in it are rich in vitamin A", "everything in this skillet is vegetarian."),
    (
        "nicoise",
        "Perfect for vegans if you leave out the tuna",
        "if you skip the salt you take off a third of the sodium.",
    ),
    ("cornbread", "Sugar-free", "the butter brings nearly three quarters of the fat."),
    ("cornbread", "Most of the cholesterol's from the eggs", "sugar-free."),
    ("groundnut", "Most of the fat's from the coconut oil", "the peanut butter's behind seventy percent of the fat."),
    ("redpot", "The only allergen is milk", "there are no allergens at all."),
    ("redpot", "That's 285 calories for two", "put it in the fridge within two hours."),
    ("redpot", "Up to 300 calories a bowl", "more of the protein comes from the beef than from the beans."),
    ("hummus", "Does it have any nuts? Plenty", "the red pepper in it is an excellent source of vitamin C."),
    (
        "casserole",
        "On the buffet it's fine for up to four hours without heat",
        "after four days in the fridge, throw it out.",
    ),
    ("chowder", "The cod is low in fat. The butter too", "leave out the cod and the butter and it's vegetarian."),
    ("tofufry", "Tofu is a good source of calcium", "no added salt other than the honey."),
    ("toast", "Contains wheat and fish; wash your hands after cooking", "gluten? Only in the beans."),
    ("granola", "Contains tree nuts. And peanuts", "no added sugar in this one."),
    ("haddock", "Is it low in sodium? Sadly not", "how much fat? Barely three grams."),
    ("frittata", "Keeps four days in the fridge or out of it", "each slice has about 260 milligrams of cholesterol."),
    ("enchiladas", "Half the cheese means half the fat", "ounce for ounce, cheddar has more fat than chicken breast."),
    ("toast", "Drop the oil and the fat is gone", "the beans bring more sodium than the salt."),
    ("toast", "How much fat? Fifteen grams or so", "take the bread away and nothing changes."),
    ("satay", "Every tablespoon of peanut butter adds about 95 calories", "half a bowl has 450 calories."),
    ("satay", "When in doubt, throw it out", "hard-boiled eggs keep for three weeks."),
    ("paella", "It's low in saturated fat", "what has most of the fat? The shrimp."),
    ("paella", "Who brings the protein? The rice, mostly", "the salt brings about a quarter of the sodium."),
    ("codtacos", "A corn tortilla has 200 calories", "not a speck of butter."),
    ("redpot", "Each of the eight bowls has about 285 calories", "half of it has about 285 calories."),
    (
        "tofubowl",
        "Each tablespoon of the soy sauce puts a hundred milligrams of sodium in a bowl",
        "two tablespoons of soy sauce instead of three would bring the sodium down to about 430 milligrams.",
    ),
)


def test_what_does_not_hold_alone_does_not_hold_joined_to_another_by_and():
    assert [(name, one, two) for name, one, two in JOINED if verdict(f"{one} and {two}", name) in NOT_WRONG] == []


def test_denying_turns_holds_and_off_around():
    turned = {HOLDS: OFF, OFF: HOLDS, CANNOT_TELL: CANNOT_TELL}
    wrong = [pair for pair in DENIED if verdict(pair[1]) != turned[verdict(pair[0])]]
    assert wrong == []


@TRIES
@given(of_one_dish(CLAIMS, KITCHEN))
def test_kitchen_talk_beside_a_claim_changes_nothing(drawn):
    name, claim, talk = drawn
    if not PRONOUN.match(talk):  # "they turn pink" behind "shrimp are done at 145 degrees" is of the shrimp
        assert verdict(f"{claim} {talk}", name) == verdict(claim, name)
    if not PRONOUN.match(claim):
        assert verdict(f"{talk} {claim}", name) == verdict(claim, name)


def test_numbers_in_words_and_in_digits_read_alike():
    assert [pair for pair in NUMBERS if verdict(pair[0]) != verdict(pair[1])] == []


SERVED = r"(?:[Aa]|[Ee]ach|[Ee]very|[Oo]ne|[Tt]his) (plate|bowl|slice|serving|glass|square|wedge|cup|mug|portion)\b"
# By what is done to a plain amount: what it is done to, and what stands there then.
MADE_FALSE = {
    "tripled": (r"(?<![\w.,/-])(\d{2,4})(?= (?:calories|grams|milligrams)\b)", lambda found: str(3 * int(found[1]))),
    "another unit": (r"\b(milli)?grams\b", lambda found: "grams" if found[1] else "milligrams"),
    "half a serving": (SERVED, lambda found: f"half a {found[1]}"),
    "all of it": (SERVED, lambda found: "the whole recipe"),
    "a bite": (SERVED, lambda found: "a bite"),
}


def is_plain_amount(row):
    """Whether a sentence tells only amounts of one serving, and neither bounds nor a change."""
    one, *others = read(row["say"], dish(row["dish"]))
    plain = one.claims and not others and one.change is None
    return plain and all(
        isinstance(claim, AmountClaim)
        and claim.about == THE_DISH
        and claim.said.relation == "about"
        and not claim.negated
        for claim in one.claims
    )


def test_no_plain_amount_holds_that_is_tripled_or_told_in_another_unit_or_of_another_part():
    # Bounds are left out, since a greater or a smaller number may keep them.
    amounts = [row for row in ROWS if row["expected"] == HOLDS and is_plain_amount(row)]
    turned = [
        (row["dish"], say)
        for row in amounts
        for pattern, made in MADE_FALSE.values()
        if (say := re.sub(pattern, made, row["say"], count=1)) != row["say"]
    ]
    assert len(turned) > 500
    assert [(name, say) for name, say in turned if verdict(say, name) == HOLDS] == []


@TRIES
@given(st.text(max_size=120))
def test_any_text_ends_in_a_verdict(text):
    assert verdict(text) in VERDICTS


WORDS = sorted({word for row in ROWS for word in row["say"].split()})


def test_a_word_without_end_is_read_all_the_same():
    assert verdict(f"What brings most of the fat? {'a' * 400}@") in VERDICTS


@TRIES
@given(st.lists(st.sampled_from(WORDS), max_size=25))
def test_any_words_ends_in_a_verdict(words):
    assert check_sentence(" ".join(words), dish("main")).verdict in VERDICTS


BROKEN_OFF = ("A plate has 300 calories, no", "Just fish, nothing", "No", "None. No?", "It has almost no unsaturates")
BROKEN_OFF += ("nut-free gaining made muffin", "legumes no animal product lupin", "max lupin : at the latest after")


@pytest.mark.parametrize("say", BROKEN_OFF)
def test_a_sentence_that_breaks_off_ends_in_a_verdict(say):
    assert check_sentence(say, dish("tray")).verdict in WORSE_FIRST

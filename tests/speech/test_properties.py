"""What holds of any sentence."""

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from kit.rules.verdicts import CANNOT_TELL, HOLDS, NOTHING_TO_CHECK, OFF, VERDICTS
from kit.speech.checking import check_sentence
from tests.speech.corpus import dish, rows

MAIN = [row for row in rows("given_sentences") if row["dish"] == "main"]
CLAIMS = [row["say"] for row in MAIN if row["expected"] != NOTHING_TO_CHECK]
KITCHEN = [row["say"] for row in MAIN if row["expected"] == NOTHING_TO_CHECK]
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
PRONOUN = re.compile(r"(?:it|they|that|these|this|call it)\b", re.IGNORECASE)
FEW = settings(max_examples=80, deadline=None, derandomize=True)


def verdict(say):
    return check_sentence(say, dish("main"), find_instead=False).verdict


def joined(first, second):
    return f"{first.rstrip('.!?')}, and {second[:1].lower()}{second[1:]}"


@FEW
@given(st.sampled_from(CLAIMS), st.sampled_from(CLAIMS))
def test_joining_two_sentences_never_gives_a_better_verdict_than_the_worse_of_the_two(first, second):
    worse = min(verdict(first), verdict(second), key=WORSE_FIRST.index)
    both = verdict(joined(first, second))
    assert both != HOLDS or worse in (HOLDS, NOTHING_TO_CHECK), joined(first, second)
    if not PRONOUN.match(second):  # "they" may be who the first was about
        assert verdict(f"{first} {second}") == worse


def test_denying_turns_holds_and_off_around():
    turned = {HOLDS: OFF, OFF: HOLDS, CANNOT_TELL: CANNOT_TELL}
    wrong = [pair for pair in DENIED if verdict(pair[1]) != turned[verdict(pair[0])]]
    assert wrong == []


@FEW
@given(st.sampled_from(CLAIMS), st.sampled_from(KITCHEN))
def test_kitchen_talk_beside_a_claim_changes_nothing(claim, talk):
    assert verdict(f"{claim} {talk}") == verdict(claim)
    if not PRONOUN.match(claim):
        assert verdict(f"{talk} {claim}") == verdict(claim)


def test_numbers_in_words_and_in_digits_read_alike():
    assert [pair for pair in NUMBERS if verdict(pair[0]) != verdict(pair[1])] == []


@FEW
@given(st.text(max_size=120))
def test_any_text_ends_in_a_verdict(text):
    assert verdict(text) in VERDICTS


WORDS = sorted({word for say in CLAIMS for word in say.split()})


@FEW
@given(st.lists(st.sampled_from(WORDS), max_size=25))
def test_any_words_ends_in_a_verdict(words):
    assert check_sentence(" ".join(words), dish("main")).verdict in VERDICTS

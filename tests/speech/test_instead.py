"""What is offered in place of what does not hold, as a speaker would say it."""

from kit.speech.checking import check_sentence
from tests.speech.corpus import dish

OFFERED = (
    ("turkey", "It has as much as eight grams of fat a plate.", "It has about 16 grams of fat a plate."),
    ("haddock", "How much fat? Barely three grams.", "How much fat? About 10 grams."),
    ("turkey", "Does a plate have 900 calories?", "One serving has about 350 calories."),
    ("breakfast", "It has a hint of sugar, no more than 5 grams.", "One serving has about 22 grams of sugar."),
)


def test_what_is_offered_instead_is_said_as_people_say_it():
    found = [(name, say, check_sentence(say, dish(name)).instead) for name, say, _ in OFFERED]
    assert found == list(OFFERED)


def test_a_word_that_belittles_what_is_counted_behind_it_is_asked_about():
    words = ("a hint of", "a touch of", "a bit of", "a whisper of", "a little")
    found = {one: check_sentence(f"It has {one} sugar, about 22 grams.", dish("breakfast")).verdict for one in words}
    assert found == dict.fromkeys(words, "cannot tell")

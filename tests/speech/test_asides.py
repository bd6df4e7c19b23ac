"""Words around a statement change nothing of its verdict, and nothing of where its other words stand."""

from kit.speech.checking import check_sentence
from kit.speech.words.asides import without_asides
from tests.speech.corpus import dish

FIRST = (
    "So, ",
    "As I said, ",
    "Between you and me, ",
    "Here's the thing: ",
    "OK, so ",
    "I'd say ",
    "It turns out that ",
)
LAST = (", by the way.", ", as you can see.", " after all.", ", which is nice.", ", and that's that.")
SAID = {
    "a plate of this comes to about 430 calories": "holds",
    "per hundred grams, the dish has about 430 calories": "off",
    "the whole pan has about 430 calories": "off",
    "protein, fat and carbohydrate all fall inside the ranges recommended for adults": "off",
    "the bulgur in it is high in fiber": "holds",
    "it's low in fat": "off",
}


def test_words_around_a_statement_leave_its_verdict():
    main = dish("main")
    said = {f"{first}{say}.": verdict for say, verdict in SAID.items() for first in FIRST}
    said |= {f"{say.capitalize()}{last}": verdict for say, verdict in SAID.items() for last in LAST}
    found = {text: check_sentence(text, main, find_instead=False).verdict for text in said}
    assert found == said


def test_a_question_behind_a_statement_asks_for_nothing_else():
    assert check_sentence("It has 34 grams of protein, doesn't it?", dish("main")).verdict == "holds"


def test_every_other_word_stays_where_it_was():
    text = "Well, to be honest, it is vegan, as you can see."
    kept = without_asides(text)
    assert len(kept) == len(text)
    assert kept.index("it is vegan") == text.index("it is vegan")

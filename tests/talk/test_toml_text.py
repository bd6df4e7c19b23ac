"""Usual mistakes in a talk file written by hand: each is told in words, with its line, and hides nothing else."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import TalkFileError
from kit.talk.talk_file import KEYS
from kit.talk.toml_text import MOST_MISTAKES, read_table

# What is written, what the message says, and what it says to write instead.
MISTAKES = [
    ("title = “Pot”", "the quotes have to be straight", 'title = "Pot"'),
    ('title = “Pot"', "the quotes have to be straight", 'title = "Pot"'),
    ("title = ‘Pot’", "the quotes have to be straight", "title = 'Pot'"),
    ("title = „Pot“", "the quotes have to be straight", 'title = "Pot"'),
    ("title = `Pot`", "the quotes have to be straight", "title = 'Pot'"),
    ("title = Lentil pot", "a text stands in quotes", 'title = "Lentil pot"'),
    ("title = Auntie's pot", "a text stands in quotes", 'title = "Auntie\'s pot"'),
    ('title = "Pot', "the quote at the end is missing", 'title = "Pot"'),
    ('title = Pot"', "the quote at the beginning is missing", 'title = "Pot"'),
    ("title = \"Pot'", "the same kind of quote", 'title = "Pot"'),
    ("title = 'Auntie's pot'", "quotes inside a text", 'title = "Auntie\'s pot"'),
    ('say = "He said "yes" to it."', "quotes inside a text", 'say = "He said \\"yes\\" to it."'),
    ('say = "a\\d"', "a backslash has a meaning of its own", 'say = "a\\\\d"'),
    ('say = "one\ntwo"', "it stands on one line", 'say = "one two"'),
    ('say = """one', "ends with three", 'say = "one"'),
    ('title = "Pot",', "no comma or semicolon", 'title = "Pot"'),
    ('title = "Pot";', "no comma or semicolon", 'title = "Pot"'),
    ('title: "Pot"', "with = between them", 'title = "Pot"'),
    ("Title: Pot", "with = between them", 'title = "Pot"'),
    ('title == "Pot"', "with = between them", 'title = "Pot"'),
    ('title ＝ "Pot"', "with = between them", 'title = "Pot"'),
    ('title "Pot"', "the = between key and value is missing", 'title = "Pot"'),
    ("title =", "title has no value", ""),
    ('serving is = "box"', "a key is one word", 'serving_is = "box"'),
    ('- title = "Pot"', "a key is one word", 'title = "Pot"'),
    ('title\u00a0= "Pot"', "no plain space", 'title = "Pot"'),
    ('title = "Pot" minutes = 4', "a line of its own", 'title = "Pot" and below it minutes = 4'),
    ("keeps_days = 2,5", "a point where others write a comma", "keeps_days = 2.5"),
    ("finished_grams = 1,200", "without a comma between its thousands", "finished_grams = 1200"),
    ("minutes = 45 min", "without unit or remark", "minutes = 45"),
    ("minutes = –5", "plain digits", "minutes = -5"),
    ("minutes = 05", "plain digits", "minutes = 5"),
    ("keeps_days = 1/2", "written with a point", "keeps_days = 0.5"),
    ("[[point]", "two square brackets", "[[point]]"),
    ("[[point", "two square brackets", "[[point]]"),
    ("[points]]", "two square brackets", "[[point]]"),
    ("[point]", "two square brackets", "[[point]]"),
    ('needs = "rice", "tray"', "square brackets", 'needs = ["rice", "tray"]'),
    ('needs = ["rice" "tray"]', "square brackets", 'needs = ["rice", "tray"]'),
    ('needs = ["rice", "tray"', "square brackets", 'needs = ["rice", "tray"]'),
    ("needs = [rice, tray]", "square brackets", 'needs = ["rice", "tray"]'),
    ('pots = [{ name: "rice", minutes: 9 }]', "with = inside", 'pots = [{ name = "rice", minutes = 9 }]'),
    ('pots = [{ name = "rice", minutes = 9, }]', "no comma at the end", 'pots = [{ name = "rice", minutes = 9 }]'),
    ('pots = [{ name = "rice",\n  minutes = 9 }]', "on one line", 'pots = [{ name = "rice", minutes = 9 }]'),
    ("// later", "a remark begins with #", "# later"),
    ("```toml", "do not belong into a talk file", ""),
    ("1 cup lentils, dry", "an ingredient is written [[ingredient]]", ""),
    ("servings = 6\nservings = 8", "servings stands twice in this entry", ""),
]


def test_usual_mistakes_are_told_with_their_line_and_what_to_write():
    assert len(MISTAKES) >= 40
    wrong = []
    for written, because, mended in MISTAKES:
        text = f'# A talk\n{written}\n[[step]]\ntitle = "Last"\n'
        table, faults = read_table(text, KEYS, "lunch.toml")
        told = "\n".join(faults)
        first = " ".join(written.splitlines()[-1 if "stands twice" in because else 0].split())
        rest = table.get("step", [{}])[-1].get("title") == "Last"
        at = "line 3, " if "stands twice" in because else "line 2, "
        if not (at + first in told and because in told and f"write {mended}".strip() in told + "write" and rest):
            wrong.append((written, faults, table))
    assert wrong == []


def test_a_mended_line_is_read_as_it_should_stand():
    table, faults = read_table("title = “Pot”\nservings: 4\nminutes = 45 min\n", KEYS, "lunch.toml")
    assert table == {"title": "Pot", "servings": 4, "minutes": 45}
    assert len(faults) == 3


def test_text_and_lists_over_several_lines_are_no_mistakes():
    text = 'title = "Pot"\nswaps = [\n  "a",\n  "b",\n]\nsay = """one\n[two]\nthree = 3\n"""\nminutes 5\n'
    table, faults = read_table(text, KEYS, "lunch.toml")
    assert table == {"title": "Pot", "swaps": ["a", "b"], "say": "one\n[two]\nthree = 3\n", "minutes": 5}
    assert len(faults) == 1


def test_a_file_that_is_no_talk_file_is_told_in_a_few_lines():
    with pytest.raises(TalkFileError, match="is it a plain text") as fault:
        read_table("Lentil pot\nServes 4\n" + "two cups of lentils\n" * 99, KEYS, "lunch.toml")
    assert len(fault.value.faults) <= MOST_MISTAKES + 1


@pytest.mark.parametrize(
    "text", ["a = " + "[" * 50_000, "a = " + "[" * 50_000 + "]" * 50_000, "{" * 50_000, "[[" * 5000]
)
def test_brackets_without_end_are_told(text):
    with pytest.raises(TalkFileError, match=r"no talk file|no TOML"):
        read_table(text, KEYS, "lunch.toml")


@given(st.text(alphabet="[]{}=\"',.:;#\n ab1“”–\t\\", max_size=80) | st.text(max_size=60))
def test_any_text_is_a_table_or_told(text):
    try:
        table, faults = read_table(f'title = "Pot"\n{text}', KEYS, "lunch.toml")
    except TalkFileError:
        return
    assert isinstance(table, dict)
    assert all(fault.startswith("line ") for fault in faults)

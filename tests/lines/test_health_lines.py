"""Lines as US health-recipe pages, government leaflets and home cooks write them, worked by hand before they were read.

`figures/health_lines.csv` gives each line the foods that may be read (``|`` between them, ``ask`` where a question is
right, `` + `` between two foods of one line), the grams of the first with how far they may be off, and the round in
which it was written. Each round was measured before anything was mended for it: the 61 were 16.0, 3.3, 1.4, 1.7, 6.7,
1.7, 5.0, 10.0, 1.7, 5.0, 1.7, 0.0, 1.0, 5.1, 2.0 (one of traps only) 10.0, 1.9, 0.8, 1.9, 1.9, 1.0, 4.2, 5.0, 0.5,
1.4, 2.9, 3.9, 3.6, 1.0, 1.9, 2.5, 1.7, 2.3, 1.7, 0.4, 0.4, 1.9, 0.4, 3.4, 1.2, 2.9, 3.2, 0.5, 1.5, 1.0, 2.9, 0.6,
0.7, 0.0, 2.1, 1.9, 0.0, 2.0, 0.7, 1.5, 2.9, 1.7, 0.0, 2.6, 0.0 and 1.1 % silently wrong. The last 38 of these leave
out lines whose expectation was itself mistaken, seen afterwards; with them it was 4.5, 3.3, 3.9, 5.1, 5.9, 2.5, 4.5,
6.2, 2.9, 3.5, 1.7, 2.0, 0.9, 3.4, 2.5, 3.8, 2.3, 3.9, 7.1, 2.5, 3.4, 1.5, 3.5, 2.4, 4.4, 0.7, 2.1, 3.8, 2.8, 3.3,
2.1, 2.2, 4.8, 2.5, 0.9, 5.3, 4.8 and 3.2 %.
`figures/audited_lines.csv` is no sample: in it stands what an audit found, food by food and measure by measure (its
round 1), by words that may decide (2) and turned round as tables of food write it (3); of these 52, 16 and 4 % were
silently wrong at first, which says nothing of usual lines.
"""

import csv
from collections import Counter
from collections.abc import Sequence
from functools import cache
from pathlib import Path

from kit.lines.reader import read_each
from kit.lines.reading import Reading

FIGURES = Path(__file__).parent / "figures"
ROWS, AUDITED = (
    list(csv.DictReader((FIGURES / name).open(encoding="utf-8", newline="")))
    for name in ("health_lines.csv", "audited_lines.csv")
)
MOST_SILENTLY_WRONG = 0.015
LEAST_RIGHT_OR_RIGHTLY_ASKED = 0.94


@cache
def read(line: str) -> Sequence[Reading]:
    """Return the readings of a line, which is read once for all tests."""
    return read_each(line)


def verdict(row: dict[str, str], readings: Sequence[Reading]) -> str:
    """Return how a line was read: right, rightly asked, needlessly asked, or silently wrong."""
    allowed = row["food"].split("|")
    left_out = all(reading.grams == 0 for reading in readings)
    if left_out and "ask" in allowed:
        return "rightly asked"
    if any(reading.is_open or reading.problem for reading in readings):
        return "rightly asked" if "ask" in allowed else "needlessly asked"
    if " + ".join(reading.key for reading in readings) not in allowed:
        return "silently wrong"
    for grams, reading in zip(row["grams"].split("; "), readings, strict=False):
        if grams and abs(reading.grams - float(grams)) > float(row["within"]) * float(grams) + 0.01:
            return "silently wrong"
    return "right"


def test_hardly_a_line_is_silently_wrong_and_few_are_asked_needlessly():
    verdicts = {row["line"]: verdict(row, read(row["line"])) for row in ROWS}
    counts = Counter(verdicts.values())
    wrong = [line for line, found in verdicts.items() if found == "silently wrong"]
    needless = [line for line, found in verdicts.items() if found == "needlessly asked"]
    assert len(wrong) <= MOST_SILENTLY_WRONG * len(ROWS), wrong
    assert counts["right"] + counts["rightly asked"] >= LEAST_RIGHT_OR_RIGHTLY_ASKED * len(ROWS), needless


def test_what_an_audit_found_stays_mended():
    verdicts = {row["line"]: verdict(row, read(row["line"])) for row in AUDITED}
    assert not [line for line, found in verdicts.items() if "right" not in found]


def test_every_question_offers_choices_or_says_what_to_write():
    for row in (*ROWS, *AUDITED):
        for reading in read(row["line"]):
            if reading.problem:
                assert reading.choices or "write" in reading.problem, row["line"]

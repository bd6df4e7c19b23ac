"""The same line in another hand: written large, behind a bullet, with a pause for a comma, with an aside."""

import csv
import re
from pathlib import Path

from each import for_each

from kit.lines.reader import read_each

FIGURES = Path(__file__).parent / "figures" / "health_lines.csv"
LINES = [row["line"] for row in csv.DictReader(FIGURES.open(encoding="utf-8", newline=""))][-1200::6]
LETTERS_THAT_ARE_UNITS = re.compile(r"[\d½¼¾⅓⅔⅛] ?[Ttc]\b")

HANDS = {
    "in capitals": lambda line: line if LETTERS_THAT_ARE_UNITS.search(line) else line.upper(),
    "as a title": lambda line: line if LETTERS_THAT_ARE_UNITS.search(line) else line.title(),
    "behind a bullet": lambda line: f"• {line}",
    "about so much": lambda line: f"About {line}" if line[0].isdigit() else line,
    "with a semicolon": lambda line: line.replace(", ", "; ", 1) if " each" not in line else line,
    "with a footnote": lambda line: f"{line}*",
    "with a note": lambda line: f"{line} (see note)",
    "optional": lambda line: f"{line} (optional)",
    "divided": lambda line: f"{line}, divided",
}


def _foods(line: str) -> list[tuple[str, float | None]]:
    return [(reading.key, reading.grams) for reading in read_each(line)]


@for_each("hand", HANDS)
def test_a_line_in_another_hand_is_read_alike_or_asked_about(hand):
    other = {line: HANDS[hand](line) for line in LINES if all(r.grams and not r.problem for r in read_each(line))}
    asked = {line for line in other.values() if any(r.is_open or r.problem for r in read_each(line))}
    assert [line for before, line in other.items() if line not in asked and _foods(line) != _foods(before)] == []
    assert len(asked) <= 0.03 * len(other), asked

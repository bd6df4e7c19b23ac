"""How fast ingredient lines are read: ``python -m pytest tests/bench/test_reading_speed.py -m bench -s``.

A thousand distinct lines, each read once, food matching included; then the time until the first line is read in a fresh
Python. Only a long line of one piece fails for being slow.
"""

import csv
import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest

from kit.food.composition import bundled_foods
from kit.lines.reader import read_each

pytestmark = pytest.mark.bench
ROOT = Path(__file__).parents[2]
LINES = 1_000
STARTS = 5


def thousand_lines() -> list[str]:
    """Return distinct lines: those worked by hand, then one for each of many foods."""
    figures = ROOT / "tests" / "lines" / "figures" / "recipe_lines.csv"
    lines = [row["line"] for row in csv.DictReader(figures.open(encoding="utf-8", newline=""))]
    for number, food in enumerate(bundled_foods().values()):
        lines.append(f"{1 + number % 5} 1/2 cups {food.name.lower()}, chopped")
    return lines[:LINES]


def test_a_thousand_lines():
    lines = thousand_lines()
    assert len(set(lines)) == LINES
    read_each("1 cup nothing of the kind")  # makes the indexes
    times = []
    for line in lines:
        started = time.perf_counter()
        read_each(line)
        times.append(1e3 * (time.perf_counter() - started))
    ordered = sorted(times)
    print(f"\na line: median {statistics.median(times):.2f} ms, 95 of 100 within {ordered[949]:.2f} ms")
    print(f"a thousand lines: {sum(times):,.0f} ms")


def test_long_lines_of_one_piece():
    read_each("1 cup nothing of the kind")  # makes the indexes
    slowest = 0.0
    for piece in (" ", "(", ")", "()", "1 ", "1/", "salt ", "each ", ", ", "1 cup ", "½", "x", "or ", "- "):
        line = (piece * 10_000)[:10_000]
        started = time.perf_counter()
        read_each(line)
        slowest = max(slowest, time.perf_counter() - started)
    print(f"\nthe slowest line of 10,000 characters: {1e3 * slowest:.0f} ms")
    assert slowest < 0.05


def test_a_fresh_start():
    for what, code in {
        "import pandas, pint": "import pandas, pint",
        "import kit.lines.reader": "import kit.lines.reader",
        "first line read": "from kit.lines.reader import read; read('1 cup lentils')",
        "956 foods and their measures": "from kit.food.composition import foods; foods()",
    }.items():
        times = []
        for _ in range(STARTS):
            started = time.perf_counter()
            subprocess.run([sys.executable, "-c", code], check=True, cwd=ROOT)
            times.append(1e3 * (time.perf_counter() - started))
        print(f"\n{what}: {statistics.median(times):,.0f} ms", end="")

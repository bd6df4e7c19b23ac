"""How fast a composition release comes in and is searched.

Run by ``python -m pytest tests/bench/test_release_speed.py -m bench -s``.
"""

import difflib
import statistics
import time

import pytest
from made_releases import NAMES, large_release

from kit.food.releases.release import Store, import_release

pytestmark = pytest.mark.bench
MISSPELT = ["lentls boiled", "chikpeas canned", "brocoli raw", "cooked brown rise", "spinich", "zuchini grilled"]


def test_a_release_of_official_size_comes_in_within_twenty_seconds_and_is_searched_at_once(tmp_path):
    folder, path = large_release(tmp_path), tmp_path / "release.sqlite"
    started = time.perf_counter()
    import_release(folder, path)
    seconds = time.perf_counter() - started
    store = Store(path)
    store.find("lentils", 10)
    ours, plain = [], []
    lowered = [name.lower() for name in NAMES]
    for words in MISSPELT:
        started = time.perf_counter()
        for _ in range(5):
            store.find(words, 10)
        ours.append((time.perf_counter() - started) / 5)
        started = time.perf_counter()
        difflib.get_close_matches(words, lowered, 10)
        plain.append(time.perf_counter() - started)
    print(f"\n8,000 foods in {seconds:.1f} s, a search {1e3 * statistics.median(ours):.1f} ms")
    assert seconds < 20
    assert statistics.median(ours) < 0.020
    assert statistics.median(plain) > 20 * statistics.median(ours)

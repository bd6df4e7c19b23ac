"""Mutated talk files and plain talks: each is read, or told in sentences; none ends in a traceback."""

from pathlib import Path
from random import Random

import pytest
from slips import TRIES, mutated

from kit.errors import KitError
from kit.files import write_whole
from kit.talk.desk import desk_from, empty_desk
from kit.talk.library import bundled_talks, talk_from
from kit.talk.plain_talk import plain_text
from kit.talk.titles import title_of

PIECES = [
    "nan",
    "inf",
    "1e999",
    "9" * 400,
    "[[step]]",
    "[[point]]\nsay = 3",
    '"""',
    "[" * 300,
    "swaps = [{ x = 1 }]",
    'pots = "x"',
    'slider = { low = "1/0", high = "1e308 cups" }',
    "grams = -1",
    "\nScript\n",
    "\nPlan\n1e9 min: x; y 3 min in the oven at 9999",
    "\nQuestions\n? = =",
    "Serves 0",
    "a" * 3000,
]


@pytest.mark.parametrize("ending", [".toml", ".txt"])
def test_any_slip_of_a_talk_is_read_or_told(ending, tmp_path):
    chance = Random(f"slips {ending}")
    paths = list(bundled_talks().values())
    whole = [path.read_text(encoding="utf-8") for path in paths]
    texts = (
        whole
        if ending == ".toml"
        else [plain_text(talk_from(text, path)) for text, path in zip(whole, paths, strict=True)]
    )
    for _ in range(TRIES):
        text = mutated(chance.choice(texts), chance, PIECES)
        path = write_whole(tmp_path / f"slip{ending}", text, replace=True)
        assert title_of(path)  # every list of talks asks for it
        try:
            talk = talk_from(text, Path(f"slip{ending}"))
            assert all(isinstance(fault, str) and fault for fault in talk.faults)
            desk = desk_from(text) if ending == ".toml" else empty_desk(text=text)
            assert desk.reading.talk.recipe.servings > 0
        except KitError:  # told
            continue

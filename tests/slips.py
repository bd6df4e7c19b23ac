"""Slips of a hand or a disk in a text: what the fuzzers of talk files, labels and releases have in common."""

import os

TRIES = int(os.environ.get("TALK_KIT_FUZZ", "30"))  # DEVELOPERS.md says how to run 10^5
SIGNS = "\"'[]{}=#.,:;\n\t \\|0123456789-–½“”éß\u2028\u00a0\x00🍲{}"


def mutated(text, chance, pieces):
    """Return a text with some slips: signs changed, lines doubled, moved or lost, odd pieces put in."""
    signs = list(text)
    for _ in range(chance.randrange(6)):
        signs[chance.randrange(len(signs))] = chance.choice(SIGNS)
    lines = "".join(signs).split("\n")
    for _ in range(chance.randrange(4)):
        place = chance.randrange(len(lines))
        lines[place : place + 1] = chance.choice(
            [[], [lines[place]] * 2, [chance.choice(pieces)], lines[place : place + 1]]
        )
        lines = lines or [""]
    if chance.random() < 0.1:
        lines = lines[: chance.randrange(len(lines)) + 1]
    return "\n".join(lines)

"""What was found of what is said, as a screen shows it: a sign and a word for each verdict, and its words marked."""

from collections.abc import Sequence
from itertools import groupby
from typing import Any

from kit.rules.verdicts import CANNOT_TELL, HOLDS, NOTHING_TO_CHECK, OFF
from kit.speech.verdict import Verdict
from kit.texts import listing

# A sign beside each word, so that nothing is told by colour alone.
SIGNS = {HOLDS: "✓", OFF: "✗", CANNOT_TELL: "?", NOTHING_TO_CHECK: "–"}
KINDS = {HOLDS: "holds", OFF: "off", CANNOT_TELL: "ask", NOTHING_TO_CHECK: "none"}
_WORST_LAST = (NOTHING_TO_CHECK, HOLDS, CANNOT_TELL, OFF)
_WORDS = {
    HOLDS: ("holds", "hold"),
    OFF: ("is off", "are off"),
    CANNOT_TELL: ("cannot be told", "cannot be told"),
    NOTHING_TO_CHECK: ("has nothing to check", "have nothing to check"),
}


def judged(verdict: Verdict) -> dict[str, Any]:
    """Return one thing that is said with what was found of it, as plain values that ``judged.js`` shows."""
    return {
        "say": verdict.say,
        "pieces": pieces(verdict),
        "sign": SIGNS[verdict.verdict],
        "verdict": verdict.verdict,
        "kind": KINDS[verdict.verdict],
        "because": verdict.because,
        "instead": verdict.instead,
        "hers": verdict.point.source if verdict.on_her_word and verdict.point else "",
        "claims": [
            {
                "words": claim.words,
                "about": f"{claim.family}, {claim.about}" if claim.about else claim.family,
                "sign": SIGNS[claim.verdict],
                "verdict": claim.verdict,
                "kind": KINDS[claim.verdict],
                "because": claim.because,
            }
            for claim in verdict.claims
        ],
        "choices": [{"word": choice.word, "options": list(choice.options)} for choice in verdict.choices],
    }


def pieces(verdict: Verdict) -> list[tuple[str, str]]:
    """Return a sentence in pieces, each with the kind of verdict on the claim that it carries; empty for none.

    Where claims share words, the words are marked by the worst of them.
    """
    kinds = [""] * len(verdict.say)
    for claim in sorted(verdict.claims, key=lambda claim: _WORST_LAST.index(claim.verdict)):
        for start, end in claim.spans:
            kinds[start:end] = [KINDS[claim.verdict]] * len(kinds[start:end])
    signs = zip(kinds, verdict.say, strict=True)
    return [("".join(sign for _, sign in run), kind) for kind, run in groupby(signs, key=lambda pair: pair[0])]


def counted(verdicts: Sequence[Verdict]) -> str:
    """Return how many things that are said have which verdict: "✓ 12 hold, ✗ 2 are off and ? 1 cannot be told"."""
    counts = {verdict: sum(one.verdict == verdict for one in verdicts) for verdict in _WORDS}
    hers = sum(one.on_her_word for one in verdicts)
    told = [f"{SIGNS[key]} {count} {_WORDS[key][count != 1]}" for key, count in counts.items() if count]
    return listing(told) + (f"; {hers} of these on your own word" if hers else "")

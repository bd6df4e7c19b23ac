"""What is said on a line to be used of an ingredient: of a marinade, a dip, or the fat that is poured off."""

import re
from dataclasses import replace

from kit.lines.reading import Reading
from kit.lines.weighing import Z90, spread

_SHARES = {"all": 1.0, "half": 0.5, "a quarter": 0.25, "one quarter": 0.25, "a third": 1 / 3, "one third": 1 / 3}
_SHARES |= {"two thirds": 2 / 3, "three quarters": 0.75, "a tenth": 0.1, "a fifth": 0.2, "none": 0.0}
_USED = ("used", "eaten", "absorbed", "taken up", "kept", "left")
_SAID = re.compile(
    r"[\s,;:(]*(?:\b(?:marinade|dip|brine|for frying|for the marinade)\b\s*[:,;]\s*)?(?:of which\s+)?(?:about\s+)?"
    rf"(?P<share>{'|'.join(_SHARES)}|\d{{1,2}}\s?(?:%|percent|per cent))\s+(?:of (?:it|this|them)\s+)?(?:is|are)\s+"
    rf"(?P<what>{'|'.join(_USED)}|thrown away|poured off|discarded|drained off)\s*\)?",
    re.IGNORECASE,
)


def share_said(line: str) -> tuple[float | None, str]:
    """Return the share of an ingredient that a line says is used, None where it says none, and the line without that.

    Examples
    --------
    >>> share_said("1/4 cup olive oil (marinade: a quarter is used)")
    (0.25, '1/4 cup olive oil')
    >>> share_said("1 cup buttermilk, 80% is poured off")[0].__round__(2)
    0.2
    """
    found = _SAID.search(line)
    if found is None:
        return None, line
    said = found["share"].lower()
    share = _SHARES.get(said)
    if share is None:
        share = int(re.match(r"\d+", said)[0]) / 100  # type: ignore[index]
    used = share if found["what"].lower() in _USED else 1 - share
    return used, (line[: found.start()] + line[found.end() :]).strip()


def with_share(reading: Reading, share: float) -> Reading:
    """Return a reading of what is used of its ingredient; how much that is was judged by eye, so the range is wide."""
    if reading.grams is None or reading.low is None or reading.high is None:
        return reading
    sd = spread("used_share") if share < 1 else 0.0
    grams = reading.grams * share
    wider = (reading.relative_sd**2 + sd**2) ** 0.5
    return replace(
        reading,
        grams=grams,
        low=max(0.0, grams * (1 - Z90 * wider)),
        high=min(reading.high, grams * (1 + Z90 * wider)),
        relative_sd=wider,
        noun_grams=reading.noun_grams * share,
        how=f"{reading.how}; of it {share * 100:.0f} % is used, as the line says",
    )

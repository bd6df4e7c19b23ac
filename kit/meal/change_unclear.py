"""Ways of saying a what-if that may mean two things, so that the line is asked about whatever was read from it."""

import re

from kit.errors import ChangeError

_AMOUNT = r"(?:\d|an? |one |two |three |half )"
_UNCLEAR = [
    (re.compile(pattern), asks)
    for pattern, asks in (
        (
            rf"\b(?:instead|place|rather than)\b[^,]*,? (?:(?:but|only|just) )+{_AMOUNT}",
            'write the amount ahead of its food, such as "1 cup barley instead of the rice"',
        ),
        (
            r"\bon half\b|\bfor (?:half|some|(?:the )?(?:others?|rest))$|\bfor (?:me|some|the others?)\b.+\bfor\b",
            "that is of some of the servings; the numbers are of all alike, so write what all get",
        ),
        (r"\btimes (?:less|fewer)\b", 'write what is left of it, such as "a quarter of the salt"'),
        (r"\d (?:[a-z]+ ){1,4}or (?:\d|two|three|four)", "write one amount"),
        (
            r"^(?!.*\b(?:make|made|serve|serves|cook|enough|double|triple|half|it|this|recipe|batch|scale)\b)"
            r".*[a-z](?<!\band)(?<!\bbut) for (?:\d+|four|five|six|seven|eight|nine|ten|twelve)$",
            'is that how many it is for, or how much of it? write "make it for 10", or the amount',
        ),
        (r"\byes\b(?!,)", "write what comes in, and how much of it"),
        (
            r"^(?!.*\b(?:be|is|are|was|get|gets) cut\b).*[a-z],? cut in (?:half|halves|two|quarters)$",
            'is that how it is cut, or half as much? for that write "half the ..."',
        ),
        (r"\bhalf\b.*\bbut\b.* (?:too|also|as well)$", "write how much of each"),
        (r"^(?:less|more|fewer) [^:,]+: ?" + _AMOUNT, 'write "1 cup less ..." or "1 cup ..." of it in all'),
        (r"\b(?:down|up) " + _AMOUNT, "write whether that is by so much, or to so much"),
        (
            r"^(?!.*\bhalf\b.*\bhalf\b).*\b(?:half|part|partly) (?:whole[- ]|brown |white |light |skim |lean |plain )",
            'that may be half of what is there, or half of all of its kind; write amounts, such as "1 cup ..."',
        ),
    )
]


def ask_if_unclear(line: str) -> None:
    """Raise where a line may mean two things.

    Parameters
    ----------
    line : str
        The whole line, plain.

    Raises
    ------
    ChangeError
        With what to write instead.
    """
    for pattern, asks in _UNCLEAR:
        if pattern.search(line):
            raise ChangeError(f'"{line}": {asks}')

"""What a what-if says is lacking or cannot be had: "I have no tahini", "my son is allergic to peanuts"."""

import re

from kit.meal.change_shapes import Clause

_WE = r"(?:but |what if )?(?:i|we|they|someone|somebody|people)"
_NOT = r"(?:do not|don'?t|cannot|can'?t|could not|couldn'?t|does not|doesn'?t)"
_NEEDS = [
    re.compile(rf"^{opening} (?:any )?(?P<old>.+)$")
    for opening in (
        r"(?:does|do|must|should|has) (?:it|this|they) (?:really |always )?(?:(?:have|need|got) to |must )?be",
        r"(?:it|this) (?:has|have|needs?) to be",
        rf"{_WE} {_NOT} (?:have|like|want|eat|own|stand|get|find|buy)",
        rf"{_WE}(?:'ve)? (?:have|got|have got) no",
        rf"{_WE}(?:'m|'re| am| are| is)? ?(?:out of|allergic to|intolerant (?:to|of)|ran out of|run out of|hates?)",
        rf"(?:but |what if )?(?:my|our|a|the|one of my|one of our) \w+ "
        rf"(?:is allergic to|hates?|{_NOT} (?:eat|like|have))",
        r"(?:is there |are there |do you know )?(?:something|anything|some things?)(?: else)? (?:that )?"
        r"(?:i|we|you) (?:can|could|may) (?:use|put in|take|have)"
        r" (?:for|instead of|in place of|rather than|to replace)(?: the)?",
        r"(?:is|are) (?:the )?(?=.* (?:necessary|essential|needed|required)$)",
    )
]
_THEN = re.compile(r"(?:,|,? (?:so|and|but|then))+ ")


def needs_and_then(text: str) -> tuple[Clause, str] | None:
    """Return what a line says it lacks and the change behind that: "I have no tahini, could it be peanut butter"."""
    for link in _THEN.finditer(text):
        need = needs(text[: link.start()])
        if need:
            return need, text[link.end() :]
    return None


def needs(text: str) -> Clause | None:
    """Return what a line says it lacks or cannot have, which leaves open what to do: "I have no tahini"."""
    for shape in _NEEDS:
        found = shape.match(text)
        if found:
            return Clause("need", re.sub(r" (?:necessary|essential|needed|required)$", "", found["old"]))
    return None

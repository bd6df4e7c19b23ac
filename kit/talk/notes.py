"""What is said beside the numbers of a talk: a span of servings, and lines that name no food."""

from kit.talk.talk import Talk
from kit.texts import listing, number, span


def talk_notes(talk: Talk) -> list[str]:
    """Return what is to be said about how a talk was read, a sentence each.

    Examples
    --------
    >>> from dataclasses import replace
    >>> from kit.talk.library import read_talk
    >>> talk = replace(read_talk("split_pea_soup"), span=(6.0, 10.0), passed_over=("8 skewers",))
    >>> talk_notes(talk)
    ['The text says 6 to 10 servings: 8 are counted.', 'Passed over, since no food is named: "8 skewers".']
    """
    notes = []
    if talk.span:
        notes.append(f"The text says {span(*talk.span)} servings: {number(talk.recipe.servings, 1)} are counted.")
    if talk.passed_over:
        lines = listing([f'"{line}"' for line in talk.passed_over])
        notes.append(f"Passed over, since no food is named: {lines}.")
    return notes


def talk_json(talk: Talk) -> dict[str, object]:
    """Return the same as the command line prints it."""
    return {
        "servings_span": list(talk.span) if talk.span else None,
        "passed_over": list(talk.passed_over),
        "faults": list(talk.faults),
    }

"""The four verdicts on what is said."""

HOLDS, OFF, CANNOT_TELL, NOTHING_TO_CHECK = "holds", "off", "cannot tell", "nothing to check"
VERDICTS = (HOLDS, OFF, CANNOT_TELL, NOTHING_TO_CHECK)


def outcome(result: bool | None) -> str:
    """Return the verdict for a yes, a no, or neither.

    Examples
    --------
    >>> outcome(True), outcome(False), outcome(None)
    ('holds', 'off', 'cannot tell')
    """
    return CANNOT_TELL if result is None else HOLDS if result else OFF

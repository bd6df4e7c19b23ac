"""Words around a statement that claim nothing: "by the way", "as I said", "of course", "isn't it?"."""

import re

_SEEN = r"as (?:you|we) (?:can |all |may |might )*(?:see|know|guessed)|as (?:i|we) (?:said|mentioned|promised|told you)"
_HONEST = r"(?:to be|being) (?:honest|fair|clear|frank)|honestly|frankly|actually|really|of course|mind you"
_BELIEVE = r"for the record|trust me|believe me|you know what|you know|you see|(?:just )?so you know|folks|everyone"
_ASKED = (
    r"in case you (?:wondered|wonder|ask|asked|were wondering)"
    r"|if you (?:ask|ask me|wondered|wonder|like numbers|want numbers|want to know)"
)
_BOTH = f"{_SEEN}|{_HONEST}|{_BELIEVE}|{_ASKED}"
_FIRST = re.compile(
    rf"\s*(?:(?:and |but |oh |yes )?(?:{_BOTH}|so|now|well|ok|okay|look|listen|right|alright|all right|yes|yep|oh|again"
    r"|by the way|in fact|in short|in other words|between (?:you and me|us|ourselves)|what's more|what is more"
    r"|here's (?:the|another|a) \w+(?: \w+)?|let me (?:tell you|add)|don't forget|remember|fun fact|one more thing"
    r"|(?:the|more) good news|the bad news|for those who (?:ask|wonder)|as a reminder|everybody"
    r"|friends|note this|write this down"
    r"|guess what|long story short|on the plus side|for your notes"
    r")\s*(?:,|:|–|—|\.\.\.|…|!)\s*(?:so (?!much|many|long|far|that))?)+",
    re.IGNORECASE,
)
_LAST = re.compile(
    rf"(?:,? (?:by the way|after all)|,\s*(?:{_BOTH}|i promise|everybody|friends|as far as i can tell|and that's that"
    r"|right|okay|ok|which is (?:nice|good|great|lovely|handy|not bad|neat|quite something)|no kidding"
    r"|how about that|imagine that|isn't that nice|if that helps|and so on|thank you|thanks))+(?=\s*[.!?]*\s*$)"
    r"|,\s*(?:is|are|was|does|do|did|has|have|can|could|will|would)(?:n't|n’t| not)? (?:it|they|that|there|this|you|we)"
    r"\s*\?(?=\s*$)",
    re.IGNORECASE,
)
# Which of them is meant: ", the ones we sliced here,", ", the kind I bought,".
_WITHIN = re.compile(
    r"(?<=\w),\s+(?:the (?:ones?|kind|sort)|those|which) (?:that )?(?:we|i|you)(?:['’](?:ve|re|m)| have| are| just)?"
    r" (?:\w+ ){0,2}?(?:sliced|chopped|cut|bought|used|use|using|roasted|cooked|made|peeled|mashed|picked|like|love|"
    r"diced|grated|rinsed|opened|prepared|see|mentioned|talked about)"
    r"(?: (?:here|earlier|today|before|so much|up|just now))?,"
    r"(?=\s+(?:is|are|has|have)\b)"
    r"|(?<=\w),\s+(?:\w+ ){1,3}and all,(?=\s)",
    re.IGNORECASE,
)


def without_asides(text: str) -> str:
    """Return a sentence with spaces in place of the words around its statement, so that every other word stays put.

    Parameters
    ----------
    text : str
        One sentence as it is said.

    Examples
    --------
    >>> without_asides("By the way, it is vegan, as you can see.").split()
    ['it', 'is', 'vegan', '.']
    """
    first = _FIRST.match(text)
    if first is not None and text[first.end() :].strip():
        text = " " * first.end() + text[first.end() :]
    last = _LAST.search(text)
    if last is not None and text[: last.start()].strip():
        text = text[: last.start()] + " " * (last.end() - last.start()) + text[last.end() :]
    within = _WITHIN.search(text)
    if within is not None:
        text = text[: within.start()] + " " * (within.end() - within.start()) + text[within.end() :]
    return text

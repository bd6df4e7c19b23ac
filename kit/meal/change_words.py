"""A typed what-if without its politeness, with its verbs in one form, and the numbers in it."""

import re

from kit.food.amounts import plain_characters, read_count, with_half_ahead
from kit.meal.change_typed import written_out

_TENS = dict(zip("twenty thirty forty fifty sixty seventy eighty ninety".split(), range(20, 100, 10), strict=True))
_TEENS = dict(zip("thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(), range(13, 20), strict=True))
_PARTS = {"half": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "eighth": 8}
_HOW_MANY = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4}
_TIMES = {"double": 2.0, "twice": 2.0, "triple": 3.0, "treble": 3.0, "thrice": 3.0, "quadruple": 4.0, "halve": 0.5}
_TIMES |= {"doubled": 2.0, "tripled": 3.0, "halved": 0.5, "quadrupled": 4.0, "half": 0.5, "half a": 0.5}
_TIMES |= {"quarter": 1 / 4, "third": 1 / 3}

# What stands before a change without being part of it.
_OPENINGS = re.compile(
    r"^(?:sorry|hmm+|excuse me|(?:a |one |my )?(?:quick )?question|i wonder(?: if)?|out of (?:interest|curiosity)"
    r"|so|ok|okay|well|um|er|hi|hey|hello|please|just|maybe|perhaps|then|also|now|but|and|or|yes|actually|oh"
    r"|alternatively|simply|really|ever|still|rather|if|when|instead(?! of)|suppose|supposing|say|imagine"
    r"|let'?s|lets|let"
    r"|(?:but |and )?what (?:happens|changes|would happen|would change|will happen|do you think)?\s*(?:if|when)"
    r"|what (?:happens|changes|would happen|would change)(?= with\b| without\b)|there (?:is|are|was|were)(?= no\b)"
    r"|what if|how about|what about|what (?:does|would|do|did)|how (?:would|does|do|did)(?! (?:much|many))"
    r"|how (?:much|many) (?:\w+ ){1,4}(?=(?:if|when|without)\b)|do you think|is there a way to"
    r"|(?:is |was |would )?(?:there |it )?(?:be )?(?:anything|something|so) (?:wrong|bad"
    r"|terrible) (?:with|about|in|if|to)"
    r"|(?:is |would )?(?:there )?(?:be )?(?:a|any|some|no) (?:chance|harm|way|problem|point|reason not|room|trouble)"
    r" (?:of|to|in|with|for|if)(?: (?:you|us|me))?"
    r"|curious(?: about)?|wondering if"
    r"|can|could|may|might|should|would|shall|must|will|do|does|did|is|are|was|were|am|be"
    r"|i|we|you|one(?= (?:could|would|may|use|used|might)\b| can (?:also |just )?(?:use|leave|skip|omit"
    r"|swap|replace|add|make|do|take|put|have|get|drop|serve|double|halve|reduce|cut)\b)|someone|somebody|they|people|he|she|it|us"
    r"|me|i'd|we'd|you'd|i'll|we'll|it'd"
    r"|(?:like|love|want|wanted|prefer|wish|going|plan|trying|wanting|planning|allowed|able"
    r"|needs?|have|has|got) to|think"
    r"|ok to|okay to|possible to|fine to|all ?right to|good to|ok if|okay if|fine if|ok with|okay with|fine with"
    r"|(?:work|matter|change|do|taste|look like|look|be|hold up|hold together|come out|turn out"
    r"|still)(?= (?:if|when|with"
    r"|without|to)\b)"
    r"|be (?:made|cooked|done|prepared|served)(?= (?:with|without|for)\b)|(?:made|cooked|done)(?= without\b)"
    r"|be (?:ok|okay|fine|good|possible)(?: (?:to|if|with))?|(?:want|need)(?= (?:it|this|enough) for\b)"
    r"|get away with|show (?:me|us)|give (?:me|us)"
    r"|try(?= (?:to|leaving|using|adding|it)\b))"
    r"\b(?!')[\s,:]*",
    re.IGNORECASE,
)
_RELATIVES = (
    "son|daughter|kids?|child|children|husband|wife|partner|mother|father|mom|mum|dad|friends?|guests?"
    "|neighbou?rs?|class|sister|brother|niece|nephew|aunt|uncle|grand(?:ma|pa|mother|father|son|daughter)|roommate|boss"
    "|co-?workers?|colleagues?"
)
# What a reason may go on with: not with another change, which would be lost.
_TAIL = (
    r"(?:(?![,;]|\b(?:and|but|then|plus)\s+(?:also |then )?(?:no|half|double|twice|triple|add|use|leave|skip|swap"
    r"|replace|omit|drop|more|less|make|without|\d|a|an|one|two|three)\b).)*"
)
# What stands behind it: why, and whether that is all right.
_CLOSINGS = re.compile(
    r"[\s,]+(?:please|thanks|thank you|ok|okay|though|too|as well|also|altogether|entirely|completely"
    r"|at all|whatsoever|anyway|maybe|perhaps"
    r"|today|tonight|tomorrow|next time|this time|(?:this|next|on) (?:week(?:end)?|month|(?:mon|tues"
    r"|wednes|thurs|fri|satur|sun)day)"
    r"|at (?:home|work)|for once|for me|in it|in there|to it|(?:in|to|from) the (?:dish|recipe|mix|pot)"
    r"|(?:would|will|does|do|is|are|should|if|and)?\s*(?:that|it|this)?\s*(?:be|is|are|still|'s)?\s*(?:ok"
    r"|okay|fine|all ?right|possible"
    r"|good|work|works|working|matter|do|do it|do fine|do as well|go|be nice|taste good|taste ok|fit"
    r"|change (?:anything|much|a lot)|an option)"
    rf"|(?:because|since|so that|as i|as we|as my|as our|so it|so that|so my)\b{_TAIL}"
    rf"|to (?:save|keep|get|lighten|avoid|suit|please|boost|help)\b{_TAIL}|to (?:make|cut|bring|lower|reduce) "
    rf"(?:it|this|down|back|them|the sodium|the fat)\b{_TAIL}"
    rf"|for (?:my|our|his|her|the|a) (?:[a-z-]+ ){{0,2}}(?:{_RELATIVES})\b(?!.* of \w+$){_TAIL}"
    r"|(?:is|are) (?:all|what) (?:that )?(?:i|we)(?:'ve)? (?:have|got|have got)"
    rf"|for (?:someone|somebody|those|people|anyone) (?:who|with)\b{_TAIL}"
    r"|(?:for|due to) (?:allergies|vegans|vegetarians|health reasons)|,? what (?:happens|changes|then"
    r"|does that do)\b.*"
    r"|,? how (?:does|would|do|much|many) .*)[\s?!.,]*$",
    re.IGNORECASE,
)
_VERBS = (  # other forms of the verbs that a change begins with
    (r"leav(?:e|es|ing) (?:out|off|away)|left (?:out|off)", "leave out"),
    (r"omit(?:s|ted|ting)?|skip(?:s|ped|ping)?|remov(?:e|es|ed|ing)|drop(?:ped|ping)?(?! .* to\b)", "leave out"),
    (
        r"exclud(?:e|es|ed|ing)|forget(?: about)?|forgot|ditch(?:ed|ing)?|eliminat(?:e|ed|ing)|lose|lost|nix",
        "leave out",
    ),
    (
        r"(?:take|taking|took|cut|cutting|keep|keeping) (?:out|away)|hold(?:ing)?(?: off on| off)?|avoid(?:ing)?",
        "leave out",
    ),
    (
        r"(?:go|going|do|doing|make it|made|cook it|have it|serve it|eat it|be) without|sans|minus"
        r"|without",
        "leave out",
    ),
    (
        r"(?:don'?t|do not|didn'?t|did not|never|not) (?:use|add|put in|put|include|have|bother with)(?: any)?",
        "leave out",
    ),
    (r"need(?: to (?:use|add))?(?: any)?(?= )", "leave out"),
    (r"us(?:es|ed|ing)|try|tried|trying|cook(?:ing)? with|go(?:ing)? with|work(?:s|ing)? with|go for", "use"),
    (
        r"(?:make|made|making|do|cook) (?:it |this )?(?:with|from|using)|choos(?:e|ing)|chose|pick(?:ed)?|have(?= )"
        r"|(?:only |just )?(?:had|got)(?= )|(?:only|just) have(?= )",
        "use",
    ),
    (
        r"swap(?:s|ped|ping)?(?: out)?|switch(?:es|ed|ing)?(?: out| from)?|chang(?:e|ed|ing)(?= (?:the|my|our) )"
        r"|exchang(?:e|ed|ing)|trad(?:e|ed|ing)",
        "swap",
    ),
    (r"replac(?:e|es|ed|ing)|chang(?:e|ed|ing)|turn(?:ed)?|convert(?:ed)?", "swap"),
    (r"substitut(?:e|es|ed|ing)(?: in)?|sub(?:s|bed|bing)?(?: in)?", "substitute"),
    (r"(?:add|use|put|throw in) (?:in )?a second(?= )", "add another"),
    (
        r"add(?:s|ed|ing)?(?: in)?|includ(?:e|ed|ing)|thr(?:ow|owing|ew) in|stir(?:red|ring)? in"
        r"|(?:toss|chuck|pop|stick|sneak)(?:ed|p?ing)? in",
        "add",
    ),
    (
        r"mix(?:ed|ing)? in|top(?:ped|ping)? (?:it |this )?(?:off )?with|sprinkl(?:e|ed|ing)(?: on)?"
        r"|fold(?:ed|ing)? in",
        "add",
    ),
    (
        r"(?:sweeten|season|thicken|flavou?r|dress|bind|fill|finish|garnish)(?:ed|ing)? (?:it |this |them )?with"
        r"(?= .*(?:instead|rather than|in place))",
        "use",
    ),
    (r"(?:sweeten|season|thicken|flavou?r|dress|finish|garnish)(?:ed|ing)? (?:it |this |them )?with", "add"),
    (r"put(?: in| on)?(?= )", "put"),
    (r"(?:go(?:ing)?|get|come) (?:(?:up|down|back) )?to(?= (?:\d|an? |one |two |three |four |half ))", "use"),
    (r"doubl(?:ed|ing)(?= )", "double"),
    (r"tripl(?:ed|ing)(?= )", "triple"),
    (r"halv(?:ed(?= (?:the|my|our)\b)|ing)(?= )", "halve"),
    (
        r"reduc(?:e|ing)|(?:reduced|lower(?:ed|ing)?)(?!-| (?:sodium|salt|fat|sugar)\b)"
        r"|decreas(?:e|ed|ing)|cut(?:ting)?(?: down| back)?(?: on)?",
        "reduce",
    ),
    (
        r"bring down|(?:dial|trim|knock|turn)(?:m?ed)? (?:back|down)|(?:dial|trim"
        r"|knock)(?:m?ed)?(?= .* (?:back|down)\b)|drop(?:ped|ping)?(?= .* to\b)|go (?:down|easy) (?:on|with)"
        r"|go lighter on",
        "reduce",
    ),
    (
        r"increas(?:e|ed|ing)|rais(?:e|ed|ing)|boost(?:ed|ing)?|(?:bump|push|crank|ramp|turn|scale)(?:ed"
        r"|ing)? up|(?:bump|crank|ramp)(?:ed|ing)?(?= .* (?:up|to)\b)|up(?:ped|ping)?(?= )",
        "increase",
    ),
    (
        r"mak(?:es|ing)|made|(?:cook(?:s|ing)?|bak(?:e|ing))(?! (?:powder|soda)| *$)|prepar(?:e|ing)"
        r"|(?:cooked|baked|prepared)(?= (?:it|this|that|the)\b)",
        "make",
    ),
    (r"serv(?:es|ed|ing)(?= )", "serve"),
    (r"feeds|feeding|fed", "feed"),
    (r"rins(?:es|ed|ing)(?= (?:the|off|my|our))|wash(?:ed|ing)?(?= (?:the|off|my|our))", "rinse"),
    (r"drain(?:s|ed|ing)(?= (?:the|off|my|our))", "drain"),
)
_FREE = re.compile(r"\b(gluten|wheat|dairy|lactose|egg|nut|meat|soy|fat|sugar|salt|sodium|cholesterol) free\b(?= \w)")
_VERB_FORMS = tuple((re.compile(rf"^(?:{forms})\b\s*", re.IGNORECASE), verb) for forms, verb in _VERBS)


def plain(line: str) -> str:
    """Return a line in plain characters and small letters, on one line, without marks at its end."""
    text = plain_characters(line).replace("’", "'").replace('"', " ").replace("“", " ").replace("”", " ")
    text = re.sub(r"\s*(?:->|=>|→)\s*", " to ", written_out(text))
    text = re.sub(r"(?:^|(?<=\buse )|(?<=\badd ))(?=(?:can|jar) of )", "1 ", text)  # "can of corn instead"
    text = _FREE.sub(r"\1-free", with_half_ahead(text))
    return text.strip(" .?!,;:")


def without_politeness(text: str) -> str:
    """Return a plain line without what only stands around the change.

    Examples
    --------
    >>> without_politeness("could we please leave out the feta, would that be ok")
    'leave out the feta'
    """
    for ending in (_OPENINGS, _CLOSINGS, _OPENINGS):
        for _ in range(12):
            shorter = ending.sub("", text).strip(" .?!,;:")
            if shorter == text or not shorter:
                break
            text = shorter
    return text


def verb_first(text: str) -> str:
    """Return a clause with the verb it begins with in one form.

    Examples
    --------
    >>> verb_first("omitting the salt"), verb_first("used 1 cup rice")
    ('leave out the salt', 'use 1 cup rice')
    """
    for form, verb in _VERB_FORMS:
        found = form.match(text)
        if found:
            return f"{verb} {text[found.end() :]}".strip()
    return text


def number_in(text: str) -> float | None:
    """Return a number written in digits or words.

    Examples
    --------
    >>> number_in("twelve"), number_in("a dozen"), number_in("twenty-five"), number_in("1.5"), number_in("many")
    (12.0, 12.0, 25.0, 1.5, None)
    """
    text = text.strip().lower()
    if re.fullmatch(r"-\d+", text):
        return float(text)
    text = text.replace("-", " ")
    if text in ("no", "zero"):
        return 0.0
    if text.endswith("hundred"):
        return 100.0
    if text in _TEENS:
        return float(_TEENS[text])
    tens, _, ones = text.partition(" ")
    if tens in _TENS:
        return _TENS[tens] + (number_in(ones) or 0.0)
    count, rest = read_count(text.removesuffix(" of"))
    return count.value if count and not rest.strip() else None


def part_in(text: str) -> float | None:
    """Return a part of one: ``"a third"``, ``"3/4"``, ``"25 %"``.

    Examples
    --------
    >>> part_in("half"), part_in("three quarters"), part_in("25 percent")
    (0.5, 0.75, 0.25)
    """
    text = text.strip().lower().replace("-", " ").removesuffix(" of")
    percent = re.fullmatch(r"(\d+(?:\.\d+)?)\s*(?:%|percent|per cent)", text)
    if percent:
        return float(percent[1]) / 100
    words = text.split()
    named = _PARTS.get(words[-1].removesuffix("s"), 0) if words else 0
    if named and len(words) <= 2:
        return _HOW_MANY.get(words[0], 1) / named
    count, rest = read_count(text)
    return count.value if count and not rest else None


def times_in(text: str) -> float | None:
    """Return how many times: ``"double"``, ``"3x"``, ``"one and a half times"``.

    Examples
    --------
    >>> times_in("twice"), times_in("3x"), times_in("one and a half times")
    (2.0, 3.0, 1.5)
    """
    text = text.strip().lower()
    return _TIMES.get(text) or number_in(re.sub(r"\s*(?:x|times)$", "", text))

"""Where one statement of a sentence ends and the next begins."""

from collections.abc import Iterator, Sequence

from kit.speech.words.tokens import Token

STOPS = frozenset(".;:?!—–")


_BREAKS = frozenset("but while whereas because since although though yet however so".split())
_ALL_BUT = frozenset(("everything", "all", "anything", "nothing", "none", "everything here", "everything in it"))


def is_stop(token: Token) -> bool:
    """Return whether a token ends a clause."""
    return token.text in STOPS


def _clauses(tokens: Sequence[Token]) -> Iterator[int]:
    number, seen_verb, start = 0, False, 0
    for at, token in enumerate(tokens):
        before = number
        seen_verb = seen_verb or not _is_list(tokens[start:at])
        if (
            (
                token.text in _BREAKS
                and at > 0
                and not (token.text == "but" and tokens[at - 1].text in _ALL_BUT)
                and not (
                    token.text == "so" and at + 1 < len(tokens) and tokens[at + 1].text in ("much", "many", "long")
                )
            )
            or (token.text == "," and (seen_verb or _it_follows(tokens, at + 1)) and _new_clause(tokens, at + 1))
            or (
                token.text == "and"
                and (seen_verb or _it_follows(tokens, at))
                and tokens[at - 1].text != ","
                and _new_subject(tokens, at + 1)
            )
        ):
            number += 1
        if number != before:
            seen_verb, start = False, at
        seen_verb = seen_verb or is_verb_word(token)
        yield number
        if is_stop(token):
            number, seen_verb, start = number + 1, False, at + 1


_LIST_WORDS = frozenset(
    "the a an this that these those your our its their each every "
    "both all and , or plus in it of between them together".split()
)


def _is_list(tokens: Sequence[Token]) -> bool:
    """Return whether some tokens may be no more than a list of things: "protein, fat and carbohydrate"."""
    things = ("food", "nutrient", "dish", "allergen", "kind", "pronoun", "share", "group", "wording")
    return (
        all(
            token.text in _LIST_WORDS or any(kind in token.parts for kind in things) or token.quantity is not None
            for token in tokens
        )
        or len(tokens) < 4
    )


def _it_follows(tokens: Sequence[Token], at: int) -> bool:
    """Return whether "it" or "they" begins here, behind an "and": a statement of its own, whatever came before."""
    place = at + (at < len(tokens) and tokens[at].text in ("and", "but", "while"))
    return place < len(tokens) and tokens[place].text in ("it", "they", "there", "you")


def is_verb_word(token: Token) -> bool:
    """Return whether a word may be the verb of a statement, or an order."""
    if token.quantity is not None:
        return token.text.split(" ")[0] in VERBS  # "stays under five grams"
    return token.text in VERBS or any(
        kind.startswith("verb_") and kind not in ("verb_for", "verb_from") for kind in token.parts
    )


def _new_clause(tokens: Sequence[Token], at: int) -> bool:
    """Return whether a comma ends a clause: what follows is no further part of a list."""
    if at < len(tokens) and tokens[at].text in ("and", "or", "but", "while", "so", "with", "which"):
        return tokens[at].text != "or" and (_new_subject(tokens, at + 1) or tokens[at].text in ("with", "which"))
    return _new_subject(tokens, at)


VERBS = frozenset(
    "is are was were be been being has have had having do does did can will would could should may might must "
    "keeps keep lasts last comes come came makes make made gets get got sits sit lands land runs run works work "
    "counts count "
    "weighs weigh serves serve feeds feed starts start stays stay means mean shows show takes take needs need goes go "
    "clocks clock averages tips packs pack covers cover meets meet fills fill fall falls lie lies reaches reach "
    "suits suit fits "
    "saves save beats beat rises rise drops drop freezes freeze contains contain uses use cooks tastes taste "
    "becomes".split()
)


def _new_subject(tokens: Sequence[Token], at: int) -> bool:
    """Return whether a subject and its verb begin here: "and the eggs bring", "and it is not vegan"."""
    if at < len(tokens) and (
        tokens[at].text in _ORDERS
        or tokens[at].is_a("verb_leave_out")
        or tokens[at].text in ("swapping", "using", "halving")
    ):
        return True
    place, strict = at, False
    while place < len(tokens) and place < at + 9:
        token = tokens[place]
        if place > at and token.text in _THIS and any(one.is_a("dish") for one in tokens[place + 1 : place + 2]):
            place += 1  # "everything in this skillet is"
            continue
        if token.text in ("it", "they", "you", "there", "i", "we", "that", "this", "these", "he", "she", "what"):
            return place == at
        if place > at and is_verb_word(token) and token.text not in _NO_VERBS:
            return True
        if (
            token.is_a("dish")
            and token.food is None
            and place > at
            and tokens[place - 1].text in ("the", "this", "each", "every", "a", "one", "your")
        ):
            return True
        if token.quantity is not None and token.quantity.unit in ("degree", "celsius"):
            strict = True
        elif token.quantity is not None:
            led = all(one.text in _LIST_WORDS for one in tokens[at:place])
            return led and _counts_dish(tokens, place)
        if token.text in ("and", ",", "or") or is_stop(token):
            return False
        if token.text in ("of", "from", "in", "with", "for", "to", "by", "at", "on", "than"):
            strict = True
        if strict and (token.text in ("from", "for", "to", "by", "than", "with") or place > at + 7):
            return False
        place += 1
    return False


_THIS = ("this", "that", "these")
_NO_VERBS = frozenset("less fewer more extra added down up out without minus plus".split())


_ORDERS = frozenset(
    "pull take bring bake serve warm "
    "leave keep put store freeze let cook eat refrigerate chill reheat skip swap use rinse drain think call "
    "marinate thaw defrost pour cool give".split()
)


def _counts_dish(tokens: Sequence[Token], at: int) -> bool:
    """Return whether a number begins a statement: "one bowl has", "a cup of this soup has"."""
    place = at + 1
    while place < len(tokens) and tokens[place].text in ("of", "the", "this", "a", "that", "your", "small", "large"):
        place += 1
    return (
        place < len(tokens)
        and (tokens[place].is_a("dish") or tokens[place].food is not None)
        and place + 1 < len(tokens)
        and tokens[place + 1].text in VERBS
    )

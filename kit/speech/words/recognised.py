"""The words of a sentence recognised: which are phrases of speech, foods and numbers, and what each may mean."""

from collections.abc import Sequence
from dataclasses import replace

from kit.food.vocabulary import words as food_words
from kit.speech.words.foods_said import FoodNames, FoodWord
from kit.speech.words.numbers_said import Spoken, may_begin, number_at
from kit.speech.words.pieces import is_counted
from kit.speech.words.quantities_said import UNITS_OF_ONE
from kit.speech.words.tokens import Quantity, Rows, Token, Word, phrases, phrases_at, words_of

_COMPONENTS = frozenset(
    "sauce dressing topping filling batter broth garnish base glaze marinade gravy vinaigrette icing frosting".split()
)
_ONE_OF = ("good", "full", "solid", "generous", "mere", "bare", "rough")


def tokens_of(text: str, names: FoodNames) -> list[Token]:
    """Return a text as tokens: the phrases of speech, the foods and the numbers in it, each the longest that fits."""
    words = words_of(text)
    stems = [(food_words(word.text) or (word.text,))[0] for word in words]
    plain = [word.text for word in words]
    own = tuple(word.stem for word in words)
    longer, alone = phrases()
    found: list[Token] = []
    at = 0
    while at < len(words):
        begins = stems[at] in names.begins or own[at] in alone or own[at : at + 2] in longer
        if not begins and not may_begin(plain[at]):
            found.append(_word(words[at], _of_title(stems[at], names)))
            at += 1
            continue
        number = number_at(plain, at)
        food = names.at(stems, at)
        named = names.at(stems, at + 1) if own[at : at + 2] == ("the", "whole") else None
        rows = _phrase_rows(own, at, named)
        longest = rows[0][0] if rows else 0  # the longest first
        if number and number.length >= longest and not (number.length < (food[0] if food else 0)):
            found.append(_number(words, at, number))
            at += number.length
            continue
        rows = _with_a_number(plain, at, rows, longest)
        length = max(rows[0][0] if rows else 1, food[0] if food else 1)
        parts = {kind: meaning for size, kind, meaning in reversed(rows) if size == length}
        if "relation" in parts and not _number_follows(plain, at + length):
            del parts["relation"]
        word = food[1] if food and food[0] == length else None
        parts = parts or (_of_title(stems[at], names) if word is None else {})
        token = _phrase(words[at : at + length], parts, word, stems[at], names)
        if stems[at] in names.pieces and "dish" in parts and is_counted(plain[:at]):
            parts |= {"dish": "part", "piece": token.text}
        if "dish" in parts and "unit" in parts and own[at + length : at + length + 1] != ("of",):
            del parts["unit"]  # "a cup" where each serving is one; "a cup of oats" is a measure all the same
        found.append(token)
        at += length
    return _with_vitamins(found)


def _with_vitamins(tokens: Sequence[Token]) -> list[Token]:
    """Return tokens with the letters listed behind a vitamin as vitamins: "vitamins A, C and K"."""
    found = list(tokens)
    of_vitamins = False
    for at, token in enumerate(found):
        letter = token.text in _LETTERS and (token.text != "a" or _ends_list(found, at + 1))
        if token.text.startswith(("vitamin ", "vitamins ")) and "nutrient" in token.parts:
            of_vitamins = True
        elif of_vitamins and letter:
            named = [meaning for _, kind, meaning in phrases_at(("vitamin", token.text), 0) if kind == "nutrient"]
            found[at] = replace(token, parts={"nutrient": named[0]} if named else {"beyond": "nutrient"}, food=None)
        else:
            of_vitamins = of_vitamins and token.text in (",", "and", "or", "&", "plus")
    return found


_LETTERS = frozenset("a c d e k b b1 b2 b3 b5 b6 b7 b9 b12".split())


def _ends_list(tokens: Sequence[Token], at: int) -> bool:
    return at >= len(tokens) or tokens[at].text in (",", "and", "or", "&", ".", "!", ";")


def _phrase_rows(own: tuple[str, ...], at: int, named: tuple[int, FoodWord] | None) -> Rows:
    """Return the phrases that begin at a word, without those that are not meant there."""
    rows = phrases_at(own, at)
    if not rows:
        return rows
    if own[at] in _METALS and (own[at - 1 : at] in _WORKED or own[at + 1 : at + 2] in _MADE_OF_METAL):
        rows = [row for row in rows if row[1] != "nutrient"]  # "a cast-iron pan"
    if own[at] == "and" and own[at + 2 : at + 3] == ("to",):
        rows = [row for row in rows if row[1] != "after"]  # ", and up to 300" is no "300 and up"
    if own[at] == "or" and own[at + 2 : at + 3] == ("than",):
        rows = [row for row in rows if row[1] != "after"]  # "or more than 300 calories" is no "or more"
    if own[at + 1 : at + 2] == ("one",) and own[at + 2 : at + 3] in (("hundred",), ("thousand",)):
        rows = [row for row in rows if row[0] != 2]  # "for every one hundred calories"
    return [] if named is not None and named[0] >= 2 else rows  # "the whole milk" is a food


_METALS = ("iron", "copper", "zinc")
_WORKED = (("cast",), ("wrought",), ("waffle",))
_MADE_OF_METAL = frozenset((word,) for word in "pan pot skillet griddle kettle casserole grill lid bowl handle".split())


def _with_a_number(plain: Sequence[str], at: int, rows: Rows, longest: int) -> Rows:
    """Return the phrases without "close to" and "a good", which are said of a number only when one follows."""
    if rows and rows[0][1] == "relation" and all(row[1] == "relation" for row in rows if row[0] == longest):
        return [row for row in rows if row[1] != "relation" or _number_follows(plain, at + row[0])]
    return rows


def _phrase(words: Sequence[Word], parts: dict[str, str], word: FoodWord | None, stem: str, names: FoodNames) -> Token:
    """Return a word or a phrase as a token, with the food or the part of the dish that it names."""
    text = " ".join(one.text for one in words)
    if word is not None and "nutrient" in parts and not word.inside and not word.exact:
        word = None  # "protein" is no food for being the head of one
    if word is not None:
        word = replace(word, text=text)
        parts["food"] = word.text
    if len(words) == 1 and "dish" in parts and stem in _COMPONENTS and stem not in names.dishes:
        parts["dish"] = "part"  # "the sauce" of a dish that is not called a sauce
        if stem == "broth" and word is not None and word.inside:
            del parts["dish"]  # what is poured in
    if len(words) == 1 and stem in names.dishes and not (word is not None and word.inside):
        if names.dishes[stem] == "serving" or "dish" not in parts:
            parts["dish"] = names.dishes[stem]
        word = None  # what the dish is called is the dish, though a food of the table be called so too
        parts.pop("food", None)
    first, last = words[0], words[-1]
    return Token(text, first.start, last.end, parts, None, word, first.hyphen_before, last.possessive)


def _number_follows(plain: Sequence[str], at: int) -> bool:
    following = plain[at] if at < len(plain) else ""
    if at and plain[at - 1] in _ONE_OF and _is_unit_word(following):
        return True  # "a good year", "a full cup"
    if following in ("a", "an", "the", "all", "another"):
        return number_at(plain, at) is not None or (at + 1 < len(plain) and _is_unit_word(plain[at + 1]))
    return number_at(plain, at) is not None


def _is_unit_word(text: str) -> bool:
    return any(
        kind == "unit" and meaning in UNITS_OF_ONE
        for word in words_of(text)[:1]
        for _, kind, meaning in phrases_at((word.stem,), 0)
    )


def _of_title(stem: str, names: FoodNames) -> dict[str, str]:
    """Return the part that a word plays which is otherwise unknown: it may stand in the dish's title."""
    return {"title": stem} if stem in names.title else {}


def _word(word: Word, parts: dict[str, str]) -> Token:
    """Return a word that is nothing but itself, or one of the dish's title, as a token."""
    return Token(word.text, word.start, word.end, parts, None, None, word.hyphen_before, word.possessive)


def _number(words: Sequence[Word], at: int, spoken: Spoken) -> Token:
    first, last = words[at], words[at + spoken.length - 1]
    text = " ".join(word.text for word in words[at : at + spoken.length])
    quantity = Quantity(spoken.value, spoken.value, is_fraction=spoken.is_fraction)
    return Token(text, first.start, last.end, {"number": text}, quantity, None, first.hyphen_before)

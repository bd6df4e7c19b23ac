"""Quantities among the tokens of a sentence: a number with its unit and what was said of it."""

from collections.abc import Sequence

from kit.speech.words.numbers_said import MULTIPLES
from kit.speech.words.quantities_joined import COUNTED_WITH, with_both_bounds
from kit.speech.words.tokens import NO_QUANTITY, Quantity, Token

WEIGHTS = {"g": 1.0, "mg": 1e-3, "µg": 1e-6, "kg": 1000.0, "oz": 28.349523125, "lb": 453.59237}  # [g]; NIST
UNITS_OF_ONE = ("g", "mg", "µg", "kg", "oz", "lb", "cup", "tbsp", "tsp", "week", "month", "year", "hour", "%", "kcal")

_A = ("a", "an", "one")
_SIZED = ("whole", "single", "level", "heaped", "heaping")
_ARTICLES = ("a", "an", "the", "another")
_ABOUT_WHERE = ("somewhere", "anywhere")
_BETWEEN = ("between", "somewhere between", "anywhere between", "from", "anywhere from")
_FIRST = frozenset((*_A, *_BETWEEN, *_ABOUT_WHERE, "each", "every"))
_ROUGHLY = ("odd", "something", "some", "ish", "plus")  # "fifteen-odd grams"
_LEADS_UP = frozenset("add adds adding come comes coming take takes bring brings get gets go goes tot tots".split())
_SPANS = ("day", "week", "hour", "month")
_NOT_PARTED = ("day", "%", "kcal", "times")  # "half a day", "half a calorie" are no halves of the unit
_OF_THE_REST = ("the", "your", "are", "is", "come", "comes", "from")  # "... and half the salt": no half of the unit


def with_quantities(tokens: list[Token]) -> list[Token]:
    """Return the tokens with each number, its unit and what is said of it made one."""
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        token, then = _quantity(tokens, at) if _may_begin(tokens[at]) else (None, at)
        found.append(token or tokens[at])
        at = then if token else at + 1
    return with_both_bounds(found)


def _quantity(tokens: Sequence[Token], at: int) -> tuple[Token | None, int]:
    """Return the quantity that begins at a token, if one does, and where it ends."""
    reading = _Quantity(tokens, at)
    return reading.read(), reading.place


def _may_begin(token: Token) -> bool:
    """Return whether a quantity may begin with a token: a number, what is said of one, or "a" and "each"."""
    return (
        token.quantity is not None or "relation" in token.parts or token.text in _FIRST or token.text.startswith("a ")
    )


class _Quantity:
    """One quantity while it is read, from the left to the right; `place` is the next token that is looked at."""

    def __init__(self, tokens: Sequence[Token], at: int) -> None:
        self.tokens, self.start, self.place = tokens, at, at
        self.relation = ""
        self.between = tokens[at].text in _BETWEEN
        self.low = self.high = 1.0
        self.unit = ""
        self.is_fraction = False

    def read(self) -> Token | None:
        """Return the quantity as one token; None where none begins here."""
        if not self._read_relation() or self.place >= len(self.tokens):
            return None
        if span := self._one_or_two():
            return span
        first = self.tokens[self.place]
        if not (self._read_number() if first.quantity is not None else self._read_one_of()):
            return None
        or_so = self._is_a(0, "after") and self.tokens[self.place].parts["after"] == "about"
        if (self._text(0) in _ROUGHLY or or_so) and self._unit(1):
            self.place += 1
        self._read_second_number()
        if self.tokens[self.start].text == "from" and self.relation != "between":
            return None
        self._read_unit()
        if self._is_a(0, "after") and not self._is_a(0, "share"):
            self._relate(self.tokens[self.place].parts["after"])
            self.place += 1
        elif self.unit:
            self._relate(self._closing())
        if not self.unit and (first.text in MULTIPLES or first.text.endswith("fold")):
            self.unit = "times"
        return self._token((first.start, first.end))

    def _text(self, ahead: int) -> str:
        at = self.place + ahead
        return self.tokens[at].text if at < len(self.tokens) else ""

    def _is_a(self, ahead: int, kind: str) -> bool:
        at = self.place + ahead
        return at < len(self.tokens) and self.tokens[at].is_a(kind)

    def _unit(self, ahead: int) -> str:
        at = self.place + ahead
        return self.tokens[at].parts.get("unit", "") if at < len(self.tokens) else ""

    def _number(self, ahead: int) -> Quantity:
        at = self.place + ahead
        return self.tokens[at].amount if at < len(self.tokens) else NO_QUANTITY

    def _is_number(self, ahead: int) -> bool:
        return self._number(ahead) is not NO_QUANTITY

    def _relate(self, told: str) -> None:
        """Take a word such as "under" over; "about" takes nothing back."""
        if told and (told != "about" or not self.relation):
            self.relation = told

    def _read_relation(self) -> bool:
        """Pass over "about", "well under", "somewhere between", and the article behind it."""
        while self.place < len(self.tokens):
            if self._text(0) in _ABOUT_WHERE:
                if self._text(1) not in ("between", "from"):
                    return False
                self.between = True
                self.place += 2
            elif self._is_a(0, "relation") or (self.between and self.place == self.start):
                reached = self._text(0) == "up to" and self._is_reached()
                self._relate("" if reached else self.tokens[self.place].parts.get("relation", ""))
                self.place += 1
            else:
                break
        if self.place > self.start and self._text(0) in _ARTICLES and not self._is_number(0) and self._is_number(1):
            self.place += 1
        return True

    def _is_reached(self) -> bool:
        """Return whether "up to" ends what leads there, and is no ceiling: "adds up to", "brings you up to"."""
        before = [token.text for token in self.tokens[max(0, self.start - 3) : self.start]]
        at = before[-1:] in (["are"], ["be"]) and not {"you", "we"}.isdisjoint(before)
        return at or before[-1:] in (["it"], ["you"], ["us"]) or not _LEADS_UP.isdisjoint(before[-1:])

    def _one_or_two(self) -> Token | None:
        """Return "a day or two", "a gram or so"."""
        most = {("or", "two"): 2.0, ("or", "so"): 1.0}.get((self._text(2), self._text(3)))
        if self._text(0) not in _A or self._unit(1) not in (*_SPANS, "g", "mg") or most is None:
            return None
        self.high, self.unit = most, self._unit(1)
        self.relation = "between" if most > 1 else "about"
        self.place += 4
        return self._token((0, 0))

    def _read_number(self) -> bool:
        number = self._number(0)
        self.low = self.high = number.value
        self.is_fraction = number.is_fraction
        self.place += 1
        return True

    def _read_one_of(self) -> bool:
        """Pass over the article of "a gram"; of "a good year" the relation holds it."""
        if self._text(0) in _A and self._text(1) in _SIZED and self._unit(2) in UNITS_OF_ONE:
            self.place += 2  # "a whole cup"
            return True
        each = self._text(0) in ("each", "every") and self._unit(1) in UNITS_OF_ONE and self._text(2) == "of"
        if each and self._text(3) in ("this", "the", "that", "our") and self._is_a(4, "dish"):
            self.place += 1  # "each cup of this soup"
            return True
        led = self.place > self.start and self.tokens[self.place - 1].text.startswith("a ") and self._unit(0) != ""
        unit = 0 if led else 1
        if not (led or self._text(0) in _A) or self._unit(unit) not in UNITS_OF_ONE:
            return False
        if self._unit(unit) == "kcal" or self.tokens[self.place + unit].hyphen_before:
            return False
        self.place += unit
        return True

    def _read_second_number(self) -> None:
        """Read the end of a span: "25 to 40 grams", "25 grams to 40 grams", "25-40"."""
        if self._is_number(0) and self.tokens[self.place].hyphen_before and self._number(0).value > self.low:
            self._span_to(0)
            return
        joined = 0
        if self._text(1) in ("to", "and") and self._is_number(2) and self._unit(0) and self._unit(3) == self._unit(0):
            joined = 1  # the unit is said with both numbers
        second = self._number(joined + 1)
        if second is NO_QUANTITY or second.value <= self.low:
            return
        if self.between or not (self.is_fraction or second.is_fraction):
            words = ("and", "to", "or", "–") if self.between else ("to", "or", "–")
            if self._text(joined) in words:
                self._span_to(joined + 1)

    def _closing(self) -> str:
        """Return what is said of the number behind what it counts: "20 grams of fat a plate at most", "... exactly"."""
        ahead = 0
        while self._text(ahead) in COUNTED_WITH or self._is_a(ahead, "nutrient") or self._is_a(ahead, "dish"):
            ahead += 1
        closes = ahead and self._is_a(ahead, "after") and not self._is_a(ahead, "relation")
        after = self.tokens[self.place + ahead].parts["after"] if closes else "about"
        return (
            ""
            if after == "about"
            or self._is_a(ahead, "share")
            or self._is_number(ahead + 1)
            or self._text(ahead + 1) == "than"
            else after
        )

    def _span_to(self, ahead: int) -> None:
        self.high, self.relation = self._number(ahead).value, "between"
        self.place += ahead + 1

    def _read_unit(self) -> None:
        """Read the unit: "grams", and of a part of one, "half a cup", what it is a part of."""
        ahead = self._unit_of_part() if self.is_fraction else 0
        unit = self._unit(ahead)
        if unit == "day" and (self.is_fraction or self.tokens[self.place + ahead].possessive):
            return
        if not unit:
            return
        self.unit, self.is_fraction = unit, False
        self.place += ahead + 1
        if self._text(0) == "and" and self._number(1).is_fraction and self._number(1).value < 1:
            if self._text(2) in _OF_THE_REST or self._is_a(2, "nutrient"):
                return
            if self._text(2) == "of" and self._text(3) in ("the", "your", "its"):
                return
            of_it = self._text(2) == "of" and self._text(3) in ("it", "this", "that", "them")
            if self._text(1) == "half" and (of_it or self._text(2) in ("a", "an")):
                return  # "95 calories and half a bowl", but "a gram and a half a plate"
            more = self._number(1).value  # "a cup and a half"
            self.low, self.high = self.low + more, self.high + more
            self.place += 2

    def _unit_of_part(self) -> int:
        """Return how far ahead the unit stands in "half a cup", "a third of a cup"; 0 where it does not."""
        if self._text(0) not in ("a", "an", "of"):
            return 0
        ahead = 2 if self._text(0) == "of" and self._text(1) in _A else 1
        is_part = self._text(ahead - 1) in _A and self._unit(ahead) not in ("", *_NOT_PARTED)
        return ahead if is_part else 0

    def _token(self, number: tuple[int, int]) -> Token:
        first, last = self.tokens[self.start], self.tokens[self.place - 1]
        quantity = Quantity(self.low, self.high, self.unit, self.relation or "about", self.is_fraction)
        return Token(
            " ".join(token.text for token in self.tokens[self.start : self.place]),
            first.start,
            last.end,
            {"quantity": self.unit or "number"},
            quantity,
            None,
            first.hyphen_before,
            last.possessive,
            number,
        )

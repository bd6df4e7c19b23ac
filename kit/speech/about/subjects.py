"""What each clause is about: the dish, a part of it, a food in it, or a food by itself."""

from dataclasses import replace

from kit.rules.naming import is_plural
from kit.speech.about.bare_parts import TAKES, bare_count, bare_measure, bare_part, each_half, eaten, eats_all, if_done
from kit.speech.about.exceptions import eaten_beside, is_every_thing, set_against, sets_apart
from kit.speech.about.other_dishes import other_dish
from kit.speech.about.parts import (
    _GLASSES,
    DETERMINERS,
    MEASURES,
    PLAIN,
    PREPOSITIONS,
    back,
    dish_part,
    each_measure,
    food_part,
    is_dish,
    is_food,
    is_verb,
    with_so_much,
)
from kit.speech.claim import FOOD, SERVING, THE_DISH, UNKNOWN, WEIGHT, WHOLE, About
from kit.speech.words.quantities_said import WEIGHTS
from kit.speech.words.sentence import Sentence


def subjects(sentence: Sentence) -> list[About]:
    """Return what the sentence is about at each of its tokens."""
    reading = _Subjects(sentence)
    return [reading.at(place) for place in range(len(sentence))]


class _Subjects:
    """What is spoken of, followed from token to token.

    A subject stands before its verb, and goes on through the clauses behind it until another is named. "It" behind a
    food may mean the food or the dish.
    """

    def __init__(self, sentence: Sentence) -> None:
        self.sentence = sentence
        self.current = THE_DISH
        self.seen_verb = False
        self.clause = -1
        self.since = -1  # the clause in which the subject was named

    def at(self, at: int) -> About:
        """Return the subject at a token, when those before it have been seen."""
        if self.sentence.clauses[at] != self.clause:
            self.clause, self.seen_verb = self.sentence.clauses[at], False
        self._count(at)
        dish, food = is_dish(self.sentence, at), is_food(self.sentence, at)
        word = self.sentence.text_at(at)
        if dish or food or not self.seen_verb or word in _MAY_STAND_FOR_IT or word.startswith("no "):
            before = back(self.sentence, at)
            led = self.sentence.text_at(before) in PREPOSITIONS
            if dish:
                self._dish(at, before, led)
            elif food:
                self._food(at, before, led)
            else:
                self._word(at, led)
        if self.sentence.text_at(at) in _MAKES and self.on_food and _it(self.sentence, at + 1):
            self.current = THE_DISH  # "the oats make it", "the rice makes this"
        if is_verb(self.sentence, at) and not self.sentence.is_a(at, "dish"):
            self.seen_verb = True
        return self.current

    @property
    def on_food(self) -> bool:
        return self.current.kind == FOOD

    @property
    def opens(self) -> bool:
        """Whether the clause has named no subject yet, and no verb has come."""
        return not self.seen_verb and self.since != self.clause

    def _count(self, at: int) -> None:
        if self.sentence.tokens[at].quantity is None:
            return
        to_eat = eaten(self.sentence, at)
        if each_half(self.sentence, at):
            self.current, self.since = About(SERVING, self.sentence.tokens[at].amount.value), self.clause
            return
        if not (self.opens or to_eat):
            return
        said = self.sentence.tokens[at].amount
        if to_eat or bare_part(self.sentence, at) or bare_count(self.sentence, at):
            weighed = About(WEIGHT, said.value * WEIGHTS[said.unit]) if said.unit in WEIGHTS else None
            self.current, self.since = weighed or About(SERVING, said.value), self.clause
        elif bare_measure(self.sentence, at):
            known = said.unit in WEIGHTS and not self.on_food
            part = About(WEIGHT, said.value * WEIGHTS[said.unit]) if known else None
            self.current, self.since = part or About(UNKNOWN, words=self.sentence.text_at(at)), self.clause

    def _dish(self, at: int, before: int, led: bool) -> None:
        """Take the dish, or the part of it that is named, as the subject; not in "with the stew" or "the bowl lids"."""
        if led and self.current.kind == UNKNOWN and self.since == self.clause and self.sentence.text_at(before) == "of":
            return  # "the whole bowl of hummus" is one thing
        self.since = self.clause
        opening = self.sentence.text_at(before) in ("for", "in", "on") and before == self.sentence.clause_of(at)[0]
        if led and not opening and not self._is_measured(before):
            return
        begins = not led and _begins_statement(self.sentence, at)
        if (self.seen_verb and not (begins or if_done(self.sentence, at))) or _compound(self.sentence, at):
            return
        other = other_dish(self.sentence, at)
        self.current = About(UNKNOWN, words=other) if other else dish_part(self.sentence, at)

    def _food(self, at: int, before: int, led: bool) -> None:
        """Take a food as the subject; not one that is left out, nor the one in "with the oats"."""
        sentence, word = self.sentence, self.sentence.text_at(before)
        if _is_changed(sentence, before) or sentence.text_at(at + 1) in ("instead of", "rather than", "in place of"):
            return
        if word in ("no", "zero", "without") or set_against(sentence, before):  # "no butter went into these"
            return
        if word in _BECAUSE and not self.seen_verb:  # "thanks to the beans it's high in fiber": the dish
            return
        if eaten_beside(sentence, at, before):
            self.current, self.since = About(UNKNOWN, words=sentence.said((before - 3, at))), self.clause
            return
        if sets_apart(sentence, before):
            self.current, self.since = THE_DISH, self.clause
            return
        ordered = self.seen_verb and self._is_measured(before) and if_done(sentence, at, TAKES)
        if (led and not self._is_measured(before)) or (self.seen_verb and not (ordered or _verb_follows(sentence, at))):
            return
        about = food_part(sentence, at)
        goes_on = word in ("and", "plus", ",") and self.on_food and not self.seen_verb and self.since == self.clause
        if goes_on and not about.measure:
            about = About(FOOD, 1.0, (*self.current.foods, *about.foods))
        self.current, self.since = about, self.clause

    def _word(self, at: int, led: bool) -> None:
        """Take up what a pronoun, a nutrient or the verb of a change says of the subject."""
        word = self.sentence.text_at(at)
        if word in ("it", "they", "this") and not led and _behind_swap(self.sentence, at):
            self.current = THE_DISH  # "with maple syrup instead of honey it is vegan"
        elif self.on_food and ((word == "it" and self._asks(at)) or self._goes_without(at, word)):
            self.current = replace(self.current, or_dish=True)
        elif word in ("that", "which") and (food := _told_more_of(self.sentence, at)) is not None:
            self.current, self.since = food, self.clause
        elif self.seen_verb:
            return
        elif word == "there" and self.on_food and self.sentence.text_at(at - 1) == "in" and self.since == self.clause:
            return  # "the sweet potato in there is"
        elif self.on_food and (word in _ALL_OF_IT or is_every_thing(self.sentence, at)):
            self.current = THE_DISH
        elif self.opens and (self._may_be_dish(at, word, led) or (self.on_food and self._other_thing(at))):
            self.current = replace(self.current, or_dish=True)
        elif self.opens and self._begins_change(at, word):
            self.current = THE_DISH
        elif word in ("this", "that", "these", "those") and not led and _stands_alone(self.sentence, at):
            self.current = THE_DISH if self.on_food else self.current
        elif word == "it" and not led and self.on_food and self.opens:
            plural = any(is_plural(food.text) for food in self.current.foods) or len(self.current.foods) > 1
            self.current = THE_DISH if plural else replace(self.current, or_dish=True)

    def _asks(self, at: int) -> bool:
        """Return whether a question begins before "it": "and is it nut-free?"."""
        verb, led = self.sentence.text_at(at - 1), self.sentence.text_at(at - 2)
        return led in ("and", "but", ",", "") and verb in ("is", "was", "does", "has", "can", "will", "would")

    def _goes_without(self, at: int, word: str) -> bool:
        """Return whether "no added salt" is joined on, of the food before or of the dish: "rice is ..., and no"."""
        none = word.startswith("no ") and self.sentence.is_a(at, "wording")
        led = self.sentence.text_at(at - 1)
        return none and (led in ("and", ",", "but") or (led == "with" and self.sentence.text_at(at - 2) == ","))

    def _other_thing(self, at: int) -> bool:
        """Return whether a clause opens on a thing that is no food: "we used broth, so the outcome is"."""
        plain = [not said.parts and not said.quantity for said in self.sentence.tokens[max(at - 1, 0) : at + 1]]
        led = [self.sentence.text_at(before) in ("the", "our") for before in (at - 1, at - 2)]
        named = (plain[-1] and led[0]) or (all(plain) and led[1])
        return named and is_verb(self.sentence, at + 1)

    def _may_be_dish(self, at: int, word: str, led: bool) -> bool:
        """Return whether a clause goes on in words that may speak of the subject or of the dish."""
        whole = word == "you" and self.current.kind == WHOLE and not eats_all(self.sentence)
        if whole or (word in ("there", "it", "you") and self.current.words == PLAIN):
            return True  # "the whole pot has 1,900 calories, and you get all the iron you need"
        if word in ("there", "it") and not self.on_food:
            return self.current != THE_DISH
        if not self.on_food:
            return False
        if word in ("you", "we", "i"):
            return not (self.current.measure and self.sentence.text_at(0) in TAKES)
        if word == "they" and any(said.unit == "kcal" for _, said in self.sentence.quantities()) and self._from(at):
            return False  # "a tablespoon of oil has 124 calories, and they are all from fat"
        if word == "they":
            plural = len(self.current.foods) > 1 or any(is_plural(food.text) for food in self.current.foods)
            return not plural or any(
                is_dish(self.sentence, spot) and is_plural(self.sentence.text_at(spot)) for spot in range(at)
            )
        joined = self.sentence.text_at(at - 1) in ("and", ",", "but", "the", "its")
        return self.sentence.is_a(at, "nutrient") and joined and not led and not self.current.measure

    def _from(self, at: int) -> bool:
        """Return whether it is told where what "they" stands for comes from: "they are all from fat"."""
        return "from" in self.sentence.texts[at + 1 : at + 5]

    def _begins_change(self, at: int, word: str) -> bool:
        """Return whether a change of the dish begins the clause: "swapping the honey", "leave out"."""
        changes = self.sentence.is_a(at, "verb_swap") or self.sentence.is_a(at, "verb_leave_out")
        return changes and word not in ("without", "holds", "hold") and word.endswith(("ing", "out", "off", "p", "ace"))

    def _is_measured(self, before: int) -> bool:
        """Return whether a part stands before "of": "half of the pot", "a cup of the rice"."""
        return self.sentence.text_at(before) == "of" and before > 0 and _is_part(self.sentence, before - 1)


_MAY_STAND_FOR_IT = ("it", "they", "this", "that", "which")  # behind a verb too


def _is_changed(sentence: Sentence, at: int) -> bool:
    """Return whether a change stands before a food, or before a list that it ends: "without the ham and the cheese"."""
    with_it = bool(with_so_much(sentence, at))
    while at > 0 and (sentence.text_at(at) in ("and", "or", ",", *DETERMINERS) or is_food(sentence, at)):
        at -= 1
    if with_it or (at > 0 and with_so_much(sentence, at)):
        return True  # "with half the sugar you'd have"
    changes = at >= 0 and (sentence.is_a(at, "verb_leave_out") or sentence.is_a(at, "verb_swap"))
    return changes and sentence.text_at(at) not in ("hold", "holds")


def _it(sentence: Sentence, at: int) -> bool:
    return sentence.text_at(at) in ("it", "them", "this", "these", "that") or (
        sentence.text_at(at) in ("the", "your", "our") and at + 1 < len(sentence) and is_dish(sentence, at + 1)
    )


def _told_more_of(sentence: Sentence, at: int) -> About | None:
    """Return the food of "it comes with trout, which is high in", "it's the beans in it that are"; None for no food."""
    if at + 1 >= len(sentence) or sentence.text_at(at + 1) not in ("is", "are"):
        return None
    place = at - 1 - (sentence.text_at(at - 1) == ",")
    if sentence.text_at(place) in ("it", "here", "this"):
        place -= 1 + (sentence.text_at(place - 1) == "in")
    if place < 0 or not is_food(sentence, place) or not sentence.is_a(at + 2, "wording"):
        return None
    return food_part(sentence, place)


def _behind_swap(sentence: Sentence, at: int) -> bool:
    """Return whether a change stands before a place in its clause: "with this instead of that"."""
    first = sentence.clause_of(at)[0]
    swapped = ("instead of", "in place of", "rather than")
    return any(sentence.text_at(place) in swapped for place in range(first, at))


_ALL_OF_IT = frozenset(("there", "everything here", "everything", "everything in it", "the whole thing", "all of it"))
_ALL_OF_IT |= {"the whole lot", "the lot", "the end result", "the result", "the whole of it", "the finished thing"}


_MAKES = ("make", "makes", "keep", "keeps", "render", "renders", "turn", "turns")


def _stands_alone(sentence: Sentence, at: int) -> bool:
    return at + 1 < len(sentence) and (is_verb(sentence, at + 1) or sentence.text_at(at + 1) in ("one", "is", "are"))


_BECAUSE = ("thanks to", "because of", "due to", "owing to", "courtesy of")


def _begins_statement(sentence: Sentence, at: int) -> bool:
    """Return whether a dish begins a statement behind words that lead to it: "I'd say the whole pan of it comes to"."""
    if sentence.text_at(at + 1) == "of":
        over = at + 2
        while over + 1 < len(sentence) and (sentence.text_at(over) in DETERMINERS or sentence.is_a(over + 1, "dish")):
            over += 1
        return over + 1 < len(sentence) and is_verb(sentence, over + 1)
    return _verb_follows(sentence, at)


def _compound(sentence: Sentence, at: int) -> bool:
    """Return whether a word of the dish only says which other thing is meant ("the bowl lids")."""
    return at + 1 < len(sentence) and sentence.text_at(at + 1) in ("lid", "lids", "handle", "rim", "shelf")


def _is_part(sentence: Sentence, at: int) -> bool:
    quantity = sentence.tokens[at].quantity
    if quantity is not None and (quantity.unit in MEASURES or quantity.is_fraction):
        return True
    return sentence.text_at(at) in _GLASSES or bool(each_measure(sentence, at))


def _verb_follows(sentence: Sentence, at: int) -> bool:
    if sentence.tokens[at].possessive and sentence.is_a(at + 1, "wording"):
        return True  # "feta's low in sodium"
    following = at + 1
    if sentence.text_at(following) == "in":  # "the eggs in it are"
        following += 2 if sentence.text_at(following + 1) not in DETERMINERS else 3
    return following < len(sentence) and is_verb(sentence, following)

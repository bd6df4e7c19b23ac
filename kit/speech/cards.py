"""Cards to practise with: the sentences of a talk that say a number, with the number hidden."""

import re

from kit.errors import KitError
from kit.meal.nutrition import Nutrition, nutrition
from kit.rules.spoken import FRACTIONS, HARDLY_ANY
from kit.speech.words.foods_said import names_of
from kit.speech.words.sentence import sentence
from kit.talk.dish import Dish
from kit.talk.placeholders import fill, filled, pieces
from kit.talk.practice import Card
from kit.talk.talk import Talk

HIDDEN = "____"
_NUMBER = re.compile(rf"\d(?:[\d,./ ]*\d)?|\b(?:{'|'.join([HARDLY_ANY, *FRACTIONS.values()])})\b")


def cards(talk: Talk, numbers: Nutrition | None = None) -> tuple[Card, ...]:
    """Return a card for every point that says a number; one whose placeholders cannot be filled has none.

    Parameters
    ----------
    talk : Talk
        The talk.
    numbers : Nutrition, optional
        The dish as it is now; as written by default.

    Examples
    --------
    >>> from dataclasses import replace
    >>> from kit.talk.talk import Point
    >>> from kit.talk.library import read_talk
    >>> talk = replace(read_talk("barley_squash_box"), points=(Point("It keeps {keeps}."), Point("Stir.")))
    >>> cards(talk)
    (Card(key='It keeps {keeps}.', asks='It keeps ____ days.', answer='It keeps 3 days.'),)
    """
    dish = Dish(talk, nutrition(talk.recipe) if numbers is None else numbers)
    made = [_card(point.say, dish) for point in talk.points]
    return tuple(card for card in made if card and HIDDEN in card.asks)


def _card(say: str, dish: Dish) -> Card | None:
    try:
        return Card(say, _hidden(say, dish), fill(say, dish))
    except KitError:  # told where the sentences are checked
        return None


def _hidden(say: str, dish: Dish) -> str:
    """Return a sentence with every number hidden: filled ones but for their unit, written ones with it."""
    text = "".join(_NUMBER.sub(HIDDEN, filled(piece, dish)) if piece.in_braces else piece.text for piece in pieces(say))
    own = "".join(" ... " if piece.in_braces else piece.text for piece in pieces(say))
    said = sentence(own, names_of(dish.talk.recipe))
    for token in said.tokens:
        if token.quantity is not None and token.quantity.unit:
            text = text.replace(own[token.start : token.end], HIDDEN)
    return text

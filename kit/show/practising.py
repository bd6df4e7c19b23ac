"""The practice cards of the rehearsal: one sentence at a time with its number hidden; she marks herself."""

from random import Random
from typing import Any

from kit.errors import KitError
from kit.speech.cards import cards
from kit.talk.practice import Card, next_card, read_scores, record
from kit.talk.settling import OpenTalk

NO_CARDS = 'No sentence of this talk says a number. Write one such as "{serving} has {energy}." under Script.'


class Practising:
    """Cards that hide the numbers of a talk; missed ones come up more often.

    Attributes
    ----------
    card : Card or None
        The card on show; None when no sentence of the talk says a number.
    hidden : bool
        Whether its number is hidden.
    """

    opened: OpenTalk
    card: Card | None
    chance = Random()

    def _begin_practice(self) -> None:
        """Begin with the cards of the talk, and what was known of them the last time."""
        self.cards, self._told_of_cards = cards(self.opened.talk), ""
        self.card = None
        self.scores: dict[str, Any] = {}
        try:
            self.scores, self._told_of_cards = read_scores(self.opened.talk.name)
        except KitError as fault:
            self._told_of_cards = str(fault)
        self._next_card()

    def _next_card(self) -> None:
        self.card = next_card(self.cards, self.scores, self.chance, self.card) if self.cards else None
        self.hidden = True

    def _card(self) -> dict[str, Any]:
        """Return the card as the page shows it."""
        known = sum(card.key in self.scores and self.scores[card.key].in_a_row > 0 for card in self.cards)
        return {
            "text": NO_CARDS if self.card is None else self.card.asks if self.hidden else self.card.answer,
            "hidden": self.hidden,
            "none": self.card is None,
            "known": f"{known} of {len(self.cards)} known the last time" if self.cards else "",
            "told": self._told_of_cards,
        }

    def _do_reveal(self, _message: dict[str, Any]) -> dict[str, Any]:
        self.hidden = False
        return {"card": self._card()}

    def _do_mark(self, message: dict[str, Any]) -> dict[str, Any]:
        if self.card is None or self.hidden:
            return {}
        try:
            self.scores, self._told_of_cards = record(self.opened.talk.name, self.card, bool(message["knew"])), ""
        except KitError as fault:
            self._told_of_cards = str(fault)
        self._next_card()
        return {"card": self._card()}

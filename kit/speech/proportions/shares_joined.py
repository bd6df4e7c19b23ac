"""Shares of several nutrients that come from the same foods: "all of the iron and half of the fat is from the beef"."""

from dataclasses import replace

from kit.speech.proportions.share_claim import Share
from kit.speech.words.sentence import Sentence

_TOO = ("too", "as well", "as", "well", "also", ",")


def with_its_foods(sentence: Sentence, share: Share, following: Share | None) -> Share:
    """Return a share with the foods of the next where both come from them: "all of the iron and half of the fat is"."""
    open_ended = not (share.foods or share.of_day) and share.by_nutrient is None
    if following is None or not open_ended or not following.food_places or following.of_day:
        return share
    joined = sentence.texts[max((share.place, *(one.place for one in share.whole))) + 1 : following.place]
    behind = min(following.food_places) > following.place
    return replace(share, foods=following.foods) if joined in (("and",), (",", "and")) and behind else share


def with_the_day(sentence: Sentence, share: Share, following: Share | None) -> Share:
    """Return a share of a day where the next one says so for both: "a tenth of the iron and half of the zinc for"."""
    open_ended = not (share.foods or share.of_day) and share.by_nutrient is None
    if following is None or not open_ended or not following.of_day or following.foods or share.said.relation == "rest":
        return share
    joined = sentence.texts[max((share.place, *(one.place for one in share.whole))) + 1 : following.place]
    return replace(share, of_day=True) if joined in (("and",), (",", "and"), (",",), ("plus",)) else share


def with_those_before(sentence: Sentence, share: Share, before: Share | None) -> Share:
    """Return a share with the foods of the one before: "all of the iron is from the beef, and half of the zinc too"."""
    open_ended = not (share.foods or share.of_day or share.named_here == ()) and share.by_nutrient is None
    if before is None or not open_ended or not before.food_places or before.of_day:
        return share
    first, last = max(before.food_places), max(one.place for one in share.whole)
    joined = sentence.texts[first + 1 : share.place]
    behind = [text for text in sentence.texts[last + 1 : last + 4] if text not in _TOO]
    ends = not behind or behind[0] in (".", "!", ";")
    led = min(before.food_places) > before.place and joined in (("and",), (",", "and"))
    # "It's the tuna that brings half of the protein and all of the iron."
    between = sentence.texts[max(one.place for one in before.whole) + 1 : share.place]
    goes_on = first < before.place and between in (("and",), (",", "and"), (",",))
    return replace(share, foods=before.foods) if (led or goes_on) and ends else share

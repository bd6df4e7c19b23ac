"""Allergens that are said to go by heat, water or acid, which takes none away: "toasted, so the gluten goes"."""

import re
from dataclasses import dataclass

from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.changes.changes_said import LEAVE_OUT, SWAP, SaidChange
from kit.speech.claim import Claim, Finding
from kit.speech.words.sentence import Sentence
from kit.talk.dish import Dish

_NO_FOODS = ("wheat", "gluten", "any")  # what nobody cooks by this name
_DONE = (
    r"(?:bak|cook|heat|toast|rins|wash|fr[iy]|boil|roast|grill|steam|simmer|freez|soak|ferment|sprout|drain|chill"
    r"|microwav|scald|reheat|pasteuri[sz]|blanch|sear|saut|temperature|oven|lemon|vinegar|acid|marinad|marinat|wait)\w*"
)
_GOES = re.compile(
    r"\b(?:gone|goes|go away|disappear\w*|vanish\w*|destroy\w*|kill\w*|remov\w*|neutrali[sz]\w*|denatur\w*|inactive"
    r"|deactivat\w*|harmless|no longer|no more|rid"
    r"|takes? care of|break\w* (?:it |them )?down|broken down|(?:is|are) out"
    r"|(?:bak|cook|boil|burn|wash|rins|toast|fr[iy]|soak|drain|steam)\w* (?:it |them )?(?:off|out|away)"
    r"|(?:take|takes|taking|get|gets|draw|draws|pull|pulls|drives?|wash|washes|rinse|rinses|leach|leaches)"
    r" (?:out |off |away |rid of )?(?:all |most |some )?(?:of )?(?:the|its|any) (?:\w+ ){1,3}?(?:out|off|away|allergen)"
    r"|leaves? (?:the|it|them)|lost|loses)\b"
)
_PROCESS = re.compile(rf"\b{_DONE}\b")
_NOT = re.compile(
    r"\b(?:not|never|no \w+ (?:will|can)|nothing|neither|nor|without|will not|cannot|does not|do not|myth)\b"
)
_QUESTION = re.compile(r"\b(?:if|whether|unless|ask|check)\b")


@dataclass(frozen=True, slots=True)
class CookedAwayClaim(Claim):
    """What is done in the kitchen takes an allergen away; `unclear` where it may be said otherwise."""

    unclear: bool = False


def read(sentence: Sentence, change: SaidChange | None) -> list[Claim]:
    """Return the allergens that cooking or rinsing is said to take away, as one claim; not those a change leaves out.

    Parameters
    ----------
    sentence : Sentence
        The sentence.
    change : SaidChange or None
        A change of the dish that it names; "toasting takes the gluten out" is read as one, and is none.
    """
    places = [at for at in sentence.places("allergen") if sentence.tokens[at].parts["allergen"] in _NO_FOODS]
    gone = change.foods if change is not None and change.kind in (LEAVE_OUT, SWAP) else ()
    if not places or any(word.text not in ("gluten", "wheat") for word in gone):
        return []  # where the egg is gone to is kitchen talk
    text = sentence.plain
    bare = re.sub(r"\b(?:rid of|get rid)\b", "rid", text)
    goes, done = _GOES.search(bare), _PROCESS.search(text)
    if goes is None or done is None:
        return []
    sentence.used.update(places)
    denials = _NOT.findall(text.replace("no longer", "").replace("no more", ""))
    unclear = len(denials) > 1 or _QUESTION.search(text) is not None
    return [CookedAwayClaim(tuple(places), negated=bool(denials), unclear=unclear)]


def judge(claim: CookedAwayClaim, _dish: Dish) -> Finding:
    """Judge it: no heat, water or acid of a kitchen makes a food free of an allergen."""
    because = "cooking, rinsing or acid takes no allergen out of a food (FDA, food allergies)"
    if claim.unclear:
        return Finding(CANNOT_TELL, because)
    return Finding(HOLDS if claim.negated else OFF, because)

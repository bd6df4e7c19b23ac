"""Words that play no part: no number, no food, no phrase of speech; and what such a word may be and tell nothing."""

from kit.speech.words.sentence import Sentence

LISTS = (",", "and", "or", "nor", "&")
_ENDS = frozenset((*". , ! ; and or nor but in here either whatsoever at too".split(), ""))
_JOINTS = frozenset(
    "which who whom whose "
    "a an the and or nor but so if as at by for from in into of off on onto out over per than that this to up with "
    "without it its is are was were be been has have had do does did not no we you they i all any some here there "
    "apart both except when while because since though although either too also just only even then else".split()
)
# What a food may bring, or a dish be rich in, that is none of the kit's business.
MATTERS_NOT = frozenset(
    "flavor flavors flavour taste color colour crunch texture work charm fun aroma smell sweetness tang bite bulk body "
    "heat kick sauce look beauty moisture volume weight credit effort time character creaminess freshness show "
    "richness appeal juice interest zing zip depth joy effort cost price fuss mess work comfort goodness character "
    "variety contrast".split()
)


def is_unknown(sentence: Sentence, at: int) -> bool:
    """Return whether a word is none that plays a part, no food, no number and no stop."""
    if not 0 <= at < len(sentence):
        return False
    token = sentence.tokens[at]
    plain = not token.parts and token.food is None and token.quantity is None and token.text[:1].isalpha()
    return plain and token.text not in _JOINTS


def ends(sentence: Sentence, at: int) -> bool:
    """Return whether nothing more than where it is, or the next of a list, stands behind a thing."""
    return sentence.text_at(at + 1) in _ENDS

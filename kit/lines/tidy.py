"""A written line in plain words: no bullet, one spelling of each unit, and what is said not to be so."""

import re

from kit.food.amounts import plain_characters, with_half_ahead

_BULLET = re.compile(r"^\s*(?:[-*+•·▪◦‣◻◽▫■□▢☐☑✓✔●○>–]+\s*|\[[ xX]?\]\s*|\d{1,2}[.)]\s+)+")
_FOOTNOTE = re.compile(r"(?<=\w)\s*[*†‡]+(?=\s|,|;|$)|^[*†‡]+")
_OPENING = re.compile(r"^(?:optional(?:ly)?|for (?:the )?(?:garnish|serving|topping)s?)\s*[:\-]\s*", re.IGNORECASE)
_TASTE_FIRST = re.compile(r"^(?:to taste|as needed|as desired)[,:]?\s+(.+)$", re.IGNORECASE)
_RANGE_OF_A_CAN = re.compile(
    r"^(\d{1,2})\s*-\s*(\d+(?:\.\d+)?[- ]?(?:oz|ounces?|g|grams?|ml)\b\.?[- ]*"
    r"(?:can|tin|jar|package|pkg|bag|box|bottle|carton)s?\b)",
    re.IGNORECASE,
)
_YOLKS_OFF = re.compile(
    r"\byolks?\s+(?:removed|discarded)\b|\bwhites? only\b|\bdiscard(?:ing)? (?:the )?yolks?\b", re.IGNORECASE
)
_READY_GRAIN = re.compile(
    r"\b(?:ready[- ]to[- ](?:heat|eat|serve)|heat[- ](?:and|&|n)[- ](?:serve|eat)|micro[- ]?wav(?:e|e?able)|"
    r"straight[- ]to[- ]wok|90[- ]second)\b(?=(?:\s+[a-z-]+){0,3}\s+"
    r"(?:rice|quinoa|lentils?|farro|barley|bulgur|couscous|freekeh|spelt|grains|noodles|pasta)\b"
    r"(?!\s+(?:cereal|cake|cracker|chip|pudding|milk|soup)))",
    re.IGNORECASE,
)
_READY_BEHIND = re.compile(  # but what is boiled or heated in its bag may be dry
    r"\b(?=(?:(?:brown|white|wild|jasmine|basmati|whole|long|grain|instant)[ -]+)*"
    r"(?:rice|quinoa|noodles|lentils|farro)\b[^,;()]*[,(]\s*(?:precooked\s+)?"
    r"(?:micro[- ]?wav(?:e|e?able)|90[- ]second|ready[- ]to[- ](?:heat|eat|serve)|heat[- ]and[- ](?:eat|serve))\b"
    r"(?!\s*-?\s*in[- ]|\s+(?:for|on|until|according)))",
    re.IGNORECASE,
)
_POUCH_OF_FISH = re.compile(  # it was cooked in it
    r"\bpouch(?:es)?\s+(?:of\s+)?(?=(?:(?!canned)[a-z-]+\s+){0,2}(?:salmon|tuna|mackerel|chicken)\b)", re.IGNORECASE
)
_THUMB = re.compile(r"\bthumb(?:nail)?[- ]?sized?(?:\s+(?:piece|knob|chunk)s?)?\b", re.IGNORECASE)
_TWO_SYSTEMS = re.compile(  # "400g/14oz"
    r"(\d+(?:\.\d+)? ?(?:g|kg|ml|cl|l))\s*/\s*[\d½¼¾⅓⅔][\d ./½¼¾]*(?:fl\.? ?oz|oz|lbs?|pints?|pt)\b\.?", re.IGNORECASE
)
_LESS_FAT = re.compile(r"\b(?:1/[2-4]|one[- ](?:third|half|quarter)|\d\d ?%)[- ]less[- ]fat\b", re.IGNORECASE)
_OR_TWO = re.compile(
    r"\b(pinch(?:es)?|dash(?:es)?|drops?|handfuls?|spoonfuls?) or (?:two|three|so|more)\b", re.IGNORECASE
)
_SHAKES = re.compile(r"\b(few|couple(?: of)?|several|two|three|\d+) (?:good )?shakes\b", re.IGNORECASE)
_EITHER_STATE = re.compile(  # which of the two foods behind it is meant is the question
    r"\b(fresh|frozen) or (?:fresh|frozen)\b(?: \(thawed\)| thawed)?(?=[^,;()]* or )", re.IGNORECASE
)
_SEASONED = re.compile(  # of canned tomatoes: what is in them to season weighs next to nothing
    r"(?<=tomatoes),? (?:seasoned )?with (?:(?:added|roasted|sweet|italian|fresh|dried)? ?"
    r"(?:basil|garlic|onions?|oregano|herbs?|seasonings?|spices)\b(?:,? (?:and |& )?)?)+(?=$|[,(])",
    re.IGNORECASE,
)
_COUNT_IN_BRACKETS = re.compile(
    r"^\((\d{1,2})\)\s*(?=[a-z]|[\d. /-]+(?:oz|ounces?|g|grams?|lb|pounds?)\b\.?[ -])", re.IGNORECASE
)
_SORT_OF_PACKAGE = re.compile(  # a packet of one serving has no size that is known
    r"\b(?P<small>snack|individual|single|lunch|fun|travel)?(?(small)|(?:family|party|regular|standard|king|club|value))"
    r"[- ]?(?:sized?|serv(?:e|ing))?\s+(?=(?:bag|box|boxes|package|packet|pouch|carton|tub)(?:es|s)?\b)",
    re.IGNORECASE,
)
_CONTAINER_TWICE = re.compile(
    r"^(\S+)\s+(can|jar|package|bag|box)s?\s+([\d./ ]+-?\s?(?:oz|ounces?|g)\b\.?)\s+\2s?\b", re.IGNORECASE
)
_WEIGHT_OF_A_CAN = re.compile(  # "15 ounces beans (1 can, drained)": before it was drained
    r"^([\d./ ]+?[- ]?(?:oz|ounces?|g|grams?)\b\.?) ([^()]+?)\((?:about |from )?(?:1|one|a) (can|tin)\b(?:,\s*)?",
    re.IGNORECASE,
)
_UNITS = (
    (re.compile(r"(?<=\d)\s*#(?!\d)"), " lb"),
    (re.compile(r"(?<=\d)\s*(?:TBS?P?|Tblsps?|Tbls|tbsps|Tbsps|tablespoonfuls?|tblspns?)\b\.?"), " tbsp"),
    (re.compile(r"(?<=\d)\s*(?:tsps|teaspoonfuls?|tspn?s?)\b\.?"), " tsp"),
    (re.compile(r"(?<=\d)\s*(?:cupfuls?)\b", re.IGNORECASE), " cup"),
    (
        re.compile(r"\b(\d+)\s*(?:-\s*)?(?:lb\.?|pound)s?\.?\s*[,]\s*(\d+)\s*(?:oz|ounces?)\b\.?", re.IGNORECASE),
        r"\1 lb \2 oz",
    ),
    (re.compile(r"\b(?:loosely|lightly)[- ]packed\s+(?=(?:cup|tbsp|tablespoon)s?\b)", re.IGNORECASE), ""),
    (
        re.compile(
            r"\b(?:(?:firmly|tightly|well)[- ])?packed\s+((?:cup|tbsp|tablespoon|tsp|teaspoon)s?)\b", re.IGNORECASE
        ),
        r"\1 packed",
    ),
    (re.compile(r"(?<=[a-z.] )(?:soft\s+)?tub(?=\s+margarine\b)", re.IGNORECASE), "soft"),  # "1 tbsp tub margarine"
    (re.compile(r"^gm?s?\s+(?=\d)", re.IGNORECASE), ""),
    (re.compile(r"\b(?:lg|lge)\.?\s", re.IGNORECASE), "large "),
    (re.compile(r"\bmed\.?\s", re.IGNORECASE), "medium "),
    (re.compile(r"\bsm\.?\s", re.IGNORECASE), "small "),
    (re.compile(r"\bdoz\.?\s", re.IGNORECASE), "dozen "),
    (re.compile(r"\bctns?\.?\s", re.IGNORECASE), "carton "),
    (re.compile(r"\benv\.?\s", re.IGNORECASE), "envelope "),
)
_CANS_OZ = {"300": 15, "303": 16, "2": 20, "2 1/2": 29, "2.5": 29, "10": 106}  # trade sizes of US cans, common practice
_CAN_NUMBER = re.compile(r"\(?(?:#|\bno\.?|\bnumber)\s*(300|303|2 1/2|2\.5|2|10)\)?[- ]cans?\b", re.IGNORECASE)
_JOINED = re.compile(r"\b(un|pre)-(?=[a-z]{4})", re.IGNORECASE)
_NON = re.compile(r"\bnon-?(?=(?:cooked|drained|peeled|sweetened|salted|toasted|roasted)\b)", re.IGNORECASE)
_SKIMMED_OF_FAT = re.compile(r"\bfat[- ]skimmed\b|\bskimmed of fat\b", re.IGNORECASE)
_UN = r"(?:cooked|drained|peeled|sweetened|salted|rinsed|toasted)"
_NOT_DONE = re.compile(rf"\b(?:not|never)\s+(?:yet\s+)?({_UN})\b", re.IGNORECASE)
_DO_NOT = re.compile(
    r"\b(?:(?:do not|don'?t)\s+(cook|drain|peel|rins|toast)e?|without\s+(cook|drain|peel|rins|toast)ing)\b[^,;()]*",
    re.IGNORECASE,
)
_NOT = re.compile(r"[,;]?\s*\b(?:do not|don'?t|not|never)\b[^,;()]*", re.IGNORECASE)
_SAVED = re.compile(
    r"[,;]?\s*\b(?:(?:reserve|reserving|save|saving|keep|keeping)\b[^,;()]*|"
    r"(?:the\s+)?(?:juices?|liquids?|brine|syrup|fronds?|tops?|greens?|leaves|oil)\s+(?:is\s+|are\s+)?(?:reserved|saved|included)\b[^,;()]*|"
    r"(?:with|in|including|plus|and)\s+(?:all\s+)?(?:their|its|the|own)\s*(?:own\s+)?(?:juices?|liquids?|brine|oil)\b|"
    r"(?<=tomatoes )with\s+juices?\b|\bwith\s+(?:leaves|tops|greens|stems)\b)",
    re.IGNORECASE,
)
_WITH_LIQUID = re.compile(  # out of a can: the clams and what they lie in
    r"[,;]?\s*(?:\b(?:with|including|plus|and|&)\s+(?:all\s+)?(?:of\s+)?(?:(?:their|its|the)\s+)?"
    r"(?:juices?|liquids?|brine|(?<=the )oil)\b(?!\s+(?:of|from|drained|reserved|cocktail|pack))(?:\s+included)?|"
    r"\b(?:juices?|liquids?|brine)\s+(?:included|and\s+all)\b)",
    re.IGNORECASE,
)
_CANNED = re.compile(r"\b(?:cans?|canned|tins?|tinned|jars?|jarred)\b", re.IGNORECASE)
_DRAINED = re.compile(r"\b(?:drain(?:ed|ing)?|rinsed|reserv(?:e|ed|ing))\b", re.IGNORECASE)
_MINCED = re.compile(r"\bminced (?=(?:lean )?(?:beef|lamb|pork|veal)\b)", re.IGNORECASE)
_FAT_OF_MEAT = re.compile(r"\b(\d{1,2})\s?% fat\b(?! free)", re.IGNORECASE)
_MINCE = re.compile(
    r"\b(beef|lamb|pork|turkey|chicken|venison|veal)((?: breast| thigh| steak)?) mince\b", re.IGNORECASE
)
_MEAT = re.compile(r"\b(?:minced|ground) (?:beef|lamb|pork|turkey|chicken|veal)\b", re.IGNORECASE)
_SHADE = r"(?:white|green|light|pale|dark|tender)"
_ENDS_OF_AN_ONION = re.compile(
    rf"[,;]?\s*\b{_SHADE}(?:[\s,/&-]+(?:{_SHADE}|and|or))*\s+parts?\b(?: only)?", re.IGNORECASE
)
_PUREE_BY_SPOON = re.compile(r"(?<=sp)(oons?|s?)(\.? tomato) purée", re.IGNORECASE)  # as it is called in the UK
_PARTS = {
    "skin": "skinless deskinned",  # weighed with the skin, unlike what is bought skinless
    "bone": "boneless",
    "shell": "shelled",
    "seed": "seeded",
    "stem": "stemmed",
    "pit": "pitted",
    "stone": "pitted",
    "husk": "husked",
    "peel": "peeled",
    "rind": "peeled",
    "core": "cored",
    "fat": "trimmed",
    "crust": "crustless",
}
_OTHER_PARTS = (
    "rib|membrane|tail|vein|end|leaf|leave|top|root|giblet|neck|gristle|sinew|casing|silk|pith|tip|eye|string|stalk|"
    "wing tip|center|pulp|scale|fin|head|beard|skewer|moisture|water|silver ?skin"
)
_PART = rf"(?:{'|'.join(_PARTS)}|{_OTHER_PARTS})s?"
_KIND_OF_PART = (
    r"(?:all|any|excess|visible|extra|outer|tough|woody|thick|the|inner|white|green|root|hard|external|solid|dark|root)"
)
_LIST_OF_PARTS = rf"(?:(?:{_KIND_OF_PART}\s+)*\b{_PART}\b(?:\s*(?:,|and|&|or|/)\s*(?:and\s+)?)?\s*)+"
_REMOVED = re.compile(
    rf"(?P<parts>{_LIST_OF_PARTS})\s*(?:is\s+|are\s+)?(?:removed|discarded|skimmed|taken|"
    r"(?<!, )(?:trimmed|cut|snapped|peeled|pulled|scraped|drained|strained))\b"  # "celery root, peeled" keeps it
    r"(?:\s+(?:off|away|out|from top|from the top|from surface|and discarded))*",
    re.IGNORECASE,
)
_REMOVE = re.compile(
    r"\b(?:remov(?:e|ing)|discard(?:ing)?|trimmed (?:of|from)|minus|(?P<without>without|with no|no))\s+"
    rf"(?P<parts>{_LIST_OF_PARTS})",
    re.IGNORECASE,
)
_SORTED = re.compile(  # what is done to dry beans; rinsed ones are else out of a can
    r"\b(sorted|picked (?:over|through))(?:\s*,)?\s*(?:and\s+|&\s*)?rinsed\b|"
    r"\brinsed(?:\s*,)?\s*(?:and\s+|&\s*)?(?=sorted\b|picked (?:over|through)\b)",
    re.IGNORECASE,
)
_INTO_PIECES = re.compile(
    r",?\s*\b(?:cut|chopped|divided|sliced|torn|broken|split|separated)\s+(?:up\s+)?(?:in|into)\s+[^,;()]*?"
    r"\b(?:pieces?|portions?|parts|servings?|chunks)\b(?:\s+(?:each|total))?",
    re.IGNORECASE,
)
_SHELL = re.compile(  # "4 white eggs" are whole eggs
    r"\b(?:white|brown)(?:\s+or\s+(?:white|brown))?[- ]?(?:shell(?:ed)?)?\s+(?=(?:hard[- ](?:boiled|cooked)\s+)?eggs?\b"
    r"(?!\s*(?:white|yolk|noodle|substitute|roll|product|powder)))",
    re.IGNORECASE,
)
_BY_THE_PACKAGE = re.compile(  # what is still to be done, to what is measured as it is bought
    r",?\s*\b(?:cooked|prepared|boiled|made)\s+(?:al dente\s+)?(?:according to|as directed|per|following|by)\b"
    r"\s*(?:on\s+)?(?:the\s+)?(?:package|packet|box|pkg|label|directions?|instructions?)?[^,;()]*",
    re.IGNORECASE,
)
_PREPARED = re.compile(  # of what is made ready by cooking it
    r"\bprepared (?=(?:[a-z-]+ ){0,2}"
    r"(?:oatmeal|oats|rice|couscous|quinoa|polenta|grits|pasta|noodles|bulgur|barley)\b)",
    re.IGNORECASE,
)
_OUT_OF_A_JAR = re.compile(r",?\s*\bfrom (?:a|the) (?:jar|bottle)\b()", re.IGNORECASE)  # it counts no jars
_BY_HAND = re.compile(  # whole tomatoes that are crushed are not those from a can of crushed ones
    r",?\s*\b(?:crushed|broken up|squeezed)\s+(?:up\s+)?(?:by|with|in)\s+(?:your\s+|the\s+)?(?:clean\s+)?"
    r"(?:hands?|fingers)\b",
    re.IGNORECASE,
)
_TURNED_OFF = re.compile(r"\b(skin|bone|crust)s? off\b", re.IGNORECASE)
_DRIED_OFF = re.compile(
    r"\b(?:squeezed|patted|pat|wrung|squeeze|spun|blotted|wiped|towel|pressed)[- ]?\s*"
    r"(?:very\s+|completely\s+|until\s+)?dr(?:y|ied)\b"
    r"|\b(?:washed|rinsed)(?:\s+well)?(?:,)?(?:\s+and)?\s+(?:patted\s+)?dried\b",
    re.IGNORECASE,
)
_WASHED = re.compile(
    r",?\s*\b(?:well[- ]|thoroughly\s+|carefully\s+)?(?:washed|cleaned)(?:\s+(?:well|thoroughly))?\b",
    re.IGNORECASE,
)


def without_bullet(line: str) -> str:
    """Return a line without the bullet, box or number in front of it."""
    return _RANGE_OF_A_CAN.sub(r"\1 x \2", _BULLET.sub("", plain_characters(line)).strip())


def tidy(line: str) -> str:
    """Return a line in the words that the reader knows.

    Bullets, footnote marks and what was washed off are gone; units have one spelling; "not drained" is "undrained";
    what was taken off is said of the food: "skin and fat removed" is "skinless deskinned trimmed".

    Examples
    --------
    >>> tidy("▢ 2# un-cooked chicken, skin removed*")
    '2 lb uncooked chicken, skinless deskinned'
    >>> tidy("1 can tomatoes, not drained"), tidy("to taste black pepper")
    ('1 can tomatoes, undrained', 'black pepper, to taste')
    """
    text = _COUNT_IN_BRACKETS.sub(r"\1 x ", re.sub(r"\s+", " ", with_half_ahead(without_bullet(line))))
    text = _PUREE_BY_SPOON.sub(r"\1\2 paste", text)
    text = _OPENING.sub("", _FOOTNOTE.sub("", text)).strip()
    text = re.sub(r"\bw/o\b\.?\s*", "without ", re.sub(r"\bw/(?!o\b)\s*", "with ", text))
    text = re.sub(
        r"\bhand[- ]?(?=(?:harvest|pick|gather|cut|made|rais|craft|press|fish))[a-z]+\s+", "", text, flags=re.IGNORECASE
    )
    text = re.sub(r"\bextra[- ](?=sharp|ripe|fine|thick|thin|crisp|crunchy|fresh)", "", text, flags=re.IGNORECASE)
    text = _SHELL.sub("", _READY_GRAIN.sub("cooked", text))
    if re.search(r"wav|second|ready|heat", text) and "cooked" not in text:
        text = _READY_BEHIND.sub("cooked ", text, count=1)
    text = re.sub(r"\bready[- ]to[- ](?:eat|use|cook|serve|roast)\b[ ,]*", "", text, flags=re.IGNORECASE)
    text = _PREPARED.sub("cooked ", text) if "repared" in text else text
    text = _OUT_OF_A_JAR.sub(r"\1", text) if " from " in text else text
    text = _TASTE_FIRST.sub(r"\1, to taste", text)
    text = re.sub(r"\bof (?:your )?choice\b", "of-choice", _YOLKS_OFF.sub("whites", text), flags=re.IGNORECASE)
    text = _SHAKES.sub(r"\1 dashes", _OR_TWO.sub(r"\1", text))
    text = _EITHER_STATE.sub(r"\1", text) if " or " in text else text
    text = _SEASONED.sub("", text) if _CANNED.search(text) else text
    text = _THUMB.sub("thumb", text) if "thumb" in text.lower() else text
    text = _TWO_SYSTEMS.sub(r"\1", text) if "/" in text else text
    text = _LESS_FAT.sub("reduced-fat", _POUCH_OF_FISH.sub(r"\g<0>canned ", text))
    text = _SORT_OF_PACKAGE.sub(lambda found: "small " if found["small"] else "", text)
    text = _CONTAINER_TWICE.sub(r"\1 \3 \2", text)
    text = _WEIGHT_OF_A_CAN.sub(r"1 (\1) \3 \2(", text)
    text = _CAN_NUMBER.sub(lambda found: f"({_CANS_OZ[found[1]]} oz) can", text)
    for pattern, plain in _UNITS:
        text = pattern.sub(plain, text)
    text = _SKIMMED_OF_FAT.sub("", _NON.sub("un", _JOINED.sub(r"\1", text)))
    text = _BY_THE_PACKAGE.sub("", text) if re.search(r"accord|direct|package|instruc", text) else text
    text = _BY_HAND.sub("", text) if re.search(r"hand|finger", text) else text
    text = _denied(_INTO_PIECES.sub("", text))
    text = _SORTED.sub(lambda found: found[1] or "", text) if "rinsed" in text else text
    text = _MINCE.sub(r"ground \1\2", _MINCED.sub("ground ", text)) if "mince" in text.lower() else text
    if "%" in text and _MEAT.search(text):
        text = _FAT_OF_MEAT.sub(lambda found: f"{100 - int(found[1])}% lean", text)
    text = re.sub(r"\bskinned\b", _PARTS["skin"], text, flags=re.IGNORECASE) if "skinned" in text.lower() else text
    text = _ENDS_OF_AN_ONION.sub("", text) if "part" in text else text
    if re.search(r"remov|discard|trimmed|skimmed|\boff\b|minus|without|\bno\b|snapped|cut|peeled|pulled|scraped", text):
        text = _TURNED_OFF.sub(lambda found: _PARTS[found[1].lower()], text)
        text = _REMOVED.sub(_taken_off, text)
        text = _REMOVE.sub(lambda found: _taken_off(found, bought_without=bool(found["without"])), text)
    return _WASHED.sub(" ", _DRIED_OFF.sub("", text)).strip() if text else text


def _denied(text: str) -> str:
    """Return a text in which "not drained" is "undrained", and no other "not" is left."""
    lower = text.lower()
    if "not" in lower or "n't" in lower or "never" in lower or "without" in lower:
        text = _NOT_DONE.sub(r"un\1", text)
        text = _DO_NOT.sub(lambda found: f"un{(found[1] or found[2]).lower()}ed", text)
        text = _NOT.sub("", text)
    if _CANNED.search(lower) and not _DRAINED.search(lower):
        text = _WITH_LIQUID.sub(", undrained", text)
    return _SAVED.sub("", text) if re.search(r"juice|liquid|reserv|sav|keep|brine|syrup|with", lower) else text


def _taken_off(found: re.Match[str], bought_without: bool = False) -> str:
    """Return "skinless" for "skin removed"; the parts that no word is known for are dropped.

    What is bought without its skin was not weighed with it.
    """
    parts = re.findall(r"[a-z]+", re.sub(r"silver ?skin", "", found["parts"].lower()))
    said = (_PARTS.get(part) or _PARTS.get(part.rstrip("s")) for part in parts)
    text = " ".join(dict.fromkeys(word for word in said if word))
    return f"{text.replace(' deskinned', '') if bought_without else text} "

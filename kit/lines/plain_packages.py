"""Units and containers in one spelling: "2#" is 2 lb, a No. 303 can holds 16 oz."""

import re

from kit.lines.rewriting import Rewriting

_TWO_SYSTEMS = re.compile(  # "400g/14oz"
    r"(\d+(?:\.\d+)? ?(?:g|kg|ml|cl|l))\s*/\s*[\d½¼¾⅓⅔][\d ./½¼¾]*(?:fl\.? ?oz|oz|lbs?|pints?|pt)\b\.?", re.IGNORECASE
)
_SORT_OF_PACKAGE = re.compile(  # a packet of one serving has no size that is known
    r"\b(?:snack|individual|single|lunch|fun|travel|(?P<large>family|party|king|club|value|economy)|"
    r"(?P<regular>regular|standard))"
    r"[- ]?(?:sized?|serv(?:e|ing))?\s+"
    r"(?=(?:bag|box|boxes|package|packet|pouch|carton|tub|can|jar|bottle|container)(?:es|s)?\b)",
    re.IGNORECASE,
)
_CONTAINER_TWICE = re.compile(
    r"^(\S+)\s+(can|jar|package|bag|box)s?\s+([\d./ ]+-?\s?(?:oz|ounces?|g)\b\.?)\s+\2s?\b", re.IGNORECASE
)
_WEIGHT_OF_A_CAN = re.compile(  # "15 ounces beans (1 can, drained)": before it was drained
    r"^([\d./ ]+?[- ]?(?:oz|ounces?|g|grams?)\b\.?) ([^()]+?)\((?:about |from )?(?:1|one|a) (can|tin)\b(?:,\s*)?",
    re.IGNORECASE,
)
_CANS_OZ = {"300": 15, "303": 16, "2": 20, "2 1/2": 29, "2.5": 29, "10": 106}  # trade sizes of US cans, common practice
_TRADE_SIZE = r"(?:#|\bno\.?|\bnumber)\s*(300|303|2 1/2|2\.5|2|10)"
_CAN_NUMBER = re.compile(rf"\(?{_TRADE_SIZE}\)?[- ]cans?\b", re.IGNORECASE)
_CAN_NUMBER_BEHIND = re.compile(rf"\bcan\s*\(\s*{_TRADE_SIZE}(?:\s*(?:size|can))*\s*\)", re.IGNORECASE)
_CANNED_CHILIES = re.compile(  # more than one of them; one is a dish
    r"^(.*\b(?:can|tin)s?\b(?:(?!\b(?:green|red|chipotle|jalape|adobo|dried|hatch|with)\b)[^,])*)\b"
    r"(?:chiles|chill?ies)\b(?!\s+(?:in|con)\b)",
    re.IGNORECASE,
)
_UNIT_TWICE = re.compile(  # "1 lb to 1 1/2 lbs"
    r"^([\d./ ]+?)[ -]?"
    r"(lb|pound|oz|ounce|cup|c|tbsp|tablespoon|tsp|teaspoon|(?-i:T)|g|gram|kg|ml|can|quart|qt|pint|pt)s?\.? ?"
    r"(?:-|to|or) ?([\d./ ]+)[ -]?\2s?\b\.?(?!\s*\))",
    re.IGNORECASE,
)
_SIZE_IN_BRACKETS = re.compile(  # "1 can (large) tomatoes", "1 tsp (heaping) cumin"
    r"^(\S+) (cans?|jars?|bags?|box|packages?|containers?|tsp|tbsp|teaspoons?|tablespoons?|cups?) "
    r"\((small|large|heaping|heaped|rounded|scant|level)\)",
    re.IGNORECASE,
)
_LIES = r"(water|juice|oil|(?:light |heavy )?syrup)[- ]pack(?:ed)?\b"
_PACKED_FIRST = re.compile(  # "juice-packed pineapple" is no pineapple juice
    rf"\b{_LIES} ((?!(?:mozzarella|feta|tofu|can|jar)\b)[a-z][a-z -]*[a-z])", re.IGNORECASE
)
_PACKED_BEHIND = re.compile(rf"(?<=[a-z])(?:, | \(){_LIES}(?!\s+(?:mozzarella|feta|tofu))\)?", re.IGNORECASE)


def _lying_in(found: re.Match[str]) -> str:
    return f"{found[2]} in oil" if found[1].lower() == "oil" else f"canned {found[2]} in {found[1]}"


def _lies_in(found: re.Match[str]) -> str:
    return " in oil" if found[1].lower() == "oil" else f", canned in {found[1]}"


def _ounces(found: re.Match[str]) -> str:
    return f"({_CANS_OZ[found[1]]} oz) can"


PACKAGES = (
    Rewriting(_SIZE_IN_BRACKETS, r"\1 \3 \2", "("),
    Rewriting(re.compile(r"(?<=[\d½¼¾] )dry (?=(?:pints?|quarts?|pt|qt)\b)", re.IGNORECASE), "", "dry "),
    Rewriting(_TWO_SYSTEMS, r"\1", "/"),
    Rewriting(_SORT_OF_PACKAGE, lambda found: "" if found["regular"] else "large " if found["large"] else "small "),
    Rewriting(_UNIT_TWICE, r"\1-\3 \2"),
    Rewriting(_CONTAINER_TWICE, r"\1 \3 \2"),
    Rewriting(_WEIGHT_OF_A_CAN, r"1 (\1) \3 \2("),
    Rewriting(_CAN_NUMBER, _ounces, "can"),
    Rewriting(_CAN_NUMBER_BEHIND, _ounces, "can"),
    Rewriting(_PACKED_FIRST, _lying_in, "pack"),
    Rewriting(_PACKED_BEHIND, _lies_in, "pack"),
    Rewriting(re.compile(r"(?<=\d)\s*#(?!\d)"), " lb"),
    Rewriting(re.compile(r"(?<=\d)\s*(?:TBS?P?|Tblsps?|Tbls|tbsps|Tbsps|tablespoonfuls?|tblspns?)\b\.?"), " tbsp"),
    Rewriting(re.compile(r"(?<=\d)\s*(?:tsps|teaspoonfuls?|tspn?s?)\b\.?"), " tsp"),
    Rewriting(re.compile(r"(?<=\d)\s*(?:cupfuls?)\b", re.IGNORECASE), " cup"),
    Rewriting(
        re.compile(r"\b(\d+)\s*(?:-\s*)?(?:lb\.?|pound)s?\.?\s*[,]\s*(\d+)\s*(?:oz|ounces?)\b\.?", re.IGNORECASE),
        r"\1 lb \2 oz",
    ),
    Rewriting(re.compile(r"\b(?:loosely|lightly)[- ](?:packed|filled|pressed)\b,?\s*", re.IGNORECASE), "", "ly"),
    Rewriting(
        re.compile(
            r"\b(?:(?:firmly|tightly|well)[- ])?packed\s+((?:cup|tbsp|tablespoon|tsp|teaspoon)s?)\b", re.IGNORECASE
        ),
        r"\1 packed",
    ),
    Rewriting(re.compile(r"(?<=[a-z.] )(?:soft\s+)?tub(?=\s+margarine\b)", re.IGNORECASE), "soft"),
    Rewriting(re.compile(r"^gm?s?\s+(?=\d)", re.IGNORECASE), ""),
    Rewriting(re.compile(r"\b(?:lg|lge)\.?\s", re.IGNORECASE), "large "),
    Rewriting(re.compile(r"\bmed\.?\s", re.IGNORECASE), "medium "),
    Rewriting(re.compile(r"\bsm\.?\s", re.IGNORECASE), "small "),
    Rewriting(re.compile(r"\bdoz\.?\s", re.IGNORECASE), "dozen "),
    Rewriting(re.compile(r"(?<=[\d)] )(?:sqs?|sqrs?)\.?\s", re.IGNORECASE), "square ", "sq"),
    Rewriting(re.compile(r"\bctns?\.?\s", re.IGNORECASE), "carton "),
    Rewriting(re.compile(r"\benv\.?\s", re.IGNORECASE), "envelope "),
    Rewriting(_CANNED_CHILIES, r"\1green chilies", "chil"),
)

"""Words of a line that have a plainer one, and words that say nothing about the food."""

import re

from kit.lines.rewriting import Rewriting

_PUREE_BY_SPOON = re.compile(r"(?<=sp)(oons?|s?)(\.? tomato) purée", re.IGNORECASE)  # as it is called in the UK
_FOOTNOTE = re.compile(r"(?<=[\w)])\s*[*†‡]+(?=\s|,|;|$)|^[*†‡]+")
_OPENING = re.compile(  # it says that there may be no amount
    r"^(optional(?:ly)?|for (?:the )?(?:garnish|serving|topping)s?)\s*[:\-]\s*(.+)$", re.IGNORECASE
)
_HAND_PICKED = re.compile(
    r"\bhand[- ]?(?=(?:harvest|pick|gather|cut|made|rais|craft|press|fish))[a-z]+\s+", re.IGNORECASE
)
_VERY = re.compile(r"\bextra[- ](?=sharp|ripe|fine|thick|thin|crisp|crunchy|fresh)", re.IGNORECASE)
_READY_GRAIN = re.compile(
    r"\b(?:ready[- ]to[- ](?:heat|eat|serve)|heat[- ](?:and|&|n)[- ](?:serve|eat)|micro[- ]?wav(?:e|e?able)|"
    r"straight[- ]to[- ]wok|90[- ]second)\b(?=(?:\s+[a-z-]+){0,3}\s+"
    r"(?:rice|quinoa|lentils?|farro|barley|bulgur|couscous|freekeh|spelt|grains|noodles|pasta)\b"
    r"(?!\s+(?:cereal|cake|cracker|chip|pudding|milk|soup)))",
    re.IGNORECASE,
)
_FROZEN_GRAIN = re.compile(  # it is cooked before it is frozen
    r"\bfrozen,? (?:fully |pre)?(?:cooked |steamed |steam(?:able|[- ]in[- ]bag)? )*"
    r"(?=(?:(?:brown|white|wild|jasmine|basmati|whole|long|short|grain|red|black)[ -]+)*(?:rice|quinoa|farro|barley)\b"
    r"(?! (?:bowls?|mix|medley|blend|and|with|noodles?|milk|cakes?)\b))",
    re.IGNORECASE,
)
_BACK_RIBS = re.compile(r"\bbaby (?=(?:pork )?back (?:pork )?(?:spare)?ribs\b)", re.IGNORECASE)  # they have bones
_FILET_MIGNON = re.compile(r"\bfil(?:l)?ets? mignons?(?: steaks?)?\b", re.IGNORECASE)
_IN_A_COAT = re.compile(r"\b(chocolate|yogurt|candy|carob|sugar)[- ](?:covered|coated|dipped)\b", re.IGNORECASE)
_SHELL = re.compile(  # "4 white eggs" are whole eggs
    r"\b(?:white|brown)(?:\s+or\s+(?:white|brown))?[- ]?(?:shell(?:ed)?)?\s+(?=(?:hard[- ](?:boiled|cooked)\s+)?eggs?\b"
    r"(?!\s*(?:white|yolk|noodle|substitute|roll|product|powder)))",
    re.IGNORECASE,
)
_READY_BEHIND = re.compile(  # but what is boiled or heated in its bag may be dry
    r"^(?!.*cooked)(.*?)\b(?=(?:(?:brown|white|wild|jasmine|basmati|whole|long|grain|instant)[ -]+)*"
    r"(?:rice|quinoa|noodles|lentils|farro)\b[^,;()]*[,(]\s*(?:precooked\s+)?"
    r"(?:micro[- ]?wav(?:e|e?able)|90[- ]second|ready[- ]to[- ](?:heat|eat|serve)|heat[- ]and[- ](?:eat|serve))\b"
    r"(?!\s*-?\s*in[- ]|\s+(?:for|on|until|according)))",
    re.IGNORECASE,
)
_READY = re.compile(r"\bready[- ]to[- ](?:eat|use|cook|serve|roast)\b[ ,]*", re.IGNORECASE)
_PREPARED = re.compile(  # of what is made ready by cooking it
    r"\bprepared (?=(?:[a-z-]+ ){0,2}"
    r"(?:oatmeal|oats|rice|couscous|quinoa|polenta|grits|pasta|noodles|bulgur|barley)\b)",
    re.IGNORECASE,
)
_OUT_OF_A_JAR = re.compile(r",?\s*\bfrom (?:a|the) (?:jar|bottle)\b", re.IGNORECASE)  # it counts no jars
_TASTE_FIRST = re.compile(r"^(?:to taste|as needed|as desired)[,:]?\s+(.+)$", re.IGNORECASE)
_YOLKS_OFF = re.compile(
    r"\byolks?\s+(?:removed|discarded)\b|\bwhites? only\b|\bdiscard(?:ing)? (?:the )?yolks?\b", re.IGNORECASE
)
_OF_CHOICE = re.compile(r"\bof (?:your )?choice\b", re.IGNORECASE)
_OR_TWO = re.compile(
    r"\b(pinch(?:es)?|dash(?:es)?|drops?|handfuls?|spoonfuls?) or (?:two|three|so|more)\b", re.IGNORECASE
)
_SHAKES = re.compile(r"\b(few|couple(?: of)?|several|two|three|\d+) (?:good )?shakes\b", re.IGNORECASE)
_EITHER_STATE = re.compile(  # which of the two foods behind it is meant is the question
    r"\b(fresh|frozen) or (?:fresh|frozen)\b(?: \(thawed\)| thawed)?(?=[^,;()]* or )", re.IGNORECASE
)
_SEASONED = re.compile(  # of canned tomatoes: what is in them to season weighs next to nothing
    r"^(?=.*\b(?:can|canned|tin|tinned|jar|jarred)s?\b)(.*tomatoes),? (?:seasoned )?with "
    r"(?:(?:added|roasted|sweet|italian|fresh|dried)? ?"
    r"(?:basil|garlic|onions?|oregano|herbs?|seasonings?|spices)\b(?:,? (?:and |& )?)?)+(?=$|[,(])",
    re.IGNORECASE,
)
_THUMB = re.compile(r"\bthumb(?:nail)?[- ]?sized?(?:\s+(?:piece|knob|chunk)s?)?\b", re.IGNORECASE)
_POUCH_OF_FISH = re.compile(  # it was cooked in it
    r"\bpouch(?:es)?\s+(?:of\s+)?(?=(?:(?!canned)[a-z-]+\s+){0,2}(?:salmon|tuna|mackerel|chicken)\b)", re.IGNORECASE
)
_LESS_FAT = re.compile(r"\b(?:1/[2-4]|one[- ](?:third|half|quarter)|\d\d ?%)[- ]less[- ]fat\b", re.IGNORECASE)
_JOINED = re.compile(r"\b(un|pre)-(?=[a-z]{4})", re.IGNORECASE)
_NON = re.compile(r"\bnon[- ]?(?=(?:cooked|drained|peeled|sweetened|salted|toasted|roasted)\b)", re.IGNORECASE)
_SKIMMED_OF_FAT = re.compile(r"\bfat[- ]skimmed\b|\bskimmed of fat\b", re.IGNORECASE)
_BY_THE_PACKAGE = re.compile(  # what is still to be done, to what is measured as it is bought
    r",?\s*\b(?:cooked|prepared|boiled|made)\s+(?:al dente\s+)?(?:according to|as directed|per|following|by)\b"
    r"\s*(?:on\s+)?(?:the\s+)?(?:package|packet|box|pkg|label|directions?|instructions?)?[^,;()]*",
    re.IGNORECASE,
)
_BY_HAND = re.compile(  # whole tomatoes that are crushed are not those from a can of crushed ones
    r",?\s*\b(?:crushed|broken up|squeezed)\s+(?:up\s+)?(?:by|with|in)\s+(?:your\s+|the\s+)?(?:clean\s+)?"
    r"(?:hands?|fingers)\b",
    re.IGNORECASE,
)
_INTO_PIECES = re.compile(
    r",?\s*\b(?:cut|chopped|divided|sliced|torn|broken|split|separated)\s+(?:up\s+)?(?:in|into)\s+[^,;()]*?"
    r"\b(?:pieces?|portions?|parts|servings?|chunks)\b(?:\s+(?:each|total))?",
    re.IGNORECASE,
)
_CUPS_IN_PIECES = re.compile(  # what is cut so fills a cup as cubes do
    r"^([\d./ -]+(?:cups?|c\b\.?)\s[^()]*?),?\s*\b(?:cut|chopped)\s+(?:up\s+)?(?:in|into)\s+[^,;()]*?"
    r"\b(?:pieces?|chunks|cubes)\b",
    re.IGNORECASE,
)
_MADE_WITH_WATER = re.compile(  # "1 cup grits, made with water"
    r"(?<!cooked )\b((?:grits|oatmeal|oats|polenta)\b[^,;()]*)[,(]\s*(?:made|prepared)\s+(?:with|in)\s+"
    r"(?=water|[a-z% -]*milk|[a-z -]*broth)",
    re.IGNORECASE,
)
_LENGTH_BEHIND = re.compile(  # "2 tortillas, 6-inch"
    r",\s*(?:(?:each|about|approximately)\s+)*(\d[\d./ -]*?\s?-?\s?(?:inch(?:es)?|in\.|\"))"
    r"(?:\s+(?:in diameter|diameter|dia\.?|long|across|each|wide|round|size))*\s*(?=[,(]|$)",
    re.IGNORECASE,
)
_HOW_HOT = re.compile(
    r"\b(hot|mild|sweet|spicy) or (?:hot|mild|sweet|spicy) (?=(?:[a-z]+ ){0,2}(?:sausages?|curry|salsa|paprika)\b)",
    re.IGNORECASE,
)
_POPPED_DRY = re.compile(
    r"(?:air[- ])?popped\b(?P<corn>(?:\s+(?:pop)?corn)?)[^,;()]*?,?\s*\b(?:without|with no|no)\s+(?:any\s+)?"
    r"(?:oil|fat|butter|salt)\b[^,;()]*",
    re.IGNORECASE,
)
_HOW_FINE = re.compile(  # every meal is ground
    r"\b(?:finely|coarsely|coarse|fine|medium|medium[- ]fine)[- ]ground "
    r"(?=(?:yellow |white |blue )?(?:corn ?meal|polenta|grits)\b)",
    re.IGNORECASE,
)
_HOW_MANY_A_POUND = re.compile(  # "1 lb 16/20 shrimp": the size, by how many of them weigh a pound
    r"[,(]?\s*\b(?:\d\d/\d\d(?:[- ](?:count|ct\b\.?))?|\d\d-\d\d[- ](?:count|ct\b\.?))(?:\s*size)?"
    r"(?:\s*(?:per|/|to (?:a|the|one))\s*(?:pound|lb)\b\.?)?\)?(?=.*\b(?:shrimp|prawns?|scallops?)\b)",
    re.IGNORECASE,
)
WORDS = (
    Rewriting(_PUREE_BY_SPOON, r"\1\2 paste", "tomato"),
    Rewriting(_FOOTNOTE, ""),
    Rewriting(re.compile(r"\s*\(see (?:note|tip|below)[^()]*\)", re.IGNORECASE), "", "(see"),
    Rewriting(re.compile(r"\s*\(optional\)", re.IGNORECASE), ", optional", "(optional)"),
    Rewriting(_OPENING, r"\2, \1"),
    Rewriting(re.compile(r"\bw/(?!o\b)\s*"), "with ", "w/"),
    Rewriting(re.compile(r"\bw/o\b\.?\s*"), "without ", "w/o"),
    Rewriting(re.compile(r"\bhome[- ](?=canned\b)", re.IGNORECASE), "", "home"),
    Rewriting(_HAND_PICKED, "", "hand"),
    Rewriting(_VERY, "", "extra"),
    Rewriting(_READY_GRAIN, "cooked"),
    Rewriting(_FROZEN_GRAIN, "cooked ", "frozen"),
    Rewriting(_BACK_RIBS, "", "baby"),
    Rewriting(_FILET_MIGNON, "beef tenderloin steaks", "mignon"),
    Rewriting(_IN_A_COAT, r"\1covered", "ed"),
    Rewriting(_SHELL, "", "egg"),
    Rewriting(_READY_BEHIND, r"\1cooked "),
    Rewriting(_READY, "", "ready"),
    Rewriting(_MADE_WITH_WATER, r"cooked \1, with ", "with"),
    Rewriting(_LENGTH_BEHIND, r" (\1)"),
    Rewriting(_HOW_HOT, r"\1 ", " or "),
    Rewriting(re.compile(r"\btails?[- ](?:left )?on\b,?", re.IGNORECASE), "", "tail"),
    Rewriting(re.compile(r"\bdry(?:[- ]packed)? (?=(?:sea |bay |large )?scallops\b)", re.IGNORECASE), "", "dry"),
    Rewriting(_POPPED_DRY, r"air-popped\g<corn>", "popped"),
    Rewriting(_PREPARED, "cooked ", "prepared"),
    Rewriting(_OUT_OF_A_JAR, "", " from "),
    Rewriting(_TASTE_FIRST, r"\1, to taste"),
    Rewriting(_YOLKS_OFF, "whites"),
    Rewriting(_OF_CHOICE, "of-choice", "choice"),
    Rewriting(_OR_TWO, r"\1", " or "),
    Rewriting(_SHAKES, r"\1 dashes", "shakes"),
    Rewriting(_EITHER_STATE, r"\1", " or "),
    Rewriting(_SEASONED, r"\1", "tomatoes"),
    Rewriting(_HOW_FINE, "", "ground"),
    Rewriting(_HOW_MANY_A_POUND, " ", "s"),
    Rewriting(_THUMB, "thumb", "thumb"),
    Rewriting(_POUCH_OF_FISH, r"\g<0>canned ", "pouch"),
    Rewriting(_LESS_FAT, "reduced-fat", "less"),
)
_SHRUNK = re.compile(  # by then a cup of it holds more
    r"\b(?:saut[eé]+d|wilted|blanched|stir[- ]fried)\s+"
    r"(?=(?:(?:baby|chopped|fresh|sliced|diced|yellow|red|white|swiss|green|bell|shredded)\s+)*"
    r"(?:spinach|kale|chard|collards?|greens|cabbage|onions?|peppers?|broccoli|beans|asparagus|carrots?|zucchini|"
    r"celery|leeks?)\b)",
    re.IGNORECASE,
)
_BROWNED = re.compile(  # what is browned was weighed before
    r"^(\d[\d./ -]*(?:lbs?|pounds?|oz|ounces?)\b.*?),\s*(?:(?:lightly|well)\s+)?browned\b"
    r"(?:\s*(?:,|and|&|in a (?:skillet|pan))\s*(?:well\s+)?(?:drained|crumbled)\b)*",
    re.IGNORECASE,
)
_MEASURED_COOKED = re.compile(r"\bmeasured (?:after (?:being )?cook(?:ed|ing)|when cooked|once cooked)", re.IGNORECASE)
_NONDAIRY = re.compile(r"\bnon[- ]?dairy\b(?! (?:creamer|coffee|whipped|topping|dessert))", re.IGNORECASE)
DEEDS = (
    Rewriting(_BROWNED, r"\1", "browned"),
    Rewriting(_MEASURED_COOKED, "measured cooked", "measured"),
    Rewriting(_NONDAIRY, "dairy-free", "dairy"),
    Rewriting(_SHRUNK, "cooked ", "ed "),
    Rewriting(_JOINED, r"\1", "-"),
    Rewriting(_NON, "un", "non"),
    Rewriting(_SKIMMED_OF_FAT, "", "skimmed"),
    Rewriting(_BY_THE_PACKAGE, ""),
    Rewriting(_BY_HAND, ""),
    Rewriting(_CUPS_IN_PIECES, r"\1, cubed"),
    Rewriting(_INTO_PIECES, ""),
)

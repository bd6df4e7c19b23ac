"""Foods the way they are named in a sentence: those of the dish first, then those of the whole table."""

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache

from kit.food.composition import Food, Foods, foods
from kit.food.finding import index
from kit.food.vocabulary import SMALL_WORDS, line_words, words
from kit.meal.recipe import Recipe
from kit.rules.naming import short_name
from kit.speech.words.pieces import pieces_of

LONGEST = 5  # words of a name
_ARTICLES = frozenset("a an the each every".split())  # never stand inside a name: "the fat of a beef chili"
# Words that say how a food is, not what it is: none of them names a food of the dish alone.
_HOW = frozenset(
    "red green white black brown yellow orange purple sweet sour dry dried ground whole low fat reduced skim plain "
    "extra "
    "virgin raw cooked canned fresh frozen boneless skinless large medium small big lean light hot baby heavy "
    "sodium free "
    "rinsed drained boiled roasted toasted chopped sliced diced minced grated shredded crumbled cubed mashed thin "
    "thick "
    "firm soft hard smooth crunchy salted unsalted added no with without liquid water juice only meat skin and or wild "
    "farmed atlantic old fashioned quick rolled pearled hulled shelled trimmed peeled split long short grain wild "
    "style "
    "new all purpose self rising active unsweetened sweetened part percent cold warm tinned bunch can jar package head "
    "stalk clove cup tablespoon teaspoon ounce pound gram kilogram milliliter piece slice pinch dash bag box "
    "bottle tin "
    "tbsp tsp oz lb ml clump of the a an in for to taste about plus each more needed optional serving virgin spice "
    "seed "
    "leaf floret half spear stick wedge rib sprig fillet florets regular natural instant pure table iodized".split()
)
_MEASURES = frozenset(
    "cup tablespoon teaspoon tbsp tsp ounce oz pound lb gram g kg ml can jar package clove pinch dash".split()
)
# "Butter" is not the peanut butter, and "milk" not the oat milk.
_MADE_OF = frozenset(
    "peanut almond cashew nut seed apple coconut oat soy rice hazelnut sunflower tahini pumpkin".split()
)
_NONE: frozenset[str] = frozenset()
_PRODUCTS = frozenset("oil butter milk flour paste juice sauce broth stock vinegar powder seed syrup zest".split())
_MADE = frozenset("butter milk flour cheese yogurt cream".split())
_MADE_FROM = {  # what is no longer called by the one word: noodles made with egg are no eggs
    "egg": frozenset(("noodle",)),
    "corn": frozenset("tortilla starch cornstarch chip".split()),
    "rice": frozenset("noodle vinegar paper vermicelli".split()),
    "potato": frozenset(("chip", "starch")),
}
# First words of names that are said alone of all their kinds.
_CLASSES = frozenset(
    "chicken turkey beef pork lamb fish cheese bread rice pasta tuna salmon shrimp tofu yogurt".split()
)
_BEHIND = re.compile(r",|\b(?:with|in|on|over|for)\b", re.IGNORECASE)
_LEFT_OUT_OF_NAMES = re.compile(r"\([^)]*\)")


# What all foods of a group may be called, one by one or together.
_CLASS_WORDS = {
    "pasta": ("pasta", "noodle"),
    "fish": ("fish",),
    "meat": ("meat",),
    "poultry": ("poultry", "meat"),
    "nut": ("nut",),
    "seed": ("seed",),
    "oil": ("oil",),
    "herb": ("herb",),
    "spice": ("spice",),
    "fruit": ("fruit",),
    "vegetable": ("vegetable", "veggie"),
    "bread": ("bread",),
}
COLLECTIVE = frozenset("vegetables veggies fruit fruits herbs spices nuts seeds meat noodles".split())


_KINDS_ALONE = (("seed",), ("nut",))


@dataclass(frozen=True, slots=True)
class FoodWord:
    """The foods that some words name.

    Attributes
    ----------
    text : str
        The words.
    inside : tuple of str
        Keys of the foods of the dish that they fit.
    outside : tuple of str
        Keys of the foods of the table that have exactly this name, or this word as what they are.
    exact : bool
        Whether a food of the table has exactly this name.
    """

    text: str
    inside: tuple[str, ...] = ()
    outside: tuple[str, ...] = ()
    exact: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class FoodTable:
    """The foods by their whole names, by the word that says what they are; what names begin with; those with "and"."""

    exact: Mapping[tuple[str, ...], tuple[str, ...]]
    heads: Mapping[str, tuple[str, ...]]
    firsts: frozenset[str]
    joined: frozenset[tuple[str, ...]]


def food_table() -> FoodTable:
    """Return what the foods of the table are called."""
    return _table(foods())


@cache
def _table(table: Foods) -> FoodTable:
    exact: dict[tuple[str, ...], dict[str, None]] = defaultdict(dict)
    heads: dict[str, dict[str, None]] = defaultdict(dict)
    for name in index(table).names:
        stems = tuple(word for word in words(_LEFT_OUT_OF_NAMES.sub(" ", name.text)) if word not in SMALL_WORDS)
        if stems and "," not in name.text:
            exact[stems].setdefault(name.food.key)
        if name.text == name.food.name and name.head:
            heads[name.head].setdefault(name.food.key)
            for word in words(name.text.split(",")[0])[:1]:
                if word in _CLASSES:
                    heads[word].setdefault(name.food.key)
    return FoodTable(
        {stems: tuple(keys) for stems, keys in exact.items()},
        {head: tuple(keys) for head, keys in heads.items() if head not in _HOW},
        frozenset(stems[0] for stems in exact),
        frozenset(tuple(words(name.text)) for name in index(table).names if " and " in name.text),
    )


@dataclass(frozen=True, eq=False)
class FoodNames:
    """What the foods of one dish, and of the table, are called.

    Attributes
    ----------
    of_dish : tuple of (str, frozenset, frozenset)
        For each food of the dish its key, the words that may name it, and those of them that say what it is.
    dishes : mapping of str to str
        What the dish and a serving of it are called, the last words of its title and of `serving_is`, and which of the
        two each is.
    pieces : frozenset of str
        What one piece of the dish is called where that is no serving of it.
    title : frozenset of str
        The other words of its title.
    table : FoodTable
        What the foods of the table are called.
    """

    of_dish: tuple[tuple[str, frozenset[str], frozenset[str]], ...]
    dishes: Mapping[str, str]
    table: FoodTable
    pieces: frozenset[str] = frozenset()
    title: frozenset[str] = frozenset()

    @cached_property
    def _words(self) -> frozenset[str]:
        return frozenset[str]().union(*(names for _, names, _ in self.of_dish))

    @cached_property
    def _heads(self) -> frozenset[str]:
        return frozenset[str]().union(*(heads for _, _, heads in self.of_dish))

    @cached_property
    def begins(self) -> frozenset[str]:
        """Words with which a food's name may begin, or that call the dish, a serving or a piece of it."""
        return self._words.union(self.table.firsts, self.table.heads, self.dishes, self.pieces)

    def at(self, stems: Sequence[str], at: int) -> tuple[int, FoodWord] | None:
        """Return the longest food name that begins at a word, and how many words it takes; None when there is none."""
        table = self.table
        first = stems[at]
        if first not in table.firsts and first not in table.heads and first not in self._words:
            return None
        for length in range(min(LONGEST, len(stems) - at), 0, -1):
            spoken = tuple(stems[at : at + length])
            last = spoken[-1]
            if first in SMALL_WORDS or last in SMALL_WORDS or not _ARTICLES.isdisjoint(spoken):
                continue
            if "and" in spoken and spoken not in table.joined:  # "almonds and oil" are no almond oil
                continue
            inside = self._inside(spoken) if last in self._heads else ()
            if not inside and last in _HOW:  # "pumpkin seeds", said by their whole name
                whole = table.exact.get(spoken, ())
                inside = tuple(key for key, _, _ in self.of_dish if key in whole)
            outside = table.exact.get(tuple(word for word in spoken if word not in SMALL_WORDS), ())
            if not inside and outside:  # "half-and-half", said by its whole name
                inside = tuple(key for key, _, _ in self.of_dish if key in outside)
            if inside or outside or (length == 1 and spoken[0] in table.heads):
                named = outside or table.heads.get(spoken[-1], ())
                return length, FoodWord(" ".join(spoken), inside, named, bool(outside))
        return None

    def _inside(self, spoken: tuple[str, ...]) -> tuple[str, ...]:
        meant = [word for word in spoken if word not in SMALL_WORDS]
        asked = set(meant)
        if len(asked) < len(meant):  # "of sugar, and sugar-wise" names it twice
            return ()
        of_a_kind = spoken in _KINDS_ALONE  # "the seeds", of one kind or of several
        if (spoken[-1] in _HOW and not of_a_kind) or not asked <= self._words:
            return ()
        fitting = [
            (key, asked == names)
            for key, names, heads in self.of_dish
            if asked <= names and spoken[-1] in heads
            if not (len(spoken) == 1 and spoken[0] in _MADE and names & _MADE_OF)
            if not (len(spoken) == 1 and names & _MADE_FROM.get(spoken[0], _NONE))
        ]
        if len(spoken) == 1 and spoken[0] not in _PRODUCTS:
            # "The olives" are not the olive oil where there are olives too.
            things = [key for key, names, _ in self.of_dish if not names & _PRODUCTS]
            fitting = [one for one in fitting if one[0] in things] or fitting
        return tuple(dict.fromkeys(key for key, _ in fitting))


def _words_for(food: Food, line: str, called: frozenset[str]) -> tuple[frozenset[str], frozenset[str]]:
    own = [*words(_LEFT_OUT_OF_NAMES.sub(" ", food.name)), *words(food.base.replace("-", " "))]
    told = [word for word in words(line) if not _measures(word)]
    classes = _CLASS_WORDS.get(food.group, ())
    if food.group == "fruit" and food.base.endswith(("berries", "berry")):
        classes = (*classes, "berry")
    names = frozenset(word for word in (*own, *told, *classes) if not word.isdigit())
    first = words(short_name(food))
    # The pockets that the dish is called are not the pita they are made of, though that may be called so too.
    last = {words(name)[-1] for name in food.other_names if words(name)} - called
    heads = frozenset(word for word in {*first, *last, *words(line.split(",")[0])} if word not in _HOW)
    return names | frozenset(last), heads | frozenset(classes)


def _measures(word: str) -> bool:
    known = line_words().get(word)
    return word in _MEASURES or (known is not None and known.kind in ("measure", "container"))


@lru_cache(maxsize=64)
def _names(
    parts: tuple[tuple[str, str], ...],
    given: tuple[Food, ...],
    dishes: tuple[tuple[str, str], ...],
    table: FoodTable,
    pieces: frozenset[str],
    title: frozenset[str],
) -> FoodNames:
    by_key = {food.key: food for food in given}
    called = frozenset(word for word, _ in dishes)
    of_dish = tuple((key, *_words_for(by_key[key], line, called)) for key, line in parts)
    return FoodNames(of_dish, dict(dishes), table, pieces, title)


_POTS = ("pots", "pans", "casseroles", "loaves", "tins", "cups", "mugs", "glasses", "ramekins")


def _called(recipe: Recipe) -> list[tuple[str, str]]:
    """Return what a dish is called: the last word of its title before "with", and of its serving."""
    found = []
    for text, part in ((recipe.title, "dish"), (recipe.serving_is, "serving")):
        name = _BEHIND.split(text)[0]
        if head := words(name):
            # Of "breakfast pots" each is one serving, though a pot may hold the whole of another dish.
            found.append((head[-1], "serving" if name.lower().split()[-1] in _POTS else part))
    return found


def names_of(*recipes: Recipe) -> FoodNames:
    """Return what the foods of some states of a dish may be called; made once for the same foods."""
    parts: dict[tuple[str, str], Food] = {}
    for recipe in recipes:
        for part in recipe.ingredients:
            line = "" if " in place of " in part.line else part.line
            parts.setdefault((part.food.key, line), part.food)
    dishes = tuple(dict.fromkeys(pair for recipe in recipes for pair in _called(recipe)))
    pieces = frozenset(word for recipe in recipes for word in pieces_of(recipe, _BEHIND.split(recipe.title)[0]))
    title = frozenset(word for recipe in recipes for word in words(_BEHIND.split(recipe.title)[0]))
    return _names(tuple(parts), tuple(parts.values()), dishes, food_table(), pieces, title)

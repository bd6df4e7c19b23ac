"""Reading a typed what-if: tried as one clause, then as several, each on the recipe after those before it."""

import re
from dataclasses import dataclass, replace

from kit.errors import AmountError, ChangeError, NotUnderstoodError, TargetError
from kit.food.composition import Foods, foods
from kit.lines.parsed_line import take_apart
from kit.meal.change_asked import Asked, named, words_of_dish
from kit.meal.change_clauses import steps_of
from kit.meal.change_each import for_all
from kit.meal.change_heard import all_heard
from kit.meal.change_kinds import another_form
from kit.meal.change_needs import needs, needs_and_then
from kit.meal.change_places import refined
from kit.meal.change_questions import (
    not_understood,
    of_how_much,
    of_what_is_not_alike,
    of_which_half,
    of_which_kind,
    same_place_twice,
    says_instead,
    stays_as_it_is,
)
from kit.meal.change_servings import serving_named
from kit.meal.change_shapes import Clause, clauses
from kit.meal.change_words import plain, without_politeness
from kit.meal.ingredient_names import ingredients_called
from kit.meal.recipe import Recipe
from kit.meal.steps import Step, applied
from kit.meal.target_words import is_target
from kit.meal.targets import reached

LONGEST = 300  # characters; anything longer is no what-if
_NOTHING = frozenset("no without omit skip half double twice swap replace add use more less".split()) | {"leave out"}
_BELOW_ZERO = re.compile(r"(?:^|\s)[-–−]\d|[a-z] [-–−] \d")  # no bullet: an amount
_MOST_PARTS = 6  # clauses in one line
_LINK = re.compile(
    r"\s*(?:[,;.]\s*(?:and |but |then |plus |also |with )*|\s(?:and|but|then|plus|also|&|\+)\s|\s(?=no\s|without\s)"
    r"|\swith\s(?=(?:half|double|twice|no)\s))\s*"
)
_PAIR = re.compile(r"^(?P<a>.+?) (?:with|for|by|to) (?P<b>.+)$")  # behind "swap the cream for yogurt, "
_PLUS = re.compile(r"\bplus\b|\+")  # between two changes it adds what follows: "no walnuts, plus 1/4 cup seeds"
_INHERITED = ("leave out", "times", "add", "keep")  # what a bare name behind such a clause is meant by as well
_THE_REST = re.compile(r"(?:the )?(?:rest|remain\w+|others?)\b")  # "half the salt, the rest in lemon juice"
_FEW = ("a ", "an ", "some ", "one ", "two ", "three ", "half ")
_WITHOUT = re.compile(r"^(?:no|without)(?: (?:added|any))? (?:salt|sugar|fat)$")  # may be a kind: "corn without salt"
_EITHER = re.compile(  # "kale or spinach", not "one or two", nor "a cup or so"
    r"\b(?!one|two|three|four|five)[a-z]{3,} or (?!(?:so|more|less|fewer|not|two|three|four|five|six)\b)[a-z]{3,}"
)
_OR = re.compile(r"\s+(?:or|nor)\s+")


def read_change(line: str, recipe: Recipe, table: Foods | None = None) -> tuple[Step, ...]:
    """Read a typed what-if, as an audience asks it.

    Parameters
    ----------
    line : str
        Such as ``"no feta and half the salt"`` or ``"2 tbsp peanut butter instead of tahini"``; or targets for a
        serving, such as ``"20 g protein and under 600 mg sodium"``, that the smallest change of amounts meets.
    recipe : Recipe
        What it is asked of; with changes already made, the recipe after them.
    table : Foods, optional
        The foods to choose from; all at hand by default.

    Returns
    -------
    tuple of Step
        What to change, in order; `applied` gives the recipe after it.

    Raises
    ------
    ChangeError
        If the line is not understood, or something has to be asked back: then with choices, each of them such a line.

    Examples
    --------
    >>> from kit.meal.recipe import recipe
    >>> salad = recipe("Salad", ["4 cups kale, chopped", "1/2 cup feta, crumbled", "1/4 tsp salt"], servings=2)
    >>> steps = read_change("no feta and half the salt", salad)
    >>> [step.kind for step in steps], applied(salad, steps).grams.tolist()
    (['leave out', 'amount'], [268.0, 0.0, 0.75])
    """
    text = plain(line)
    if not text or len(line) > LONGEST or text in _NOTHING or _BELOW_ZERO.search(line):
        raise not_understood(line, recipe)
    dish = words_of_dish(recipe)
    if question := of_what_is_not_alike(text, dish):
        raise question
    reader = _Reader(text, foods() if table is None else table, dish)
    if is_target(line):
        try:
            return reached(line, recipe)
        except TargetError as fault:
            raise ChangeError(f'"{plain(line)}": {fault}') from fault
    if question := of_how_much(text):
        raise question
    people = next((clause for clause in clauses(text, reader.dish) if clause.kind == "servings"), None)
    if people:  # "we are ten"
        return steps_of(Asked(people, recipe, reader.table, text))
    named = serving_named(text, reader.dish)
    if named:
        raise ChangeError(f'"{named}" is what this dish is called; write the food, or how many servings to make')
    lacking = needs_and_then(text)
    if lacking:
        return _in_its_place(*lacking, recipe, reader)
    asks = needs(text)
    if asks:
        steps_of(Asked(asks, recipe, reader.table, text))
    said = without_politeness(text)
    return all_heard(text, said, recipe, reader.read(said, recipe), reader.table)


def _in_its_place(need: Clause, then: str, recipe: Recipe, reader: "_Reader") -> tuple[Step, ...]:
    """Return the change that follows upon what is lacking; a food alone takes the place of that."""
    text = without_politeness(then)
    first = next(clauses(text, reader.dish), None)
    if first and first.kind == "use" and ingredients_called(need.old, recipe).places:
        return steps_of(Asked(Clause("swap", need.old, first.new), recipe, reader.table, reader.line))
    return all_heard(reader.line, text, recipe, reader.read(text, recipe), reader.table)


@dataclass(frozen=True)
class _Fault:
    """Why a reading of a line failed: how many of its parts were understood, and the error."""

    understood: int
    error: ChangeError

    @property
    def worth(self) -> tuple[int, bool, bool]:
        """How much it tells: of what came furthest, a question with choices."""
        return self.understood, bool(self.error.choices), not isinstance(self.error, NotUnderstoodError)


@dataclass
class _Reader:
    """Tries a line as one clause, then as several."""

    line: str
    table: Foods
    dish: frozenset[str]

    def read(self, text: str, recipe: Recipe) -> tuple[Step, ...]:
        """Return the steps of the whole line, or raise the error that tells most."""
        found = self._parts(text, recipe, None, 0)
        if isinstance(found, _Fault):
            raise found.error
        if not found:  # "keep the feta"
            raise not_understood(self.line, recipe)
        return found

    def _parts(self, text: str, recipe: Recipe, before: Clause | None, depth: int) -> tuple[Step, ...] | _Fault:
        whole = self._clause(text, recipe, before)
        if not isinstance(whole, _Fault):
            return whole[1]
        fault = whole
        links = [*_LINK.finditer(text)] + ([*_OR.finditer(text)] if _leaves_out(text, before) else [])
        for link in reversed(links[: _MOST_PARTS - depth]):
            first, rest = without_politeness(text[: link.start()].strip()), text[link.end() :].strip()
            if _PLUS.search(link[0]) and rest[:1].isdigit() | rest.startswith(_FEW):
                rest = f"add {rest}"
            if not first or not rest:
                continue
            left = self._clause(first, recipe, before)
            if isinstance(left, _Fault):
                after: tuple[Step, ...] | _Fault = self._parts(without_politeness(rest), recipe, None, depth + 1)
                right = after.understood if isinstance(after, _Fault) else 1
                left = _Fault(right, left.error)
                fault = max(fault, left, key=lambda one: one.worth)
                continue
            clause, steps = left
            if link[0].isspace() and clause.kind in ("use", "set", "add", "swap") and _WITHOUT.match(rest):
                return _Fault(1, of_which_kind(first, rest))
            instead = self._in_place_of_it(clause, rest, recipe)
            if instead is not None:
                return instead
            before_it = replace(clause, how="or") if _OR.fullmatch(link[0]) else clause
            after = self._parts(without_politeness(rest), applied(recipe, steps), before_it, depth + 1)
            if not isinstance(after, _Fault) and says_instead(clause, rest):
                unclear = of_which_half(steps, after, clause, recipe)
                after = _Fault(2, unclear) if unclear else after
            if not isinstance(after, _Fault):
                twice = same_place_twice(steps, after, text)
                after = _Fault(2, twice) if twice else after
            if not isinstance(after, _Fault):
                return (*steps, *after)
            fault = max(fault, _Fault(after.understood + 1, after.error), key=lambda one: one.worth)
        return fault

    def _in_place_of_it(self, clause: Clause, rest: str, recipe: Recipe) -> tuple[Step, ...] | _Fault | None:
        """Return the swap that "take out the yogurt and use kefir" asks for."""
        ways = [*clauses(without_politeness(rest), self.dish)] if clause.kind == "leave out" else []
        then = ways[0] if ways else None
        named = [side for way in ways if way.kind == "swap" for side in (way.old, way.new)]
        swaps = any(ingredients_called(side, recipe).places for side in named)  # "use canola oil for the peanut oil"
        if then is None or (then.kind, then.how) != ("use", "verb") or swaps:
            return None
        try:
            if ingredients_called(then.new, recipe).places or take_apart(then.new)[0].counted:
                return None
            own = ingredients_called(then.new.split()[-1], recipe).places
            if own and not {*own} & {*ingredients_called(clause.old, recipe).places}:
                return None  # "leave out the turkey and use vegetable broth" where there is chicken broth
            return steps_of(Asked(Clause("swap", clause.old, then.new), recipe, self.table, self.line))
        except ChangeError as error:
            return _Fault(2, error)

    def _clause(self, text: str, recipe: Recipe, before: Clause | None) -> tuple[Clause, tuple[Step, ...]] | _Fault:
        """Return a clause with its steps; a bare name after "no feta" is left out too."""
        best = _Fault(0, not_understood(self.line, recipe))
        if _EITHER.search(text) and not _leaves_out(text, before):
            return _Fault(1, ChangeError(f'"{text}" says "or"; write the one that is meant'))
        try:
            text = for_all(text, recipe.servings)
        except ChangeError as error:
            return _Fault(1, error)
        ways = [*clauses(text, self.dish)]
        plain_words = [clause for clause in ways if clause.how in ("bare", "weak", "not")]
        with_verb = [clause for clause in ways if clause not in plain_words]
        ways = [*with_verb, *([] if with_verb else self._inherited(text, before, recipe)), *plain_words]
        for clause in ways:
            if clause.kind == "use" and before is not None and before.kind == "swap":
                continue  # "yogurt instead of cream and butter" does not say what butter takes the place of
            if clause.kind == "batch" and before is not None and text.endswith(("as much", "the amount")):
                return _Fault(1, ChangeError(f'"{text}" of what? write the amount, such as "1 cup"'))
            if (clause.kind, clause.how) == ("use", "bare") and not self._is_wish(text, before, recipe):
                continue  # "no olives or capers": the recipe has no capers
            try:
                steps = steps_of(Asked(clause, recipe, self.table, self.line))
                applied(recipe, steps)
            except ChangeError as error:
                if clause.how == "bare" and not error.choices:
                    continue
                best = max(best, _Fault(0, error), key=lambda one: one.worth)
                if error.choices and not _LINK.search(text):
                    break
                continue
            except AmountError as error:
                return _Fault(1, ChangeError(str(error)))
            stays = stays_as_it_is(clause.old, before) if clause.kind == "keep" else None
            if stays:
                return _Fault(2, stays)
            if before is not None and before.kind == "use" and clause.kind == "swap":
                continue  # "use yogurt and honey instead of cream": two foods for one
            return clause, steps
        return best

    def _inherited(self, text: str, before: Clause | None, recipe: Recipe) -> list[Clause]:
        pair = _PAIR.match(text) if before is not None and before.kind == "swap" else None
        if pair:
            return [Clause("swap", pair["a"], pair["b"], how="swap with")]
        if before is None or before.kind not in _INHERITED or _THE_REST.match(text):
            return []
        if before.kind != "add" and self._is_new(text, recipe):
            return [Clause("add", new=text)]  # "half the lentils and a cup of quinoa"
        name = re.sub(r"^(?:the|any|all|no)\s+", "", text)
        if before.kind != "add" and re.search(r"\d", name):
            return []
        if before.kind == "add":
            return [Clause("add", new=name)]
        asked = Asked(before, recipe, self.table, self.line)
        if another_form(name, ingredients_called(name, recipe).places, asked):  # "no nuts, skim milk"
            return []
        return [replace(before, old=name)]

    def _is_wish(self, text: str, before: Clause | None, recipe: Recipe) -> bool:
        """Whether a bare name behind a clause is meant otherwise than that: "no feta, rye bread"."""
        if before is None or before.kind not in _INHERITED:
            return True
        return before.how != "or" and refined(text, recipe, self.table) is not None

    @staticmethod
    def _is_new(text: str, recipe: Recipe) -> bool:
        """Whether a text is a measured amount of something that the recipe does not hold."""
        phrases = take_apart(text)
        if len(phrases) != 1 or not phrases[0].counted:
            return False
        if phrases[0].written.unit is None and not phrases[0].written.measure:
            return False  # "half the oil and 2 carrots"
        return not ingredients_called(named(phrases[0], text), recipe).places


def _leaves_out(text: str, before: Clause | None) -> bool:
    return bool(re.match(r"^(?:no|without|leave out|omit|skip|drop|minus|neither)\b", text)) or (
        before is not None and before.kind == "leave out"
    )

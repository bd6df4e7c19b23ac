"""What a follow-up says: gathered once from the talk, so that the handout, the mail and the page say the same."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from kit.food.composition import COMPOSITION
from kit.food.labels.label_rounding import declared, on_a_label
from kit.meal.buying import to_buy
from kit.meal.containers import container_lines
from kit.meal.kitchen_amounts import kitchen_line
from kit.meal.nutrition import Nutrition, nutrition
from kit.rules.allergens import check_the_package
from kit.rules.cautions import allergens, cautions, storage, unknown_allergens
from kit.rules.serving import MAIN_NUTRIENTS, Line, serving_lines
from kit.rules.verdicts import CANNOT_TELL, HOLDS, OFF
from kit.speech.points import check_talk
from kit.speech.verdict import ANSWER, POINT, STEP, Verdict
from kit.talk.talk import Question, Talk
from kit.texts import listing, number, quantity

RULES = {
    "us": "Daily values and wordings: 21 CFR 101; energy ranges for adults: IOM 2002/2005",
    "eu": "Reference intakes: Regulation (EU) 1169/2011; wordings: Regulation (EC) 1924/2006",
}
KEEPING = "Keeping and reheating: USDA Food Safety and Inspection Service; FDA Food Code"


@dataclass(frozen=True, slots=True)
class RecipeLine:
    """One line to cook from: the part of the recipe, the amount as a kitchen measures it with the food, and grams."""

    part: str
    text: str
    grams: str


@dataclass(frozen=True, eq=False)
class Contents:
    """A talk and the numbers of its dish, in the pieces that a follow-up is made of.

    Attributes
    ----------
    talk : Talk
        Without what she marked as private.
    numbers : Nutrition
        The dish as it is sent: as written, or for other servings.
    """

    talk: Talk
    numbers: Nutrition

    @property
    def title(self) -> str:
        """The dish."""
        return self.talk.title

    @cached_property
    def lines(self) -> tuple[RecipeLine, ...]:
        """The recipe to cook from, with grams: lines as written, changed ones in amounts that a kitchen can measure."""
        written = self.talk.recipe.ingredients
        lines: list[RecipeLine] = []
        for place, part in enumerate(self.numbers.recipe.ingredients):
            if part.grams == 0:
                continue
            same = place < len(written) and part.food is written[place].food and part.grams == written[place].grams
            text = part.line.strip() if same and part.line else kitchen_line(part, self.talk.measures)
            grams = quantity(part.grams, "g", 0 if part.grams >= 10 else 1)
            if lines and lines[-1].text == text:  # one line that names two foods
                lines[-1] = RecipeLine(part.part, text, f"{lines[-1].grams} + {grams}")
            else:
                lines.append(RecipeLine(part.part, text, grams))
        return tuple(lines)

    @cached_property
    def unread(self) -> tuple[str, ...]:
        """Lines of the recipe that are not in the numbers."""
        return tuple(reading.line.strip() for reading in self.numbers.recipe.open_lines)

    @cached_property
    def serving(self) -> tuple[Line, ...]:
        """The main nutrients of a serving."""
        return serving_lines(self.numbers, MAIN_NUTRIENTS, self.talk.rules)

    @cached_property
    def other_nutrients(self) -> tuple[Line, ...]:
        """The nutrients of a serving that have a share of a day and are not among the main ones."""
        rest = serving_lines(self.numbers, rules=self.talk.rules)
        return tuple(line for line in rest if line.nutrient not in MAIN_NUTRIENTS and line.day == line.day)

    @cached_property
    def allergens(self) -> tuple[str, ...]:
        """The allergens with what brings them, a sentence each, and the foods whose package has to be read."""
        known = tuple(allergen.sentence for allergen in allergens(self.numbers.recipe, self.talk.rules))
        unknown = unknown_allergens(self.numbers.recipe)
        return (*known, *((check_the_package(unknown),) if unknown else ()))

    @cached_property
    def keeping(self) -> tuple[str, ...]:
        """How to keep and reheat it."""
        return storage(self.talk.measures, self.talk.keeps_days, self.numbers.recipe)

    @cached_property
    def cautions(self) -> tuple[str, ...]:
        """Who should ask their own clinician first, and that local codes come before all else."""
        return tuple(caution.sentence for caution in cautions(self.numbers, self.talk.rules))

    @cached_property
    def steps(self) -> tuple[str, ...]:
        """How it is cooked: the titles of the plan's steps that take hands or a pot, with the minutes of each pot."""
        told = []
        for step in (step for step in self.talk.steps if step.pots or step.hands_minutes):
            pots = [f"{pot.name} {number(pot.minutes)} min" for pot in step.pots]
            told.append(f"{step.title}{f' ({listing(pots)})' if pots else ''}")
        return tuple(told)

    @cached_property
    def verdicts(self) -> tuple[Verdict, ...]:
        """The verdict on everything of the talk that is said or sent, as the dish is sent."""
        return check_talk(self.talk, self.numbers)

    @cached_property
    def points(self) -> tuple[str, ...]:
        """The sentences of the talk that hold, and those that she keeps on her own word with her source behind them."""
        said = (verdict for verdict in self.verdicts if verdict.where == POINT)
        return tuple(
            f"{verdict.say} ({verdict.point.source})" if verdict.on_her_word and verdict.point else verdict.say
            for verdict in said
            if verdict.verdict == HOLDS or verdict.on_her_word
        )

    @cached_property
    def questions(self) -> tuple[Question, ...]:
        """The prepared questions whose answer is not off, the numbers of the answer filled."""
        answers = {verdict.place: verdict for verdict in self.verdicts if verdict.where == ANSWER}
        return tuple(
            replace(question, answer=answers[place].say)
            for place, question in enumerate(self.talk.questions)
            if place in answers and answers[place].verdict != OFF
        )

    @cached_property
    def not_sent(self) -> tuple[Verdict, ...]:
        """Sentences and answers that are left out of what is sent: they are off, or nobody vouches for them."""
        return tuple(verdict for verdict in self.verdicts if self._is_left_out(verdict))

    @cached_property
    def on_her_word(self) -> tuple[Verdict, ...]:
        """What is sent though the kit cannot tell whether it holds: answers, and sentences with a source of hers."""
        unsure = (verdict for verdict in self.verdicts if verdict.verdict == CANNOT_TELL and verdict.where != STEP)
        return tuple(verdict for verdict in unsure if not self._is_left_out(verdict))

    @staticmethod
    def _is_left_out(verdict: Verdict) -> bool:
        if verdict.where == POINT:
            return verdict.verdict == OFF or (verdict.verdict == CANNOT_TELL and not verdict.on_her_word)
        return verdict.where == ANSWER and verdict.verdict == OFF

    @cached_property
    def containers(self) -> tuple[str, ...]:
        """What goes into each container."""
        return container_lines(self.numbers.recipe, self.talk.measures)

    @cached_property
    def to_buy(self) -> tuple[str, ...]:
        """What to buy, in whole packages, and what is left of it; what most kitchens have comes last, on one line."""
        things = to_buy(self.numbers.recipe, self.talk.measures)
        at_hand = listing([thing.line for thing in things if thing.at_hand])
        return (*(thing.line for thing in things if not thing.at_hand), *((f"at hand: {at_hand}",) if at_hand else ()))

    @cached_property
    def label(self) -> str:
        """A serving in the rounding of a nutrition label, in one line."""
        lines = (line for line in self.serving if line.nutrient in on_a_label())
        return "; ".join(f"{line.name} {declared(line.nutrient, line.value)}" for line in lines)

    @cached_property
    def sources(self) -> tuple[str, ...]:
        """Where the figures and the rules are from."""
        used = dict.fromkeys(part.food.source for part in self.numbers.recipe.ingredients if part.grams > 0)
        others = [source for source in used if not source.startswith("SR26")]
        return (f"Composition and household measures: {COMPOSITION}", *others, RULES[self.talk.rules], KEEPING)


def contents(talk: Talk, numbers: Nutrition | None = None) -> Contents:
    """Return what a follow-up of a talk says.

    Parameters
    ----------
    talk : Talk
        The talk.
    numbers : Nutrition, optional
        The dish as it is to be sent; as written by default.
    """
    return Contents(without_private(talk), nutrition(talk.recipe) if numbers is None else numbers)


def without_private(talk: Talk) -> Talk:
    """Return a talk without the entries and notes that are for her alone."""
    return replace(
        talk,
        points=tuple(point for point in talk.points if not point.private),
        steps=tuple(step for step in talk.steps if not step.private),
        questions=tuple(question for question in talk.questions if not question.private),
        notes="",
    )


def by_part(lines: Sequence[RecipeLine]) -> dict[str, list[RecipeLine]]:
    """Return the lines of a recipe by its parts, in their order."""
    parts: dict[str, list[RecipeLine]] = {}
    for line in lines:
        parts.setdefault(line.part, []).append(line)
    return parts

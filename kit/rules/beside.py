"""What the rules want said beside a wording: an amount, that it is not low, by how much and than what it is less."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from math import isfinite

from kit.rules.claim_texts import Tried, asked, quantity_said
from kit.rules.naming import thing_said
from kit.rules.subject import Subject
from kit.rules.wordings import ClaimLimit, ClaimRule
from kit.texts import number

AMOUNT, NOT_LOW, DIFFERENCE, WHICH = "amount", "not low", "difference", "which"
_NOT_LOW_WORDS = "that it is not low in"
# Comparisons say by how much, and than what: 21 CFR 101.13(j)(2); Regulation (EC) 1924/2006, Article 9(1).
_COMPARING = {"us": "21 CFR 101.13(j)(2)", "eu": "Regulation (EC) 1924/2006, Article 9(1), from memory"}


@dataclass(frozen=True, slots=True)
class Beside:
    """Something that must be said beside a wording.

    Attributes
    ----------
    what : str
        ``"amount"`` of the nutrient in a serving; ``"not low"``, that it is not low in it; ``"difference"``, the
        percentage and the other food; ``"which"`` limit makes it light.
    nutrient : str
        The nutrient it is about.
    words : str
        What it is, after "the rule wants": "the fat in a serving".
    section : str
        Where that is ruled.
    """

    what: str
    nutrient: str
    words: str
    section: str


def beside_of(
    rule: ClaimRule,
    needed: Sequence[Tried],
    telling: Sequence[Tried],
    subject: Subject,
    than: Subject | None,
    holds: bool,
) -> tuple[Beside, ...]:
    """Return what must be said beside a wording.

    Parameters
    ----------
    rule : ClaimRule
        The wording's rule.
    needed : sequence of Tried
        The limits above which something else is said too, where they are or may be passed.
    telling : sequence of Tried
        The limits that the wording was told by.
    subject, than : Subject
        What it is said of, and what it is compared with.
    holds : bool
        Whether the wording itself holds.
    """
    found = [
        Beside(
            NOT_LOW if one.limit.say.startswith(_NOT_LOW_WORDS) else AMOUNT,
            one.nutrient,
            one.limit.say,
            one.limit.source,
        )
        for one in needed
        if one.kept or isfinite(one.found[1])
    ]
    eu = rule.id.startswith("eu")
    if holds and rule.needs_comparison and than is not None:
        section = _COMPARING["eu" if eu else "us"]
        found += [
            Beside(
                DIFFERENCE, one.nutrient, f"by how much, and than what: {_difference(one)} than {than.name}", section
            )
            for one in telling
            if one.limit.is_relative and one.limit.threshold > 0
        ][:1]
    if holds and rule.wording == "light" and rule.nutrients != ("sodium",) and (subject.is_dish or eu):
        name = telling[-1].nutrient
        found.append(Beside(WHICH, name, f"what makes it light, {thing_said(name)}", rule.section))
    return tuple(dict.fromkeys(found))


def _difference(tried: Tried) -> str:
    middle = sum(tried.found) / 2
    spoken = "of a day's " if tried.limit.unit == "% daily value more" else ""
    thing = quantity_said(tried.nutrient.removeprefix("corrected_"))
    less = "less" if tried.limit.unit.endswith("less") else "more"
    if spoken:
        return f"{number(middle)} percent {spoken}{thing} more"
    return f"{number(middle)} percent {'fewer' if (thing, less) == ('calories', 'less') else less} {thing}"


def disclosures(over: Sequence[ClaimLimit], told: Collection[str]) -> tuple[str, ...]:
    """Return what a label would have to point to beside any claim, but for what is told already: 21 CFR 101.13(h)."""
    left = [limit for limit in over if limit.say not in told]
    return tuple(dict.fromkeys(f"{limit.say} (over {asked(limit)}, {limit.source})" for limit in left))

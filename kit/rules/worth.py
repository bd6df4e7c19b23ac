"""Whether what a food brings to a serving of the dish is worth saying of it."""

from kit.food.daily_values import daily_values
from kit.food.nutrients import nutrient
from kit.rules.naming import is_plural, thing_said
from kit.rules.subject import Subject
from kit.rules.wordings import ClaimRule
from kit.texts import number

# Below 2 % of the daily value a label may declare none of it: 21 CFR 101.9(c)(8)(iii), taken as the least worth saying
# of a food in a dish too (common practice: the rule for a dish names no such amount).
LEAST_SHARE = 0.02
_OF_ENOUGH = ("high", "good source", "more")


def too_little(rule: ClaimRule, nutrient_id: str, subject: Subject, rules: str = "us") -> str:
    """Return why what a food of the dish brings of a nutrient is too little to be said of it; empty when it is not.

    "The flaxseed in it is high in fiber" says nothing true about a plate that holds a pinch of it.

    Parameters
    ----------
    rule : ClaimRule
        The wording; only those about having enough of something are tried.
    nutrient_id : str
        The nutrient it is said of.
    subject : Subject
        The food; tried only when it is one of the dish, by what a serving holds of it.
    rules : {"us", "eu"}
        Whose daily value; the US one where the EU has none.
    """
    if rule.wording not in _OF_ENOUGH or not subject.in_dish or subject.is_dish:
        return ""
    day = daily_values(rules).get(nutrient_id) or daily_values("us").get(nutrient_id)
    if day is None:
        return ""
    brings = subject.amount(nutrient_id, "serving")[1]
    if not brings < LEAST_SHARE * day.amount:  # false when it is not known
        return ""
    about = nutrient(nutrient_id)
    verb = "bring" if is_plural(subject.name) else "brings"
    amount = f"{number(brings, max(1, about.decimals))} {about.unit} of {thing_said(nutrient_id)}"
    return (
        f"{subject.name} {verb} only {amount} to a serving, under {number(100 * LEAST_SHARE)} % of a day, "
        "which a label counts as none (21 CFR 101.9(c)(8)(iii))"
    )

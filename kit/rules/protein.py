"""The quality of protein: how much of it a day's protein counts, by published scores."""

from collections.abc import Mapping, Sequence
from functools import cache
from math import nan

import numpy as np

from kit import files
from kit.food.cells import read_rows
from kit.food.composition import Food
from kit.meal.nutrition import Nutrition

_SURE_ENOUGH = 0.95  # of the most a day's protein can count, from which it is said


@cache
def protein_quality() -> Mapping[str, tuple[float, ...]]:
    """Return the published protein digestibility-corrected amino acid scores by the base of a food."""
    found: dict[str, tuple[float, ...]] = {}
    for row in read_rows(files.bundled("data/protein_quality.csv")):
        found[row["base"]] = (*found.get(row["base"], ()), float(row["pdcaas"]))
    return found


def quality_of(food: Food) -> tuple[float, ...]:
    """Return the published scores of a food; none where nobody has published one that the kit knows.

    Examples
    --------
    >>> from kit.food.composition import foods
    >>> quality_of(foods()["lentils-dry"])
    (0.52, 0.63)
    """
    return protein_quality().get(food.base, ())


def quality_of_dish(numbers: Nutrition) -> tuple[float, float]:
    """Return the least and the most that the score of a dish's protein can be.

    Notes
    -----
    A mixture's score is not the average of its parts' scores, since one part makes up for what another lacks; but it
    is never less. For each amino acid the mixture holds, per gram of protein, the average of what the parts hold, and
    each part holds at least its own score of it. So the average is the least, and 1 the most. A food without a
    published score counts as 0 in the least.

    References
    ----------
    FAO/WHO, "Protein quality evaluation", Food and Nutrition Paper 51, Rome, 1991: the score of the mixture's amino
    acids; 21 CFR 101.9(c)(7)(ii) counts no more than 1.
    """
    protein = np.nan_to_num(numbers.brings("protein")).tolist()
    return least_score(protein, [least_quality_of(part.food) for part in numbers.recipe.ingredients]), 1.0


def least_quality_of(food: Food) -> float:
    """Return the least that the score of a food can be: 0 where nobody has published one."""
    return min(quality_of(food), default=0.0)


def least_score(protein: Sequence[float], scores: Sequence[float]) -> float:
    """Return the least that the score of a mixture can be: what each part brings, weighed by its own score.

    Examples
    --------
    >>> least_score([6.0, 2.0], [0.5, 0.9])
    0.6
    """
    whole = sum(protein)
    if whole <= 0:
        return 0.0
    return min(1.0, sum(grams * score for grams, score in zip(protein, scores, strict=True)) / whole)


def protein_share(share: float, least: float, most: float = 1.0) -> float:
    """Return the share of a day that protein counts for by US rules; nan where its quality is not sure enough.

    References
    ----------
    21 CFR 101.9(c)(7): a day's protein counts the protein corrected for its quality.
    """
    return share * least if least > _SURE_ENOUGH * most else nan

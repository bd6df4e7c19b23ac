"""What of a weight is thrown away: bones, shells, peel, as far as the line leaves them there."""

import re

from kit.food.composition import Food
from kit.lines.nearest_measure import Written

LEAVES = "greens"  # the family of foods whose stems are bought with them by the bunch, not by weight
_SOLD_WITH_BONES = (
    *("whole, meat and skin", "wing", "drumstick", "chicken leg", "bone-in", "spareribs", "lamb loin chop"),
    *("duck, meat and skin", "veal shank"),
)
_BONELESS_AS_SOLD = ("poultry", "meat", "fish", "shellfish", "nut", "seed")
_IN_PART = re.compile(r"(\d+) ?%")


def thrown_away(food: Food, written: Written) -> float:
    """Return the part of a weight that is thrown away, as far as the line leaves it there. [fraction]

    Parameters
    ----------
    food : Food
        What is weighed; its refuse is that of USDA SR26.
    written : Written
        Whether the line says that it is weighed without it ("peeled"), or with it ("bone-in").
    """
    if food.group in _BONELESS_AS_SOLD or food.state not in ("raw", ""):
        bones = "bone" in food.refuse_part.lower() and any(part in food.name.lower() for part in _SOLD_WITH_BONES)
        shells = food.group == "shellfish" and written.skin_on  # unpeeled
        taken = written.as_bought or shells or (bones and not written.edible)
        return (_of_bones(food) if food.group == "poultry" else food.refuse) if taken else 0.0
    peeled = any(part in food.refuse_part.lower() for part in ("paring", "scraping", "skin"))
    new = "new" in food.base.split("-")
    if written.edible or food.retention == LEAVES or (peeled and (written.skin_on or new)):
        return 0.0
    return food.refuse


def _of_bones(food: Food) -> float:
    """Return the refuse of a bird's part: of "bone 33%, skin 9%" the bone, which the source gives twice of some."""
    parts = [part for part in food.refuse_part.split(",") if "bone" in part.lower()]
    said = [int(found[1]) for part in parts if (found := _IN_PART.search(part))]
    return max(said) / 100 if said else food.refuse

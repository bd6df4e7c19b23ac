"""Foods from their package labels on her writing desk: typed in, listed, corrected, deleted and brought back."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from kit.errors import KitError, LabelError
from kit.food.allergens import allergen_names, read_allergens
from kit.food.labels.label import Label, key_from
from kit.food.labels.own_foods import Kept, delete, keep, kept, restore
from kit.food.labels.printed import LABEL_ONLY
from kit.food.nutrients import nutrient
from kit.talk.desk import Desk
from kit.texts import listing

Parts = dict[str, Any]
_LINES = (
    *("energy", "fat", "saturated_fat", "trans_fat", "cholesterol", "sodium", "carbohydrate", "fiber", "sugars"),
    *("added_sugars", "protein", "vitamin_d", "calcium", "iron", "potassium"),
)
_ORIGINS = (
    ("", "not known"),
    ("plant", "plants only"),
    ("animal", "animals: meat, fish, egg, milk, honey"),
    ("both", "both"),
)
_VEGETARIAN = (("", "not known"), ("yes", "yes"), ("no", "no"))


class Labels:
    """What a writing desk does with labels."""

    desk: Desk
    _dish: Callable[[], Parts]

    def _labels(self) -> Parts:
        """Return the form's lines, and the labels that are kept."""
        return {
            "label_form": {
                "lines": [
                    [name, LABEL_ONLY[name].capitalize() if name in LABEL_ONLY else nutrient(name).short_name]
                    for name in _LINES
                ],
                "origins": [list(option) for option in _ORIGINS],
                "vegetarian": [list(option) for option in _VEGETARIAN],
            },
            "labels": [_told(each) for each in kept()],
        }

    def _with_foods_of_now(self) -> Parts:
        """Return what follows from the recipe when it is read with the foods that are kept now."""
        self.desk = replace(self.desk)
        return self._dish()

    def _do_label(self, message: Parts) -> Parts:
        """Keep a label, in the place of the one that she corrects."""
        typed = message["label"]
        label = _label(typed)
        before = str(message.get("key", ""))
        mine = {each.key for each in kept()}
        name_taken = (label.key or key_from(label.name)) in mine - {before}
        if name_taken:
            raise LabelError(f'you keep a food "{label.name}" already; correct that one, or give this one another name')
        food = keep(label, replace=bool(before))
        if before and food.key != before:
            delete(before)
        known = f"contains {listing([allergen_names().get(one, one) for one in label.allergens])}"
        allergens = known if label.allergens else "its allergens are not known: check the package"
        told = f'Kept: write "{food.name}" in a recipe. {allergens[:1].upper()}{allergens[1:]}.'
        return {**self._labels(), **self._with_foods_of_now(), "told": _said(told), "typed": None}

    def _do_label_delete(self, message: Parts) -> Parts:
        delete(str(message["key"]))
        told = {**_said("Deleted; it lies in the bin."), "back": str(message["key"])}
        return {**self._labels(), **self._with_foods_of_now(), "told": told}

    def _do_label_back(self, message: Parts) -> Parts:
        restore(str(message["key"]))
        return {**self._labels(), **self._with_foods_of_now(), "told": _said("It is back in your list.")}


def _said(text: str) -> Parts:
    return {"by": "label", "text": text, "wrong": False}


def _label(typed: Parts) -> Label:
    """Return the label of the form's fields."""
    text = {name: str(value).strip() for name, value in typed.items() if not isinstance(value, dict)}
    amounts = {name: str(value).strip() for name, value in typed.get("amounts", {}).items() if str(value).strip()}
    if not text.get("name") or not text.get("serving"):
        raise KitError('a label needs the food\'s name and its serving as printed, such as "2/3 cup (55 g)"')
    allergens = read_allergens(text.get("contains", "").removeprefix("Contains").lstrip(": ").rstrip(". "))
    return Label(
        name=text["name"],
        serving=text["serving"],
        amounts=amounts,
        origin=text.get("origin", ""),
        vegetarian={"yes": True, "no": False}.get(text.get("vegetarian", "")),
        allergens=allergens,
    )


def _told(each: Kept) -> Parts:
    """Return a label that is kept, and what of it stands in the form while it is corrected."""
    label = each.label
    if label is None:
        typed: Parts = {"name": each.name}
    else:
        names = allergen_names()
        typed = {
            "name": label.name,
            "serving": label.serving_text,
            "amounts": {name: str(value) for name, value in label.amounts.items()},
            "contains": ", ".join(names.get(one, one) for one in label.allergens),
            "origin": label.origin,
            "vegetarian": "" if label.vegetarian is None else "yes" if label.vegetarian else "no",
        }
    return {"key": each.key, "name": each.name, "typed": typed}

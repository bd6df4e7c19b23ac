"""Checks of a package label as typed: what cannot be right about it, each in a sentence."""

from collections.abc import Iterator

import numpy as np

from kit.errors import LabelError, nearest
from kit.food.allergens import allergen_names
from kit.food.daily_values import daily_values
from kit.food.energy import (
    ALCOHOL_KCAL,
    ENERGY_TOLERANCE,
    ENERGY_TOLERANCE_KCAL,
    KCAL_PER_GRAM,
    MOST_KCAL_PER_GRAM,
)
from kit.food.labels.label import Label, key_from
from kit.food.labels.label_rounding import Printed
from kit.food.labels.printed import amount_text, printed_names, printed_percent, unit_of
from kit.texts import listing, number, percent, quantity

_HEAVIEST_SERVING = 5_000.0  # g
_WHOLES = {  # the whole, and the parts that cannot come to more
    "fat": (
        ("saturated_fat",),
        ("trans_fat",),
        ("saturated_fat", "trans_fat", "monounsaturated_fat", "polyunsaturated_fat"),
    ),
    "carbohydrate": (("sugars",), ("fiber",), ("sugars", "fiber")),
    "sugars": (("added_sugars",),),
}
_WEIGHING = ("protein", "fat", "carbohydrate", "alcohol")


def faults(label: Label) -> tuple[str, ...]:
    """Return what cannot be right about a label, a sentence each; none when it can."""
    found = list(_unreadable(label))
    if found:  # what does not read cannot be weighed against the rest
        return tuple(found)
    weights = list(_weights(label))
    return (*_parts(label), *weights, *_percentages(label), *(() if weights else _energy(label)))


def _unreadable(label: Label) -> Iterator[str]:
    if not key_from(label.key or label.name):
        yield "it has no name; write what the food is called in a recipe"
    grams = label.serving_grams
    if np.isnan(grams):
        yield f'serving is "{label.serving}"; write its weight too, such as "2/3 cup (55 g)", or weigh one serving'
    elif not 0 < grams <= _HEAVIEST_SERVING:
        yield f"a serving of {number(grams, 1)} g makes no sense; write its grams, such as 55"
    container = label.servings_per_container
    if container is not None and not 0 < container <= 1_000:
        yield f"{number(container, 1)} servings per container makes no sense; write a number such as 8, or leave it out"
    if not (label.amounts or label.daily_percent):
        yield "nothing is typed in; write at least calories, fat, carbohydrate and protein"
    for name in (*label.amounts, *label.daily_percent):
        if name not in printed_names():
            yield f'no nutrient "{name}"{nearest(name, printed_names())}'
    known = allergen_names()
    for allergen in label.allergens:
        if allergen not in known:
            one_of = "; write " + listing(list(known), "or")
            yield f'no allergen "{allergen}"{nearest(allergen, known) or one_of}'
    for name, reader, text in label.lines():
        try:
            reader(name, text)
        except LabelError as fault:
            yield str(fault)


def _parts(label: Label) -> Iterator[str]:
    """Yield where parts come to more than their whole, however they were rounded."""
    for whole, groups in _WHOLES.items():
        for parts in groups:
            there = [part for part in parts if part in label.printed]
            if whole not in label.printed or not there or (len(parts) > 1 and len(there) < 2):
                continue
            least = sum(label.printed[part].low for part in there)
            if least >= label.printed[whole].high:
                names = listing([printed_names()[part] for part in there])
                total = sum(label.printed[part].value for part in there)
                yield (
                    f"{names} come to {amount_text(whole, total)}, more than the"
                    f" {amount_text(whole, label.printed[whole].value)} of {printed_names()[whole]} that they are part"
                    " of; check these lines"
                )
                break


def _weights(label: Label) -> Iterator[str]:
    grams_in = {"g": 1.0, "mg": 1e-3, "µg": 1e-6}
    heaviest = label.serving_grams + 0.5  # a serving's grams are rounded to whole ones
    for name, amount in label.printed.items():
        if amount.low * grams_in.get(unit_of(name), 0.0) > heaviest:
            yield (
                f"{printed_names()[name]} is {amount_text(name, amount.value)} in a serving of"
                f" {_grams(label.serving_grams)}; check the amount and its unit"
            )
            return
    together = sum(label.printed[name].low for name in _WEIGHING if name in label.printed)
    if together > heaviest:
        yield (
            f"protein, fat and carbohydrate come to {_grams(together)} or more in a serving of"
            f" {_grams(label.serving_grams)}; check them and the serving"
        )
    energy = label.printed.get("energy")
    if energy and energy.low > MOST_KCAL_PER_GRAM * heaviest:
        yield (
            f"energy is {amount_text('energy', energy.value)} in {_grams(label.serving_grams)}, more than pure fat"
            " holds; check the calories and the serving"
        )


def _percentages(label: Label) -> Iterator[str]:
    """Yield where an amount and its percentage of the daily value, both printed, do not belong together."""
    for name in label.daily_percent:
        if name in label.amounts and name in label.printed:
            amount, share = label.printed[name], printed_percent(name, label.daily_percent[name])
            if share.low > amount.high or share.high < amount.low:
                day = daily_values()[name].amount
                yield (
                    f"{printed_names()[name]} of {amount_text(name, amount.value)} is {percent(amount.value / day)}"
                    f" of the daily value, not {label.daily_percent[name]} %; check both, or leave the percentage out"
                    " (labels from before 2016 go by other daily values)"
                )


def _energy(label: Label) -> Iterator[str]:
    """Yield where the calories are not what protein, fat and carbohydrate give by any lawful way of counting them."""
    printed = label.printed
    if not all(name in printed for name in ("energy", *KCAL_PER_GRAM)):
        return
    nothing = Printed(0.0, 0.0, 0.0)
    alcohol = printed.get("alcohol", nothing)
    # Fiber and sugar alcohols may be counted as carbohydrate or left out, 21 CFR 101.9(c)(1)(i)(C) and (F).
    undigested = printed.get("fiber", nothing).high + printed.get("sugar_alcohol", nothing).high
    most, value = (
        sum(factor * getattr(printed[name], end) for name, factor in KCAL_PER_GRAM.items())
        + ALCOHOL_KCAL * getattr(alcohol, end)
        for end in ("high", "value")
    )
    digested = {name: printed[name].low for name in KCAL_PER_GRAM}
    digested["carbohydrate"] = max(0.0, digested["carbohydrate"] - undigested)
    least = sum(factor * digested[name] for name, factor in KCAL_PER_GRAM.items()) + ALCOHOL_KCAL * alcohol.low
    energy = printed["energy"]
    slack = max(ENERGY_TOLERANCE * energy.value, ENERGY_TOLERANCE_KCAL * label.serving_grams / 100)
    if not least - slack <= energy.high or not energy.low <= most + slack:
        parts = listing([f"{amount_text(name, printed[name].value)} {printed_names()[name]}" for name in KCAL_PER_GRAM])
        yield (
            f"{amount_text('energy', energy.value)} are printed, but {parts} give about {quantity(value, 'kcal')} by"
            f" 4, 9 and 4 kcal/g, more than {percent(ENERGY_TOLERANCE)} away; check these four lines, and add a line"
            " alcohol if the food has some"
        )


def _grams(value: float) -> str:
    return quantity(value, "g", 1)

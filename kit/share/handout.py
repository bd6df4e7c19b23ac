"""The handout: recipe and numbers on two printed pages at the most."""

from markupsafe import Markup

from kit.food.nutrients import nutrient
from kit.rules.reference import distribution_ranges
from kit.rules.serving import Line
from kit.share.contents import Contents, by_part
from kit.share.pages import filled, sheet
from kit.share.picture import energy_picture
from kit.show.look import style
from kit.texts import number, percent, span

NO_ALLERGENS = "none of the listed ones by the facts of each food; read every package"


def handout(contents: Contents, label: bool = False) -> str:
    """Return the handout of a talk as one HTML page that needs nothing else, made for printing.

    Parameters
    ----------
    contents : Contents
        What it says.
    label : bool
        Whether to print a serving in the rounding of a nutrition label too.
    """
    recipe = contents.numbers.recipe
    return filled(
        "handout.html.j2",
        style=Markup(style() + sheet("handout.css")),
        title=contents.title,
        series=contents.talk.series,
        servings=f"{number(recipe.servings, 2)} {'serving' if recipe.servings == 1 else 'servings'}",
        serving_is=recipe.serving_is,
        allergens=contents.allergens,
        no_allergens=NO_ALLERGENS,
        parts=by_part(contents.lines),
        unread=contents.unread,
        steps=contents.steps,
        serving=[number_row(line) for line in contents.serving],
        others=_others(contents),
        label=contents.label if label else "",
        picture=Markup(energy_picture(contents.numbers.energy_shares, distribution_ranges())),
        containers=contents.containers,
        to_buy=contents.to_buy,
        points=contents.points,
        questions=contents.questions,
        keeping=contents.keeping,
        cautions=contents.cautions,
        sources=contents.sources,
    )


def number_row(line: Line) -> dict[str, str]:
    """Return a nutrient of a serving as a row of a table: its id, name, value, range and share of a day in words."""
    return {
        "nutrient": line.nutrient,
        "name": line.name,
        "value": f"{line.bound}{number(line.value, line.decimals)} {line.unit}",
        "range": span(line.low, line.high),
        "day": percent(line.day) if line.day == line.day else "",
    }


def _others(contents: Contents) -> str:
    """Return the other nutrients in one sentence, each with its share of a day."""
    told = [
        f"{nutrient(line.nutrient).short_name} {line.bound}{number(line.value, line.decimals)} {line.unit}"
        f" ({percent(line.day)})"
        for line in contents.other_nutrients
    ]
    return f"{'; '.join(told)}. In brackets the share of a day." if told else ""

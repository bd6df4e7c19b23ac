"""The page that is sent: one file whose sliders still compute, with no Python, no server and no network behind it."""

import base64
import hashlib
import json
from collections.abc import Callable
from typing import Any

from markupsafe import Markup
from plotly.offline import get_plotlyjs

from kit.food.nutrients import nutrient
from kit.meal.certainty import spoken_parts, spoken_parts_per_serving
from kit.rules.allergens import allergen_sentence, check_the_package
from kit.rules.protein import least_score, protein_share
from kit.rules.serving import serving_lines
from kit.share.contents import Contents, by_part
from kit.share.handout import NO_ALLERGENS, number_row
from kit.share.javascript.program import Program
from kit.share.page_data import NUTRIENTS, page_data
from kit.share.pages import WEB, filled, sheet
from kit.show import charts, look, triangle
from kit.show.stage import difference
from kit.show.views import READ_ALOUD
from kit.texts import number, percent, span

TRANSLATED: dict[str, Callable[..., Any]] = {
    **{"energy_shares": charts.energy_shares, "balance": triangle.balance, "sources": charts.sources},
    **{
        "share_of_day": charts.share_of_day,
        "difference": difference,
        "spoken_parts": spoken_parts,
        "colour": charts.source_colour,
    },
    **{"number": number, "percent": percent, "span": span, "allergen_sentence": allergen_sentence},
    **{"check_the_package": check_the_package, "least_score": least_score, "protein_share": protein_share},
}
_BEGIN = """
const data = JSON.parse(document.getElementById("talk-data").textContent);
window.talkPage = begin(document.body, python, data, window.Plotly);
"""


def page(contents: Contents) -> str:
    """Return the page of a talk as one HTML file: recipe, sliders, charts, numbers, cautions and sources.

    Parameters
    ----------
    contents : Contents
        What it says; its dish is the page's recipe as written.
    """
    recipe = contents.numbers.recipe
    plotly = get_plotlyjs()
    scripts = {"plotly": plotly, "program": _program()}
    said = spoken_parts_per_serving(contents.numbers)
    return filled(
        "page.html.j2",
        policy=_policy(list(scripts.values())),
        style=Markup(look.style("stage") + sheet("page.css")),
        title=contents.title,
        series=contents.talk.series,
        servings=number(recipe.servings, 2),
        serving_is=recipe.serving_is,
        allergens=contents.allergens,
        no_allergens=NO_ALLERGENS,
        read_out=[(nutrient(name).short_name, *said[name][1:]) for name in READ_ALOUD],
        parts=by_part(contents.lines),
        unread=contents.unread,
        serving=[number_row(line) for line in serving_lines(contents.numbers, NUTRIENTS, contents.talk.rules)],
        points=contents.points,
        questions=contents.questions,
        keeping=contents.keeping,
        cautions=contents.cautions,
        sources=contents.sources,
        data=Markup(_in_script(json.dumps(page_data(contents), ensure_ascii=True, allow_nan=False))),
        **{name: Markup(text) for name, text in scripts.items()},
    )


def _program() -> str:
    """Return the page's own script: Python's functions in a place of their own, the stage, what fills the page in."""
    program = Program()
    names = {name: program.add(function) for name, function in TRANSLATED.items()}
    given = ", ".join(["plain", *(f"{name}: {called}" for name, called in names.items())])
    python = f"const python = (() => {{\n{program.text()}\nreturn {{ {given} }};\n}})();"
    return "\n".join([python, look.script("page", WEB), _BEGIN])


def _policy(scripts: list[str]) -> str:
    """Return a policy under which nothing is fetched, and no script runs but these."""
    digests = (base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts)
    allowed = " ".join(f"'sha256-{digest}'" for digest in digests)
    styles = "style-src 'unsafe-inline'; font-src data:; img-src data: blob:"
    return f"default-src 'none'; script-src {allowed}; {styles}; base-uri 'none'; form-action 'none'"


def _in_script(text: str) -> str:
    """Return JSON as it may stand in a script element, whatever it holds."""
    return text.replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")

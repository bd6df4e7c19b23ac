"""Two panels with the same sliders and the same charts: one on the stage, one of plotly's own widgets.

The numbers are invented, and every chart changes with every move.
"""

import ipywidgets as widgets
import numpy as np
import plotly.graph_objects as go

from kit.meal.nutrition import nutrition
from kit.show import charts, triangle, views
from kit.show.escaping import in_html
from kit.show.panels import on_screen
from kit.show.setting import Setting
from kit.show.stage import ReadOut, Stage
from kit.speech.points import check_points
from kit.talk.library import read_talk
from kit.texts import quantity

NAMES = [
    *("Lentils, brown, dry", "Sweet potatoes", "Red onions", "Olive oil", "Feta cheese", "Spinach, raw"),
    *("Tomatoes, canned", "Garlic", "Lemon juice", "Cumin, ground", "Salt", "Pumpkin seeds"),
]
RANGES = {"protein": (0.10, 0.35), "fat": (0.20, 0.35), "carbohydrate": (0.45, 0.65)}
# Grams of protein, fat and carbohydrate that one step of an ingredient's slider brings to a serving.
MACROS = np.array(
    [
        *([0.92, 0.04, 2.1], [0.2, 0.01, 2.5], [0.06, 0, 0.5], [0.01, 1.1, 0.01], [0.36, 0.55, 0.1]),
        *([0.14, 0.02, 0.18], [0.1, 0.03, 0.45], [0.06, 0, 0.33], [0.01, 0.01, 0.2], [0.09, 0.11, 0.22]),
        *([0.01, 0.01, 0.01], [0.27, 0.44, 0.1]),
    ]
)
DAY = (
    "Fiber",
    "Iron",
    "Calcium",
    "Potassium",
    "Vitamin C",
    "Folate",
    "Vitamin A",
    "Sodium",
    "Saturated fat",
    "Cholesterol",
)
LIMIT = {"Sodium", "Saturated fat", "Cholesterol"}
PER_DAY = np.abs(np.sin(np.arange(120.0).reshape(12, 10))) * 0.008 + 0.002
WRITTEN = np.full(12, 6.0)


def numbers(steps):
    """Return energy shares, protein by ingredient, shares of the day and energy of a serving."""
    grams = np.asarray(steps)[:, None] * MACROS
    energy = grams.sum(axis=0) * (4, 9, 4)
    shares = energy / energy.sum() if energy.sum() else energy * np.nan
    return (
        dict(zip(RANGES, shares, strict=True)),
        list(grams[:, 0]),
        dict(zip(DAY, steps @ PER_DAY, strict=True)),
        energy,
    )


def builders(steps):
    """Return the four charts, unbuilt, by name."""
    (now, protein, day, _), (was, was_protein, was_day, _) = numbers(steps), numbers(WRITTEN)
    colour = charts.COLOURS["protein"]
    return {
        "shares": (charts.energy_shares, (now, RANGES, was)),
        "balance": (triangle.balance, (now, RANGES, was)),
        "sources": (charts.sources, (NAMES, protein, "Protein", "g", was_protein, 1, colour)),
        "day": (charts.share_of_day, (day, LIMIT, was_day, {"Vitamin A"})),
    }


def drawings(steps):
    return {name: build.drawing(*given) for name, (build, given) in builders(steps).items()}


def figures(steps):
    return {name: build(*given) for name, (build, given) in builders(steps).items()}


def read_out(steps):
    _, protein, day, energy = numbers(steps)
    now, was = quantity(energy.sum(), "kcal"), quantity(numbers(WRITTEN)[3].sum(), "kcal")
    return [
        ReadOut("Energy", now, "" if now == was else was),
        ReadOut("Protein", quantity(sum(protein), "g", 1)),
        ReadOut("Fiber", quantity(28 * day["Fiber"], "g", 1)),
        ReadOut("Sodium", quantity(2300 * day["Sodium"], "mg")),
    ]


def sliders():
    labels = [(f"{step / 4:g} cups", step) for step in range(25)]
    return [
        widgets.SelectionSlider(options=labels, value=6, description=name)
        if place % 2
        else widgets.IntSlider(value=6, min=0, max=24, description=name)
        for place, name in enumerate(NAMES)
    ]


def side_by_side(controls, shown):
    return widgets.HBox([widgets.VBox(controls, layout={"width": "420px"}), shown])


def steps_of(controls):
    return np.array([slider.value for slider in controls], dtype=float)


def stage_panel():
    controls = sliders()
    first = drawings(WRITTEN)
    stage = Stage([{name: first[name] for name in names} for names in (("shares", "balance"), ("sources", "day"))])
    stage.show(read_out=read_out(WRITTEN))

    def move(_change):
        steps = steps_of(controls)
        stage.show(drawings(steps), read_out(steps))

    def reset(_button):
        for slider in controls:
            slider.value = 6

    for slider in controls:
        slider.observe(move, names="value")
    button = widgets.Button(description="Back to the recipe as written")
    button.on_click(reset)
    return side_by_side([*controls, button], stage)


def plain_panel():
    controls = sliders()
    shown = {name: go.FigureWidget(figure) for name, figure in figures(WRITTEN).items()}
    for name, widget in shown.items():
        widget.update_layout(width=680, height=drawings(WRITTEN)[name]["layout"]["height"])

    def move(_change):
        for name, drawing in drawings(steps_of(controls)).items():
            with shown[name].batch_update():  # one message a figure, plotly's best case
                for trace, new in zip(shown[name].data, drawing["data"], strict=True):
                    for key in ("x", "y", "text"):
                        if key in new:
                            trace[key] = new[key]

    for slider in controls:
        slider.observe(move, names="value")
    rows = [widgets.HBox([shown[name] for name in pair]) for pair in (("shares", "sources"), ("balance", "day"))]
    return side_by_side(controls, widgets.VBox(rows))


def sentences(verdicts):
    return "".join(f"<p>{in_html(one.verdict)}: {in_html(one.say)} {in_html(one.because)}</p>" for one in verdicts)


def plain_talk_panel():
    """Make the talk's panel of plotly's own widgets: four charts, and the script checked at every move."""
    talk = read_talk("barley_squash_box")
    written = nutrition(talk.recipe)
    setting = Setting(talk)
    shown = {name: go.FigureWidget(figure) for name, figure in views.drawings(written, written).items()}
    for name, widget in shown.items():
        widget.update_layout(width=680, height=views.drawing(name, written, written)["layout"]["height"])
    said = widgets.HTML(sentences(check_points(talk)))
    said.add_class("talk-script")
    controls = []

    def move(_change):
        now = nutrition(talk.recipe.with_grams([slider.value for slider in controls]))
        for name, drawing in views.drawings(now, written).items():
            with shown[name].batch_update():
                for trace, new in zip(shown[name].data, drawing["data"], strict=True):
                    for key in ("x", "y", "text"):
                        if key in new:
                            trace[key] = new[key]
        said.value = sentences(check_points(talk, now))

    for at, part in enumerate(talk.recipe.ingredients):
        steps, place = setting.amounts(at)
        options = [(step.label, step.grams) for step in steps]
        slider = widgets.SelectionSlider(options=options, index=place, description=part.food.name)
        slider.observe(move, names="value")
        controls.append(slider)
    rows = [widgets.HBox([shown[name] for name in pair]) for pair in (("shares", "sources"), ("balance", "day"))]
    return widgets.VBox([side_by_side(controls, widgets.VBox(rows)), said])


def desk_talk_panel():
    """Make her window for the same talk, the first chart shown."""
    desk = on_screen("barley_squash_box")
    desk.shown = "shares"
    desk.content = desk._content()
    return desk

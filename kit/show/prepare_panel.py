"""The working place of notebook 1: paste a recipe, settle its lines, see what a serving holds, save it as a talk."""

from collections.abc import Callable
from pathlib import Path

import ipywidgets as widgets

from kit.errors import KitError
from kit.food.finding import find
from kit.food.labels.label import Label
from kit.food.labels.own_foods import keep
from kit.lines.reading import Reading
from kit.meal.nutrition import nutrition
from kit.show.escaping import in_html
from kit.show.look import style
from kit.show.tables import checks_table, serving_table
from kit.talk.desk import Desk, empty_desk
from kit.talk.desk_file import open_desk, save
from kit.talk.last_used import last_used
from kit.talk.library import own_path, talks
from kit.texts import number, quantity, span

LABEL_LINES = ("energy", "fat", "saturated_fat", "cholesterol", "sodium", "carbohydrate", "fiber", "sugars", "protein")
_WIDE = widgets.Layout(width="100%")
_WHOLE_WORDS = {"description_width": "initial"}


def prepare(talk: str | Path | None = None) -> widgets.VBox:
    """Return the working place.

    Parameters
    ----------
    talk : str or pathlib.Path, optional
        The talk or recipe to begin with; the one last used by default.
    """
    return _Place(open_desk(talk or last_used().path)).box


class _Place:
    """The widgets of the working place and the desk they show; every change makes a new desk."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self.text = widgets.Textarea(desk.recipe, layout=widgets.Layout(width="100%", height="330px"))
        listed = [("", ""), *((entry.title, str(entry.path)) for entry in talks())]
        self.bundled = widgets.Dropdown(options=listed, value="", description="Begin with", style=_WHOLE_WORDS)
        self.read_button = widgets.Button(description="Read this recipe", button_style="primary", icon="")
        self.lines = widgets.VBox(layout=_WIDE)
        self.numbers = widgets.HTML()
        self.name = widgets.Text(placeholder="my_talk", description="Save as", layout=widgets.Layout(width="420px"))
        self.replace = widgets.Checkbox(False, description="replace a file of that name", indent=False)
        self.save_button = widgets.Button(description="Save as a talk")
        self.message = widgets.HTML()
        self.read_button.on_click(lambda _button: self._try(self._read))
        self.save_button.on_click(lambda _button: self._try(self._save))
        self.bundled.observe(lambda change: self._try(lambda: self._begin(change.new)) if change.new else None, "value")
        save = widgets.HBox([self.name, self.replace, self.save_button])
        self.box = widgets.VBox(
            [
                widgets.HTML(f"<style>{style('prepare')}</style><h2>The recipe</h2>"),
                widgets.HBox([self.bundled, self.read_button]),
                self.text,
                self.message,
                widgets.HTML("<h2>How each line was read</h2>"),
                self.lines,
                self.numbers,
                widgets.HTML("<h2>Save it</h2>"),
                save,
                _label_form(self._show),
            ],
            layout=_WIDE,
        )
        self.box.add_class("talk-kit-place")
        self._show()

    def _try(self, action: Callable[[], None]) -> None:
        """Do something the user asked for; what is wrong with it is told in the panel."""
        self.message.value = ""
        try:
            action()
        except KitError as fault:
            self._say(str(fault), wrong=True)

    def _say(self, text: str, *, wrong: bool = False) -> None:
        lines = "<br>".join(map(in_html, text.splitlines()))
        mark = "Please mend: " if wrong else ""
        self.message.value = f'<p role="status" style="font-size:18px"><b>{mark}</b>{lines}</p>'

    def _begin(self, path: str) -> None:
        self.desk = open_desk(path)
        self.text.value = self.desk.recipe
        self._show()

    def _read(self) -> None:
        """Read the text: the recipe of this talk as it is now, or a new talk when no line of it is the same."""
        changed = self.desk.with_pasted(self.text.value)
        same = any(line.old is not None for line in changed.reading.ingredients)
        self._set(changed if same else empty_desk(text=self.text.value))

    def _save(self) -> None:
        name = self.name.value.strip()
        self.desk = save(self.desk, own_path(name) if name else None, over=self.replace.value)
        self._say(f"Saved as {self.desk.path}.")

    def _set(self, desk: Desk) -> None:
        self.desk = desk
        self._show()
        if desk.reading.talk.faults:
            self._say("\n".join(desk.reading.talk.faults), wrong=True)

    def _show(self) -> None:
        """Show the desk: a row for each food of each line, then the numbers."""
        self.lines.children = tuple(
            self._row(at, which, reading)
            for at, line in enumerate(self.desk.reading.ingredients)
            for which, reading in enumerate(line.readings)
        )
        recipe = self.desk.reading.talk.recipe
        if not recipe.ingredients:
            self.numbers.value = "<p>No line can be read yet; write one ingredient a line.</p>"
            return
        numbers = nutrition(recipe)
        failed = checks_table(numbers)
        count = len(recipe.open_lines)
        waiting = f"<p>{count} line(s) still to be settled: every number is at least.</p>" if count else ""
        faults = "<p>All checks hold.</p>" if failed.index.empty else failed.to_html()
        weight = quantity(numbers.serving_grams, "g")
        title = f"<h2>One of {number(recipe.servings, 2)}: {weight} of {in_html(recipe.title)}</h2>"
        table = serving_table(numbers).to_html()
        self.numbers.value = f"{title}{waiting}{table}<h2>Checks that failed</h2>{faults}"

    def _row(self, at: int, which: int, reading: Reading) -> widgets.HBox:
        said = in_html(reading.line) + (f"<br><small>{in_html(reading.how)}</small>" if reading.how else "")
        asked = f"<br><b>? {in_html(reading.problem)}</b>" if reading.problem else ""
        line = widgets.HTML(said + asked, layout=widgets.Layout(width="52%"))
        options = [(f"{reading.food_name}", reading.key)] if reading.food else [("choose a food", "")]
        near = reading.choices or (find(reading.food_name, 6) if reading.food else ())
        options += [(match.name, match.food) for match in near if match.food != reading.key]
        food = widgets.Dropdown(options=options, value=options[0][1], layout=widgets.Layout(width="28%"))
        food.observe(lambda change: self._try(lambda: self._set(self.desk.choose(at, change.new, which))), "value")
        grams = widgets.FloatText(round(reading.grams or 0.0, 1), layout=widgets.Layout(width="110px"), step=1)
        grams.observe(lambda change: self._try(lambda: self._set(self.desk.correct(at, change.new, which))), "value")
        between = "" if reading.low is None or reading.high is None else f"g ({span(reading.low, reading.high)})"
        return widgets.HBox([line, food, grams, widgets.Label(between)], layout=_WIDE)


def _label_form(after: Callable[[], None]) -> widgets.Accordion:
    """Return a small form that keeps a food from its package label in the user's own table."""
    name, serving = widgets.Text(description="Food"), widgets.Text(description="Serving", placeholder="2/3 cup (55 g)")
    fields = {
        key: widgets.Text(
            description=key.replace("_", " "), placeholder="as printed", style={"description_width": "120px"}
        )
        for key in LABEL_LINES
    }
    button, message = widgets.Button(description="Keep this food"), widgets.HTML()

    def store(_button: widgets.Button) -> None:
        amounts = {key: field.value.strip() for key, field in fields.items() if field.value.strip()}
        try:
            food = keep(Label(name.value.strip(), serving.value.strip(), amounts))
        except KitError as fault:
            message.value = "<br>".join(map(in_html, str(fault).splitlines()))
            return
        message.value = f'Kept as "{in_html(food.key)}"; write "{in_html(food.name)}" in a recipe.'
        after()

    button.on_click(store)
    grid = widgets.GridBox([*fields.values()], layout=widgets.Layout(grid_template_columns="repeat(3, 320px)"))
    form = widgets.VBox([widgets.HBox([name, serving]), grid, button, message])
    return widgets.Accordion([form], titles=("A food from its package label",))

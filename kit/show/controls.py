"""Sliders and choosers that change a dish on screen; what follows them is told of every change. No arithmetic here."""

from collections.abc import Callable
from contextlib import contextmanager
from dataclasses import replace
from itertools import groupby
from typing import Any

import ipywidgets as widgets

from kit.food.finding import food as food_named
from kit.food.measures import SYSTEMS
from kit.meal.nutrition import nutrition
from kit.meal.portions import MAKE_MORE, SHARE_OUT
from kit.meal.scenario import Scenario, as_written
from kit.rules.cautions import allergens
from kit.show.escaping import in_html
from kit.show.look import style
from kit.show.marks import shorten
from kit.talk.library import bundled_talks, read_talk
from kit.talk.talk import Talk
from kit.texts import listing, number, quantity

_MOST_SERVINGS = 24  # the servings slider goes to this, or to four times the recipe's
_HINTS = {
    MAKE_MORE: "Every amount is scaled; a serving stays the same.",
    SHARE_OUT: "The same pot, shared out differently; a serving changes.",
}
_MEASURES = {"us": "Cups and ounces", "metric": "Grams and milliliters"}


class Controls:
    """The widgets and the scenario they show; a moved slider makes a new scenario, and the followers are told.

    Attributes
    ----------
    box : ipywidgets.VBox
        The column of controls.
    scenario : Scenario
        What is set.
    now, written : Nutrition
        The dish as it is set, and as written.
    sliders : list of ipywidgets.SelectionSlider
        One for each ingredient, in the recipe's order.
    foods : dict of int to ipywidgets.Dropdown
        The food in an ingredient's place, where the talk names others.
    followers : list of callable
        Called without arguments whenever something is set.
    """

    def __init__(self, talk: Talk) -> None:
        self._quiet = False
        self.followers: list[Callable[[], None]] = []
        self._talks = {name: read_talk(name) for name in bundled_talks()} | {talk.name: talk}
        # Given once: a page that is told its choices anew while it chooses may end with none.
        self.talk_choice = widgets.Dropdown(
            options=sorted((known.title, name) for name, known in self._talks.items()),
            value=talk.name,
            tooltip="Talk",
            layout=widgets.Layout(flex="1 1 240px"),
        )
        self.measures = widgets.Dropdown(
            options=[(_MEASURES[system], system) for system in SYSTEMS],
            tooltip="Measures",
            layout=widgets.Layout(flex="1 1 180px"),
        )
        self.meaning = widgets.ToggleButtons(options=[("Make more", MAKE_MORE), ("Share out differently", SHARE_OUT)])
        self.servings = widgets.SelectionSlider(options=[("1", 1.0)], description="Servings")
        self.reset = widgets.Button(description="Back to the recipe as written", icon="")
        self.heading, self.hint = widgets.HTML(), widgets.HTML()
        self.sliders: list[widgets.SelectionSlider] = []
        self.foods: dict[int, widgets.Dropdown] = {}
        self._ingredients = widgets.VBox()
        self._take(talk)
        self._listen()
        choices = row(self.talk_choice, self.measures, name="talk-choices")
        self.last_row = row(self.reset, name="talk-choices")
        above = (self.heading, choices, self.servings, self.meaning, self.hint)
        self.box = widgets.VBox([_style(), *above, self._ingredients, self.last_row])
        self.box.add_class("talk-controls")

    def _listen(self) -> None:
        def change(widget: widgets.Widget, take: Callable[[Any], None]) -> None:
            widget.observe(lambda event: None if self._quiet else take(event.new), "value")

        change(self.talk_choice, self._choose_talk)
        change(self.measures, lambda system: self._set(replace(self.scenario, system=system), rename=True))
        change(self.meaning, lambda meaning: self._set(replace(self.scenario, meaning=meaning), rename=True))
        change(self.servings, lambda servings: self._set(replace(self.scenario, servings=servings), rename=True))
        self.reset.on_click(lambda _button: self._go_back())

    def _take(self, talk: Talk) -> None:
        """Take a talk: its recipe as written, and sliders for it."""
        self.talk, self.scenario = talk, as_written(talk.recipe, talk.measures)
        self.now = self.written = nutrition(talk.recipe)
        serving = f"{in_html(talk.recipe.serving_is)}, {quantity(self.written.serving_grams, 'g')} as written"
        brings = listing([found.name for found in allergens(talk.recipe, talk.rules)]) or "none of the major allergens"
        self.heading.value = (
            f'<h2 class="talk-title">{in_html(talk.title)}</h2><p>Serving: {serving}</p><p>Contains {brings}</p>'
        )
        counts = {float(count) for count in range(1, max(_MOST_SERVINGS, round(4 * talk.recipe.servings)) + 1)}
        with self._quietly():
            self.talk_choice.value = talk.name
            self.measures.value = talk.measures
            offered = sorted(counts | {talk.recipe.servings})
            _offer(
                self.servings,
                [(number(count, 2), count) for count in offered],
                offered.index(talk.recipe.servings),
            )
            self._build_sliders()
        self._name_amounts()

    def _build_sliders(self) -> None:
        ingredients = list(enumerate(self.talk.recipe.ingredients))
        rows: dict[int, widgets.Widget] = {}
        self.sliders, self.foods = [], {}
        for at, ingredient in ingredients:
            steps = self.scenario.steps(at)
            slider = widgets.SelectionSlider(
                options=[(step.label, step.grams) for step in steps],
                index=self.scenario.place(at, steps),
                tooltip=ingredient.line,
            )
            slider.observe(lambda event, at=at: self._move(at, event.new), "value")
            self.sliders.append(slider)
            others = [food_named(key) for key in ingredient.swaps]
            if others:
                options = [(shorten(food.name), food.key) for food in (ingredient.food, *others)]
                self.foods[at] = widgets.Dropdown(options=options, tooltip=f"in place of {ingredient.line}")
                self.foods[at].observe(lambda event, at=at: self._swap(at, event.new), "value")
                self.foods[at].add_class("talk-food")
            else:
                slider.description = shorten(ingredient.food.name)
            rows[at] = row(self.foods[at], slider) if others else slider
        parts = groupby(sorted(ingredients, key=self._part_order), key=lambda pair: pair[1].part)
        children: list[widgets.Widget] = []
        for part, members in parts:
            children += [widgets.HTML(f"<h3>{in_html(part.capitalize())}</h3>")] if part else []
            children += [rows[at] for at, _ in members]
        self._ingredients.children = children

    def _part_order(self, pair: tuple[int, Any]) -> int:
        parts = [ingredient.part for ingredient in self.talk.recipe.ingredients]
        return parts.index(pair[1].part)

    def _move(self, at: int, grams: float) -> None:
        if not self._quiet:
            self._set(self.scenario.with_amount(at, grams))

    def _swap(self, at: int, key: str) -> None:
        if not self._quiet:
            self._set(self.scenario.with_food(at, food_named(key)), rename=True)

    def _choose_talk(self, name: str) -> None:
        self._take(self._talks[name])
        self._show()

    def _go_back(self) -> None:
        self._set(as_written(self.talk.recipe, self.scenario.system), rename=True)

    def _set(self, scenario: Scenario, rename: bool = False) -> None:
        self.scenario = scenario
        self.now = nutrition(scenario.recipe)
        if rename:
            self._name_amounts()
        self._show()

    def _show(self) -> None:
        for follow in self.followers:
            follow()

    def _name_amounts(self) -> None:
        """Put every control where the scenario is, with the amounts named for its servings and measures."""
        with self._quietly():
            self.servings.value = self.scenario.servings
            self.meaning.value = self.scenario.meaning
            self.measures.value = self.scenario.system
            self.hint.value = f"<p>{_HINTS[self.scenario.meaning]}</p>"
            for at, slider in enumerate(self.sliders):
                steps = self.scenario.steps(at)
                _offer(slider, [(step.label, step.grams) for step in steps], self.scenario.place(at, steps))
            for at, choice in self.foods.items():
                choice.value = self.scenario.base.ingredients[at].food.key

    @contextmanager
    def _quietly(self):
        """Set controls without taking that for the user's doing."""
        before, self._quiet = self._quiet, True
        try:
            yield
        finally:
            self._quiet = before


def _offer(slider: widgets.SelectionSlider, options: list[tuple[str, float]], place: int) -> None:
    """Give a slider other options and a place among them."""
    if tuple(options) != slider.options:
        slider.index = 0  # a place beyond the new options the page would cut down, and send back as if moved there
        slider.options = options
    slider.index = place


def row(*parts: widgets.Widget, name: str = "talk-ingredient") -> widgets.HBox:
    """Return widgets side by side, in the look of the controls."""
    beside = widgets.HBox(parts)
    beside.add_class("talk-row")
    beside.add_class(name)
    return beside


def beside(controls: Controls, follower: widgets.Widget) -> widgets.Box:
    """Return the controls with what follows them at their side, or below them where the screen is narrow."""
    follower.add_class("talk-beside")
    box = widgets.Box([controls.box, follower])
    box.add_class("talk-panel")
    return box


def _style() -> widgets.HTML:
    return widgets.HTML(f"<style>{style('panel')}</style>")

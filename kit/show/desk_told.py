"""What the page of her window is told: the setting with all that follows from it, as plain values."""

from collections.abc import Mapping
from typing import Any

from kit.food.nutrients import nutrient
from kit.meal.changes import change
from kit.meal.eaten import eaten_grams
from kit.meal.recipe import Recipe
from kit.show import desk_content
from kit.show.before_after import asked_for, change_scene, done
from kit.show.scenes import NAMES, Scene, Shown, frame, scene
from kit.show.setting import Made, Setting
from kit.show.views import READ_ALOUD, SOURCES_OF
from kit.speech.points import check_points
from kit.speech.verdict import Verdict
from kit.talk.plan import plan
from kit.texts import quantity

NUMBERS_OF = (*READ_ALOUD, "fat", "saturated_fat", "carbohydrate", "sugars", "potassium", "calcium", "iron")
FIRST = "numbers"


class Told:
    """A setting, what of it is shown, and all of that as the page is told."""

    _talks: Mapping[str, str]

    def _begin(self, setting: Setting) -> None:
        """Take a talk as it is set, and show the first scene."""
        self.setting, self.shown = setting, FIRST
        self.numbers: tuple[str, ...] = READ_ALOUD
        self.source_of, self.asked = "protein", ("", "")
        self._asked_of: Made | None = None  # the change that was asked for; None for a question that changes nothing
        self.compared: Scene | None = None
        self._as_written = check_points(setting.talk)
        self.verdicts: tuple[Verdict, ...] = check_points(setting.talk, setting.now)
        self._checked = setting  # whose sentences the verdicts are of
        self._rows = desk_content.Rows()

    # ---- what the page is told

    def _content(self) -> dict[str, Any]:
        """Return everything that the page shows."""
        talk = self.setting.talk
        weight = quantity(round(eaten_grams(talk.recipe).value / talk.recipe.servings, -1), "g")
        return {
            **self._parts(),
            **self._script(),
            "names": list(NAMES.items()),
            "talks": sorted(self._talks.items(), key=lambda pair: pair[1]),
            "talk": talk.name,
            "measures": list(desk_content.MEASURES.items()),
            "questions": [{"asks": q.asks, "tries": q.try_, "answer": q.answer} for q in talk.questions],
            "plan": desk_content.plan_rows(plan(talk)),
            "numbers_of": [(name, nutrient(name).short_name) for name in NUMBERS_OF],
            "sources_of": [(name, nutrient(name).short_name) for name in SOURCES_OF],
            "serving": f"{talk.recipe.serving_is}, about {weight} as eaten",
        }

    def _script(self) -> dict[str, Any]:
        """Return the sentences with their verdicts."""
        return {
            "script": desk_content.script(self.verdicts),
            "turned": desk_content.points_changed(self._as_written, self.verdicts),
        }

    def _parts(self) -> dict[str, Any]:
        """Return what a change of the setting may change."""
        setting = self.setting
        return {
            "frame": frame(setting.talk, setting.now),
            "shown": self.shown,
            "scenes": {self.shown: self._scene(self.shown)},
            "rows": self._rows.of(setting),
            "servings": desk_content.servings(setting),
            "system": setting.system,
            "made": [made.words for made in setting.made],
            "allergens": desk_content.allergens_changed(setting),
            "numbers": list(self.numbers),
            "source_of": self.source_of,
            "kept": self._kept(),
        }

    def _scene(self, name: str) -> dict[str, Any]:
        setting = self.setting
        if name == "compare" and self.compared:
            return self.compared
        if name == "change":
            before, asks, answer, did = self._before()
            first = asked_for(self._asked_of.words) if self._asked_of else ()
            return change_scene(change(before, setting.recipe), asks, answer, did, first)
        because = setting.made[-1].words if setting.made else ""
        shown = Shown(self.numbers, self.source_of, setting.system, because)
        return scene(name, setting.talk, setting.now, setting.written, shown)

    def _before(self) -> tuple[Recipe, str, str, str]:
        """Return the dish before the change that is shown, what was asked, the answer, and what was done."""
        setting, (asks, answer) = self.setting, self.asked
        if asks and self._asked_of is None:
            return setting.recipe, f"“{asks}”", answer, ""
        if asks and self._asked_of in setting.made:
            without = setting.undone(setting.made.index(self._asked_of))
            return without.recipe, f"“{asks}”", answer, done(without.pot, self._asked_of.steps, setting.system)
        words = "; ".join(made.words for made in setting.made)
        asks = f"What changed: {words}" if words else "Nothing is changed: this is the recipe as written."
        return setting.written.recipe, asks, "", ""

    def _kept(self) -> dict[str, Any]:
        """Return what brings everything back after a reload."""
        chosen = {"shown": self.shown, "numbers": list(self.numbers), "source_of": self.source_of, "asked": self.asked}
        return {**self.setting.as_json(), **chosen}

"""What she does with the controls of the dish: each message of ``sliders.js`` makes a new setting."""

from typing import Any

from kit.show.setting import Setting


class Moves:
    """A setting that the controls of a page change.

    Attributes
    ----------
    setting : Setting
        What is set.
    """

    setting: Setting

    def _set(self, setting: Setting) -> None:
        setting.now  # noqa: B018 - first: a setting that cannot be worked out changes nothing
        self.setting = setting

    def _do_move(self, message: dict[str, Any]) -> None:
        steps, _ = self.setting.amounts(message["at"])
        place = min(max(int(message["place"]), 0), len(steps) - 1)
        # By its name first: a change that was under way may have given the slider other steps.
        named = [step for step in steps if step.label == message.get("label")]
        self._set(self.setting.with_amount(message["at"], [*named, steps[place]][0]))

    def _do_type(self, message: dict[str, Any]) -> None:
        self._set(self.setting.with_typed(message["at"], message["text"]))

    def _do_swap(self, message: dict[str, Any]) -> None:
        self._set(self.setting.with_food(message["at"], message["food"]))

    def _do_servings(self, message: dict[str, Any]) -> None:
        self._set(self.setting.with_servings(float(message["value"]), message.get("meaning")))

    def _do_measures(self, message: dict[str, Any]) -> None:
        self._set(Setting(self.setting.talk, message["system"], self.setting.made))

    def _do_undo(self, message: dict[str, Any]) -> None:
        words = [made.words for made in self.setting.made]
        place = message.get("place", len(words) - 1)
        named = message.get("words")
        if named in words and words[place : place + 1] != [named]:  # another change was taken back meanwhile
            place = words.index(named)
        if 0 <= place < len(words) and named in (None, words[place]):
            self._set(self.setting.undone(place))

    def _do_as_written(self, _message: dict[str, Any]) -> None:
        self._set(self.setting.as_written())

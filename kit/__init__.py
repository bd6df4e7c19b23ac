"""The Nutrition Talk Kit: a recipe in kitchen measures, as numbers that may be said aloud.

The names a notebook needs; each is loaded when it is first used, so that the numbers never wait for the charts.
"""

from importlib import import_module
from typing import Any

_HOMES = {
    "check_points": "kit.speech.points",
    "checks_table": "kit.show.tables",
    "follow_up_panel": "kit.share.panels",
    "lines_table": "kit.show.tables",
    "nutrition": "kit.meal.nutrition",
    "on_screen": "kit.show.panels",
    "prepare": "kit.show.writing",
    "read_recipe": "kit.lines.recipe_text",
    "read_talk": "kit.talk.library",
    "rehearse": "kit.show.rehearse",
    "serving_table": "kit.show.tables",
    "survey_panel": "kit.share.panels",
    "weights_table": "kit.show.tables",
}

__all__ = sorted(_HOMES)


def __getattr__(name: str) -> Any:
    if name not in _HOMES:
        raise AttributeError(f"kit has no name {name!r}; it has {', '.join(__all__)}")
    return getattr(import_module(_HOMES[name]), name)


def __dir__() -> list[str]:
    return __all__

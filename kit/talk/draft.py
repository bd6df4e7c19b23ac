"""A talk in preparation: a pasted recipe whose lines are being settled, until it is saved as a talk file."""

from dataclasses import dataclass, replace
from pathlib import Path

import tomlkit

from kit import files
from kit.errors import AmountError, LineError
from kit.lines.reader import read
from kit.lines.reading import Reading
from kit.lines.recipe_text import read_recipe
from kit.meal.recipe import MOST_GRAMS, Recipe, ingredient_from
from kit.talk.talk import Talk


@dataclass(frozen=True)
class Draft:
    """A recipe in preparation.

    Attributes
    ----------
    title, servings, serving_is
        As the text says, or to be filled in.
    readings : tuple of Reading
        How each line is read now.
    settled : frozenset of int
        Places of the lines whose food or grams she has chosen herself; only these are pinned in the talk file.
    """

    title: str
    servings: float
    serving_is: str
    readings: tuple[Reading, ...]
    settled: frozenset[int] = frozenset()

    def choose(self, place: int, food: str) -> "Draft":
        """Return the draft with another food for one line; its amount is read anew for that food.

        Raises
        ------
        UnknownNameError
            If there is no such food.
        """
        old = self.readings[place]
        return self._with(place, read(old.line, food=food, part=old.part))

    def correct(self, place: int, grams: float) -> "Draft":
        """Return the draft with the grams of one line as she weighed them.

        Raises
        ------
        AmountError
            If the grams make no sense.
        """
        if not 0 <= grams <= MOST_GRAMS:
            raise AmountError(
                f'"{self.readings[place].line}" is {grams:g} g; give 0 g or more, at most {MOST_GRAMS:,.0f} g'
            )
        return self._with(place, self.readings[place].weighed(grams, f"{grams:g} g, corrected by hand"))

    def _with(self, place: int, reading: Reading) -> "Draft":
        readings = (*self.readings[:place], reading, *self.readings[place + 1 :])
        return replace(self, readings=readings, settled=self.settled | {place})

    @property
    def open(self) -> tuple[int, ...]:
        """Places of the lines that have no food or no amount yet."""
        return tuple(at for at, reading in enumerate(self.readings) if reading.is_open)

    def recipe(self) -> Recipe:
        """Return the recipe made of the lines that can be read.

        Raises
        ------
        LineError
            If none can.
        """
        ready = [reading for at, reading in enumerate(self.readings) if at not in self.open]
        if not ready:
            raise LineError('no line can be read yet; write one ingredient a line, such as "1 cup lentils, dry"')
        return Recipe(self.title, tuple(map(ingredient_from, ready)), self.servings, self.serving_is)


def draft_from_text(text: str) -> Draft:
    """Start a draft from a pasted recipe.

    Raises
    ------
    AmountError
        If its number of servings makes no sense.
    """
    written = read_recipe(text)
    return Draft(
        written.title or "Untitled recipe", written.servings or 1.0, written.serving_is or "serving", written.readings
    )


def draft_from_talk(talk: Talk) -> Draft:
    """Start a draft from a talk, its foods and grams as they stand there."""
    recipe = talk.recipe
    return Draft(recipe.title, recipe.servings, recipe.serving_is, talk.readings, frozenset(range(len(talk.readings))))


def as_recipe_text(draft: Draft) -> str:
    """Return a draft as the text one would paste."""
    lines = [draft.title, f"Serves {draft.servings:g}"]
    part = ""
    for reading in draft.readings:
        if reading.part != part:
            part = reading.part
            lines.append(f"For the {part}:")
        lines.append(reading.line)
    return "\n".join(lines)


def talk_toml(draft: Draft) -> str:
    """Return a draft as the text of a talk file.

    Raises
    ------
    LineError
        If a line has no food or no amount yet: all of them are named.
    """
    if draft.open:
        faults = (f'"{draft.readings[at].line}": {draft.readings[at].problem}' for at in draft.open)
        raise LineError("\n".join(faults))
    document = tomlkit.document()
    document.add("title", draft.title)
    document.add("servings", draft.servings if draft.servings % 1 else int(draft.servings))
    document.add("serving_is", draft.serving_is)
    entries = tomlkit.aot()
    for at, reading in enumerate(draft.readings):
        entry = tomlkit.table()
        entry.add("line", reading.line)
        if at in draft.settled:
            entry.add("food", reading.key)
            if "corrected by hand" in reading.how:
                entry.add("grams", reading.grams)
        if reading.part:
            entry.add("part", reading.part)
        entries.append(entry)
    document.add("ingredient", entries)
    return tomlkit.dumps(document)


def save_talk(draft: Draft, path: Path, *, replace_existing: bool = False) -> Path:
    """Save a draft as a talk file, whole or not at all.

    Raises
    ------
    LineError
        If a line is still open.
    KitError
        If the file exists and may not be replaced, or cannot be written.
    """
    path = Path(path)
    return files.write_whole(
        path if path.suffix == ".toml" else path.with_suffix(".toml"), talk_toml(draft), replace=replace_existing
    )

"""Where talks are found: those that ship with the kit, and files."""

from dataclasses import replace
from pathlib import Path

from kit import files
from kit.errors import KitError, TalkFileError, UnknownNameError
from kit.lines.recipe_text import read_recipe
from kit.meal.recipe import recipe_from
from kit.talk.talk import Talk
from kit.talk.talk_file import talk_from_toml

LARGEST_FILE = 1_000_000  # bytes


def bundled_talks() -> dict[str, Path]:
    """Return the talks that ship with the kit, by name."""
    return {path.stem: path for path in sorted(files.bundled("data/talks").glob("*.toml"))}


def read_talk(talk: str | Path) -> Talk:
    """Read a talk: a bundled talk's name, a ``.toml`` talk file, or a ``.txt`` recipe.

    Raises
    ------
    UnknownNameError
        If there is neither a bundled talk nor a file of that name.
    TalkFileError
        If the file has faults: all of them, each with the entry and what to write instead.
    """
    path = bundled_talks().get(str(talk), Path(talk))
    if not path.is_file():
        raise UnknownNameError("talk or recipe file", str(talk), bundled_talks())
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise KitError(f"{path.name} has over {LARGEST_FILE:,} bytes; a talk file is a page or two of text")
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise KitError(f"{path.name} is no UTF-8 text; save it as plain text") from None
    except OSError as fault:
        raise KitError(f"{path.name} cannot be read ({fault.strerror})") from fault
    if path.suffix != ".toml":
        return _talk_from_recipe(text, path)
    return talk_from_toml(text, path)


def _talk_from_recipe(text: str, path: Path) -> Talk:
    try:
        written = read_recipe(text)
        recipe = recipe_from(written)
    except KitError as fault:
        raise TalkFileError(path.name, str(fault).splitlines()) from None
    if written.title == "":
        recipe = replace(recipe, title=path.stem.replace("_", " ").replace("-", " "))
    return Talk(path.stem, recipe, written.readings, path=path)

"""The look of every screen, from the files of `web/`: colours by name, the typeface, style sheets and scripts."""

import functools
import re
from base64 import b64encode
from pathlib import Path

WEB = Path(__file__).resolve().parent / "web"
_TOKEN = re.compile(r"--talk-([a-z-]+): (#[0-9a-f]{6});")
_IMPORT = re.compile(r"^import \{[^}]*\} from \"(\.[a-z_./]+\.js)\";\n", re.MULTILINE)


@functools.cache
def colours() -> dict[str, str]:
    """Return the light colours by name.

    Examples
    --------
    >>> colours()["ink"], colours()["protein"]
    ('#1c2023', '#0072b2')
    """
    light = _text("tokens.css").split('[data-talk-look="dark"]')[0]
    return dict(_TOKEN.findall(light))


@functools.cache
def family() -> str:
    """Return the typeface with what stands in for it: "'Figtree', system-ui, ..."."""
    found = re.search(r"--talk-font: ([^;]+);", _text("tokens.css"))
    assert found
    return found[1].replace('"', "'")


@functools.cache
def font_face() -> str:
    """Return the rule that carries the typeface itself, so that every machine shows the same without the network."""
    font = b64encode((WEB / "figtree.woff2").read_bytes()).decode()
    source = f'url("data:font/woff2;base64,{font}") format("woff2")'
    return f'@font-face {{ font-family: "Figtree"; font-weight: 300 900; font-display: block; src: {source}; }}\n'


@functools.cache
def style(*names: str) -> str:
    """Return style sheets of `web/` as one text: the typeface and the tokens, then those named, in their order."""
    return font_face() + "\n".join(_text(f"{name}.css") for name in ("tokens", *names))


@functools.cache
def script(name: str, folder: Path = WEB) -> str:
    """Return a module of a folder with those that it imports before it, as one; no build step beyond this joining."""
    return "\n".join(_IMPORT.sub("", path.read_text(encoding="utf-8")) for path in _with_imports(folder / f"{name}.js"))


def _with_imports(path: Path, before: tuple[Path, ...] = ()) -> tuple[Path, ...]:
    for imported in _IMPORT.findall(path.read_text(encoding="utf-8")):
        before = _with_imports((path.parent / imported).resolve(), before)
    return before if path in before else (*before, path)


def _text(name: str) -> str:
    return (WEB / name).read_text(encoding="utf-8")

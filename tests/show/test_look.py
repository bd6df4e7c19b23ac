import re

import pytest

from kit.share import pages
from kit.show.look import WEB, colours, family, font_face, script, style

TEXTS = ("ink", "soft", "act", "good", "off", "ask")
_DARK = (WEB / "tokens.css").read_text(encoding="utf-8").split('[data-talk-look="dark"]')[1]
DARK = dict(re.findall(r"--talk-([a-z-]+): (#[0-9a-f]{6});", _DARK))


def brightness(colour):
    """Relative luminance, as WCAG 2.2 defines it."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    low, high = sorted(map(brightness, (one, other)))
    return (high + 0.05) / (low + 0.05)


def test_contrast_is_measured_as_the_standard_defines_it():
    assert contrast("#ffffff", "#000000") == pytest.approx(21)  # WCAG 2.2, "contrast ratio": 1 to 21
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)  # the gray known to fail by a hair


@pytest.mark.parametrize("look", ["light", "dark"])
def test_every_text_stands_out_on_everything_it_stands_on(look):
    named = colours() if look == "light" else {**colours(), **DARK}
    grounds = ("paper", "card", "act-soft")
    low = {
        (text, ground): round(contrast(named[text], named[ground]), 1)
        for text in TEXTS
        for ground in grounds
        if contrast(named[text], named[ground]) < 4.5  # WCAG 2.2, 1.4.3
    }
    assert low == {}


def test_colours_have_one_home():
    loose = {
        path.name: re.findall(r"#[0-9a-fA-F]{3,8}\b|\bwhite\b(?!-)|\bblack\b", path.read_text(encoding="utf-8"))
        for path in [*WEB.glob("*.css"), *WEB.parent.glob("*.py")]
        if path.name not in ("tokens.css", "look.py")
    }
    assert {name: found for name, found in loose.items() if found} == {}


def test_the_typeface_travels_with_the_style_and_so_does_its_licence():
    assert font_face() in style("stage")
    assert "data:font/woff2;base64,d09GMg" in font_face()  # "wOF2", the signature of the format
    assert "SIL OPEN FONT LICENSE Version 1.1" in (WEB / "figtree_licence.txt").read_text(encoding="utf-8")
    assert family().startswith("'Figtree', system-ui")


def test_a_module_may_import_from_another_folder_and_what_two_of_them_need_is_there_once():
    joined = script("page", pages.WEB)
    assert [joined.count(f"export function {name}(") for name in ("add", "mount", "worked_out", "begin")] == [
        1,
        1,
        1,
        1,
    ]
    assert 'from ".' not in joined


def test_joined_modules_keep_their_exports_and_lose_what_they_import_from_each_other():
    joined = script("stage_widget")
    order = [joined.index(f"export {what}") for what in ("function add", "class Chart", "function mount", "default")]
    assert order == sorted(order)
    assert joined.count("export function add(") == 1
    assert 'from "./' not in joined


@pytest.mark.parametrize(
    ("name", "folder"),
    [*((name, WEB) for name in ("stage_widget", "desk", "scene", "rehearse", "writing")), ("page", pages.WEB)],
)
def test_no_two_joined_modules_declare_the_same_name(name, folder):
    declared = re.findall(
        r"^(?:export )?(?:async )?(?:const|let|class|function) (?:\{ )?(\w+)", script(name, folder), re.MULTILINE
    )
    assert sorted({one for one in declared if declared.count(one) > 1}) == []

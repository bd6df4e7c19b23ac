"""Her window and theirs where it may go wrong: hostile texts, and one panel in two places."""

import pytest
from demo_panel import NAMES, WRITTEN, read_out
from hostile import HOSTILE
from live import notebook_page, run_all_cells, write_notebook

HACKED = "() => window.talkHacked"
CELL = """
from dataclasses import replace
from hostile import HOSTILE
from kit import read_talk
from kit.lines.recipe_text import read_recipe
from kit.show.panels import on_screen
from kit.show.rehearse import Rehearsal
from kit.show.tables import lines_table
from kit.show.writing import WritingDesk
from kit.talk.desk import empty_desk
from kit.talk.library import TalkEntry
from kit.talk.settling import OpenTalk
from kit.talk.talk import PlanStep, Point, Pot, Question
from pathlib import Path
import ipywidgets as widgets

talk = read_talk("barley_squash_box")
parts = tuple(
    replace(part, line=f"1 cup {text}", part=text, food=replace(part.food, name=text, key=f"own-{at}"), swaps=())
    for at, (part, text) in enumerate(zip(talk.recipe.ingredients * 3, HOSTILE))
)
recipe = replace(talk.recipe, title=HOSTILE[0], serving_is=HOSTILE[1], ingredients=parts)
steps = tuple(PlanStep(title=text, say=text, hands_minutes=1, pots=(Pot(text, 2),)) for text in HOSTILE)
questions = tuple(Question(asks=text, try_="", answer=text) for text in HOSTILE)
points = tuple(Point(say=text, part=text) for text in HOSTILE)
talk = replace(
    talk, name="hostile", recipe=recipe, series=HOSTILE[2], points=points, steps=steps, questions=questions, path=None
)
"""
SHOWN = """
rehearsal = Rehearsal(OpenTalk(TalkEntry(HOSTILE[0], HOSTILE[1], Path("hostile.toml"), True), "", talk))
readings = read_recipe("Title\\n\\n" + "\\n".join(HOSTILE)).readings
flat = [" ".join(text.split()) for text in HOSTILE]
written = "\\n".join(("Title", "Serves 4", "", *(f"1 cup {text}" for text in flat)))
desk = empty_desk(HOSTILE[0]).with_text("recipe", written)
desk = desk.with_text("script", "\\n".join(flat)).with_text("plan", "\\n".join(f"2 min: {text}" for text in flat))
desk = desk.with_text("questions", "\\n\\n".join(f"{text}? = leave out {text}\\nA: {text}" for text in flat))
writing = WritingDesk(desk)
widgets.VBox([on_screen(talk), rehearsal, widgets.HTML(lines_table(readings).to_html()), writing])
"""
# Elements that only a text that was taken for markup can have made.
MADE = """() => [...document.querySelectorAll(
  'img[src="x"], [onerror], [onload], [onfocus], [ontoggle], [onmouseover], a[href^="javascript"], iframe[srcdoc],'
  + 'object, embed, marquee, [formaction], [background], .talk-surface script, .talk-surface style'
)].map((node) => node.outerHTML.slice(0, 120))"""


@pytest.fixture(scope="module")
def hostile(notebooks, desk_page):
    write_notebook(notebooks / "hostile.ipynb", [CELL, SHOWN])
    with desk_page("hostile.ipynb") as (page, errors):
        page.wait_for_timeout(1500)
        yield page, errors


def test_forty_hostile_texts_show_their_characters_wherever_they_stand_and_never_act(hostile):
    page, errors = hostile
    page.locator(".talk-desk").first.focus()
    seen = []
    for key in "s123456789":
        page.keyboard.press(key)
        page.wait_for_timeout(400)
        assert page.evaluate(MADE) == []
        seen.append(page.locator("body").inner_text())
    shown = " ".join(" ".join(seen).split())
    lost = [text[:40] for text in HOSTILE if " ".join(text.split()) not in shown]
    assert lost == []
    answered = " ".join(page.get_by_role("list", name="Answers to").all_inner_texts())
    assert [text[:40] for text in HOSTILE if " ".join(text.split())[:12] not in answered] == []
    drawn = " ".join(page.locator(".talk-stage .ytick text").all_text_contents())
    assert "h06 <b>bold</b>" in drawn  # a step of the plan, short enough to stand whole in its chart
    assert "h36 <IMG SRC=x" in drawn
    assert page.evaluate(HACKED) is None
    assert [error for error in errors if "Hacked" in error or "javascript" in error] == []


def test_what_is_typed_on_screen_is_text_too(hostile):
    page, _errors = hostile
    for text in HOSTILE[:12]:
        page.locator(".talk-line input").fill(text)
        page.keyboard.press("Enter")
        page.locator(".talk-fault p", has_text=text[:3]).wait_for()
    assert page.evaluate(MADE) == []
    assert page.evaluate(HACKED) is None


def test_two_views_follow_together_and_share_one_script(served, browser):
    kind, address = served
    with notebook_page(browser, "about:blank") as (page, errors):
        large = []

        def note(data):
            if len(data) > 4e6:
                large.append(data)

        page.on("websocket", lambda socket: socket.on("framereceived", note))
        page.goto(address("two_views.ipynb"))
        if kind == "lab":
            run_all_cells(page)
        page.locator("[data-chart=day] .main-svg").nth(5).wait_for()
        handles = page.locator(".noUi-handle")
        handles.nth(2 * len(NAMES) - 1).wait_for()  # before that, which is the fourth may still change
        handles.nth(NAMES.index("Olive oil")).press("ArrowRight")
        steps = WRITTEN.copy()
        steps[NAMES.index("Olive oil")] += 1
        for view in range(2):
            page.locator(".talk-stage").nth(view).get_by_text(read_out(steps)[0].value, exact=True).wait_for()
        assert len(large) == 1
        assert errors == []

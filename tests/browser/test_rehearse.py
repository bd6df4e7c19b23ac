"""Notebook 2 in a browser: another talk changes everything, what is settled is in its file, a reload loses nothing."""

import shutil

import pytest
from axe_playwright_python.sync_playwright import Axe
from live import ROOT, notebook_page, serve
from talks import TWO_BEANS

from kit.show.setting import Setting
from kit.speech.points import check_talk
from kit.talk.library import read_talk

BOX, SOUP = read_talk("barley_squash_box"), read_talk("split_pea_soup")
SAID = "[...document.querySelectorAll('.talk-judged-one')].map((one) => one.querySelector('.talk-say').textContent)"
# What a sighted reader sees smaller than 18 px, or cut by the edge of the panel or of its own button.
AMISS = """(least) => {
  const root = document.querySelector('.talk-rehearse');
  const frame = root.getBoundingClientRect();
  const bad = [];
  const shown = 'p, li, button, select, span, h2, h3, th, td, input:not([type=range]), mark, summary';
  for (const node of root.querySelectorAll(shown)) {
    const box = node.getBoundingClientRect();
    if (!box.width || !node.offsetParent) continue;
    const text = node.matches('input') ? node.value : node.textContent;
    if (text.trim() && parseFloat(getComputedStyle(node).fontSize) < least) bad.push(['small', text]);
    if (box.left < frame.left - 1 || box.right > frame.right + 1) bad.push(['cut', text]);
    if (node.matches('button') && node.scrollWidth > node.clientWidth + 1) bad.push(['spills', text]);
  }
  return bad;
}"""


@pytest.fixture(scope="module")
def voila(tmp_path_factory):
    folder, home = tmp_path_factory.mktemp("rehearse"), tmp_path_factory.mktemp("home")
    shutil.copy(ROOT / "notebooks" / "2_rehearse.ipynb", folder)
    talks = home / "talk-kit" / "talks"
    talks.mkdir(parents=True)
    (talks / "beans.toml").write_text(TWO_BEANS, encoding="utf-8")
    with serve("voila", folder, home) as address:
        yield address("2_rehearse.ipynb"), talks


def shown(page, says):
    page.wait_for_function(f"(says) => JSON.stringify({SAID}) === JSON.stringify(says)", arg=says)


def said(talk, setting=None):
    return [verdict.say for verdict in check_talk(talk, setting.now if setting else None)]


def test_a_rehearsal_from_the_first_talk_to_a_reload(voila, browser):
    address, talks = voila
    with notebook_page(browser, address) as (page, errors):
        shown(page, said(BOX))  # the talk last used, or the first: nothing was chosen yet
        page.locator(".talk-chart-box .main-svg").first.wait_for()
        assert page.evaluate(AMISS, 18) == []

        # A slider checks every sentence again, and the allergens follow it.
        setting = Setting(BOX)
        feta = next(at for at, part in enumerate(BOX.recipe.ingredients) if part.food.key == "cheese-feta")
        slider = page.locator(f"[data-control='amount-{feta}']")
        slider.focus()
        page.keyboard.press("Home")
        without = setting.with_amount(feta, setting.amounts(feta)[0][0])
        page.locator(".talk-about", has_text="contains tree nuts").wait_for()
        counts = [verdict.verdict for verdict in check_talk(BOX, without.now)]
        verdicts = page.locator(".talk-judged-one > .talk-verdict").all_text_contents()
        assert [one.split(" ", 1)[1] for one in verdicts] == counts
        assert slider.evaluate("(one) => one === document.activeElement")
        assert page.get_by_role("button", name="Say this instead").count() == 0  # not for another dish

        # Another talk changes everything below.
        page.get_by_label("Talk", exact=True).select_option(label=SOUP.title)
        shown(page, said(SOUP))
        assert page.locator(".talk-title").inner_text() == SOUP.title
        assert page.locator(".talk-timed tbody tr").count() == len(SOUP.steps)

        # Her own talk: a fault of its plan is told, a word is pinned and an instead taken over with a click.
        page.get_by_label("Talk", exact=True).select_option(label="Two beans")
        shown(page, said(read_talk(talks / "beans.toml")))
        page.locator(".talk-told", has_text='no pot "peas"').wait_for()
        assert page.locator(".talk-timed tbody tr").count() == 2
        page.get_by_role("group", name="Which beans?").get_by_role("button").last.click()
        page.locator(".talk-note", has_text="“beans” here means").wait_for()
        instead = page.locator(".talk-instead-line p").nth(2).inner_text().removeprefix("Say instead: ")
        page.get_by_role("button", name=f"Say this instead: {instead}").first.focus()
        page.keyboard.press("Enter")
        page.locator(".talk-note", has_text=instead).wait_for()
        assert page.evaluate("document.activeElement.id") == "talk-point-1"  # she is where she was
        kept = read_talk(talks / "beans.toml")
        assert (kept.points[1].say, list(kept.points[0].pins)) == (instead, ["beans"])

        # Clock and cards.
        page.get_by_role("button", name="Start the clock").click()
        page.locator(".talk-now", has_text="Boil").wait_for()
        page.set_viewport_size({"width": 1280, "height": 720})
        assert page.evaluate(AMISS, 14) == []
        found = Axe().run(page, context=".talk-rehearse").response["violations"]
        heavy = [
            (rule["id"], rule["nodes"][0]["html"][:120]) for rule in found if rule["impact"] in ("serious", "critical")
        ]
        assert heavy == []
        page.wait_for_timeout(700)  # what is set is written within half a second

        page.reload()
        shown(page, said(kept))
        page.locator(".talk-now", has_text="Boil").wait_for()
        page.get_by_label("Talk", exact=True).select_option(label=BOX.title)
        page.locator(".talk-about", has_text="contains tree nuts").wait_for()  # as she had set it
        assert errors == []

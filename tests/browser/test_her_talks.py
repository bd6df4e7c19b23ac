"""Her talks in notebook 1, in a browser: renamed, kept though changed elsewhere, and offered where not saved."""

from live import notebook_page
from running import Kit

SCREEN = {"width": 1440, "height": 900}
NAMED = "Jars <b>of</b> & mine"
HERS, OVER = "\nAll of it is soft.", "\nIt is soft all through."
ELSEWHERE = "# changed elsewhere\n"


def writes(page, text):
    page.get_by_role("textbox", name="Script").press("Control+End")
    page.keyboard.type(text)
    page.get_by_text("Changed since it was saved; a draft of it is kept").wait_for()


def copies_and_renames(page, talks):
    page.get_by_role("button", name="Make a copy").click()
    page.get_by_role("textbox", name="Title of the copy").press("Enter")
    page.get_by_text("This is the copy").wait_for()
    page.get_by_role("button", name="Rename").click()
    entry = page.get_by_role("textbox", name="New title")
    entry.fill(NAMED)
    entry.press("Enter")
    page.get_by_text("Renamed; its file is").wait_for()
    page.wait_for_function("title => document.title === title", arg=NAMED)
    (path,) = talks.iterdir()
    assert path.name == "jars_b_of_b_&_mine.toml"
    return path


def is_asked_when_the_file_changed_elsewhere(page, path):
    """The file is changed twice behind her back: once hers is saved beside it, once over it."""
    path.write_text(path.read_text(encoding="utf-8") + ELSEWHERE, encoding="utf-8")
    writes(page, HERS)
    page.get_by_role("button", name="Save the talk").click()
    page.get_by_role("button", name="Save mine beside it").click()
    page.get_by_role("status").filter(has_text="Saved: ").wait_for()
    (beside,) = set(path.parent.iterdir()) - {path}
    assert HERS.strip() in beside.read_text(encoding="utf-8")
    assert path.read_text(encoding="utf-8").endswith(ELSEWHERE)

    beside.write_text(beside.read_text(encoding="utf-8") + ELSEWHERE, encoding="utf-8")
    writes(page, OVER)
    page.get_by_role("button", name="Save the talk").click()
    page.get_by_role("button", name="Keep mine; the other goes to the bin").click()
    page.get_by_role("button", name="Keep mine; the other goes to the bin").wait_for(state="hidden")
    text = beside.read_text(encoding="utf-8")
    assert OVER.strip() in text
    assert ELSEWHERE not in text
    binned = path.parent.parent.rglob("bin/**/*.toml")
    assert any(ELSEWHERE in one.read_text(encoding="utf-8") for one in binned)


def is_offered_what_another_window_did_not_save(page):
    offer = page.get_by_text("Typed and not saved, ")
    offer.wait_for()
    page.get_by_role("button", name="Go on with it").click()
    offer.wait_for(state="hidden")
    page.wait_for_function(
        "said => [...document.querySelectorAll('textarea')].some((one) => one.value.endsWith(said))", arg=HERS
    )
    page.get_by_role("button", name="New talk").click()
    page.get_by_role("textbox", name="Title of the new talk").press("Enter")
    page.get_by_role("button", name="Keep it as a draft").wait_for()
    assert page.evaluate("() => document.activeElement.textContent") == "Save it first"
    page.get_by_role("button", name="Stay here").click()
    page.get_by_role("button", name="Keep it as a draft").wait_for(state="hidden")


def test_a_talk_is_renamed_kept_though_it_changed_elsewhere_and_offered_where_it_was_not_saved(tmp_path, browser):
    kit = Kit(tmp_path)
    address = kit.page("1_prepare.ipynb")
    try:
        with notebook_page(browser, address, SCREEN) as (page, errors):
            page.get_by_role("textbox", name="Recipe").wait_for()
            path = copies_and_renames(page, tmp_path / "own" / "talks")
            is_asked_when_the_file_changed_elsewhere(page, path)
            writes(page, HERS)
            assert errors == []
        with notebook_page(browser, address, SCREEN) as (page, errors):
            is_offered_what_another_window_did_not_save(page)
            assert errors == []
    finally:
        kit.stop()

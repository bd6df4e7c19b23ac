"""The panels of notebook 4: one button writes the follow-up, and answers are shown without anybody's name."""

from datetime import UTC, datetime

import pytest

from kit.share.panels import FollowUpPanel, SurveyPanel
from kit.spreadsheets import table_text


def a_file(content):
    """A file as a page hands it over."""
    when = datetime(2026, 11, 26, tzinfo=UTC)
    return {"name": "a.csv", "type": "text/csv", "size": len(content), "content": content, "last_modified": when}


@pytest.fixture
def own(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    return tmp_path


def test_one_button_writes_the_follow_up_and_tells_what_each_file_is_for(own):
    panel = FollowUpPanel("split_pea_soup")
    panel.button.click()
    assert {path.name for path in (own / "sent" / "split_pea_soup").iterdir()} == {
        *("page.html", "handout.html", "numbers.csv", "notebook.zip", "follow-up.eml"),
    }
    assert "page.html" in panel.written.value
    assert "sliders still work" in panel.written.value


def test_a_second_time_it_asks_before_it_replaces(own):
    panel = FollowUpPanel("split_pea_soup")
    panel.button.click()
    panel.button.click()
    assert "exists already" in panel.written.value
    panel.replace.value = True
    panel.button.click()
    assert "exists already" not in panel.written.value


def test_another_talk_has_another_folder_and_its_own_sentences(own):
    panel = FollowUpPanel("split_pea_soup")
    before = panel.left.value
    panel.choice.value = "barley_squash_box"
    assert panel.folder.value.endswith("barley_squash_box")
    assert panel.left.value != before


def test_answers_are_counted_and_nobody_is_named():
    panel = SurveyPanel()
    rows = [["Odile Brandt", "5", "Beans, says odile"], ["Paul Stern", "4", "<b>Oats</b>"], ["Ines Okoro", "5", "Soup"]]
    content = table_text(["Your name", "How useful was it?", "What next?"], rows).encode()
    panel.file.value = (a_file(content),)
    panel.invited.value = 12
    shown = str([getattr(child, "value", "") for child in panel.shown.children])
    assert "3 people answered, 25 % of 12 invited." in shown
    assert "&lt;b&gt;Oats" in shown
    assert not [name for name in ("Odile", "odile", "Brandt", "Stern", "Okoro") if name in shown]


def test_a_file_that_is_no_table_is_told():
    panel = SurveyPanel()
    panel.file.value = (a_file(b"\0\1\2"),)
    assert "a.csv is no text" in panel.shown.children[0].value

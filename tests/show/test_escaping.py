import html

from hostile import HOSTILE
from hypothesis import given
from hypothesis import strategies as st

from kit.show.escaping import in_chart, in_html


@given(st.text())
def test_no_bracket_is_left_that_could_open_anything(text):
    for safe in (in_html(text), in_chart(text)):
        assert "<" not in safe
        assert ">" not in safe


def test_forty_texts_are_tried():
    assert len(HOSTILE) == len(set(HOSTILE)) == 40


@given(st.text(st.characters(max_codepoint=127)))
def test_what_is_readable_comes_back_as_it_was(text):
    readable = "".join(c for c in text if c >= " " and c != "\x7f")
    assert html.unescape(in_html(readable)) == readable
    assert html.unescape(in_chart(readable)) == readable

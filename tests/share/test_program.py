"""Python's functions become JavaScript, or it is said which line does not."""

import pytest

from kit.share.javascript.program import Program
from kit.share.page import TRANSLATED


def of_a_set_method(values):
    return values.intersection({1})


def with_a_loop_that_ends(values):
    while values:
        values.pop()


def test_every_function_of_the_page_is_translated():
    program = Program()
    names = {program.add(function) for function in TRANSLATED.values()}
    assert len(names) == len(TRANSLATED)
    assert all(f"function {name}(" in program.text() for name in names)


def test_a_function_that_is_used_twice_is_written_once():
    program = Program()
    for function in [*TRANSLATED.values(), *TRANSLATED.values()]:
        program.add(function)
    assert program.text().count("function percent(") == 1


@pytest.mark.parametrize("function", [of_a_set_method, with_a_loop_that_ends])
def test_what_has_no_word_is_named(function):
    with pytest.raises(TypeError, match=rf"test_program\.{function.__name__}, line 2: .* is not translated"):
        Program().add(function)

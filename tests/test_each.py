"""The tests over many cases can fail, and say where."""

import pytest
from each import for_each


def test_every_failing_case_is_listed_and_the_rest_are_tried():
    tried = []

    @for_each("number", [1, 2, 3])
    def test_is_odd(number):
        tried.append(number)
        if number == 2:
            raise KeyError("two")
        assert number == 1

    with pytest.raises(AssertionError) as fault:
        test_is_odd()
    assert tried == [1, 2, 3]
    assert str(fault.value).startswith("2 of 3 cases fail:")
    assert "number='2': KeyError 'two'" in str(fault.value)
    assert "number='3': AssertionError" in str(fault.value)


def test_two_lists_give_every_pair():
    pairs = []

    @for_each("letter", "ab")
    @for_each(("number", "word"), [(1, "one"), (2, "two")])
    def test_pairs(letter, number, word):
        pairs.append((letter, number, word))

    test_pairs()
    assert sorted(pairs) == [("a", 1, "one"), ("a", 2, "two"), ("b", 1, "one"), ("b", 2, "two")]


def test_no_case_is_a_failure():
    @for_each("number", [])
    def test_nothing(number):
        raise AssertionError(number)

    with pytest.raises(AssertionError, match="no case"):
        test_nothing()

"""What stands in brackets and behind the comma."""

from each import for_each

from kit.lines.remarks import Remarks, sort_remarks, without_brackets, without_examples, without_wishes


@for_each(
    ("remark", "sorted_"),
    [
        ("15 oz", Remarks(amounts=("15 oz",))),
        ("chopped, 16 ounces", Remarks(amounts=("16 ounces",), said=("chopped",))),
        ("3, about 2 lbs", Remarks(amounts=("3", "about 2 lbs"))),
        ("drained", Remarks(said=("drained",))),
        ("93% lean", Remarks(said=("93% lean",))),
        ("or canned, drained", Remarks()),
        ("can sub cooked brown rice", Remarks()),
        ("low sodium if you prefer", Remarks()),
        ("from 1 lemon", Remarks()),
        ("or substitute 1/2 tsp ground coriander", Remarks()),
        ("breast, drumstick, and thigh", Remarks()),
        ("such as cod or halibut", Remarks(examples=("cod",))),
    ],
)
def test_a_remark_tells_an_amount_something_done_an_example_or_nothing(remark, sorted_):
    assert sort_remarks([remark]) == sorted_


def test_brackets_within_brackets_are_taken_out():
    assert without_brackets("1 cup (about (8 oz)) milk") == ("1 cup milk", ["8 oz", "about"])


def test_an_example_is_no_part_of_the_name():
    assert without_examples("1 lb white fish, such as cod, skinned") == ("1 lb white fish, skinned", ("cod",))


def test_a_wish_behind_the_comma_is_no_part_of_the_line():
    assert without_wishes("minced; for less spice, use green bell pepper") == "minced"

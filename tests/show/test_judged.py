"""Verdicts as a screen shows them."""

from kit.meal.recipe import recipe
from kit.show.judged import counted, judged, pieces
from kit.speech.points import check_points
from kit.speech.verdict import ClaimFinding, Verdict
from kit.talk.talk import Point, Talk

DISH = recipe("Pot", ["1 cup lentils, dry", "1/2 cup feta, crumbled"], servings=2)


def checked(*points):
    made = tuple(Point(point) if isinstance(point, str) else point for point in points)
    return check_points(Talk("pot", DISH, points=made))


def test_each_verdict_has_its_sign_its_word_and_its_reason():
    said = [judged(verdict) for verdict in checked("A bowl has {protein}.", "It is vegan.", "It is healthy.", "Stir.")]
    assert [(one["sign"], one["verdict"]) for one in said] == [
        ("✓", "holds"),
        ("✗", "off"),
        ("?", "cannot tell"),
        ("–", "nothing to check"),
    ]
    assert all(one["because"] for one in said)
    assert said[1]["instead"]


def test_the_words_of_a_claim_are_marked_and_the_pieces_are_the_sentence():
    (verdict,) = checked("It is vegan, and a bowl has {protein}.")
    found = pieces(verdict)
    assert "".join(text for text, _ in found) == verdict.say
    assert ("vegan", "off") in found
    assert any(kind == "holds" and "grams" in text for text, kind in found)
    assert [claim["verdict"] for claim in judged(verdict)["claims"]] == ["off", "holds"]


def test_words_that_two_claims_share_are_marked_by_the_worse():
    claims = tuple(ClaimFinding("a", "f", "", verdict, "", ((0, 3),)) for verdict in ("off", "holds", "cannot tell"))
    assert pieces(Verdict("one two", "off", "", claims=claims)) == [("one", "off"), (" two", "")]


def test_the_count_names_every_verdict_and_what_is_on_her_own_word():
    mine = Point("It keeps you full.", source="my own notes")
    verdicts = checked("A bowl has {protein}.", "It is vegan.", mine, "Stir.")
    assert counted(verdicts) == (
        "✓ 1 holds, ✗ 1 is off, ? 1 cannot be told and – 1 has nothing to check; 1 of these on your own word"
    )
    assert judged(verdicts[2])["hers"] == "my own notes"

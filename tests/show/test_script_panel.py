"""The script beside its verdicts."""

from dataclasses import replace

from kit.meal.changes import leave_out
from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.show.controls import Controls
from kit.show.script_panel import ScriptPanel, count_words, script
from kit.speech.points import check_points
from kit.talk.library import read_talk
from kit.talk.talk import Point, Talk

POINTS = (
    Point("A bowl has {protein}.", "numbers"),
    Point("It is plant-based.", "numbers"),
    Point("It is <b>healthy</b>.", "kind"),
    Point("Stir.", "kind"),
)


def a_talk(*points):
    dish = recipe("Pot", ["1 cup lentils, dry", "1/2 cup feta, crumbled"], servings=2)
    return Talk("pot", dish, points=points or POINTS)


def shown(panel):
    return panel.box.children[1].value


def test_each_sentence_is_shown_filled_with_sign_word_reason_and_what_holds_instead():
    html = shown(ScriptPanel(a_talk()))
    assert "A bowl has <mark" in html
    for sign, word in (("✓", "holds"), ("✗", "off"), ("?", "cannot tell"), ("–", "nothing to check")):
        assert f'<span aria-hidden="true">{sign}</span> {word}' in html
    assert "Everything in it is plant-based except for the feta cheese." in html
    assert html.index("<h3>Numbers</h3>") < html.index("<h3>Kind</h3>")


def test_a_sentence_cannot_bring_its_own_html():
    assert "<b>healthy</b>" not in shown(ScriptPanel(a_talk()))


def test_the_count_stands_on_top():
    assert count_words(check_points(a_talk())) == (
        "✓ 1 holds, ✗ 1 is off, ? 1 cannot be told and – 1 has nothing to check"
    )
    assert count_words(()).startswith("no sentence yet")


def test_the_script_follows_the_dish():
    talk = a_talk()
    panel = ScriptPanel(talk)
    before = shown(panel)
    panel.show(nutrition(leave_out(talk.recipe, "cheese-feta")))
    assert [one.verdict for one in panel.verdicts[:2]] == ["holds", "holds"]
    assert shown(panel) != before
    panel.show()
    assert shown(panel) == before


def test_a_sentence_that_cannot_be_looked_up_says_so_and_hides_no_other():
    panel = ScriptPanel(a_talk(Point("It has {protien}."), Point("It is vegan.")))
    assert "no placeholder &quot;protien&quot;" in shown(panel)
    assert [one.verdict for one in panel.verdicts] == ["cannot tell", "off"]


def test_a_bundled_talk_is_shown_by_its_name():
    assert script("split_pea_soup").children


def test_a_talk_without_points_says_so():
    assert "no sentence yet" in shown(ScriptPanel(replace(a_talk(), points=())))


def test_the_verdicts_follow_a_moved_slider_within_its_update():
    controls = Controls(read_talk("barley_squash_box"))
    panel = ScriptPanel(controls.talk)
    controls.followers.append(lambda: panel.follow(controls))
    said = "The box is entirely plant-based."
    verdict = {one.say: one.verdict for one in panel.verdicts}
    assert verdict[said] == "off"
    feta = next(at for at, part in enumerate(controls.talk.recipe.ingredients) if part.food.key == "cheese-feta")
    controls.sliders[feta].index = 0
    verdict = {one.say: one.verdict for one in panel.verdicts}
    assert verdict[said] == "holds"
    controls.reset.click()
    assert {one.say: one.verdict for one in panel.verdicts}[said] == "off"


def test_the_script_follows_another_talk():
    controls = Controls(read_talk("barley_squash_box"))
    panel = ScriptPanel(controls.talk)
    controls.followers.append(lambda: panel.follow(controls))
    controls.talk_choice.value = "pear_oat_jars"
    assert panel.verdicts == check_points(read_talk("pear_oat_jars"))


def test_the_words_of_a_claim_are_marked_and_each_claim_can_be_opened():
    html = shown(ScriptPanel(a_talk(Point("It is vegan, and a bowl has {protein}."))))
    assert '<mark class="talk-off" title="off">vegan</mark>' in html
    assert '<mark class="talk-holds"' in html
    assert "<summary>Claim by claim</summary>" in html


def test_what_holds_instead_is_taken_over_with_one_click():
    panel = ScriptPanel(a_talk(Point("It is vegan.", "kind"), Point("Stir.")))
    kept = []
    panel.settled.append(kept.append)
    instead = panel.verdicts[0].instead
    (row,) = panel.to_settle.children
    row.children[0].click()
    assert (panel.talk.points[0].say, panel.talk.points[0].part) == (instead, "kind")
    assert panel.verdicts[0].verdict == "holds"
    assert panel.to_settle.children == ()
    assert kept[0].points == panel.talk.points


def test_a_word_that_could_mean_several_foods_is_pinned_by_a_choice():
    dish = recipe("Pot", ["1 cup kidney beans, cooked", "1 cup black beans, cooked"], servings=2)
    panel = ScriptPanel(Talk("pot", dish, points=(Point("The beans bring about 8 grams of protein."),)))
    assert panel.verdicts[0].verdict == "cannot tell"
    (row,) = panel.to_settle.children
    row.children[0].value = "black-beans-boiled"
    assert panel.talk.points[0].pins == {"beans": "black-beans-boiled"}
    assert panel.verdicts[0].verdict == "holds"


def test_what_is_kept_on_her_own_word_is_listed_as_hers():
    panel = ScriptPanel(a_talk(Point("It keeps you full.", source="my own notes")))
    assert "<b>On your own word:</b> my own notes" in shown(panel)
    assert "1 of these on your own word" in shown(panel)

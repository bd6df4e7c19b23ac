"""Everything that is said in a talk is read, and each entry is told apart."""

from dataclasses import replace

from kit.meal.changes import leave_out
from kit.meal.nutrition import nutrition
from kit.speech.points import check_points, check_talk
from kit.talk.talk import PlanStep, Point, Question
from tests.speech import corpus
from tests.talks import a_talk, verdict_on


def test_points_steps_and_answers_are_read_and_say_where_they_stand():
    talk = replace(
        a_talk("A bowl has {protein}."),
        steps=(PlanStep("Welcome", say="The pot is vegan."), PlanStep("Wait", say_minutes=3)),
        questions=(Question("Is it nut-free?", answer="Yes, it is nut-free."), Question("Why?")),
    )
    found = check_talk(talk)
    assert [(one.where, one.verdict) for one in found] == [("point", "holds"), ("step", "off"), ("answer", "holds")]
    assert check_points(talk) == found[:1]


def test_a_fault_in_one_entry_is_told_there_and_hides_no_other():
    found = check_points(a_talk("It has {protien}.", "It has { in it.", "It is vegan."))
    assert [one.verdict for one in found] == ["cannot tell", "cannot tell", "off"]
    assert "protein" in found[0].because
    assert "brace" in found[1].because


def test_an_answer_is_about_the_dish_as_its_question_tries_it():
    tries = "leave out the feta"
    says = ("Then it is vegan.", "Then it is not vegan.", "Leaving out the feta saves sodium.", "It has {cholesterol}.")
    talk = replace(a_talk(), questions=tuple(Question("Without feta?", tries, say) for say in says))
    assert [one.verdict for one in check_talk(talk)] == ["holds", "off", "holds", "holds"]
    assert "hardly any" in check_talk(talk)[3].say
    unclear = replace(talk, questions=(Question("Without it?", "leave out the moon", "It serves four."),))
    assert check_talk(unclear)[0].verdict != "holds"
    assert "leave out the moon" in check_talk(unclear)[0].because


def test_foods_by_themselves_are_counted_by_the_rules_of_the_talk():
    # SR26 16070, boiled lentils: 20.13 g of carbohydrate, 7.9 g of it fiber, in 100 g; a cup is 198 g.
    says = (
        "A cup of cooked lentils has about 40 grams of carbohydrate.",
        "A cup of cooked lentils has about 24 grams of carbohydrate.",
        "A cup of cooked lentils has {carbohydrate in one cup of lentils-boiled}.",
        "Weight for weight, cooked lentils have about three times the carbohydrate of almonds.",  # 12.2 against 9.1 g
    )
    us, eu = (check_points(replace(a_talk(*says), rules=rules)) for rules in ("us", "eu"))
    assert [one.verdict for one in us] == ["holds", "off", "holds", "off"]
    assert [one.verdict for one in eu] == ["off", "holds", "holds", "off"]
    assert (us[2].say, eu[2].say) == (says[0], says[1])
    assert "12.2 against" in eu[3].because


def test_a_talk_without_sentences_has_no_verdicts():
    assert check_talk(a_talk()) == ()


def test_what_is_filled_is_read_like_any_other_words():
    assert verdict_on("A bowl has {sodium}, and that is low in sodium.").verdict in ("off", "cannot tell")
    assert verdict_on("A bowl has {protein}.").verdict == "holds"
    assert verdict_on("{protein.share_of_day}, that is.").verdict == "cannot tell"  # not corrected for quality


def test_verdicts_follow_the_dish():
    talk = a_talk("The pot is vegan.", "Leaving out the feta saves sodium.")
    without = nutrition(leave_out(talk.recipe, "cheese-feta"))
    assert [one.verdict for one in check_points(talk)] == ["off", "holds"]
    now = check_points(talk, without)
    assert [one.verdict for one in now] == ["holds", "off"]
    assert "no feta in the dish as it is now" in now[1].because


def test_what_cannot_be_told_may_be_kept_on_her_own_word():
    point = Point("A bowl keeps you full.", source="my own notes")
    found = check_points(a_talk(point))[0]
    assert (found.verdict, found.on_her_word) == ("cannot tell", True)
    assert not verdict_on("A bowl keeps you full.").on_her_word
    assert not check_points(a_talk(Point("It is vegan.", source="my own notes")))[0].on_her_word


def test_a_word_that_could_mean_several_foods_offers_choices_and_a_pin_settles_it():
    lines = ("1 cup kidney beans, cooked", "1 cup black beans, cooked", "1 tbsp olive oil")
    asked = verdict_on("The beans bring about 4 grams of protein.", lines=lines)
    assert asked.verdict == "cannot tell"
    (choice,) = asked.choices
    assert (choice.word, {key for key, _ in choice.options}) == ("beans", {"kidney-beans-boiled", "black-beans-boiled"})
    point = Point("The beans bring about 4 grams of protein.", pins={"bean": "kidney-beans-boiled"})
    assert verdict_on(point, lines=lines).verdict == "holds"
    plural = Point("The beans bring about 4 grams of protein.", pins={"beans": "kidney-beans-boiled"})
    assert verdict_on(plural, lines=lines).verdict == "holds"


def test_each_claim_is_told_with_its_words_and_place():
    found = verdict_on("It is vegan, and a bowl has {protein}.")
    assert next((one.words, one.family, one.verdict) for one in found.claims) == ("vegan", "kind", "off")
    start, end = found.claims[0].spans[0]
    assert found.say[start:end] == "vegan"
    assert found.claims[1].family == "amount"


def test_the_json_keeps_its_keys():
    told = verdict_on("It is vegan.").as_json()
    assert {"say", "verdict", "because", "instead", "where", "claims"} <= set(told)
    assert set(told["claims"][0]) == {"words", "family", "about", "verdict", "because"}


def test_what_an_answer_says_becomes_more_or_less_is_what_its_question_tries():
    rows, dish = corpus.rows("answers"), corpus.dish("chickpea_curry")
    asked = tuple(Question("Could I?", row["try"], row["answer"]) for row in rows)
    found = check_talk(replace(dish.talk, questions=asked))
    wrong = [(one.say, one.verdict) for row, one in zip(rows, found, strict=True) if one.verdict != row["expected"]]
    assert wrong == []
    assert not [one.instead for one in found if "about 0 " in one.instead]

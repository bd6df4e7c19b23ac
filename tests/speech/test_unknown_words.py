"""A word that nobody knows, where a telling word belongs, never leaves a sentence holding."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.rules.verdicts import HOLDS
from kit.speech.checking import check_sentence
from tests.speech.corpus import dish
from tests.speech.test_properties import TRIES

# Each holds with the word that stands behind it; any other in its place is asked about.
PLACES = (
    ("It's dairy-free and {}-free.", "nut"),
    ("It's free of dairy, and of {} too.", "nuts"),
    ("There's no dairy and no {} in it.", "egg"),
    ("No dairy, no eggs, no {}.", "nuts"),
    ("It contains sesame, wheat and {}.", "gluten"),
    ("It contains {}, sesame and wheat.", "gluten"),
    ("The wheat is in the bulgur, and the gluten in the {}.", "bulgur"),
    ("It isn't vegan because of the {}.", "chicken"),
    ("The carrots in it are {} in vitamin A and free of cholesterol.", "high"),
    ("The carrots in it are high in vitamin A and low in {}.", "fat"),
    ("The oil brings most of the fat, and the chicken brings all of the {}.", "cholesterol"),
    ("The oil is the main source of fat, and the chicken is the main source of {}.", "protein"),
    ("The oil and the {} bring most of the fat.", "chicken"),
    ("The oil brings the most fat, then the {}.", "chicken"),
    ("It has 34 grams of protein, most of it from the {}.", "chicken"),
    ("{} has more protein than carrots.", "Chicken"),
    ("The {} is low in saturated fat.", "dish"),
    ("A {} of it has about 430 calories.", "plate"),
    ("A {} has 34 grams of protein.", "plate"),
    ("It's two fifths of the fiber {} need in a day.", "you"),
    ("That's two fifths of your fiber for the {}.", "day"),
    ("It keeps three to four days in the {}.", "fridge"),
    ("Cook the chicken to 165 on the {}.", "inside"),
    ("All the {} in it is whole grain.", "grain"),
    ("Leave out the chicken and the {} and it's vegetarian.", "salt"),
    ("The chicken {} most of the protein.", "brings"),
    ("A plate {} 34 grams of protein.", "has"),
    ("A plate has about 430 calories {}.", "altogether"),
    ("It has about 430 calories a {}.", "plate"),
    ("{}, a plate has about 430 calories.", "Honestly"),
    ("{} aside, a plate has about 430 calories.", "Jokes"),
)
# Words of no language that was meant: "vorble", "drintoz".
INVENTED = st.from_regex(
    r"(?:b|d|dr|f|gl|k|pl|tr|v|z)(?:a|e|i|o|u)(?:rb|nk|mpl|zz|ft|v)(?:o|u)(?:z|x|k|b)", fullmatch=True
)


@pytest.mark.parametrize(("place", "word"), [one for one in PLACES if one[1] != "Jokes"])
def test_the_word_it_was_written_with_holds(place, word):
    assert check_sentence(place.format(word), dish("main"), find_instead=False).verdict == HOLDS


@TRIES
@given(st.sampled_from(PLACES), INVENTED)
def test_an_invented_word_in_its_place_does_not(place, word):
    say = place[0].format(word)
    say = say[:1].upper() + say[1:]
    assert check_sentence(say, dish("main"), find_instead=False).verdict != HOLDS, say

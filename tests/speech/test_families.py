"""Every family of claims, read and judged: one table of sentences over three dishes, with words of the reason.

Figures: SR26; daily values 21 CFR 101.9(c); wordings 21 CFR 101.13, .54-.62; keeping and temperatures USDA FSIS.
"""

from kit.meal.nutrition import nutrition
from kit.meal.recipe import recipe
from kit.speech.checking import check_sentence
from kit.speech.joined import joints
from kit.speech.reading import FAMILIES, read
from kit.talk.dish import Dish
from kit.talk.talk import Talk

DISHES = {
    # A main dish: 3.4 to 5.9 g of fat and 60 to 110 mg of sodium in 100 g.
    "plate": ("1 lb chicken breast", "2 cups cooked brown rice", "2 cups broccoli", "2 tbsp olive oil", "1/2 tsp salt"),
    "soup": (
        "1 cup lentils, dry",
        "2 cups carrots, sliced",
        "5 cups water",
        "1 tbsp olive oil",
        "1/2 cup feta, crumbled",
    ),
    "muffins": ("1 cup rolled oats", "1 cup whole wheat flour", "2 large eggs", "1/2 cup walnuts", "2 tbsp honey"),
}
TITLES = {"plate": "Chicken and rice plate", "soup": "Lentil soup", "muffins": "Oat muffins"}

# family: dish | sentence | verdict | words of the reason
CASES = """
amount: plate | A plate has about 29 grams of protein. | holds | SR26
amount: plate | A plate has under 250 calories. | off | not under 250
amount: plate | It has exactly 400 calories. | off | never exact
amount: plate | Olive oil has about 120 calories a tablespoon. | holds | 14 g of olive oil
amount: plate | Olive oil has about 250 calories a tablespoon. | off | 14 g of olive oil
amount: plate | Olive oil has 120 calories a handful. | cannot tell | not known
amount: plate | The chicken brings about 26 grams of protein a plate. | holds | chicken
amount: soup | Half a bowl has about 135 calories. | holds | half a serving
amount: soup | Half the soup has about 500 calories. | holds | whole recipe
denial: plate | A fifth of the calories are not fat. | cannot tell | not understood
amount: muffins | A muffin has two teaspoons of sugar. | off | not 2 tsp
amount: muffins | There are about two and a quarter teaspoons of sugar in a muffin. | holds | sugar
not understood: muffins | A muffin has two teaspoons of fat. | cannot tell | not understood
keeping and safety: plate | Cook the pork chops to 145 and let them rest three minutes. | holds | rests 3 minutes
keeping and safety: plate | Cook the pork chops to 145 and let them rest one minute. | off | rests 3 minutes
servings and weights: muffins | The whole tray has two eggs and it is vegetarian. | holds | egg
servings and weights: muffins | The whole tray has eight eggs and it is vegetarian. | off | egg
amount: plate | There are 26 grams of protein a plate from the chicken. | holds | chicken
allergen: muffins | The only allergen is egg. | off | wheat
allergen: muffins | Nothing in it contains wheat. | off | wheat
allergen: muffins | It contains egg, nothing else. | off | wheat
allergen: muffins | Eggs and wheat are the allergens. | off | tree nuts too
allergen: muffins | There are no allergens other than egg and wheat. | off | tree nuts too
allergen: muffins | It contains egg and wheat. | holds | tree nuts too, which is not said here
allergen: muffins | It contains egg, wheat and walnuts. | holds | brings wheat
keeping and safety: plate | Chicken can be a little pink. | cannot tell | 165
keeping and safety: plate | You can eat the chicken raw. | cannot tell | thermometer
keeping and safety: muffins | Runny eggs are fine. | cannot tell | thermometer
keeping and safety: plate | Take the chicken out when the thermometer says 150. | off | 165
comparison: plate | It has half the fat of a beef stew. | cannot tell | not known
not understood: plate | Only a quarter of the salt of a canned soup. | cannot tell | salt
not understood: plate | It's 320 calories a plate, 1,300 for the lot. | cannot tell | 1,300
amount: plate | A plate without the rice is about 210 calories. | holds | SR26
share of a day: plate | It has half of your day's vitamin C. | holds | 21 CFR 101.9(c)
share of a day: plate | The rice gives you a tenth of your magnesium. | holds | a day's magnesium
share of a day: plate | A plate covers all the fiber you need for the day. | off | a day's fiber
share of the energy: plate | About 420 calories, two thirds of them from fat. | off | of the energy
share of the energy: plate | It has 320 calories and half are fat. | off | of the energy
not understood: plate | It has 320 calories, of which 85 are fat. | cannot tell | 85
wording: plate | The sauce is low in sodium. | cannot tell | not known
share of a day: plate | The chicken has all of your iron. | off | a day's iron
share of the energy: plate | Over a third of the calories come from protein. | holds | of the energy
part of a nutrient: plate | Most of the fat is saturated. | off | saturated fat
part of a nutrient: plate | Most of the fat isn't saturated. | holds | not saturated fat
share of the dish: plate | Nearly all of the cholesterol comes from the chicken. | holds | chicken
share of the dish: plate | The broccoli is the main source of protein. | off | first is the chicken
wording: plate | The dish is low in fat. | off | 21 CFR 101.62(b)
wording: plate | The dish is low in sodium. | cannot tell | 21 CFR 101.61(b)
wording: plate | The broccoli in it is high in vitamin C. | holds | 21 CFR 101.54(b)
wording: plate | The plate is high in vitamin C. | off | naming that food
wording: plate | The rice in it is high in fiber. | off | 21 CFR 101.54(b)
wording: plate | Hollandaise sauce is low in fat. | cannot tell | not known
wording: soup | The lentils in it are high in fiber. | holds | 21 CFR 101.54(b)
wording: muffins | Walnuts are high in fiber. | off | 30 g
wording: muffins | There's no refined sugar in them. | off | honey
wording: muffins | The muffins are cholesterol-free. | off | 21 CFR 101.62(d)
comparison: plate | Chicken breast has more protein than rice. | holds | against
comparison: plate | A plate beats four eggs for protein. | holds | against
comparison: plate | It has less salt than usual. | cannot tell | compares
kind: plate | It's vegetarian. | off | not vegetarian
kind: muffins | All the grain is whole grain. | holds | whole grain
comparison: muffins | A muffin has as much protein as two eggs. | holds | against
kind: plate | There's no pork in it. | holds | no pork
allergen: muffins | It's nut-free. | off | walnuts
allergen: muffins | Are they nut-free? No, they contain walnuts. | holds | walnuts
allergen: muffins | The muffins are gluten-free. | off | flour
allergen: soup | There's milk in this, from the feta. | holds | feta
allergen: soup | Nobody with a milk allergy should eat this. | holds | feta
allergen: muffins | Only the flour has gluten. | cannot tell | package
allergen: muffins | Only the flour has wheat. | holds | flour
allergen: muffins | With rice flour instead of the wheat flour it's nut-free. | off | walnuts
not understood: muffins | The eggs are the only animal product in it. | cannot tell | animal product
not understood: muffins | They're a good source of whole grains. | cannot tell | whole grains
allergen: soup | It's safe for people with a sesame allergy. | cannot tell | nobody can say safe
keeping and safety: plate | It keeps for ten days in the fridge. | off | 3 to 4 days
keeping and safety: plate | It doesn't keep for ten days in the fridge. | holds | 3 to 4 days
keeping and safety: plate | It's fine on the counter until bedtime. | cannot tell | say how long
keeping and safety: plate | Cook the chicken to 165 degrees. | holds | 165
keeping and safety: plate | Burgers are fine at 150 degrees. | off | 160
keeping and safety: plate | Thaw the chicken on the counter. | off | not on the counter
effect of a change: plate | Leaving out the olive oil saves about 60 calories a plate. | holds | olive oil
effect of a change: plate | Use half the oil and you save 100 calories a plate. | off | saves
effect of a change: soup | Use low-fat feta and the fat drops by 90 percent. | cannot tell |
servings and weights: plate | It serves four. | holds | makes 4
servings and weights: plate | The recipe has nine ingredients. | off | number 5
balance: plate | Protein, fat and carbohydrate all lie within the recommended ranges. | off | IOM
health and beyond: plate | Broccoli prevents cancer. | cannot tell | structure/function
health and beyond: plate | There's half a gram of omega-3 in it. | cannot tell | no figures
"""
DENIED = (
    ("A plate has about 29 grams of protein.", "A plate does not have about 29 grams of protein."),
    ("A plate has as much protein as six eggs.", "A plate does not have as much protein as six eggs."),
    ("The chicken brings most of the protein.", "The chicken does not bring most of the protein."),
    (
        "A plate covers two fifths of the vitamin C you need.",
        "A plate does not cover two fifths of the vitamin C you need.",
    ),
    ("It keeps for three days in the fridge.", "It does not keep for three days in the fridge."),
)


def a_dish(name):
    made = recipe(TITLES[name], list(DISHES[name]), servings=4)
    return Dish(Talk(name, made), nutrition(made))


def cases():
    for line in filter(None, CASES.strip().splitlines()):
        head, say, verdict, words = (piece.strip() for piece in line.split("|"))
        family, name = (piece.strip() for piece in head.rsplit(":", 1))
        yield family, name, say, verdict, words


def test_every_family_reads_and_judges_its_sentences():
    dishes = {name: a_dish(name) for name in DISHES}
    wrong = []
    for family, name, say, verdict, words in cases():
        found = check_sentence(say, dishes[name], find_instead=False)
        families = {one.family for one in found.claims}
        if found.verdict != verdict or words.lower() not in found.because.lower() or family not in families:
            wrong.append(f"{say} -> {found.verdict}, {sorted(families)}: {found.because}")
    assert wrong == []


def test_every_family_has_its_sentences():
    assert {name for name, _ in FAMILIES.values()} == {family for family, *_ in cases()}


def test_a_denial_that_no_family_has_read_turns_the_claim():
    dish = a_dish("plate")
    turned = {"holds": "off", "off": "holds"}
    pairs = [tuple(check_sentence(say, dish, find_instead=False).verdict for say in pair) for pair in DENIED]
    assert [after for _, after in pairs] == [turned[before] for before, _ in pairs]


def test_words_that_deny_nothing_turn_nothing():
    dish = a_dish("plate")
    for say in ("Not bad: a plate has about 29 grams of protein.", "Don't forget that it serves four."):
        assert check_sentence(say, dish, find_instead=False).verdict == "holds", say
    assert check_sentence("Don't expect 29 grams of protein.", dish, find_instead=False).verdict != "holds"


def test_two_statements_joined_are_read_apart_too():
    [one] = read("The rice is whole grain, and sodium stays under five grams.", a_dish("plate"))
    assert next(joints(one)).halves == ("The rice is whole grain", "sodium stays under five grams.")
    [list_only] = read("It contains wheat, milk, and eggs.", a_dish("plate"))
    alone = list(joints(list_only))[-1].halves[1]
    assert alone == "eggs."
    assert read(alone, a_dish("plate"))[0].claims == ()


def test_what_a_rule_wants_said_beside_a_wording_is_told_and_changes_no_verdict():
    dish = a_dish("muffins")
    told = {
        # 21 CFR 101.62(d)(1): the fat, where it is over 13 g; (e)(2) of 101.13: a food that is so by nature.
        "Olive oil is cholesterol-free.": "say the fat in a serving",
        "Lettuce is low in sodium.": 'a label words it "a low-sodium food"',
        # 21 CFR 101.13(h): what a label points to beside any claim.
        "Sardines are high in calcium.": "the cholesterol in a serving",
        # 21 CFR 101.54(d): the fat, beside fiber in what is not low in fat.
        "Flaxseed is high in fiber.": "say the fat in a serving",
    }
    found = {say: check_sentence(say, dish, find_instead=False) for say in told}
    assert {say: (one.verdict, told[say] in one.because) for say, one in found.items()} == dict.fromkeys(
        told, ("holds", True)
    )


def test_what_may_be_said_instead_is_said_as_people_do():
    dish = a_dish("soup")
    said = {
        "The lentils in it are a good source of fiber.": "The lentils in it are high in fiber.",
        "It only covers two percent of the vitamin A you need.": "It covers",
        "Sodium stays below 50 milligrams a bowl.": "Sodium stays at about",
        "It's vegan.": "It's vegan except for the feta cheese.",
        "A gram of protein a bowl, tops.": "grams of protein a bowl.",
        "Half the protein's from the feta.": "percent of the protein's from the feta.",
    }
    found = {say: check_sentence(say, dish).instead for say in said}
    assert {say: words for say, words in found.items() if said[say] not in words} == {}

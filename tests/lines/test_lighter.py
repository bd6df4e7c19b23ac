"""Low-sodium, reduced-fat, unsweetened."""

from each import for_each

from kit.food.composition import bundled_foods
from kit.lines.lighter import lighter, matters

TABLE = bundled_foods()


@for_each(
    ("said", "nutrient"),
    [
        ("low sodium", "sodium"),
        ("no salt added", "sodium"),
        ("unsalted", "sodium"),
        ("salt free", "sodium"),
        ("fat free", "fat"),
        ("reduced fat", "fat"),
        ("light", "fat"),
        ("unsweetened", "sugars"),
        ("sugar free", "sugars"),
    ],
)
def test_every_way_to_say_less_names_its_nutrient(said, nutrient):
    kind, words = lighter([*said.split(), "cheese"])
    assert (kind.nutrient, words) == (nutrient, said)


def test_other_words_say_nothing_of_it():
    assert lighter(["whole", "milk"]) is None


def test_less_sodium_matters_in_broth_and_not_in_oats():
    kind, _ = lighter(["low", "sodium"])
    assert matters(kind, TABLE["broth-vegetable"])
    assert not matters(kind, TABLE["oats-rolled-dry"])

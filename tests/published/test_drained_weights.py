"""What is left of a can when it is drained."""

import pytest

from kit.lines.reader import read

OUNCE = 28.349523125  # NIST Handbook 44, appendix C


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("1 (436 g) can red kidney beans, drained", 266),  # USDA SR26 16034: can of 436 g; 16145: 266 g drained
        ("1 (448 g) can chickpeas, drained", 253),  # USDA SR26 16360: can of 448 g; 16358: 253 g drained
        ("1 (448 g) can chickpeas, drained and rinsed", 254),  # USDA SR26 16359: 254 g drained, rinsed
    ],
)
def test_a_can_drains_to_what_was_printed(line, grams):
    assert read(line).grams == pytest.approx(grams, abs=0.5)


@pytest.mark.parametrize(
    "bean", ["black beans", "kidney beans", "pinto beans", "chickpeas", "navy beans", "white beans"]
)
def test_a_fifteen_ounce_can_of_beans_drains_to_about_250_grams(bean):
    assert read(f"1 (15 oz) can {bean}, drained").grams == pytest.approx(250, rel=0.07)  # common practice


def test_that_is_about_one_and_a_half_cups():
    can = read("1 (15 oz) can chickpeas, drained and rinsed").grams
    assert can / read("1 cup chickpeas, drained and rinsed").grams == pytest.approx(1.5, rel=0.1)  # common practice


def test_an_undrained_can_keeps_all_it_holds():
    assert read("1 (15 oz) can chickpeas").grams == pytest.approx(15 * OUNCE)


def test_half_a_jar_is_half_its_weight():
    assert read("half a 12-ounce jar roasted red peppers").grams == pytest.approx(6 * OUNCE)  # common practice


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("1 (5 oz) can tuna in water, drained", 113),  # 4 oz, common practice
        ("1 (3.75 oz) can sardines, drained", 92),  # USDA SR26 15088
        ("1 (15 oz) can mackerel, drained", 361),  # USDA SR26 15048
        (
            "1 cup canned white beans, drained",
            179,
        ),  # USDA SR26 16050: a cup of them boiled
        ("1 can black beans, drained", 255),  # 15 oz, of which 60 %: common practice
        ("1 can diced tomatoes", 411),  # 14.5 oz, common practice
        ("1 can tuna, drained", 113),
    ],
)
def test_canned_fish_cups_of_drained_beans_and_cans_without_a_size(line, grams):
    reading = read(line)
    assert reading.grams == pytest.approx(grams, rel=0.02)
    assert not reading.problem

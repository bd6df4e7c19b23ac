"""Bringing in a composition release, and finding foods in it."""

import csv
import io
import itertools
import math
import re
import tracemalloc

import numpy as np
import pytest
from made_releases import (
    FOOD,
    FOOD_NUTRIENT,
    NAMES,
    large_release,
    small_release,
    table,
    write,
)

from kit.errors import ReleaseError, UnknownNameError
from kit.food.finding import find
from kit.food.releases.release import ProgressBar, Store, import_release
from kit.lines.reader import read


@pytest.fixture
def release():
    return small_release()


@pytest.fixture
def folder(tmp_path, release):
    return write(tmp_path / "release", release)


@pytest.fixture
def path(tmp_path):
    return tmp_path / "own" / "release.sqlite"


def test_foods_come_in_with_values_measures_group_and_source(folder, path):
    import_release(folder, path)
    food = Store(path).food("fdc-11")
    assert food.name == "Lentils, raw"
    assert food["energy"] == 352
    assert food["protein"] == 24.63
    assert [(row.measure, row.cut, row.grams) for row in food.measures] == [("cup", "", 192), ("tbsp", "", 12)]
    assert food.group == "pulse"
    assert food.source == "FoodData Central 11, sr legacy food, 2019-04-01"


def test_a_missing_value_stays_missing(folder, path):
    import_release(folder, path)
    food = Store(path).food("fdc-11")
    assert math.isnan(food["sodium"])  # an empty cell
    assert math.isnan(food["fiber"])  # no row


def test_the_summary_counts_what_came_in_and_what_was_left_out(folder, path):
    summary = import_release(folder, path)
    assert (summary.foods, summary.measures) == (3, 4)
    assert (summary.samples_left_out, summary.empty_left_out, summary.measures_left_out) == (1, 1, 2)
    assert summary.below_zero == 2
    assert str(summary).startswith(
        "3 foods and 4 household measures are imported; left out: 1 samples, 1 foods without"
    )
    assert "fdc-13" not in Store(path)
    assert "fdc-14" not in Store(path)
    assert len(Store(path)) == 3


def test_specific_energy_factors_go_before_general_ones_and_kilojoules_are_converted(folder, path):
    import_release(folder, path)
    assert Store(path).food("fdc-12")["energy"] == 118
    assert Store(path).food("fdc-15")["energy"] == pytest.approx(100)  # 418.4 kJ at 4.184 kJ to the kcal


def test_international_units_of_vitamin_d_become_micrograms(folder, path):
    import_release(folder, path)
    assert Store(path).food("fdc-15")["vitamin_d"] == pytest.approx(1.0)  # 21 CFR 101.9(c)(8)(iv): 800 IU is 20 µg


def test_a_nutrient_may_be_called_by_its_number(folder, path):
    import_release(folder, path)
    assert Store(path).food("fdc-15")["folate"] == 21


def test_carbohydrate_below_zero_is_zero_and_anything_else_missing(folder, path):
    import_release(folder, path)
    food = Store(path).food("fdc-12")
    assert food["carbohydrate"] == 0
    assert math.isnan(food["protein"])


def test_portions_are_one_of_their_measure(folder, path):
    import_release(folder, path)
    (drained,) = Store(path).food("fdc-12").measures
    assert (drained.measure, drained.cut, drained.grams) == ("cup", "drained", 240)
    (cup,) = Store(path).food("fdc-15").measures
    assert (cup.measure, cup.cut, cup.grams) == ("cup", "", 245)


def test_columns_may_stand_in_any_order_beside_others(folder, path, release):
    rows = list(csv.reader(io.StringIO(release["food_nutrient.csv"])))
    turned = table(*[[*reversed(row), "further"] for row in rows])
    write(folder, {"food_nutrient.csv": "\ufeff" + turned})
    import_release(folder, path)
    assert Store(path).food("fdc-11")["protein"] == 24.63


def test_what_a_food_is_free_from_stays_unknown(folder, path):
    import_release(folder, path)
    food = Store(path).food("fdc-11")
    assert food.vegetarian is None
    assert food.origin == ""


@pytest.mark.parametrize(
    ("name", "old", "new", "message"),
    [
        ("food_nutrient.csv", '"24.63"', '"24,63"', r'food_nutrient.csv, line 3: amount is "24,63"; write a number'),
        ("food_nutrient.csv", '"24.63"', '"nan"', r'line 3: amount is "nan"; write a number, or leave it empty'),
        ("food.csv", '"12"', '"twelve"', r'food.csv, line 3: fdc_id is "twelve"; write a whole number'),
        ("food.csv", '"12"', '"11"', r"food.csv, line 3: fdc_id 11 stands a second time"),
        ("food.csv", '"Lentils, raw"', "Lentils, raw", r"food.csv, line 2: 6 cells where the header has 5; put a text"),
        ("food.csv", "data_type", "kind", r"food.csv has no column data_type"),
        ("food_nutrient.csv", "amount", "amonut", r'no column amount .*; name the columns .*; did you mean "amonut"\?'),
        ("food_portion.csv", '"192"', '"a lot"', r'food_portion.csv, line 2: gram_weight is "a lot"; write a number'),
        (
            "nutrient.csv",
            '"Protein","G"',
            '"Protein","IU"',
            r'nutrient.csv, line 6: protein is in "IU"; write .* G, MG or UG',
        ),
    ],
)
def test_a_fault_is_told_with_its_file_and_line(folder, path, release, name, old, new, message):
    write(folder, {name: release[name].replace(old, new, 1)})
    with pytest.raises(ReleaseError, match=message):
        import_release(folder, path)
    assert not path.exists()


@pytest.mark.parametrize("name", [name for name in small_release() if name != "food_category.csv"])
def test_a_missing_file_is_named(folder, path, name):
    (folder / name).unlink()
    with pytest.raises(ReleaseError, match=f"{name} missing from folder .*; put the whole unpacked release"):
        import_release(folder, path)


def test_a_release_with_headings_only_never_replaces_a_good_store(folder, path, release):
    import_release(folder, path)
    before = path.read_bytes()
    write(folder, {name: text.splitlines()[0] + "\n" for name, text in release.items() if name != "nutrient.csv"})
    with pytest.raises(ReleaseError, match=r"holds no food .* \(what was imported before is kept\)"):
        import_release(folder, path)
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('"24.63"', '"24630"', r'such as "Lentils, raw" with 24,630 g of protein; check that amounts are per 100 g'),
        ('"352"', '"352000"', r"with 352,000 kcal of energy"),
    ],
)
def test_a_release_of_absurd_figures_never_replaces_a_good_store(folder, path, release, old, new, says):
    import_release(folder, path)
    before = path.read_bytes()
    write(folder, {"food_nutrient.csv": release["food_nutrient.csv"].replace(old, new)})
    with pytest.raises(ReleaseError, match=says):
        import_release(folder, path)
    assert path.read_bytes() == before


@pytest.mark.parametrize(("old", "new"), [('"192"', '"1e300"'), ('"192","3"', '"192000000","3"')])
def test_a_measure_that_nobody_can_lift_is_left_out(folder, path, release, old, new):
    write(folder, {"food_portion.csv": release["food_portion.csv"].replace(old, new, 1)})
    import_release(folder, path)
    assert Store(path).food("fdc-11").measure("cup") is None


def test_a_place_among_the_portions_may_be_nonsense(folder, path, release):
    write(folder, {"food_portion.csv": release["food_portion.csv"].replace('"11","1","1"', '"11","1e308","1"', 1)})
    import_release(folder, path)
    assert Store(path).food("fdc-11").measure("cup").grams == 192


def test_the_categories_may_be_missing(folder, path):
    (folder / "food_category.csv").unlink()
    import_release(folder, path)
    assert Store(path).food("fdc-11").group == ""


def test_a_folder_that_does_not_exist_or_lies_deeper_is_told(folder, path, tmp_path):
    with pytest.raises(
        ReleaseError, match=r"nowhere does not exist; give the folder that holds the release's food.csv"
    ):
        import_release(tmp_path / "nowhere", path)
    with pytest.raises(ReleaseError, match=r"food.csv is a file; give the folder"):
        import_release(folder / "food.csv", path)
    with pytest.raises(ReleaseError, match=re.escape(f"give {folder} instead")):
        import_release(tmp_path, path)


def test_a_file_that_is_not_text_is_told(folder, path):
    (folder / "food.csv").write_bytes(b"\xff\xfe\x00a")
    with pytest.raises(ReleaseError, match=r"food.csv is not UTF-8 text"):
        import_release(folder, path)


class _Stopped(BaseException):
    """Stands for the user's Ctrl-C."""


@pytest.mark.parametrize("how", ["fault", "interruption"])
def test_an_import_that_does_not_finish_leaves_the_old_store_in_place(folder, path, release, how):
    import_release(folder, path)
    before = path.read_bytes()

    def stop(fraction, step):
        if how == "interruption" and fraction >= 0.9:
            raise _Stopped

    changed = release["food_nutrient.csv"].replace('"352"', '"999"')
    bad_last_row = table([13, 11, 1003, "much", 4, 49]) if how == "fault" else ""
    write(folder, {"food_nutrient.csv": changed + bad_last_row})
    with pytest.raises((_Stopped, ReleaseError)):
        import_release(folder, path, stop)
    assert path.read_bytes() == before
    assert [file.name for file in path.parent.iterdir()] == [path.name]  # and no half-written file beside it


def test_a_new_import_takes_the_old_ones_place_at_once(folder, path, release):
    import_release(folder, path)
    store = Store(path)
    assert store.find("lentils", 1)[0].name == "Lentils, raw"
    write(folder, {"food.csv": release["food.csv"].replace("Lentils, raw", "Lentils, brown, dry")})
    import_release(folder, path)
    assert store.find("lentils", 1)[0].name == "Lentils, brown, dry"
    assert store.food("fdc-11").name == "Lentils, brown, dry"


def test_a_store_that_is_not_there_is_empty(path):
    store = Store(path)
    assert len(store) == 0
    assert store.find("lentils", 5) == []
    assert "fdc-11" not in store
    with pytest.raises(UnknownNameError, match=r'no release is imported.*no food "fdc-11"'):
        store.food("fdc-11")


def test_the_store_lies_in_the_users_own_folder(folder, tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "mine"))
    assert import_release(folder).store == tmp_path / "mine" / "release.sqlite"
    assert Store().food("fdc-11").name == "Lentils, raw"


@pytest.mark.parametrize("key", ["fdc-999", "fdc-", "fdc-1x", "lentils", "fdc--1", "fdc-²"])
def test_an_unknown_food_is_told(folder, path, key):
    import_release(folder, path)
    assert key not in Store(path)
    with pytest.raises(UnknownNameError, match=f'no food "{key}"'):
        Store(path).food(key)


@pytest.mark.parametrize("content", [b"no store at all, but long enough to be taken for one" * 20, b""])
def test_a_file_that_is_no_store_is_told(path, content):
    path.parent.mkdir()
    path.write_bytes(content)
    with pytest.raises(ReleaseError, match=r"is no imported release .*; import the release again"):
        Store(path).food("fdc-11")


def test_progress_rises_to_the_end_and_names_the_steps(folder, path):
    calls = []
    import_release(folder, path, lambda fraction, step: calls.append((fraction, step)))
    fractions = [fraction for fraction, _ in calls]
    assert fractions == sorted(fractions)
    assert fractions[-1] == 1
    assert [step for _, step in calls][-2:] == ["laying out the foods", "done"]


class _Terminal(io.StringIO):
    def isatty(self):
        return True


def test_the_progress_bar_is_one_line_on_a_terminal_and_plain_steps_elsewhere():
    terminal, log = _Terminal(), io.StringIO()
    for stream in (terminal, log):
        bar = ProgressBar(stream)
        for fraction, step in [(0.25, "reading food.csv"), (0.5, "reading food.csv"), (1.0, "done")]:
            bar(fraction, step)
    lines = terminal.getvalue().rstrip("\n").split("\r")[1:]
    assert [line.rstrip() for line in lines] == [
        "[#####---------------]  25 %  reading food.csv",
        "[##########----------]  50 %  reading food.csv",
        "[####################] 100 %  done",
    ]
    assert log.getvalue() == "reading food.csv\ndone\n"


@pytest.fixture(scope="module")
def large(tmp_path_factory):
    """Return the store that a release of the official size becomes."""
    folder = large_release(tmp_path_factory.mktemp("large"))
    import_release(folder, folder / "release.sqlite")
    return Store(folder / "release.sqlite")


def test_a_release_of_official_size_comes_in_whole(large):
    assert len(large) == 8_000


def test_memory_does_not_grow_with_the_rows_that_are_read(tmp_path):
    foods = [[number, "sr_legacy_food", name, 16, "2019-04-01"] for number, name in enumerate(NAMES[:200], start=1)]
    folder = write(tmp_path / "release", small_release() | {"food.csv": table(FOOD, *foods)})
    peaks = []
    for nutrients in (50, 500):  # 10,000 rows, and 100,000 in a file of 2 MB
        with open(folder / "food_nutrient.csv", "w", encoding="utf-8") as file:
            file.write(",".join(FOOD_NUTRIENT) + "\n")
            for food, number in itertools.product(range(1, 201), range(nutrients)):
                file.write(f",{food},{1000 + number},12.5,1,49\n")
        tracemalloc.start()
        import_release(folder, tmp_path / "release.sqlite")
        peaks.append(tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    assert (folder / "food_nutrient.csv").stat().st_size > 1.9e6
    assert peaks[1] < peaks[0] + 0.1e6


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("lentils", "Lentils, raw"),
        ("boiled lentils", "Lentils, boiled"),
        ("canned red kidney beans drained", "Kidney beans, red, canned, drained"),
        ("brocoli", "Broccoli, raw"),
        ("chick peas canned", "Chickpeas, canned"),
        ("blackbeans raw", "Black beans, raw"),
        ("roasted sweet potatoe", "Sweet potatoes, roasted"),
        ("cheddar", "Cheddar cheese, raw"),
    ],
)
def test_the_plainest_fitting_food_comes_first(large, words, name):
    found = large.find(words, 5)
    assert found[0].name == name
    scores = [match.score for match in found]
    assert scores == sorted(scores, reverse=True)
    assert 0 < scores[-1] <= scores[0] <= 100


def test_words_that_are_no_food_find_nothing(large):
    assert large.find("xyzzy plugh", 5) == []
    assert large.find("", 5) == []
    assert large.find("lentils", 0) == []


def test_a_food_found_can_be_read(large):
    key, name, _ = large.find("steamed carrots", 1)[0]
    food = large.food(key)
    assert food.name == name
    assert np.nanmax(food.per_100g) == 12.5


def test_an_imported_food_comes_after_the_kits_own_and_before_what_fits_badly(folder, path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(path.parent))
    import_release(folder)
    lentils = [match.food for match in find("lentils")]
    assert lentils[0] == "lentils-dry"
    assert lentils.index("lentils-dry") < lentils.index("fdc-11")
    assert find('black turtle beans "canned"')[0].food.startswith("black-beans")
    assert find("lentil soup canned")[0].food == "fdc-15"


def test_a_line_may_name_an_imported_food_that_the_kit_lacks(folder, path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(path.parent))
    import_release(folder)
    reading = read("2 cups lentil soup, canned")
    assert (reading.key, reading.grams) == ("fdc-15", 490)
    assert "from the imported release" in reading.how

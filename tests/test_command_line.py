"""The command line: its JSON keeps its shape, and bad input gets one sentence and exit 2."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from kit import files
from kit.__main__ import main
from kit.talk.last_used import last_used
from kit.talk.library import bundled_talks

TALKS = sorted(bundled_talks())


def run(capsys, *arguments):
    code = main(list(arguments))
    out, err = capsys.readouterr()
    return code, out, err


def asked(capsys, *arguments):
    code, out, _err = run(capsys, *arguments, "--json")
    return code, json.loads(out)


@pytest.mark.parametrize("talk", TALKS)
def test_numbers_of_a_bundled_talk_add_up(capsys, talk):
    _code, numbers = asked(capsys, "numbers", talk)
    for name, line in numbers["nutrients"].items():
        parts = [ingredient["nutrients"][name] or 0 for ingredient in numbers["ingredients"]]
        assert sum(parts) == pytest.approx(line["value"], rel=1e-9, abs=1e-12)
        assert line["low"] <= line["value"] <= line["high"]
    assert sum(numbers["energy_shares"].values()) == pytest.approx(1)
    assert sum(part["grams"] for part in numbers["ingredients"]) == pytest.approx(
        numbers["serving_grams"] * numbers["servings"]
    )


def test_numbers_have_the_keys_that_other_programs_rely_on(capsys):
    _code, numbers = asked(capsys, "numbers", TALKS[0])
    assert {"title", "servings", "serving_grams", "nutrients", "energy_shares", "ingredients"} <= numbers.keys()
    assert {"value", "unit", "low", "high", "spoken", "daily_value_percent", "missing_from"} <= numbers["nutrients"][
        "iron"
    ].keys()
    assert {"line", "food", "grams", "nutrients"} <= numbers["ingredients"][0].keys()


def test_numbers_of_a_plain_recipe_that_a_person_would_paste(capsys, tmp_path):
    recipe = tmp_path / "my_recipe.txt"
    recipe.write_text(
        "Lentil pot\nServes 4\n\n- 1 cup lentils, dry\n- 2 carrots, diced\n- 1 tbsp olive oil\n", encoding="utf-8"
    )
    code, numbers = asked(capsys, "numbers", str(recipe))
    assert code == 0
    # USDA SR26: lentils 16069, a cup of 192 g with 25.80 g protein in 100 g; carrots 11124, 61 g with 0.93; oil none.
    assert numbers["nutrients"]["protein"]["value"] == pytest.approx((192 * 25.80 + 2 * 61 * 0.93) / 100 / 4, rel=0.005)
    assert numbers["title"] == "Lentil pot"
    assert numbers["servings"] == 4


def test_servings_share_the_same_pot_out_differently(capsys):
    _code, six = asked(capsys, "numbers", "barley_squash_box")
    _code, three = asked(capsys, "numbers", "barley_squash_box", "--servings", "3")
    assert three["nutrients"]["energy"]["value"] == pytest.approx(2 * six["nutrients"]["energy"]["value"])


def test_read_tells_food_grams_range_rule_and_problem(capsys):
    code, (clear, open_) = asked(capsys, "read", "2 tbsp olive oil", "onion")
    assert code == 1  # one line has to be asked about
    assert run(capsys, "read", "2 tbsp olive oil", "onion")[0] == 1
    assert run(capsys, "read", "2 tbsp olive oil")[0] == 0
    assert {"line", "food", "food_name", "grams", "low", "high", "how", "problem"} <= clear.keys()
    assert (clear["food"], clear["grams"], clear["problem"]) == ("olive-oil", 27.0, None)
    assert open_["grams"] is None
    assert "amount" in open_["problem"]


def test_find_puts_the_best_first(capsys):
    _code, found = asked(capsys, "find", "garbanzo", "beans")
    assert found[0]["food"] == "chickpeas-dry"
    assert found[0].keys() == {"food", "name", "score"}


def test_check_exits_1_when_a_point_is_off(capsys):
    code, checked = asked(capsys, "check", "barley_squash_box")
    assert code == 1
    assert {"say", "verdict", "because", "instead"} <= checked["points"][0].keys()
    assert {point["verdict"] for point in checked["points"]} >= {"holds", "off"}


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["numbers", "split_pea_sop"], 'no talk or recipe file "split_pea_sop"; did you mean "split_pea_soup"?'),
        (["numbers", "split_pea_soup", "--servings", "-2"], "servings is -2; give a number from 0.1 to 10,000"),
        (["numbers", "split_pea_soup", "--servings", "1e9"], "give a number from 0.1 to 10,000"),
        (["numbers", "split_pea_soup", "--servings", "1e-320"], "give a number from 0.1 to 10,000"),
        (["follow-up", "split_pea_soup", "--to", ""], '"" names no folder; write one such as "sent"'),
        (["numbers", "split_pea_soup", "--servings", "nan"], "give a number from 0.1 to 10,000"),
        (["find", "qqqqqqq"], 'no food like "qqqqqqq"'),
        (["find", "!!!"], "has no word to look for"),
        (["check", "nowhere.toml"], 'no talk or recipe file "nowhere.toml"'),
        (["import-release", "no/such/folder"], "no/such/folder"),
        (["import-release", "n" * 300], "does not exist"),
        (["follow-up", "split_pea_soup", "--to", "n" * 300], "cannot be written (File name too long)"),
        (["read", "1 cup \udcff"], r"'1 cup \udcff' is no UTF-8 text"),
        (["new", "\x00\x1b"], "a talk needs a title"),
    ],
)
def test_bad_input_gets_one_sentence_and_exit_2(capsys, arguments, says):
    code, _out, err = run(capsys, *arguments)
    assert code == 2
    assert says in err
    assert "Traceback" not in err


ODD = [
    *(
        "",
        " ",
        "\0",
        "\n",
        "\x1b[31m",
        "\u202ex",
        "n" * 300,
        "9" * 400,
        "-1",
        "--",
        "nan",
        "inf",
        "1e999",
        "1e-320",
        "1/0",
    ),
    *(
        "{energy}",
        "[[x]]",
        "=",
        "(",
        "no",
        "for 0",
        "for nan people",
        "half the",
        "x instead of y",
        "feta instead of feta",
    ),
]


def test_no_odd_argument_ends_in_a_traceback(capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    for odd in ODD:
        for command in (
            *(["read", odd], ["find", odd], ["find", "oats", "--most", odd], ["numbers", odd], ["import-release", odd]),
            *(["change", "split_pea_soup", odd], ["numbers", "split_pea_soup", "--servings", odd], ["new", odd]),
            *(["screen", odd, "--port", "70000"], ["--port", odd + "x"]),
        ):
            try:
                code, out, err = run(capsys, *command)
            except SystemExit as end:  # argparse has told it
                code, (out, err) = end.code, capsys.readouterr()
            assert code in (0, 1, 2), command
            assert (out if code < 2 else err).strip(), command


def test_the_output_is_utf_8_whatever_the_terminal_and_wherever_it_goes(tmp_path):
    surroundings = {**os.environ, "PYTHONIOENCODING": "ascii", "LC_ALL": "C", "PYTHONUTF8": "0"}

    def kit(*arguments, **streams):
        command = [sys.executable, "-m", "kit", *arguments]
        done = subprocess.run(command, env=surroundings, stderr=subprocess.PIPE, check=False, **streams)
        assert b"Traceback" not in done.stderr
        return done

    assert "½ cup oats" in kit("read", "½ cup oats", stdout=subprocess.PIPE).stdout.decode("utf-8")
    ours, theirs = os.pipe()
    os.close(ours)  # a reader that has seen enough
    assert (kit("numbers", "split_pea_soup", stdout=theirs).returncode) == 0
    os.close(theirs)
    full = Path("/dev/full")
    if full.exists():
        with full.open("wb") as stream:
            done = kit("numbers", "split_pea_soup", stdout=stream)
        assert (done.returncode, done.stderr.count(b"\n")) == (2, 1)
        assert b"the output cannot be written" in done.stderr


def test_half_a_recipe_is_worth_showing(capsys, tmp_path):
    recipe = tmp_path / "half.txt"
    recipe.write_text("Pot\nServes 4 to 6\n1 cup lentils, dry\n2 cups moon dust\n8 skewers\n", encoding="utf-8")
    code, out, err = run(capsys, "numbers", str(recipe))
    assert (code, err) == (1, "")
    assert "Energy         at least " in out
    assert "1 line is not counted yet" in out
    assert "2 cups moon dust\n    not sure" in out
    assert "4 to 6 servings: 5 are counted" in out
    assert 'no food is named: "8 skewers"' in out
    code, out, _err = run(capsys, "numbers", str(recipe), "--json")
    numbers = json.loads(out)
    assert code == 1
    assert [line["line"] for line in numbers["open"]] == ["2 cups moon dust"]
    assert numbers["open"][0]["problem"]
    assert isinstance(numbers["open"][0]["choices"], list)
    assert numbers["nutrients"]["energy"]["missing_from"] == ['"2 cups moon dust"']
    assert (numbers["servings_span"], numbers["passed_over"]) == ([4, 6], ["8 skewers"])
    assert numbers["energy_shares"] == {"protein": None, "fat": None, "carbohydrate": None}


def test_a_fault_of_a_file_is_told_beside_the_numbers(capsys, tmp_path):
    talk = tmp_path / "pot.toml"
    talk.write_text(
        'title = “Pot”\n[[ingredient]]\nline = "1 cup lentils, dry"\nswaps = [{ x = 1 }]\n', encoding="utf-8"
    )
    code, out, err = run(capsys, "numbers", str(talk))
    assert code == 2
    assert out.startswith("Pot: one of 1")
    assert 'pot.toml, line 1, title = “Pot”: the quotes have to be straight; write title = "Pot"' in err
    assert "swaps holds" in err


def test_a_talk_is_found_by_its_title_and_a_new_one_is_begun(capsys, tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    assert run(capsys, "numbers", "Barley and roasted squash box")[0] == 0
    code, out, _err = run(capsys, "new", "Turkey chili")
    assert (code, out.splitlines()[0].endswith("talks/turkey_chili.toml")) == (0, True)
    assert "1 Prepare" in out
    assert last_used().title == "Turkey chili"
    code, _out, err = run(capsys, "numbers", "turkey Chili")
    assert code == 2
    assert "turkey_chili.toml, no ingredient" in err


def test_a_new_talk_has_the_notebooks_beside_it_and_replaces_nothing_there(capsys, tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path / "own"))
    folder = tmp_path / "chili"
    folder.mkdir()
    (folder / "2_rehearse.ipynb").write_text("hers", encoding="utf-8")
    assert run(capsys, "new", "Turkey chili", "--to", str(folder))[0] == 0
    notebooks = {path.name for path in files.bundled("notebooks").glob("*.ipynb")}
    assert {path.name for path in folder.iterdir() if not path.name.startswith(".")} == {
        *notebooks,
        "turkey_chili.toml",
    }
    assert (folder / "2_rehearse.ipynb").read_text(encoding="utf-8") == "hers"


@pytest.mark.parametrize("servings", ["0", "-3", "99999999"])
def test_absurd_servings_in_a_recipe_are_refused(capsys, tmp_path, servings):
    recipe = tmp_path / "r.txt"
    recipe.write_text(f"Pot\nServes {servings}\n1 cup lentils\n", encoding="utf-8")
    code, _out, err = run(capsys, "numbers", str(recipe))
    assert code == 2
    assert "Serves 4" in err or "servings" in err


def test_numbers_load_neither_charts_nor_widgets_nor_pandas():
    heavy = "plotly ipywidgets anywidget jupyterlab notebook IPython voila pandas".split()
    script = (
        "import sys; from kit.__main__ import main; main(['numbers', 'split_pea_soup', '--json']);"
        f"print([name for name in {heavy} if name in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert done.stderr.strip() == "[]"

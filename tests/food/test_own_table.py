"""The user's own foods are read however a spreadsheet saved them, or it is said what is lost."""

import csv
import io

import pytest

from kit.errors import KitError
from kit.food.composition import foods, own_table
from kit.food.finding import find
from kit.food.labels.label import Label
from kit.food.labels.own_foods import keep

LABEL = Label(
    "Oat squares", "2/3 cup (55 g)", {"energy": 230, "fat": "8.5 g", "carbohydrate": "37 g", "protein": "3 g"}
)


@pytest.fixture
def own(tmp_path, monkeypatch):
    monkeypatch.setenv("TALK_KIT_HOME", str(tmp_path))
    keep(LABEL)
    return own_table()


def saved_again(path, *, delimiter=",", encoding="utf-8", comma=False, without=()):
    """Save a table as a spreadsheet would."""
    with open(path, encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    columns = [name for name in rows[0] if name not in without]
    text = io.StringIO()
    writer = csv.DictWriter(text, columns, delimiter=delimiter, extrasaction="ignore", lineterminator="\r\n")
    writer.writeheader()
    writer.writerows({name: cell.replace(".", ",") if comma else cell for name, cell in row.items()} for row in rows)
    path.write_bytes(text.getvalue().encode(encoding))


@pytest.mark.parametrize(
    "how",
    [
        {"encoding": "utf-8-sig"},
        {"encoding": "utf-16"},
        {"delimiter": ";", "comma": True, "encoding": "cp1252", "without": ["relative_sd"]},
        {"delimiter": "\t"},
        {"without": ["other_names", "allergens", "water", "relative_sd"]},
    ],
    ids=["with a mark", "utf-16", "semicolons and decimal commas", "tabs", "columns lost"],
)
def test_a_table_that_a_spreadsheet_saved_is_read(own, how):
    before = foods()["oat-squares"]
    saved_again(own, **how)
    after = foods()["oat-squares"]
    assert after["fat"] == pytest.approx(before["fat"])
    assert after["energy"] == pytest.approx(before["energy"])


def test_a_table_without_its_keys_is_explained(own):
    saved_again(own, without=["food"])
    with pytest.raises(KitError, match=r"foods\.csv has no column food; name its columns as it was written with"):
        foods()


def test_a_row_without_a_name_is_told(own):
    own.write_text(own.read_text(encoding="utf-8").replace("Oat squares", ""), encoding="utf-8")
    with pytest.raises(KitError, match=r"foods\.csv, row 2: name is empty; fill it in, or delete the row"):
        foods()


@pytest.mark.parametrize("name", ["Хлеб ржаной", "味噌汁", "חומוס", "Köfte hazır", "दही"])
def test_a_label_may_be_named_in_any_script(own, name):
    kept = keep(Label(name, "55 g", LABEL.amounts))
    assert foods()[kept.key].name == name
    assert find(name, 3)[0].food == kept.key

"""Tables of other programs are read, or it is said why not; what we write opens safely."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kit.errors import KitError
from kit.spreadsheets import harmless, read_table, table_text

ROWS = "food;grams\nCrème fraîche;1,5\n\nlentils;2\n"


@pytest.mark.parametrize(
    "content",
    [
        ROWS.encode(),
        ROWS.encode("utf-8-sig"),
        ROWS.encode("utf-16"),
        ROWS.encode("cp1252"),
        ROWS.replace("\n", "\r\n").encode(),
        ROWS.replace(";", "\t").encode(),
        b'food,grams\n"Cr\xc3\xa8me fra\xc3\xaeche","1,5"\nlentils,2\n',
    ],
    ids=["utf-8", "with a mark", "utf-16", "windows", "windows lines", "tabs", "commas"],
)
def test_the_same_table_is_read_however_it_was_saved(tmp_path, content):
    path = tmp_path / "foods.csv"
    path.write_bytes(content)
    table = read_table(path)
    assert table.columns == ("food", "grams")
    assert table.rows == (("Crème fraîche", "1,5"), ("lentils", "2"))


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "foods.csv is empty"),
        (b"\n \n", "foods.csv is empty"),
        (b"food,food\n", 'two columns "food"'),
        (b"food,grams\nlentils,2,3\n", "line 2: 3 cells where the header has 2"),
        (b"\0\1\2", "is no text"),
    ],
)
def test_what_is_no_table_is_told(tmp_path, content, says):
    path = tmp_path / "foods.csv"
    path.write_bytes(content)
    with pytest.raises(KitError, match=says):
        read_table(path)


def test_a_missing_file_is_told(tmp_path):
    with pytest.raises(KitError, match="cannot be read"):
        read_table(tmp_path / "no.csv")


@given(st.lists(st.lists(st.text(st.characters(exclude_categories=["Cs"])), min_size=2, max_size=2)))
def test_no_cell_that_we_write_is_a_formula(rows):
    read = list(csv.reader(io.StringIO(table_text(["a", "b"], rows), newline="")))
    for cell in (cell for row in read for cell in row):
        assert not cell.startswith(("=", "@", "\t", "\r", "\n"))
        assert not cell.startswith(("+", "-")) or cell[1:2].isdigit()


def test_numbers_stay_numbers():
    assert [harmless(cell) for cell in ("-5", "+1.5", "1e-3", "-12 %")] == ["-5", "+1.5", "1e-3", "'-12 %"]

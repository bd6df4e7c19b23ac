"""Carry the figures of USDA SR26 into data/foods.csv, exactly as printed.

    python data/carry_figures.py COMPOSITION.csv

COMPOSITION.csv is the release as one table: one food a row, `ndb_no` first, a column for each nutrient and its unit. A
new food needs only its descriptive columns in data/foods.csv; this fills in the rest, for every food.
"""

import csv
import sys
from pathlib import Path

HERE = Path(__file__).parent
UNITS = {"µg": "ug"}
OTHER_COLUMNS = {
    "saturated_fat": "fat_saturated_g",
    "monounsaturated_fat": "fat_monounsaturated_g",
    "polyunsaturated_fat": "fat_polyunsaturated_g",
    "vitamin_a": "vitamin_a_rae_ug",
    "folate": "folate_dfe_ug",
    "refuse_pct": "refuse_pct",
    "refuse_part": "refuse_part",
}


def rows(path: Path) -> list[dict[str, str]]:
    """Return the rows of a CSV table, all cells as text."""
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def main(release: str) -> None:
    """Fill in the figures of every food and write the table back."""
    figures = {row["ndb_no"]: row for row in rows(Path(release))}
    columns = {
        row["nutrient"]: f"{row['nutrient']}_{UNITS.get(row['unit'], row['unit'])}"
        for row in rows(HERE / "nutrients.csv")
    }
    columns = {"refuse_pct": "", "refuse_part": ""} | columns | OTHER_COLUMNS
    foods = rows(HERE / "foods.csv")
    as_sold = {row["food"]: row for row in rows(HERE / "refuse_as_sold.csv")}
    for food in foods:
        food |= {name: figures[food["sr26"]][column] for name, column in columns.items()}
        sold = as_sold.get(food["food"], {})
        food |= {name: sold[name] for name in ("refuse_pct", "refuse_part") if sold}
    described = [name for name in foods[0] if name not in columns]
    with open(HERE / "foods.csv", "w", encoding="utf-8", newline="") as file:
        table = csv.DictWriter(file, [*described, *columns], lineterminator="\n")
        table.writeheader()
        table.writerows(foods)


if __name__ == "__main__":
    main(*sys.argv[1:])

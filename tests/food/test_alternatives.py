"""What a line could have meant instead: other forms, and things of the same kind."""

from kit.food.alternatives import MOST, alternatives
from kit.food.composition import bundled_foods

TABLE = bundled_foods()


def names_for(key):
    return [food.name for food in alternatives(TABLE[key], TABLE)]


def test_other_forms_come_first():
    assert names_for("lentils-dry")[0].startswith("Lentils, ")
    assert names_for("onions-raw")[0].startswith("Onion, ")


def test_things_that_only_hold_the_food_are_none():
    """Naan with garlic is no garlic, and mayonnaise with olive oil no oil."""
    assert not [name for name in names_for("garlic-raw") if "bread" in name.lower()]
    assert not [name for name in names_for("olive-oil") if "Mayonnaise" in name]
    assert "Canola oil" in names_for("olive-oil")


def test_no_food_is_its_own_alternative_and_a_list_stays_short_enough_to_read():
    for food in TABLE.values():
        offered = alternatives(food, TABLE)
        assert food not in offered
        assert len(offered) <= MOST

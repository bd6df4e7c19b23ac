"""Peas and corn: sold in pods and husks, and written down without them unless a line says so."""

from kit.food.composition import Food
from kit.lines.parsed_line import ParsedLine

_COVERS = frozenset("pod podded ear cob husk husked unshelled unhusked shelled shucked".split())


def is_sold_covered(food: Food) -> bool:
    """Whether a fresh vegetable is sold in a pod or a husk that weighs more than what is eaten of it."""
    covered = any(part in food.refuse_part.lower() for part in ("pods", "husk"))
    return covered and food.state == "raw" and food.group == "vegetable"


def says_nothing_of_covers(phrase: ParsedLine) -> bool:
    """Whether a line tells neither that the pods or husks are weighed nor that they are taken off."""
    return _COVERS.isdisjoint((*phrase.said, phrase.written.measure))

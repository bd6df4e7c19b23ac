"""What a household measure of a food weighs."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Measure:
    """What one household measure of a food weighs: ``Measure("cup", "chopped", 160.0, "SR26 1")``. Grams are edible."""

    measure: str
    cut: str
    grams: float
    source: str

    @property
    def source_words(self) -> str:
        """Where the weight is from, for people; which of its measures it is only the data tells."""
        return "weighed by USDA, SR26" if self.source.startswith("SR26") else self.source

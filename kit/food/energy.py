"""Energy of food: the factors by which grams become calories, in one home."""

from types import MappingProxyType

ENERGY_SOURCES = ("protein", "fat", "carbohydrate")
# [kcal/g], in that order: FAO, "Food energy: methods of analysis and conversion factors", Food and Nutrition Paper 77,
# Rome, 2003, ch. 3; 21 CFR 101.9(c)(1)(i)(B).
ATWATER_GENERAL = (4.0, 9.0, 4.0)
KCAL_PER_GRAM = MappingProxyType(dict(zip(ENERGY_SOURCES, ATWATER_GENERAL, strict=True)))
ALCOHOL_KCAL = 7.0  # [kcal/g]: Regulation (EU) 1169/2011, Annex XIV
# Pure fat, the highest of the food-specific factors: USDA Agriculture Handbook 74. [kcal/g]
MOST_KCAL_PER_GRAM = 9.02
KJ_PER_KCAL = 4.184  # exactly: the paper of ATWATER_GENERAL
# Regulation (EU) 1169/2011, Annex XIV, per gram; its carbohydrate is without the fiber. The sums in kcal and in kJ are
# each taken with their own factors.
EU_KCAL_PER_GRAM = MappingProxyType({**KCAL_PER_GRAM, "fiber": 2.0, "alcohol": ALCOHOL_KCAL})
EU_KJ_PER_GRAM = MappingProxyType({"protein": 17.0, "fat": 37.0, "carbohydrate": 17.0, "fiber": 8.0, "alcohol": 29.0})
# The table's tolerance: of the energy, or per 100 g, whichever is wider (common practice).
ENERGY_TOLERANCE, ENERGY_TOLERANCE_KCAL = 0.15, 15.0

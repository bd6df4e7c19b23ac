"""The Nutrition Talk Kit: a recipe in kitchen measures, as numbers that may be said aloud."""

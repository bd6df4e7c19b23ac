"""A written line becomes a food and its grams, and a pasted text a recipe."""

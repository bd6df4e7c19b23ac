"""What a sentence is made of: tokens, numbers, quantities, foods, clauses."""

"""What would change in the dish, as it is said within a sentence, and what that does."""

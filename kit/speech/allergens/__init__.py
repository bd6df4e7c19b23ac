"""What is said of allergens, and whether it holds."""

"""What is published: daily values, claim rules, allergens, keeping."""

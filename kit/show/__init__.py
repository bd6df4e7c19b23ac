"""What the audience sees."""

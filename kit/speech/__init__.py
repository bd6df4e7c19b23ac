"""What is said: reading a sentence, and the verdict on it."""

"""What the dish is called: its kind, wordings with a legal meaning, and words of health."""

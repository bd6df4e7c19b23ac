"""A food typed in from its package label."""

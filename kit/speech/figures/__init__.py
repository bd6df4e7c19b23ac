"""Amounts, comparisons and counts that are said, and whether they hold."""

"""Shares of the dish, of a day and of energy that are said, and whether they hold."""

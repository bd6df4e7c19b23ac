"""Python's own functions for words and drawings as JavaScript, so that the page that is sent has no second writing."""

"""What is said: reading a sentence, and the verdict on it.

`words` makes words of a text, and `about` tells which part of the dish they are about; a family of claims reads what it
knows and judges it (`figures`, `proportions`, `allergens`, `descriptions`, `changes`, `safety`); `doubting` hears what
turns a claim or leaves it open. `reading` asks them all in order, and `checking` gives the verdict.
"""

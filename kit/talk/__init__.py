"""The talk: its values, its file, the plan on the day, practising."""

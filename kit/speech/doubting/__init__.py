"""What turns, weakens or moves a claim, and what stays unclear."""

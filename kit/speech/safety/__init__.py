"""How long it keeps, how hot it has to be, and when it is done."""

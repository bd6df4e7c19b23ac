"""What may be said about a dish."""

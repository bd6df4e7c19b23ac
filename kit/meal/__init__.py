"""One recipe as numbers."""

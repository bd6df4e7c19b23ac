"""A whole official composition release, imported."""

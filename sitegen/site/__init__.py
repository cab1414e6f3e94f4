"""TODO site."""

"""TODO article."""

"""TODO kinds."""

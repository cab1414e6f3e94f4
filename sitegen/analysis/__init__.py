"""TODO analysis."""

"""TODO figures."""

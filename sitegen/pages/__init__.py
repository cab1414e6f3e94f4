"""TODO pages."""

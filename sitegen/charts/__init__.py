"""TODO charts."""

"""TODO harmony."""

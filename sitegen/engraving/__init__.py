"""TODO engraving."""

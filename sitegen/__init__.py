"""Breakdowns of recorded songs, from Markdown with chart blocks to a published site."""

__version__ = "0.1.0"

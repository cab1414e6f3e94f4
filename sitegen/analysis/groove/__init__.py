"""Groove: the rhythm of parts and drums as facts."""

from sitegen.analysis.groove.findings import find_groove

__all__ = ["find_groove"]

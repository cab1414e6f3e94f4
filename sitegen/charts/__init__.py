"""Readers: the text of a chart block becomes values and faults; nothing raises, nothing prints."""

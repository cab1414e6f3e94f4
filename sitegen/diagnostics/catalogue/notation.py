"""Codes for faults found in: notation."""

from sitegen.diagnostics.catalogue.code import Code

NOTATION_CODES: tuple[Code, ...] = ()

"""Codes for faults found in: harmony."""

from sitegen.diagnostics.catalogue.code import Code

HARMONY_CODES: tuple[Code, ...] = ()

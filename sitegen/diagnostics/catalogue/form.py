"""Codes for faults found in: form."""

from sitegen.diagnostics.catalogue.code import Code

FORM_CODES: tuple[Code, ...] = ()

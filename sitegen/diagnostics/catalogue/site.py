"""Codes for faults found in: site."""

from sitegen.diagnostics.catalogue.code import Code

SITE_CODES: tuple[Code, ...] = ()

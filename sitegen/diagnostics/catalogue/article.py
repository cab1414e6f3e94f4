"""Codes for faults found in: article."""

from sitegen.diagnostics.catalogue.code import Code

ARTICLE_CODES: tuple[Code, ...] = ()

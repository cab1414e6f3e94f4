"""Every code that a diagnostic can bear; a code is never used again for something else."""

from sitegen.diagnostics.catalogue.article import ARTICLE_CODES
from sitegen.diagnostics.catalogue.code import Code
from sitegen.diagnostics.catalogue.excerpt import EXCERPT_CODES
from sitegen.diagnostics.catalogue.form import FORM_CODES
from sitegen.diagnostics.catalogue.harmony import HARMONY_CODES
from sitegen.diagnostics.catalogue.notation import NOTATION_CODES
from sitegen.diagnostics.catalogue.site import SITE_CODES

_ALL = (
    *ARTICLE_CODES,
    *NOTATION_CODES,
    *FORM_CODES,
    *EXCERPT_CODES,
    *HARMONY_CODES,
    *SITE_CODES,
)

CATALOGUE: dict[str, Code] = {code.name: code for code in _ALL}
"""The codes by name."""

__all__ = ["CATALOGUE", "Code"]

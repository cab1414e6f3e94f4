"""Non-chord tones by the textbook's names: passing, neighbour, suspension, ..."""

from sitegen.analysis.embellishments.embellishment import (
    Embellishment,
    list_embellishments,
    name_embellishments,
)
from sitegen.analysis.embellishments.facts import find_embellishments

__all__ = [
    "Embellishment",
    "find_embellishments",
    "list_embellishments",
    "name_embellishments",
]

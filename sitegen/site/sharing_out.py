"""A page that outweighs the others, shared out: several processes draw its charts beforehand.

Processes share pages. One long write-up would be drawn by one of them while others wait, so its
charts are drawn in parts first and kept in the cache, where the page finds them.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from sitegen.site.drawing import draw_ahead
from sitegen.site.pressing import Press, Sheet
from sitegen.site.study import study_file
from sitegen.site.survey import survey_of

USUAL = 14_000
"""The size of a usual write-up in bytes: seven charts and some seven hundred words."""


@dataclass(frozen=True)
class Part:
    """Every `of`-th chart of a page, from the one with the place `first` on."""

    sheet: Sheet
    first: int
    of: int


def share_out(sizes: Mapping[Sheet, int], jobs: int) -> tuple[Part, ...]:
    """Return the parts of the pages that are larger than the share of one of `jobs` processes.

    `sizes` are those of all pages that are to be made, in bytes. What is not much larger than a
    usual write-up is left whole, since each part reads the page once more.
    """
    share = sum(sizes.values()) / jobs
    return tuple(
        Part(sheet, first, of)
        for sheet, size in sizes.items()
        if size > share and size >= 2 * USUAL
        for of in [min(jobs, size // USUAL)]
        for first in range(of)
        if of > 1
    )


def draw_part(part: Part, press: Press) -> None:
    """Draw the charts of a part and keep them; what fails is told when the page itself is made."""
    study = study_file(part.sheet.file, press.kinds)
    if press.kept is not None and survey_of(study, strict=press.strict).is_good:
        draw_ahead(study, press.kept, part.first, part.of)

"""Codes for faults found in: excerpt."""

from sitegen.diagnostics.catalogue.code import Code

_TUNE = "X:1\nM:4/4\nL:1/4\nK:G\nGABc|d2B2|\n"
_BESIDE = (
    ("breakdowns/example/tune.abc", _TUNE),
    ("breakdowns/example/graced.abc", _TUNE.replace("GABc", "{g}GABc")),
    ("breakdowns/example/held.abc", _TUNE.replace("GABc|d2B2|", "GABc-|c2B2|")),
    ("breakdowns/example/broken.musicxml", "<!DOCTYPE x [<!ENTITY a 'b'>]><score-partwise/>"),
)


def _excerpt(*lines: str) -> str:
    return "\n".join(("```excerpt", *lines, "```", ""))


_GOOD = _excerpt("file: tune.abc", "bars: 1-2")

EXCERPT_CODES: tuple[Code, ...] = (
    Code(
        "excerpt-file",
        "error",
        "The score file is not there, is of no kind that is read, or lies outside the folder.",
        _excerpt("file: tunes.abc"),
        _GOOD,
        beside=_BESIDE,
    ),
    Code(
        "excerpt-score",
        "error",
        "The file is no score, is damaged or too large, or asks its reader for more than reading.",
        _excerpt("file: broken.musicxml"),
        _GOOD,
        beside=_BESIDE,
    ),
    Code(
        "excerpt-bars",
        "error",
        "The score has not the bars that are asked for, or they are too many for an excerpt.",
        _excerpt("file: tune.abc", "bars: 7-9"),
        _GOOD,
        beside=_BESIDE,
    ),
    Code(
        "excerpt-part",
        "error",
        "The score has no part of that name, or too many to show them all.",
        _excerpt("file: tune.abc", "parts: tuba"),
        _excerpt("file: tune.abc", "parts: melody"),
        beside=_BESIDE,
    ),
    Code(
        "excerpt-line",
        "error",
        "Music is typed below an excerpt, whose music stands in its file.",
        _excerpt("file: tune.abc", "", "voice | C5 |"),
        _GOOD,
        beside=_BESIDE,
    ),
    Code(
        "excerpt-loss",
        "warning",
        "The score has something that a chart cannot show; the rest is shown.",
        _excerpt("file: graced.abc"),
        _GOOD,
        beside=_BESIDE,
    ),
    Code(
        "excerpt-held",
        "note",
        "A note sounds on from the bar before the first one shown, or after the last; it is shown "
        "as if it began or ended there.",
        _excerpt("file: held.abc", "bars: 2"),
        _excerpt("file: held.abc", "bars: 1-2"),
        beside=_BESIDE,
    ),
)

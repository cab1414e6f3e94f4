"""What a save costs in the preview of an archive, beside floors measured in the same run.

`measure_saves` is one of the measurements of `building.py`. The floor of a save of prose is one
render of its Markdown and one template; of a save of a chart, what verovio takes for it.
"""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from bench.engraving import Clock
from unit.preview.latency import add_prose, floor, save_to_event

PROSE, CHART = 150.0, 60.0
"""Milliseconds that a save may take over its floor."""

_ROUNDS = 9
_NOTATION = re.compile(r"^```notation\n(?:.*\n)*?```$", re.MULTILINE)
_TEMPO = re.compile(r"^tempo: .*\n", re.MULTILINE)


class Saves(NamedTuple):
    """Milliseconds from a save to its event over the floor: of prose, and of a chart."""

    prose: float
    chart: float


def measure_saves(content: Path, cache: Path) -> Saves:
    """Save the first write-up of an archive again and again, and return the least of each."""
    path = next(iter(sorted((content / "breakdowns").iterdir()))) / "article.md"
    slug = path.parent.name
    least = min(floor(path, _ROUNDS))
    prose = min(save_to_event(content, cache, slug, add_prose, _ROUNDS)) - least
    chart = min(save_to_event(content, cache, slug, change_tempo, _ROUNDS))
    return Saves(prose * 1000, (chart - min(_engraving(path))) * 1000)


def change_tempo(text: str, number: int) -> str:
    """Return a write-up with another tempo in its first chart of notation."""
    match = _NOTATION.search(text)
    if match is None:
        raise ValueError("the write-up has no notation")
    plain = _TEMPO.sub("", match[0]).removeprefix("```notation\n")
    fence = f"```notation\ntempo: {100 + number}\n{plain}"
    return text[: match.start()] + fence + text[match.end() :]


def _engraving(path: Path) -> Iterator[float]:
    """Yield the seconds that verovio takes for the first chart of notation, round by round."""
    import verovio  # noqa: PLC0415 - heavy, and timed from here on

    from sitegen.kinds import KINDS  # noqa: PLC0415 - after verovio
    from sitegen.site.content import ContentFile  # noqa: PLC0415 - as above
    from sitegen.site.study import study_file  # noqa: PLC0415 - as above

    clock, kit = Clock(), verovio.toolkit
    plain: tuple[Any, Any] = (kit.loadData, kit.renderToSVG)
    kit.loadData = clock.around(plain[0])  # type: ignore[method-assign]
    kit.renderToSVG = clock.around(plain[1])  # type: ignore[method-assign]
    try:
        charts = study_file(ContentFile(path.parent.name, path), KINDS).charts
        chart = next(one for one in charts if one.named.chart.kind.name == "notation")
        for _ in range(_ROUNDS):
            clock.spent = 0.0
            if chart.analysis is not None:
                chart.named.chart.kind.draw(chart.analysis, chart.surroundings)
            yield clock.spent
    finally:
        kit.loadData, kit.renderToSVG = plain  # type: ignore[method-assign]

"""What our own part of engraving costs beside verovio's.

Run it with `python tests/bench/engraving.py`. It draws every notation chart of the demo site, with
all that goes with one (both widths, the other way, the files to take away, the sound), and prints
the time of everything but verovio's own `loadData` and `renderToSVG` as a share of theirs in the
same run, and how many renders there are for how many sheets. The best of several runs, caches of
rhythms and chord kinds warm. The target is 15 per cent.
"""

import sys
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from time import process_time
from typing import Any

ROOT = Path(__file__).parents[2]
RUNS = 5
TARGET = 0.15


class Clock:
    """Adds up the time and the number of calls of what it wraps."""

    def __init__(self) -> None:
        self.spent = 0.0
        self.calls = 0

    def around(self, work: Callable[..., Any]) -> Callable[..., Any]:
        """Return `work`, timed."""

        def timed(*arguments: object) -> object:
            start = process_time()
            try:
                return work(*arguments)
            finally:
                self.spent += process_time() - start
                self.calls += 1

        return timed


def main() -> int:
    """Print the shares; nothing is asserted."""
    import verovio  # noqa: PLC0415 - heavy, and timed from here on

    load, render = Clock(), Clock()
    kit = verovio.toolkit
    kit.loadData = load.around(kit.loadData)  # type: ignore[method-assign]
    kit.renderToSVG = render.around(kit.renderToSVG)  # type: ignore[method-assign]
    drawings = list(charts())
    runs = [_run(drawings, load, render) for _ in range(RUNS)]
    ours, theirs = min(own for own, _ in runs), min(engraver for _, engraver in runs)
    sheets = sum(_sheets(draw()) for draw in drawings)
    verdict = "reached" if ours / theirs < TARGET else "missed"
    print(f"{render.calls // (RUNS + 1)} renders for {sheets} sheets")
    print(f"own time {ours / theirs:.1%} of verovio's  {verdict}")
    return 0


def _run(drawings: list[Callable[[], Any]], load: Clock, render: Clock) -> tuple[float, float]:
    """Return our own seconds and verovio's for all charts."""
    load.spent = render.spent = 0.0
    start = process_time()
    for draw in drawings:
        draw()
    engraver = load.spent + render.spent
    return process_time() - start - engraver, engraver


def _sheets(drawing: Any) -> int:  # noqa: ANN401 - the content of a drawing is the theme's
    return 2 if drawing.content.other_way is None else 4


def charts() -> Iterator[Callable[[], Any]]:
    """Yield what draws each chart of notation."""
    from sitegen.kinds import KINDS  # noqa: PLC0415 - after the path is set
    from sitegen.kinds.notation import NOTATION  # noqa: PLC0415 - as above
    from sitegen.site.content import scan_content  # noqa: PLC0415 - as above
    from sitegen.site.study import study_file  # noqa: PLC0415 - as above

    for file in scan_content(ROOT / "content").articles:
        for studied in study_file(file, KINDS).charts:
            if studied.named.chart.kind.name == NOTATION.name and studied.analysis is not None:
                yield partial(NOTATION.draw, studied.analysis, studied.surroundings)


if __name__ == "__main__":
    sys.path[:0] = [str(ROOT)]
    sys.exit(main())

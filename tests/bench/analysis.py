"""What finding everything in a chart costs beside engraving it.

Run it with `python tests/bench/analysis.py`. For every notation chart of the demo site it prints
how long the study takes as a share of the engraving, two widths, in the same run: the best of
several runs each, the process warm. The target is a tenth.
"""

import sys
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from time import perf_counter
from typing import Any

ROOT = Path(__file__).parents[2]
RUNS = 5
TARGET = 0.1


def main() -> int:
    """Print the table; nothing is asserted."""
    from sitegen.engraving import engrave  # noqa: PLC0415 - after the path is set

    for name, study in charts():
        reading = study()
        bars, parts = reading.chart.bar_count, len(reading.chart.parts)
        share = best(study) / best(partial(engrave, reading, "x"))
        verdict = "reached" if share < TARGET else "missed"
        print(f"{name:<32} {bars:>3} bars {parts} parts  {share:>7.1%}  {verdict}", flush=True)
    return 0


def charts() -> Iterator[tuple[str, Callable[[], Any]]]:
    """Yield the charts of notation, each as what studies it anew."""
    from sitegen.analysis.study import study_chart  # noqa: PLC0415 - after the path is set
    from sitegen.kinds import KINDS  # noqa: PLC0415 - as above
    from sitegen.score.chart import Chart  # noqa: PLC0415 - as above
    from sitegen.site.content import scan_content  # noqa: PLC0415 - as above
    from sitegen.site.study import study_file  # noqa: PLC0415 - as above

    for file in scan_content(ROOT / "content").articles:
        for studied in study_file(file, KINDS).charts:
            chart, source = studied.named.chart.reading.chart, studied.surroundings.source
            if isinstance(chart, Chart) and chart.kind == "notation":
                name = f"{file.path.parent.name}: {studied.named.id}"
                yield name, partial(study_chart, chart, source)


def best(work: Callable[[], object]) -> float:
    """Return the seconds of the fastest of some runs."""
    times = []
    for _ in range(RUNS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return min(times)


if __name__ == "__main__":
    sys.path[:0] = [str(ROOT)]
    sys.exit(main())

"""The kinds of charts with their notation left undrawn, for archives of thousands in minutes.

Each chart of notes is read, studied and told as always, and shows the first one that was drawn in
its process. `python tests/bench/undrawn.py CONTENT OUT` builds a site of them on one process.
"""

import sys
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from sitegen.analysis.account import account, summary  # noqa: E402 - after the path is set
from sitegen.kinds import KINDS  # noqa: E402 - as above
from sitegen.kinds.kind import Analysis, BarAccount, Drawing, Surroundings  # noqa: E402 - as above
from sitegen.kinds.notation import NOTATION, draw_notation  # noqa: E402 - as above
from sitegen.site.build import build_site  # noqa: E402 - as above
from sitegen.site.order import Order  # noqa: E402 - as above

_drawn: list[Drawing] = []


def draw_once(analysis: Analysis, surroundings: Surroundings) -> Drawing:
    """Return a chart as the first one looks, with its own words and findings."""
    if not _drawn:
        _drawn.append(replace(draw_notation(analysis, surroundings), files={}, sound=None))
    bars = tuple(BarAccount(place, said) for place, said in account(analysis.value))
    return replace(
        _drawn[0], summary=summary(analysis.value), account=bars, findings=analysis.findings
    )


UNDRAWN = tuple(replace(kind, draw=draw_once) if kind == NOTATION else kind for kind in KINDS)


def main(arguments: list[str]) -> int:
    """Build the site and say what came of it."""
    content, out = map(Path, arguments)
    report = build_site(Order(content, out, UNDRAWN, jobs=1), lambda *_: None)
    print(report.summary())
    return 1 if report.diagnostics or report.bugs else 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))

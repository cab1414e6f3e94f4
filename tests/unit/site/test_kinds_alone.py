"""A write-up may hold one chart of any kind, below a heading, and nothing else."""

from pathlib import Path

import pytest

from sitegen.kinds import KINDS
from sitegen.kinds.kind import ChartKind
from sitegen.site.build import build_site
from sitegen.site.order import Order

ARTICLE = """\
---
title: Alone
summary: One chart.
---

Listen.

## The verse

```{name}
{example}
```
"""


@pytest.mark.parametrize("kind", [*KINDS, None], ids=lambda kind: kind.name if kind else "none")
def test_a_write_up_with_one_chart_is_set_by_the_theme(
    kind: ChartKind | None, tmp_path: Path
) -> None:
    folder = tmp_path / "content/breakdowns/alone"
    folder.mkdir(parents=True)
    (tmp_path / "content/site.toml").write_text('title = "Side Two"\n', encoding="utf-8")
    chart = ARTICLE.format(name=kind.name, example=kind.example) if kind else ""
    text = chart or ARTICLE.partition("```")[0]
    (folder / "article.md").write_text(text, encoding="utf-8")
    for name, data in kind.example_files.items() if kind else ():
        (folder / name).write_bytes(data if isinstance(data, bytes) else data.encode())

    out = tmp_path / "published"
    report = build_site(
        Order(tmp_path / "content", out, KINDS, drafts=True, jobs=1), lambda *_: None
    )

    assert not report.bugs
    assert not [found for found in report.diagnostics if found.is_error]
    page = (out / "breakdowns/alone/index.html").read_text("utf-8")
    assert ('class="chart chart-' in page) == (kind is not None)

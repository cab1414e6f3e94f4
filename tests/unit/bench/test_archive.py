"""A synthetic archive is the same each time, with no chart twice and no fault."""

import re
from pathlib import Path

from bench.archive import draw_articles, write_archive

from sitegen.kinds import KINDS
from sitegen.site.inspection import inspect


def _charts(text: str) -> list[str]:
    """Return the notation and changes of a write-up without their ids and titles."""
    blocks = re.findall(r"```(?:notation|changes)\n.*?\n.*?\n(.*?)```", text, re.DOTALL)
    return [block.strip() for block in blocks]


def test_a_seed_gives_the_same_write_ups_and_fewer_are_the_first_of_more() -> None:
    more = list(draw_articles(12, seed=4))

    assert list(draw_articles(12, seed=4)) == more
    assert list(draw_articles(5, seed=4)) == more[:5]
    assert list(draw_articles(12, seed=5)) != more


def test_every_write_up_has_six_charts_and_a_plan_and_none_is_there_twice() -> None:
    articles = list(draw_articles(60))
    charts = [chart for article in articles for chart in _charts(article.text)]

    assert len(charts) == 6 * 60
    assert len(set(charts)) == len(charts)
    assert all(article.text.count("```form\n") == 1 for article in articles)
    assert len({article.slug for article in articles}) == 60


def test_the_prose_has_600_to_1200_words() -> None:
    for article in draw_articles(60):
        body = article.text.split("\n---\n", 1)[1]
        words = len(re.sub(r"```.*?```", "", body, flags=re.DOTALL).split())
        assert 600 <= words <= 1200


def test_nothing_is_wrong_with_an_archive(tmp_path: Path) -> None:
    write_archive(tmp_path, 8)

    inspection = inspect((tmp_path,), KINDS)

    assert inspection.diagnostics == ()
    assert inspection.bugs == ()

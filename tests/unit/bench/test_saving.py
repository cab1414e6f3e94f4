"""The save of a chart that is measured changes that chart, and nothing else."""

from bench.archive import draw_articles
from bench.saving import change_tempo


def test_only_the_tempo_of_the_first_notation_is_changed() -> None:
    (article,) = draw_articles(1)
    first, second = change_tempo(article.text, 0), change_tempo(article.text, 1)
    pairs = zip(first.splitlines(), second.splitlines(), strict=True)

    assert [pair for pair in pairs if pair[0] != pair[1]] == [("tempo: 100", "tempo: 101")]

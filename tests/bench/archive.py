"""Make a synthetic archive: as many write-ups as asked for, each with six charts and a form plan.

Run it with `python tests/bench/archive.py FOLDER --articles 200 --seed 1`. The same seed gives the
same files, and a smaller archive is the beginning of a larger one. No two charts are alike: their
music is drawn by lot from scales, chords and patterns, and a chart that was there before is drawn
again. All names are invented.
"""

import argparse
import sys
from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import NamedTuple

ROOT = Path(__file__).parents[2]
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from bench import archive_names as names  # noqa: E402 - after the path is set
from bench.archive_charts import (  # noqa: E402 - as above
    Plan,
    Song,
    TypedChart,
    choose_song,
    clock,
    type_charts,
    type_plan,
)
from bench.archive_harmony import key_text  # noqa: E402 - as above
from bench.archive_prose import Prose  # noqa: E402 - as above

_FEWEST_WORDS, _MOST_WORDS = 500, 900
_SETTINGS = """\
title = "The Drawn Lot"
tagline = "Songs that nobody wrote, taken apart"
author = "Ottla Vexmere"
language = "en"
theme = "liner"
menu = ["about"]
notice = "Everything here is drawn by lot."
"""
_ABOUT = """\
---
title: About this archive
---

Its songs, players and sources are invented, and its music was drawn by lot to measure how long
a site takes to build.
"""


class TypedArticle(NamedTuple):
    """A write-up: its address and the text of its file."""

    slug: str
    text: str


def main(arguments: list[str]) -> int:
    """Write the archive that the command line asks for."""
    parser = argparse.ArgumentParser(description="Write a synthetic archive.")
    parser.add_argument("folder", type=Path)
    parser.add_argument("--articles", type=int, default=200)
    parser.add_argument("--seed", type=int, default=1)
    asked = parser.parse_args(arguments)
    write_archive(asked.folder, asked.articles, asked.seed)
    print(f"{asked.articles} write-ups in {asked.folder}")
    return 0


def write_archive(folder: Path, articles: int, seed: int = 1) -> None:
    """Write a content folder with so many write-ups into `folder`, which is made."""
    (folder / "pages").mkdir(parents=True, exist_ok=True)
    (folder / "site.toml").write_text(_SETTINGS, encoding="utf-8")
    (folder / "pages/about.md").write_text(_ABOUT, encoding="utf-8")
    for article in draw_articles(articles, seed):
        place = folder / "breakdowns" / article.slug
        place.mkdir(parents=True, exist_ok=True)
        (place / "article.md").write_text(article.text, encoding="utf-8")


def draw_articles(articles: int, seed: int = 1) -> Iterator[TypedArticle]:
    """Yield so many write-ups, with no chart, title or address twice."""
    slugs: set[str] = set()
    bodies: set[str] = set()
    for number in range(articles):
        draw = Random(f"{seed}-{number}")  # noqa: S311 - no secret
        title = _new_title(slugs, draw)
        song = choose_song(draw)
        charts = type_charts(song, draw)
        while len({chart.body for chart in charts} - bodies) < len(charts):
            charts = type_charts(song, draw)
        bodies.update(chart.body for chart in charts)
        yield TypedArticle(names.slug_of(title), _type_article(title, song, charts, draw))


def _new_title(slugs: set[str], draw: Random) -> str:
    title = names.song_title(draw)
    while names.slug_of(title) in slugs:
        title = f"{names.song_title(draw)} {len(slugs)}"
    slugs.add(names.slug_of(title))
    return title


def _type_article(title: str, song: Song, charts: list[TypedChart], draw: Random) -> str:
    plan = type_plan(song, title, charts, draw)
    words = draw.randint(_FEWEST_WORDS, _MOST_WORDS)
    body = Prose(song, charts, plan, words, draw).text()
    return f"---\n{_front(title, song, plan, draw)}---\n\n{body}\n"


def _front(title: str, song: Song, plan: Plan, draw: Random) -> str:
    band = [names.person(draw) for _ in range(4)]
    published = names.day(draw)
    moments = "".join(
        f'  - time: "{clock(seconds)}"\n    name: {name}\n'
        for name, seconds in list(plan.starts.items())[:4]
    )
    played = ", ".join(f'"{who}"' for who in band[:2])
    return f"""\
title: "{title}: a song in {key_text(song.key)}"
summary: >-
  How {names.surname(draw)} and the others share out {song.pulse.text.split()[0]} between them,
  and what the last chorus does with it.
status: published
published: {published}
song:
  title: "{title}"
  artist: {names.act(draw)}
  year: {published.year - draw.randint(0, 30)}
  album: {names.song_title(draw)}
  writers: [{played}]
  producers: [{names.person(draw)}]
  engineers: [{names.person(draw)}]
  performers:
    - {band[0]}, voice
    - {band[1]}, guitar
    - {band[2]}, bass
    - {band[3]}, drums
  studio: The {names.surname(draw)} rooms
  key: {key_text(song.key)}
  tempo: {song.tempo_text}
  meter: {song.pulse.text}
  tuning: {song.guitar.text}
  length: "{clock(plan.length)}"
moments:
{moments}topics: [{draw.choice(("bass lines", "tunings", "drum parts"))}, {song.key.mode}]
sources:
  - who: {band[1]}
    what: showed me the guitar part
    where: in conversation, {names.surname(draw)}
    when: {draw.randint(1, 28)} March {published.year - 1}
  - who: {names.person(draw)}
    what: lent me the rehearsal tape
    where: by post
    when: {draw.randint(1, 28)} June {published.year - 1}
corrections:
  - date: {published}
    what: The tempo was given too slow by two beats a minute.
rights:
  holder: {names.act(draw)}
  note: The bars are short and stand beside what is said about them.
"""


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

"""The credits of a song as rows of a name and its words, as a sleeve prints them."""

from dataclasses import dataclass

from sitegen.article.front import Song
from sitegen.pages.directions import isolated
from sitegen.pages.lettering import spoken_date
from sitegen.pages.views import ArticleView
from sitegen.score.clock import clock_text


@dataclass(frozen=True)
class Credit:
    """One row: what it is, and who or what it was, one text a line."""

    name: str
    texts: tuple[str, ...]


@dataclass(frozen=True)
class LabelFacts:
    """What stands on the round label; "" for what is not known."""

    key: str
    tempo: str
    meter: str
    length: str


def song_credits(song: Song) -> tuple[Credit, ...]:
    """Return who made a song and its recording, in a sleeve's order; unknown rows are left out."""
    return _known(
        ("Artist", (song.artist,)),
        ("Written by", song.writers),
        ("Played by", song.performers),
        ("Produced by", song.producers),
        ("Engineered by", song.engineers),
        ("Recorded at", (song.studio,)),
    )


def recording_facts(song: Song) -> tuple[Credit, ...]:
    """Return what the recording is and the musical facts of the song; unknown rows left out."""
    return (
        *_known(
            ("Song", (song.title,)),
            ("Album", (song.album,)),
            ("Year", (_plain(song.year),)),
            ("Length", (_length(song),)),
        ),
        *musical_facts(song),
    )


def musical_facts(song: Song) -> tuple[Credit, ...]:
    """Return the musical facts of a song, which the archive lists too; unknown rows left out."""
    return _known(
        ("Key", (_plain(song.key),)),
        ("Tempo", (_plain(song.tempo),)),
        ("Meter", (_plain(song.meter),)),
        ("Tuning", (song.tuning,)),
    )


def label_facts(song: Song) -> LabelFacts | None:
    """Return what the round label says, None where neither key, tempo nor meter is known."""
    if song.key is None and song.tempo is None and song.meter is None:
        return None
    number = "" if song.tempo is None else f"{float(song.tempo.beats_per_minute):g} bpm"
    return LabelFacts(_plain(song.key), number, _plain(song.meter), _length(song))


def byline(article: ArticleView) -> str:
    """Return who wrote the notes and when: "By A. Writer, 4 May 2026; revised 1 June 2026"."""
    front = article.front
    parts = [f"By {isolated(article.site.author)}"] if article.site.author else []
    if front.published:
        parts.append(spoken_date(front.published))
    revised = f"revised {spoken_date(front.updated)}" if front.updated else ""
    return "; ".join(part for part in (", ".join(parts), revised) if part)


def _known(*rows: tuple[str, tuple[str, ...]]) -> tuple[Credit, ...]:
    return tuple(Credit(name, texts) for name, texts in rows if any(texts))


def _plain(value: object) -> str:
    return "" if value is None else str(value)


def _length(song: Song) -> str:
    return "" if song.length is None else clock_text(song.length)

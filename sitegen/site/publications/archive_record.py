"""The archive for other programs: `archive.json`, whose form is told in DEVELOPERS.md."""

import json
from collections.abc import Sequence
from typing import Any

from sitegen.article import FrontMatter
from sitegen.finding import ChartEntry, Section
from sitegen.site.listing import Listed
from sitegen.site.publications.absolute import whole_address
from sitegen.site.settings import Settings

ARCHIVE = "archive.json"
VERSION = 1


def make_archive(settings: Settings, articles: Sequence[Listed]) -> bytes:
    """Return all published write-ups in the archive's order; drafts are left out."""
    record = {
        "version": VERSION,
        "title": settings.title,
        "address": settings.address or None,
        "language": settings.language,
        "write_ups": [_write_up(settings, one) for one in articles if not one.draft],
    }
    return (json.dumps(record, ensure_ascii=False, indent=1) + "\n").encode()


def _write_up(settings: Settings, one: Listed) -> dict[str, Any]:
    front = one.front
    return {
        "path": one.address,
        "address": whole_address(settings, one.address) if settings.address else None,
        "title": front.title,
        "summary": front.summary or None,
        "published": None if front.published is None else front.published.isoformat(),
        "updated": None if front.updated is None else front.updated.isoformat(),
        "topics": list(front.topics),
        "song": _song(front),
        "charts": [_chart(chart) for chart in one.entry.charts],
        "sections": [_section(section) for section in one.entry.sections],
    }


def _song(front: FrontMatter) -> dict[str, Any]:
    song = front.song
    tempo = song.tempo
    return {
        "title": song.title or None,
        "artist": song.artist or None,
        "year": song.year,
        "album": song.album or None,
        "writers": list(song.writers),
        "producers": list(song.producers),
        "engineers": list(song.engineers),
        "performers": list(song.performers),
        "key": None if song.key is None else str(song.key),
        "tempo": None if tempo is None else float(tempo.beats_per_minute),
        "meter": None if song.meter is None else str(song.meter),
        "tuning": song.tuning or None,
        "length": song.length,
    }


def _chart(chart: ChartEntry) -> dict[str, Any]:
    found = chart.progression
    return {
        "id": chart.id,
        "anchor": chart.anchor,
        "name": chart.name,
        "title": chart.title or None,
        "kind": chart.kind,
        "key": chart.key or None,
        "meter": chart.meter,
        "tempo": chart.tempo or None,
        "bars": chart.bars,
        "instruments": list(chart.instruments),
        "tunings": list(chart.tunings),
        "chords": [] if found is None else [step.symbol for step in found.steps],
        "techniques": [technique.name for technique in chart.techniques],
    }


def _section(section: Section) -> dict[str, Any]:
    start = None if section.start < 0 else section.start
    return {
        "name": section.name,
        "letter": section.letter,
        "bars": section.bars,
        "start": start,
    }

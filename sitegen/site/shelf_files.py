"""The files that searches in the browser read: small indexes of all write-ups."""

import zlib
from collections.abc import Mapping, Sequence

from sitegen.finding.beats_index import beats_file
from sitegen.finding.chord_readings import readings_file
from sitegen.finding.chords_index import chords_file
from sitegen.finding.names import name_files
from sitegen.finding.tunes_index import KINDS, tune_files
from sitegen.site.listing import Listed

SHELF = "shelf/"
"""The folder of the index files, from the top of the site."""

_MOST = 200_000
"""Compressed bytes of tunes that a first question may load."""


def shelf_files(articles: Sequence[Listed]) -> Mapping[str, bytes]:
    """Return the index files by path from the top; all count write-ups in the archive's order."""
    rows = [(one.address, one.front, one.entry) for one in articles]
    entries = [one.entry for one in articles]
    files = dict(name_files(rows))
    files["chords.json"] = chords_file(entries)
    files["readings.json"] = readings_file()
    files |= tune_files(entries)
    files["beats.json"] = beats_file(entries)
    return {f"{SHELF}{name}": data for name, data in files.items()}


def first_lines(files: Mapping[str, bytes]) -> str:
    """Return the lines in which tunes are looked up unless a reader chooses others.

    They are all of them, "any", and only the sung ones where all would take long to load.
    """
    tunes = (files[f"{SHELF}tunes-{kind}.json"] for kind in KINDS)
    return "any" if sum(len(zlib.compress(data)) for data in tunes) <= _MOST else "sung"

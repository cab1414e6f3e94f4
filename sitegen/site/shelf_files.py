"""The files that searches in the browser read: small indexes of all write-ups."""

from collections.abc import Mapping, Sequence

from sitegen.finding.beats_index import beats_file
from sitegen.finding.chord_readings import readings_file
from sitegen.finding.chords_index import chords_file
from sitegen.finding.names import name_files
from sitegen.finding.tunes_index import tunes_file
from sitegen.site.listing import Listed

SHELF = "shelf/"
"""The folder of the index files, from the top of the site."""


def shelf_files(articles: Sequence[Listed]) -> Mapping[str, bytes]:
    """Return the index files by path from the top; all count write-ups in the archive's order."""
    rows = [(one.address, one.front, one.entry) for one in articles]
    entries = [one.entry for one in articles]
    files = dict(name_files(rows))
    files["chords.json"] = chords_file(entries)
    files["readings.json"] = readings_file()
    files["tunes.json"] = tunes_file(entries)
    files["beats.json"] = beats_file(entries)
    return {f"{SHELF}{name}": data for name, data in files.items()}

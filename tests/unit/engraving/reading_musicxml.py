"""MusicXML read back: by the standard's own schema, and by music21 as any other program would."""

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from importlib.metadata import PackageNotFoundError, files
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from sitegen.score.chart import Chart, Part

# The schema imports two others from the web: of xml: and xlink: attributes, none of which is
# written here. They are declared as plain text in the place of the real ones.
_IMPORTED = {
    "xml.xsd": ("http://www.w3.org/XML/1998/namespace", ("lang", "space")),
    "xlink.xsd": (
        "http://www.w3.org/1999/xlink",
        ("href", "type", "role", "title", "show", "actuate"),
    ),
}


def schema_path() -> Path | None:
    """Return the schema of MusicXML 4.0 (W3C Music Notation Community Group, 2021).

    SITEGEN_MUSICXML_SCHEMA names it; else it is the copy in the PyPI package `musicxml`, which
    need not be imported.
    """
    named = os.environ.get("SITEGEN_MUSICXML_SCHEMA")
    if named:
        return Path(named)
    try:
        found = [file for file in files("musicxml") or () if file.name == "musicxml_4_0.xsd"]
    except PackageNotFoundError:
        return None
    return Path(str(found[0].locate())) if found else None


class _Attributes(etree.Resolver):
    def resolve(
        self,
        system_url: str | None,
        public_id: str | None,  # noqa: ARG002 - the same
        context: Any,  # noqa: ANN401 - the same
    ) -> Any:  # noqa: ANN401 - the same
        name = (system_url or "").rpartition("/")[2]
        if name not in _IMPORTED:
            return None
        space, attributes = _IMPORTED[name]
        declared = "".join(f'<xs:attribute name="{a}" type="xs:string"/>' for a in attributes)
        schema = f'xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="{space}"'
        return self.resolve_string(f"<xs:schema {schema}>{declared}</xs:schema>", context)


@cache
def load_schema() -> etree.XMLSchema:
    """Return the schema; the test is skipped where there is none."""
    path = schema_path()
    if path is None or not path.is_file():
        pytest.skip("no MusicXML schema: name musicxml.xsd 4.0 in SITEGEN_MUSICXML_SCHEMA")
    parser = etree.XMLParser()
    parser.resolvers.add(_Attributes())
    return etree.XMLSchema(etree.parse(str(path), parser))


@dataclass
class Heard:
    """What a file says to a program: notes by part, and what stands over and under them."""

    bars: int
    notes: list[list[tuple[Fraction, int, Fraction]]]
    words: list[tuple[Fraction, int, str]] = field(default_factory=list)
    chords: list[tuple[Fraction, tuple[int, ...] | None]] = field(default_factory=list)


def read_musicxml(text: str) -> Heard:
    """Return what music21 reads: sounding notes by onset, MIDI number and length, ties joined.

    Notes with a cross for a head are left out: they are dead and have no pitch to compare. A
    chord symbol is told by its pitch classes, N.C. by None.
    """
    from music21 import converter, harmony  # noqa: PLC0415 - slow to import

    score: Any = converter.parse(text, format="musicxml")
    top = score.parts[0]
    symbols = top.recurse().getElementsByClass(harmony.Harmony)
    return Heard(
        len(top.getElementsByClass("Measure")),
        [sorted(_notes(part.toSoundingPitch())) for part in score.parts],
        sorted(_words(score)),
        [(Fraction(s.getOffsetInHierarchy(top)), _classes(s)) for s in symbols],
    )


def _classes(symbol: Any) -> tuple[int, ...] | None:  # noqa: ANN401 - music21 has no types
    if type(symbol).__name__ == "NoChord":
        return None
    return tuple(sorted({pitch.pitchClass for pitch in symbol.pitches}))


def _notes(part: Any) -> Iterator[tuple[Fraction, int, Fraction]]:  # noqa: ANN401 - the same
    from music21 import harmony, note  # noqa: PLC0415 - slow to import

    tied: dict[int, list[tuple[Fraction, Fraction]]] = {}
    for element in part.recurse().notes:
        if isinstance(element, harmony.Harmony):
            continue
        onset = Fraction(element.getOffsetInHierarchy(part))
        length = Fraction(element.duration.quarterLength)
        for each in getattr(element, "notes", (element,)):
            if not isinstance(each, note.Note) or each.notehead == "x":
                continue
            midi, tie = each.pitch.midi, each.tie.type if each.tie else ""
            start, before = onset, Fraction(0)
            if tie in ("stop", "continue"):
                start, before = tied[midi].pop(0)
                assert start + before == onset
            if tie in ("start", "continue"):
                tied.setdefault(midi, []).append((start, before + length))
            else:
                yield start, midi, before + length
    assert not any(tied.values())


def _words(score: Any) -> Iterator[tuple[Fraction, int, str]]:  # noqa: ANN401 - the same
    for part in score.parts:
        for element in part.recurse().notes:
            onset = Fraction(element.getOffsetInHierarchy(part))
            yield from ((onset, lyric.number, lyric.text) for lyric in element.lyrics)


def said_notes(part: Part) -> list[tuple[Fraction, int, Fraction]]:
    """Return what a part of a chart says: onset, MIDI number and length of every pitch."""
    return sorted(
        (event.onset, note.pitch.midi, event.duration)
        for event in part.events
        for note in event.notes
        if note.pitch is not None and not note.dead
    )


def said_words(chart: Chart) -> list[tuple[Fraction, int, str]]:
    """Return the words of a chart's parts by onset, verse and text."""
    return sorted(
        (event.onset, syllable.verse, syllable.text)
        for part in chart.parts
        for event in part.events
        for syllable in event.syllables
        if syllable.text and not syllable.held
    )


def assert_says_the_same(text: str, chart: Chart) -> None:
    """Check notes, words, chord symbols and bars of a file against its chart."""
    heard = read_musicxml(text)
    assert heard.bars == len(chart.bars)
    assert heard.notes == ([said_notes(part) for part in chart.parts] or [[]])
    assert heard.words == said_words(chart)
    assert [onset for onset, _ in heard.chords] == [event.onset for event in chart.chords]
    for (_, classes), event in zip(heard.chords, chart.chords, strict=True):
        if event.chord.degrees:
            assert classes == event.chord.pitch_classes, event.chord

"""The notes of a part, voice by voice."""
# ruff: noqa: ANN401 - music21 has no types

from collections import defaultdict
from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Any

from music21 import articulations, expressions, harmony, note, stream

from sitegen.scores.exact import exact
from sitegen.scores.found import FoundEvent, FoundLyric, FoundPart
from sitegen.scores.losses import Losses, is_unpitched
from sitegen.scores.unfit import UnfitScoreError

MOST_NOTES = 50_000
_MOST_ALTERATION = 2
_LOWEST, _HIGHEST = 12, 120
_LONGEST_NAME, _LONGEST_SYLLABLE = 40, 60
_JOINING = frozenset({"begin", "middle"})
_MARKS = {
    articulations.Accent: "accent",
    articulations.Staccato: "staccato",
    articulations.Tenuto: "tenuto",
    articulations.StrongAccent: "marcato",
    expressions.Fermata: "fermata",
}
# What separates names, and names from values, in a head line.
_SEPARATORS = str.maketrans(dict.fromkeys(":|,", " "))


def find_voices(parts: list[Any], losses: Losses) -> Iterator[FoundPart]:
    """Return every voice of every part under a name of its own; raises UnfitScoreError."""
    used: set[str] = set()
    total = 0
    for number, part in enumerate(parts, start=1):
        name = _name(part) or ("melody" if len(parts) == 1 else f"part {number}")
        for layer in _layers(part, losses):
            total += len(layer)
            if total > MOST_NOTES:
                raise UnfitScoreError(f"it has more than {MOST_NOTES} notes")
            yield FoundPart(_unused(name, used), tuple(layer))


def _name(part: Any) -> str:
    written = plain(str(part.partName or part.id or "").translate(_SEPARATORS), 200)
    # An id that a program made is no name.
    is_made = written.isdecimal() or len(written) > _LONGEST_NAME
    return "" if is_made else written


def _unused(name: str, used: set[str]) -> str:
    """Return a name that no other part has: staves and voices of one part share theirs."""
    made, number = name, 1
    while made.lower() in used:
        number += 1
        made = f"{name} {number}"
    used.add(made.lower())
    return made


def _layers(part: Any, losses: Losses) -> Iterator[list[FoundEvent]]:
    """Return the events of each voice, and of as many more as it takes that none overlap."""
    found: defaultdict[int, list[FoundEvent]] = defaultdict(list)
    for measure in part.getElementsByClass(stream.Measure):
        for place, (voice, offset) in enumerate(_voices(measure)):
            for one in voice.notes:
                event = _event(one, exact(offset + one.offset), losses)
                if event is not None:
                    found[place].append(event)
    for _, events in sorted(found.items()):
        yield from _apart(_merged(events))


def _voices(measure: Any) -> Iterator[tuple[Any, Any]]:
    voices = list(measure.voices)
    if not voices or measure.notes:
        yield measure, measure.offset
    yield from ((voice, measure.offset + voice.offset) for voice in voices)


def _merged(events: Iterable[FoundEvent]) -> list[FoundEvent]:
    """Return events by onset; those that start and end together are one."""
    together: dict[tuple[Fraction, Fraction], FoundEvent] = {}
    for event in events:
        place = Fraction(event.onset), Fraction(event.duration)
        other = together.get(place)
        if other is not None:
            pitches = tuple(dict.fromkeys((*other.pitches, *event.pitches)))
            lyrics = other.lyrics or event.lyrics
            event = FoundEvent(other.onset, other.duration, pitches, lyrics, other.marks)  # noqa: PLW2901
        together[place] = event
    return [together[place] for place in sorted(together)]


def _apart(events: list[FoundEvent]) -> list[list[FoundEvent]]:
    """Deal events to as few rows as hold them without overlap."""
    rows: list[list[FoundEvent]] = []
    ends: list[Fraction] = []
    for event in events:
        onset = Fraction(event.onset)
        row = next((n for n, end in enumerate(ends) if end <= onset), len(rows))
        if row == len(rows):
            rows.append([])
            ends.append(Fraction(0))
        rows[row].append(event)
        ends[row] = onset + Fraction(event.duration)
    return rows


def _event(one: Any, onset: Fraction, losses: Losses) -> FoundEvent | None:
    if isinstance(one, harmony.Harmony):
        return None
    if one.duration.isGrace or not one.quarterLength:
        losses.add("grace notes", onset)
        return None
    if is_unpitched(one):
        losses.add("notes without a pitch", onset)
        return None
    pitches = tuple(filter(None, (_pitch(pitch, onset, losses) for pitch in one.pitches)))
    if not pitches:
        return None
    if any(own.tie is not None for own in getattr(one, "notes", ())):
        losses.add("ties of some notes of a chord", onset)
    lyrics = tuple(_lyrics(one.lyrics, onset, losses))
    marks = tuple(dict.fromkeys(_marks(one, onset, losses)))
    return FoundEvent(str(onset), str(exact(one.quarterLength)), pitches, lyrics, marks)


def _pitch(pitch: Any, onset: Fraction, losses: Losses) -> str:
    alteration = pitch.accidental.alter if pitch.accidental else 0
    if alteration != int(alteration) or pitch.microtone.cents:
        losses.add("quarter tones", onset)
        return ""
    if abs(alteration) > _MOST_ALTERATION or not _LOWEST <= pitch.ps <= _HIGHEST:
        losses.add("notes that no instrument plays", onset)
        return ""
    sign = ("#" if alteration > 0 else "b") * abs(int(alteration))
    return f"{pitch.step}{sign}{pitch.implicitOctave}"


def _lyrics(lyrics: Iterable[Any], onset: Fraction, losses: Losses) -> Iterator[FoundLyric]:
    for lyric in lyrics:
        text = plain(str(lyric.text or ""), _LONGEST_SYLLABLE + 1)
        if len(text) > _LONGEST_SYLLABLE or not isinstance(lyric.number, int):
            losses.add("words that are no syllables", onset)
        elif text:
            yield FoundLyric(text, lyric.number, lyric.syllabic in _JOINING)


def _marks(one: note.GeneralNote, onset: Fraction, losses: Losses) -> Iterator[str]:
    for sign in (*one.articulations, *one.expressions):
        if isinstance(sign, expressions.ArpeggioMark):
            losses.add("broken chords", onset)
        elif (mark := _MARKS.get(type(sign))) is not None:
            yield mark
        elif isinstance(sign, articulations.Articulation):
            losses.add("articulations", onset)
        elif isinstance(sign, expressions.Ornament | expressions.Tremolo):
            losses.add("ornaments", onset)
        elif not isinstance(sign, expressions.TextExpression):
            losses.add("expression marks", onset)


def plain(text: str, most: int) -> str:
    """Return a text on one line, without signs that are not printed, cut to a length."""
    shown = "".join(sign if sign.isprintable() else " " for sign in text[: 4 * most])
    return " ".join(shown.split())[:most]

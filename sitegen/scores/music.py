"""What music21 reads in a score file, brought into our own plain values."""
# ruff: noqa: ANN401 - music21 has no types

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from music21 import converter, harmony, key, meter, midi, note, stream, tempo

from sitegen.scores.found import (
    FoundBar,
    FoundChord,
    FoundEvent,
    FoundLyric,
    FoundPart,
    FoundScore,
)

MOST_BARS, MOST_PARTS, MOST_NOTES = 2000, 64, 200_000
_FINEST = 64 * 3 * 5 * 7
_JOINING = frozenset({"begin", "middle"})


class UnfitScoreError(Exception):
    """A score that was read and cannot be used; the text says why."""


def find_score(data: bytes, form: str) -> FoundScore:
    """Return what is in a score of a kind: "musicxml", "abc", "humdrum" or "midi".

    Raises UnfitScoreError for one without bars or of a size that no song has; music21 may raise
    anything else.
    """
    score = _parse(data, form)
    parts = list(score.parts) if isinstance(score, stream.Score) else [score]
    if not parts:
        raise UnfitScoreError("it holds no part")
    if len(parts) > MOST_PARTS:
        raise UnfitScoreError(f"it has more than {MOST_PARTS} parts")
    return _Desk(score, [_in_bars(part) for part in parts]).find()


def _in_bars(part: Any) -> Any:
    """Return a part with bars: a tune of a single one comes without."""
    has_bars = next(iter(part.getElementsByClass(stream.Measure)), None) is not None
    return part if has_bars or not part.notesAndRests else part.makeMeasures()


def _parse(data: bytes, form: str) -> Any:
    if form == "midi":
        file = midi.MidiFile()
        file.readstr(data)
        found = midi.translate.midiFileToStream(file)
    else:
        found = converter.parseData(data.decode("utf-8", "replace"), format=form)
    if isinstance(found, stream.Opus):
        if len(found.scores) != 1:
            raise UnfitScoreError("it holds several scores: keep the one you quote from")
        found = found.scores[0]
    if not isinstance(found, stream.Stream):
        raise UnfitScoreError("it holds no score")
    found.toSoundingPitch(inPlace=True)
    return found.stripTies() if form != "midi" else found


@dataclass
class _Desk:
    """One score being looked through."""

    score: Any
    parts: list[Any]
    left_out: dict[str, None] = field(default_factory=dict)

    def find(self) -> FoundScore:
        bars = self._bars()
        voices = [
            voice for number, part in enumerate(self.parts) for voice in self._voices(part, number)
        ]
        tonic, mode = self._key()
        beats, beat = self._tempo()
        return FoundScore(
            tuple(bars),
            tuple(voices),
            tuple(self._chords()),
            tonic,
            mode,
            beats,
            beat,
            tuple(self.left_out),
        )

    def _bars(self) -> Iterator[FoundBar]:
        measures = list(self.parts[0].getElementsByClass(stream.Measure))
        if not measures:
            raise UnfitScoreError("it has no bars")
        if len(measures) > MOST_BARS:
            raise UnfitScoreError(f"it has more than {MOST_BARS} bars")
        ends = [*(measure.offset for measure in measures[1:]), self.parts[0].highestTime]
        current: Any = None
        first = 1
        for place, (measure, end) in enumerate(zip(measures, ends, strict=True)):
            current = (
                measure.timeSignature or current or measure.getContextByClass(meter.TimeSignature)
            )
            start, length = _exact(measure.offset), _exact(end) - _exact(measure.offset)
            whole = _exact(current.barDuration.quarterLength) if current else Fraction(4)
            if place == len(measures) - 1 and (length <= 0 or length > whole):
                length = whole
            if length <= 0:
                raise UnfitScoreError(f"bar {measure.measureNumber} has no length")
            if place == 0 and length < whole:
                first = 0
            yield FoundBar(
                place + first,
                str(start),
                str(length),
                current.ratioString if current else "4/4",
                _repeats(measure.leftBarline, "start"),
                _repeats(measure.rightBarline, "end"),
            )

    def _voices(self, part: Any, number: int) -> Iterator[FoundPart]:
        name = " ".join(str(part.partName or part.id or "").split())[:60]
        if not name or name.isdecimal() or len(name) > 40:  # noqa: PLR2004 - an id made by a program
            name = "melody" if len(self.parts) == 1 else f"part {number + 1}"
        found: defaultdict[int, list[FoundEvent]] = defaultdict(list)
        for measure in part.getElementsByClass(stream.Measure):
            layers = list(measure.voices) or [measure]
            for layer, voice in enumerate(layers):
                for one in voice.notesAndRests:
                    event = self._event(
                        one, measure.offset + voice.offset * (voice is not measure)
                    )
                    if event is not None:
                        found[layer].append(event)
        if sum(map(len, found.values())) > MOST_NOTES:
            raise UnfitScoreError(f"it has more than {MOST_NOTES} notes")
        for layer, events in sorted(found.items()):
            own = name if layer == 0 else f"{name} {layer + 1}"
            yield FoundPart(own, tuple(sorted(events, key=lambda one: Fraction(one.onset))))

    def _event(self, one: Any, offset: Any) -> FoundEvent | None:
        if isinstance(one, harmony.Harmony | note.Rest):
            return None
        if one.duration.isGrace or not one.quarterLength:
            self.left_out["grace notes"] = None
            return None
        if isinstance(one, note.Unpitched) or not hasattr(one, "pitches") or not one.pitches:
            self.left_out["notes without a pitch"] = None
            return None
        pitches = tuple(name for pitch in one.pitches if (name := self._pitch(pitch)))
        if not pitches:
            return None
        lyrics = tuple(
            FoundLyric(str(lyric.text), lyric.number, lyric.syllabic in _JOINING)
            for lyric in one.lyrics
            if lyric.text
        )
        onset, duration = _exact(offset + one.offset), _exact(one.quarterLength)
        return FoundEvent(str(onset), str(duration), pitches, lyrics)

    def _pitch(self, pitch: Any) -> str:
        alteration = pitch.accidental.alter if pitch.accidental else 0
        if alteration != int(alteration) or abs(alteration) > 2:  # noqa: PLR2004 - double sharps
            self.left_out["quarter tones"] = None
            return ""
        sign = ("#" if alteration > 0 else "b") * abs(int(alteration))
        return f"{pitch.step}{sign}{pitch.octave if pitch.octave is not None else 4}"

    def _chords(self) -> Iterator[FoundChord]:
        for part in self.parts:
            for symbol in part.recurse().getElementsByClass(harmony.ChordSymbol):
                onset = _exact(symbol.getOffsetInHierarchy(part))
                if isinstance(symbol, harmony.NoChord):
                    yield FoundChord(str(onset), "N.C.")
                else:
                    yield FoundChord(str(onset), str(symbol.figure).replace("-", "b"))

    def _key(self) -> tuple[str, str]:
        found = next(iter(self.score.recurse().getElementsByClass(key.KeySignature)), None)
        if found is None:
            return "", ""
        whole = found if isinstance(found, key.Key) else found.asKey("major")
        return whole.tonic.name.replace("-", "b"), whole.mode

    def _tempo(self) -> tuple[float, str]:
        mark = next(iter(self.score.recurse().getElementsByClass(tempo.MetronomeMark)), None)
        if mark is None or not mark.number:
            return 0, "1"
        return float(mark.number), str(_exact(mark.referent.quarterLength))


def _repeats(line: Any, direction: str) -> bool:
    return getattr(line, "direction", None) == direction


def _exact(value: Any) -> Fraction:
    """Return a time of music21's, where thirds and fifths may have been rounded, as a fraction."""
    return Fraction(value).limit_denominator(_FINEST)

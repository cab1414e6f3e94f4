"""The keys that a chart goes through, by bars."""

from collections.abc import Iterator, Sequence

from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.tonality.heard import HeardNote, Hearing
from sitegen.analysis.tonality.keys import only_signature
from sitegen.analysis.wording import capitalised
from sitegen.harmony.key_changes import KeyStretch, find_key_changes
from sitegen.score.chart import Bar
from sitegen.score.chord import Chord
from sitegen.score.key import Key

# A change of key lasts two bars or more, is so sure among the 24 keys (its close relations share
# the belief), and has notes that the home key has not.
_LEAST_BARS = 2
_SURE = 0.45
# Songs change their key less readily than the chorales and madrigals whose analysts set the usual
# cost, and a sentence that is wrong costs more than one that is missing. No corpus stands behind
# this figure: it keeps the applied and borrowed chords of the tests in their keys.
_CHANGE_COST = 6.0


def stretch_facts(hearing: Hearing) -> Iterator[Fact]:
    """Yield the keys of the chart's stretches where there are several and one is clearly new.

    Its evidence is the first note of each name that belongs to a new key and not to the home key.
    """
    bars = hearing.reading.chart.bars
    key = hearing.reading.chart.key
    stays = hearing.fits(key) if key else only_signature(hearing) is not None
    if stays or len(bars) < 2 * _LEAST_BARS:
        return
    stretches = _find(hearing, bars)
    home = key or max(stretches, key=lambda s: s.end - s.start).key
    new = {
        s: _new_notes(hearing, s, home)
        for s in stretches
        if _is_away(bars, s, home) and _stands(hearing, s)
    }
    away = [stretch for stretch, notes in new.items() if notes]
    if not away or len(away) == len(stretches):
        return
    said = ", ".join(f"{_numbers(bars, stretch)} {stretch.key}" for stretch in stretches)
    places = tuple(note.place for stretch in away for note in new[stretch])
    sentence = " ".join(_sentence(bars, stretch) for stretch in away)
    yield Fact("key-changes", said, said, "", places, sentence)


def _find(hearing: Hearing, bars: Sequence[Bar]) -> tuple[KeyStretch, ...]:
    """Return the stretches, which change at bar lines.

    A beat is half a bar: harmony in charts moves by bars and half bars, where in the chorales that
    the weights come from it moves by quarters.
    """
    halves = [time for bar in bars for time in (bar.start, bar.start + bar.length / 2)]
    notes = [(note.pitch, note.onset, note.duration) for note in hearing.notes]
    openings = frozenset(range(0, len(halves), 2))
    return find_key_changes(
        notes, [*halves, bars[-1].end], 2 * _LEAST_BARS, openings, _CHANGE_COST
    )


def _is_away(bars: Sequence[Bar], stretch: KeyStretch, home: Key) -> bool:
    is_long = len(_bars_of(bars, stretch)) >= _LEAST_BARS
    return is_long and stretch.fit >= _SURE and (stretch.key.fifths - home.fifths) % 12 != 0


def _stands(hearing: Hearing, stretch: KeyStretch) -> bool:
    """Tell whether a chord of the mode stands on the new tonic, or the chart has no chords."""
    chords = [c for c in hearing.reading.chords if isinstance(c.chord, Chord)]
    tonic = stretch.key.tonic.pitch_class
    other_third = (tonic + (4 if stretch.key.is_minor else 3)) % 12
    return not chords or any(
        chord.chord.root.pitch_class == tonic
        and other_third not in {m.pitch_class for m in chord.chord.members}
        for chord in chords
        if stretch.start <= chord.onset < stretch.end and isinstance(chord.chord, Chord)
    )


def _new_notes(hearing: Hearing, stretch: KeyStretch, home: Key) -> list[HeardNote]:
    """Return the first note of each name of the stretch's own key that is outside the home key."""
    new = set(stretch.key.scale) - set(home.scale)
    start, end = (float(time) for time in (stretch.start, stretch.end))
    inside = (note for note in hearing.notes if start <= note.onset < end)
    first: dict[str, HeardNote] = {}
    for note in inside:
        if note.pitch.name in new:
            first.setdefault(str(note.pitch.name), note)
    return list(first.values())


def _bars_of(bars: Sequence[Bar], stretch: KeyStretch) -> list[Bar]:
    return [bar for bar in bars if stretch.start <= bar.start < stretch.end]


def _numbers(bars: Sequence[Bar], stretch: KeyStretch) -> str:
    return bars_said(bar.number for bar in _bars_of(bars, stretch))


def _sentence(bars: Sequence[Bar], stretch: KeyStretch) -> str:
    return f"{capitalised(_numbers(bars, stretch))} lean to {stretch.key}."

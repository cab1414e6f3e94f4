"""Progressions written out in a test, and arbitrary ones."""

from hypothesis import strategies as st
from msgspec.structs import replace

from sitegen.harmony import fingered_chord, read_chord
from sitegen.harmony.progressions import ChordBar, Progression, make_progression
from sitegen.score.interval import Interval
from sitegen.score.key import Key

SYMBOLS = (
    "C Am F G7 Dm7 Em Fmaj7 Csus2 C5 Gsus4 Bdim7 Bm7b5 E+ F#m D7 Ab Ebmaj7 Db7 C/E Cadd9 N.C."
).split()


def bars(text: str, key: str = "") -> Progression:
    """Return the progression written as "C | F G", a bar in 4/4 between strokes."""
    written = [[read_chord(symbol) for symbol in bar.split()] for bar in text.split("|")]
    return make_progression(written, Key.read(key) if key else None)


def moved(progression: Progression, interval: Interval) -> Progression:
    """Return a progression with every name and its key moved by an interval."""
    key = progression.key
    return Progression(
        tuple(_move_bar(bar, interval) for bar in progression.bars),
        replace(key, tonic=interval.above_name(key.tonic)) if key else None,
    )


def _move_bar(bar: ChordBar, interval: Interval) -> ChordBar:
    changes = tuple((onset, fingered_chord(chord, interval)) for onset, chord in bar.changes)
    return replace(bar, changes=changes)


def progressions(*, fewest: int = 1, most: int = 7) -> st.SearchStrategy[Progression]:
    """Return arbitrary progressions of chords that each last a bar."""
    symbols = st.lists(st.sampled_from(SYMBOLS), min_size=fewest, max_size=most)
    return symbols.map(lambda chosen: bars(" | ".join(chosen)))


def intervals() -> st.SearchStrategy[Interval]:
    """Return the intervals within an octave in their usual spellings."""
    sizes = [(0, 0), (1, 1), (1, 2), (2, 3), (2, 4), (3, 5), (3, 6), (4, 6), (4, 7), (5, 8)]
    sizes += [(5, 9), (6, 10), (6, 11)]
    return st.sampled_from([Interval(*size) for size in sizes])

"""Chord symbols made audible."""

from hypothesis import given
from hypothesis import strategies as st

from sitegen.harmony import read_chord
from sitegen.performance.voicing import voice_chord
from sitegen.score.chord import Chord

SYMBOLS = "C Am7 F#dim7 Bb7sus4 E5 Abmaj13 G7/D C6/9 Dø F#7#9 Gb5/Eb".split()


def chord(symbol: str) -> Chord:
    found = read_chord(symbol)
    assert isinstance(found, Chord)
    return found


@given(st.lists(st.sampled_from(SYMBOLS), min_size=1, max_size=12))
def test_every_member_sounds_and_nothing_else_in_a_playable_range(line: list[str]) -> None:
    before: tuple[int, ...] = ()
    for symbol in line:
        found = chord(symbol)
        before = voice_chord(found, before)
        assert before[0] % 12 == found.bass.pitch_class
        assert {midi % 12 for midi in before[1:]} == {n.pitch_class for n in found.members}
        assert 36 <= before[0] < 48 <= before[1] < before[-1] < 76


def test_shared_notes_stay_where_they_are() -> None:
    c, am = voice_chord(chord("C")), voice_chord(chord("Am"), voice_chord(chord("C")))
    assert len(set(c[1:]) & set(am[1:])) == 2

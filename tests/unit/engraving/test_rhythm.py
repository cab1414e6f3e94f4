"""Splitting durations into written values: textbook cases, and what must always hold."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from unit.engraving.writing import shorthand, written

from sitegen.engraving.hierarchy import metrical_cells
from sitegen.engraving.rhythm import Stretch, Written, write_bar
from sitegen.score.meter import Meter

# Common handbook cases (E. Gould, Behind Bars, 2011, and G. Read, Music Notation, 1969; from
# memory): what a copyist writes for these lengths in these meters.
HANDBOOK = [
    ("4/4", "4", "1"),
    ("4/4", "2 2", "2 2"),
    ("4/4", "3 1", "2. 4"),
    ("4/4", "1 3", "4 2."),
    ("4/4", "1 2 1", "4 2 4"),
    ("4/4", "3/2 1/2 3/2 1/2", "4. 8 4. 8"),
    ("4/4", "1/2 1 1/2 2", "8 4 8 2"),
    ("4/4", "1/2 3/2 2", "8 4. 2"),
    # The middle of the bar is shown: nothing off the beat is carried over it in one note.
    ("4/4", "3/2 3/2 1", "4. 8~ 4 4"),
    ("4/4", "3/2 1 3/2", "4. 8~ 8 4."),
    ("4/4", "1/2 1 1 1 1/2", "8 4 8~ 8 4 8"),
    ("4/4", "5/2 3/2", "2~ 8 4."),
    ("4/4", "7/2 1/2", "2~ 4. 8"),
    ("4/4", "1/2 7/2", "8 4.~ 2"),
    ("2/2", "1 2 1", "4 2 4"),
    # Within a beat: sixteenth, eighth, sixteenth; a dot that begins the beat, but none that
    # would cross it.
    ("4/4", "1/4 1/2 1/4 3/4 1/4 2", "16 8 16 8. 16 2"),
    ("4/4", "3/4 1/2 3/4 2", "8. 16~ 16 8. 2"),
    ("4/4", "1/4 3/4 3", "16 8. 2."),
    ("3/4", "3", "2."),
    ("3/4", "2 1", "2 4"),
    ("3/4", "1 2", "4 2"),
    ("3/4", "3/2 3/2", "4. 8~ 4"),
    ("3/4", "1/2 1 1/2 1", "8 4 8 4"),
    ("6/8", "3", "2."),
    ("6/8", "3/2 3/2", "4. 4."),
    ("6/8", "1 1/2 1/2 1", "4 8 8 4"),
    ("6/8", "1 1 1", "4 8~ 8 4"),
    ("6/8", "5/2 1/2", "4.~ 4 8"),
    ("6/8", "3/4 1/4 1/2 3/2", "8. 16 8 4."),
    ("12/8", "6", "1."),
    ("12/8", "3 3", "2. 2."),
    ("9/8", "9/2", "2.~ 4."),
    # The groups of an additive meter stay visible.
    ("2+2+3/8", "7/2", "2~ 4."),
    ("2+2+3/8", "1 1 3/2", "4 4 4."),
    ("2+2+3/8", "1 1 3/4 3/4", "4 4 8. 16~ 8"),
    ("2+2+3/8", "3/2 2", "4~ 8 8~ 4."),
    ("3+2+2/8", "2 3/2", "4.~ 8 8~ 4"),
    ("3+2/8", "5/2", "4.~ 4"),
    ("3+2/4", "5", "2.~ 2"),
    ("3+2/4", "2 2 1", "2 4~ 4 4"),
    # Rests do not cross a beat that they do not fill, nor stand for two middle beats.
    ("4/4", "r1 r2 1", "r4 r4 r4 4"),
    ("4/4", "1 r3", "4 r4 r2"),
    ("4/4", "1/2 r7/2", "8 r8 r4 r2"),
    ("3/4", "1 r2", "4 r4 r4"),
    ("6/8", "1/2 r5/2", "8 r8 r8 r4."),
    ("6/8", "r1 1/2 3/2", "r4 8 4."),
]


@pytest.mark.parametrize(("meter", "lengths", "expected"), HANDBOOK)
def test_lengths_are_split_as_handbooks_teach(meter: str, lengths: str, expected: str) -> None:
    assert shorthand(written(meter, lengths)) == expected


TUPLETS = [
    ("4/4", "1/3 1/3 1/3 3", "8[3:2] 8[3:2] 8[3:2] 2."),
    ("4/4", "2/3 1/3 1 2", "4[3:2] 8[3:2] 4 2"),
    ("4/4", "2/3 2/3 2/3 2", "4[3:2] 4[3:2] 4[3:2] 2"),
    ("4/4", "1/3 2/3 2/3 1/3 2", "8[3:2] 4[3:2] 4[3:2] 8[3:2] 2"),
    ("4/4", "4/3 4/3 4/3", "2[3:2] 2[3:2] 2[3:2]"),
    ("4/4", "1/5 1/5 1/5 1/5 1/5 3", "16[5:4] 16[5:4] 16[5:4] 16[5:4] 16[5:4] 2."),
    ("4/4", "1/6 1/6 1/6 1/6 1/6 1/6 3", "16[6:4] 16[6:4] 16[6:4] 16[6:4] 16[6:4] 16[6:4] 2."),
    ("4/4", "1/6 1/6 1/6 1/2 3", "16[3:2] 16[3:2] 16[3:2] 8 2."),
    ("4/4", "1/7 6/7 3", "16[7:4] 4.[7:4] 2."),
    ("4/4", "1/3 1/3 4/3 2", "8[3:2] 8[3:2] 8~[3:2] 4 2"),
    ("4/4", "r1/3 1/3 1/3 3", "r8[3:2] 8[3:2] 8[3:2] 2."),
    ("6/8", "3/4 3/4 3/2", "8[2:3] 8[2:3] 4."),
    ("6/8", "3/8 3/8 3/8 3/8 3/2", "8[4:3] 8[4:3] 8[4:3] 8[4:3] 4."),
    ("6/8", "1/6 1/6 1/6 1 3/2", "16[3:2] 16[3:2] 16[3:2] 4 4."),
    ("2+2+3/8", "1/3 1/3 1/3 1 3/2", "8[3:2] 8[3:2] 8[3:2] 4 4."),
]  # common practice, no source


@pytest.mark.parametrize(("meter", "lengths", "expected"), TUPLETS)
def test_uneven_divisions_become_tuplets(meter: str, lengths: str, expected: str) -> None:
    assert shorthand(written(meter, lengths)) == expected


def test_a_pickup_keeps_its_place_in_the_bar() -> None:
    assert shorthand(written("4/4", "1/2 1", skipped="5/2")) == "8 4"
    assert shorthand(written("4/4", "3/2", skipped="3/2")) == "8~ 4"


METERS = ["4/4", "3/4", "2/4", "2/2", "5/4", "6/4", "6/8", "9/8", "12/8", "5/8", "7/8", "2+3+2/8"]


@st.composite
def bars_of_music(draw: st.DrawFn) -> tuple[Meter, tuple[Stretch, ...]]:
    """Draw a bar whose beats are divided at will, with notes that may cross them."""
    meter = Meter.read(draw(st.sampled_from(METERS)))
    grid = {Fraction(0), meter.length}
    for beat in range(meter.count):
        parts = draw(st.integers(1, 16))
        grid |= {(beat + Fraction(n, parts)) * meter.beat for n in range(parts)}
    places = sorted(grid)
    kept = [place for place in places[1:-1] if draw(st.booleans())]
    edges = [Fraction(0), *kept, meter.length]
    rests = draw(st.lists(st.booleans(), min_size=len(edges), max_size=len(edges)))
    stretches = tuple(
        Stretch(low, high, number, is_rest=rests[number])
        for number, (low, high) in enumerate(pairwise(edges))
    )
    return meter, stretches


@settings(deadline=None)
@given(bars_of_music())
def test_what_is_written_lasts_as_long_as_what_sounds(
    bar: tuple[Meter, tuple[Stretch, ...]],
) -> None:
    meter, stretches = bar
    pieces = write_bar(metrical_cells(meter), stretches)
    assert sum(sounding(piece) for piece in pieces) == meter.length
    for number, stretch in enumerate(stretches):
        own = [piece for piece in pieces if piece.source == number]
        assert sum(sounding(piece) for piece in own) == stretch.end - stretch.start
        assert own[0].start == stretch.start
        assert [piece.opens for piece in own] == [True] + [False] * (len(own) - 1)
        if stretch.is_rest:
            assert not any(piece.tied for piece in own)
        else:
            assert [piece.tied for piece in own] == [True] * (len(own) - 1) + [False]


@settings(deadline=None)
@given(bars_of_music())
def test_tuplets_are_whole(bar: tuple[Meter, tuple[Stretch, ...]]) -> None:
    meter, stretches = bar
    pieces = write_bar(metrical_cells(meter), stretches)
    for tuplet in {piece.tuplet for piece in pieces} - {None}:
        assert tuplet is not None
        inside = [piece for piece in pieces if piece.tuplet == tuplet]
        assert sum(sounding(piece) for piece in inside) == tuplet.length
        assert sum(piece.value.length for piece in inside) == tuplet.count * tuplet.unit


def sounding(piece: Written) -> Fraction:
    """Return how long a written value lasts by its own signs alone."""
    if piece.tuplet is None:
        return piece.value.length
    return piece.value.length * piece.tuplet.time_of / piece.tuplet.count

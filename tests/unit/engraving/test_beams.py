"""Which notes share a beam."""

import pytest
from unit.engraving.writing import written

from sitegen.engraving.beams import beam_groups
from sitegen.engraving.hierarchy import metrical_cells
from sitegen.score.meter import Meter

# From memory of E. Gould, Behind Bars, 2011, on beaming according to metre.
HANDBOOK = [
    ("4/4", "1/2 1/2 1/2 1/2 1/2 1/2 1/2 1/2", [(0, 4), (4, 8)]),
    ("4/4", "1 1/2 1/2 1/2 1/2 1", [(1, 3), (3, 5)]),
    ("4/4", "1/4 1/4 1/4 1/4 1/2 1/2 2", [(0, 4), (4, 6)]),
    ("4/4", "1/2 1 1/2 2", []),
    ("4/4", "3/4 1/4 3", [(0, 2)]),
    ("4/4", "r1/2 1/2 1/2 1/2 2", [(2, 4)]),
    ("4/4", "1/4 r1/2 1/4 3", [(0, 4)]),
    ("3/4", "1/2 1/2 1/2 1/2 1/2 1/2", [(0, 6)]),
    ("3/4", "1 1/2 1/2 1/2 1/2", [(1, 5)]),
    ("2/4", "1/2 1/2 1/2 1/2", [(0, 4)]),
    ("6/8", "1/2 1/2 1/2 1/2 1/2 1/2", [(0, 3), (3, 6)]),
    ("12/8", "1/2 1/2 1/2 3/2 1/2 1/2 1/2 3/2", [(0, 3), (4, 7)]),
    ("2+2+3/8", "1/2 1/2 1/2 1/2 1/2 1/2 1/2", [(0, 2), (2, 4), (4, 7)]),
    ("3+2+2/8", "1/2 1/2 1/2 1/2 1/2 1/2 1/2", [(0, 3), (3, 5), (5, 7)]),
    ("3+2/8", "1/2 1/2 1/2 1/2 1/2", [(0, 3), (3, 5)]),
    ("4/4", "1/3 1/3 1/3 1/2 1/2 2", [(0, 3), (3, 5)]),
    ("4/4", "1/6 1/6 1/6 1/2 3", [(0, 4)]),
]


@pytest.mark.parametrize(("meter", "lengths", "expected"), HANDBOOK)
def test_beams_follow_the_meter(meter: str, lengths: str, expected: list[tuple[int, int]]) -> None:
    beams = beam_groups(metrical_cells(Meter.read(meter)), written(meter, lengths))
    assert [(beam.start, beam.end) for beam in beams] == expected

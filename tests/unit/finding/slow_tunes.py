"""Tunes and beats looked up slowly and plainly, to hold the browser's search against."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from sitegen.finding import Beat, Entry, Melody

Found = tuple[int, int, str, int, int, int]
"""Write-up, chart, part, way, shift and first note."""


def lines_of(entries: Sequence[Entry]) -> Iterator[tuple[int, int, Melody]]:
    for write_up, entry in enumerate(entries):
        for chart, one in enumerate(entry.charts):
            for line in one.melodies:
                yield write_up, chart, line


def far(shift: int, *, octaves: bool) -> int:
    if octaves:
        return 2 * abs(shift) + (shift < 0)
    return 2 * shift if shift <= 6 else 2 * (12 - shift) + 1


def slow_tunes(
    entries: Sequence[Entry], notes: Sequence[int], *, octaves: bool, degrees: bool
) -> list[Found]:
    """Return the best way of every line, tried in every transposition and at every place."""
    found: list[Found] = []
    for write_up, chart, line in lines_of(entries):
        if degrees and line.tonic < 0:
            continue
        # In any other transposition no note could be the same.
        lowest, highest = min(line.midi) - max(notes), max(line.midi) - min(notes)
        shifts: Sequence[int] = range(lowest, highest + 1) if octaves else range(12)
        if degrees:
            shifts = [line.tonic]
        ways = [
            (way, far(shift, octaves=octaves), place, shift)
            for shift in shifts
            for place, way in _ways(line.midi, notes, shift, octaves=octaves)
        ]
        if ways:
            way, _, place, shift = min(ways)
            found.append((write_up, chart, line.part, way, shift, place))
    found.sort(key=lambda one: (one[3], far(one[4], octaves=octaves)))
    better = [one for one in found if one[3] < 3]
    return better or found


def _ways(
    midi: Sequence[int], notes: Sequence[int], shift: int, *, octaves: bool
) -> Iterator[tuple[int, int]]:
    """Yield the places where a line holds the notes, so many semitones up, and the way."""

    def same(line: Sequence[int], asked: Sequence[int]) -> list[bool]:
        pairs = zip(line, asked, strict=True)
        if octaves:
            return [pitch - note == shift for pitch, note in pairs]
        return [(pitch - note) % 12 == shift for pitch, note in pairs]

    count = len(notes)
    for place in range(len(midi)):
        window = midi[place : place + count]
        if len(window) == count:
            others = same(window, notes).count(False)
            if others == 0:
                yield place, 0
            elif others == 1 and count >= 4:
                yield place, 1
            elif others == 2 and count >= 7:
                yield place, 3
        if count < 5:
            continue
        longer, shorter = midi[place : place + count + 1], midi[place : place + count - 1]
        more = len(longer) == count + 1 and any(
            all(same([*longer[:gap], *longer[gap + 1 :]], notes)) for gap in range(1, count)
        )
        fewer = len(shorter) == count - 1 and any(
            all(same(shorter, [*notes[:gap], *notes[gap + 1 :]])) for gap in range(1, count - 1)
        )
        if more or fewer:
            yield place, 2


def slow_contours(
    entries: Sequence[Entry], signs: Sequence[int]
) -> list[tuple[int, int, str, int]]:
    """Return where lines first go as the signs say."""
    found = []
    for write_up, chart, line in lines_of(entries):
        for place in range(len(line.midi) - len(signs)):
            window = line.midi[place : place + len(signs) + 1]
            steps = [(after > before) - (after < before) for before, after in pairwise(window)]
            if steps == list(signs):
                found.append((write_up, chart, line.part, place))
                break
    return found


def slow_beats(
    entries: Sequence[Entry],
    meter: str,
    hits: Mapping[str, Sequence[int]],
    tempos: tuple[float, float],
    feel: str,
) -> list[tuple[int, int, int]]:
    """Return write-up, chart and distance of the charts whose bars have the hits, or come near."""
    found = []
    most = max(1, sum(map(len, hits.values())) // 3)
    for write_up, entry in enumerate(entries):
        for chart, one in enumerate(entry.charts):
            bounded = tempos != (0, float("inf"))
            if not one.beats and not one.tempo:
                continue
            if feel and one.feel != feel:
                continue
            if bounded and (not one.tempo or not tempos[0] <= one.tempo <= tempos[1]):
                continue
            if not hits:
                found.append((write_up, chart, 0))
                continue
            distances = [_distance(beat, hits) for beat in one.beats if beat.meter == meter]
            if distances and min(distances) <= most:
                found.append((write_up, chart, min(distances)))
    found.sort(key=lambda one: one[2])
    same = [one for one in found if not one[2]]
    return same or found[:24]


def _distance(beat: Beat, hits: Mapping[str, Sequence[int]]) -> int:
    there = dict(beat.hits)
    return sum(len(set(asked) ^ set(there.get(drum, ()))) for drum, asked in hits.items())

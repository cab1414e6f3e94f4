"""The parts of a synthetic chart: voice, guitar in tablature, bass, keys and drums.

A part gets the columns and the chord of every bar and returns its rows. Common practice, no
source: melodies move by step and stand on notes of the chord where a group starts; a bass has
roots and fifths; a snare answers the bass drum.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from random import Random

from bench.archive_grid import Row, Slot
from bench.archive_harmony import Chord, ascii_name, scale_of
from bench.archive_names import SYLLABLES

from sitegen.score.instrument import TUNINGS
from sitegen.score.key import Key
from sitegen.score.pitch import Pitch, PitchName

Bars = Sequence[Sequence[Slot]]
Typed = list[dict[int, str]]
_VOICE, _BASS, _KEYS = (57, 76), (28, 43), (53, 69)
_MOST_FRET = 15


@dataclass(frozen=True)
class Tune:
    """What the parts of one passage share: the key, and columns and chord of every bar."""

    key: Key
    slots: Bars
    chords: Sequence[Chord]


@dataclass(frozen=True)
class Guitar:
    """A guitar's tuning by its name, and the fret of its capo, 0 for none."""

    tuning: str
    capo: int

    @property
    def text(self) -> str:
        """The guitar as a line of the head says it."""
        return f"{self.tuning}, capo {self.capo}" if self.capo else self.tuning

    @property
    def strings(self) -> tuple[int, ...]:
        """The open strings as MIDI notes, the lowest first."""
        return tuple(pitch.midi for pitch in TUNINGS["guitar", self.tuning, 6].strings)


GUITARS = (
    *(Guitar("standard", capo) for capo in (0, 0, 0, 1, 2, 3, 5)),
    *(Guitar(name, 0) for name in ("half-step down", "whole-step down", "drop D", "drop C#")),
    *(Guitar(name, 0) for name in ("DADGAD", "open G", "drop C", "open D")),
    Guitar("drop D", 2),
)
"""The guitars of an archive."""


def type_chords(tune: Tune) -> Row:
    """Return the row of chord symbols, one at the head of each bar."""
    return Row("chord", [{0: chord.symbol} for chord in tune.chords])


def type_voice(tune: Tune, name: str, draw: Random) -> list[Row]:
    """Return a sung line and its words."""
    lattice = _lattice(scale_of(tune.key), _VOICE)
    height = draw.choice(lattice[3:-3]).midi
    notes: Typed = []
    for slots, chord in zip(tune.slots, tune.chords, strict=True):
        bar: dict[int, str] = {}
        for n, slot in enumerate(slots):
            if draw.random() < _likely(slot):
                pitch = _step(lattice, height, chord if slot.opens_group else None, draw)
                height, bar[n] = pitch.midi, _typed(pitch)
            elif bar and draw.random() < 0.1:
                bar[n] = "r"
        notes.append(bar or {0: "r"})
    return [Row(name, notes), Row("words", _words(notes, draw))]


def _likely(slot: Slot) -> float:
    return 0.9 if slot.opens_group else 0.5 if slot.opens_beat else 0.3


def _typed(pitch: Pitch) -> str:
    return f"{ascii_name(pitch.name)}{pitch.octave}"


@cache
def _lattice(names: tuple[PitchName, ...], span: tuple[int, int]) -> tuple[Pitch, ...]:
    """Return all pitches with these names in a span of MIDI notes, the lowest first."""
    low, high = span
    by_class = {name.pitch_class: name for name in names}
    heights = (midi for midi in range(low, high + 1) if midi % 12 in by_class)
    return tuple(Pitch.of(by_class[midi % 12], midi) for midi in heights)


def _step(lattice: tuple[Pitch, ...], height: int, chord: Chord | None, draw: Random) -> Pitch:
    """Return the next pitch of a line, a near one, and of the chord where one is told."""
    allowed = lattice if chord is None else _lattice(chord.names, _VOICE)
    return draw.choice(_near(allowed, height)[: 3 if draw.random() < 0.8 else 6])


@cache
def _near(pitches: tuple[Pitch, ...], height: int) -> list[Pitch]:
    return sorted(pitches, key=lambda pitch: (abs(pitch.midi - height), pitch.midi))


def _words(notes: Typed, draw: Random) -> Typed:
    place = draw.randrange(len(SYLLABLES))
    rows: Typed = []
    for bar in notes:
        sung = [n for n, note in sorted(bar.items()) if note != "r"]
        rows.append({n: SYLLABLES[(place + k) % len(SYLLABLES)] for k, n in enumerate(sung)})
        place += len(sung)
    return rows


def type_bass(tune: Tune, draw: Random) -> list[Row]:
    """Return a bass line of roots, fifths and octaves."""
    bars: Typed = []
    busy = draw.choice((0.15, 0.5, 0.9))
    for slots, chord in zip(tune.slots, tune.chords, strict=True):
        choices = _lattice((chord.names[0], chord.names[0], chord.names[2]), _BASS)
        root = next(pitch for pitch in choices if pitch.name == chord.names[0])
        bar = {0: _typed(root)}
        for n, slot in enumerate(slots[1:], start=1):
            if slot.opens_group or (slot.opens_beat and draw.random() < busy):
                bar[n] = _typed(draw.choice((root, *choices)))
            elif draw.random() < busy / 6:
                bar[n] = "r"
        bars.append(bar)
    return [Row("bass", bars)]


def type_keys(tune: Tune, draw: Random) -> list[Row]:
    """Return chords of three notes."""
    bars: Typed = []
    for slots, chord in zip(tune.slots, tune.chords, strict=True):
        lattice = _lattice(chord.names, _KEYS)
        lowest = draw.randrange(len(lattice) - 2)
        held = ",".join(_typed(pitch) for pitch in lattice[lowest : lowest + 3])
        again = [n for n, slot in enumerate(slots) if slot.opens_group]
        bars.append({n: held for n in again if not n or draw.random() < 0.6})
    return [Row("keys", bars)]


def type_guitar(tune: Tune, guitar: Guitar, draw: Random) -> list[Row]:
    """Return the string rows of a guitar that picks, strums or plays a riff."""
    play = draw.choice((_pick, _pick, _strum, _riff, _riff))
    strings: list[Typed] = [[] for _ in guitar.strings]
    for slots, chord in zip(tune.slots, tune.chords, strict=True):
        bar: list[dict[int, str]] = [{} for _ in strings]
        play(bar, slots, draw.choice(_shapes(guitar, chord)), draw)
        for string, typed in zip(strings, bar, strict=True):
            string.append(typed)
    rows = [Row(f"  {6 - n}", string, "-") for n, string in enumerate(strings)]
    return [Row("guitar", ()), *reversed(rows), Row("mark", _marks(play, tune, draw), loose=True)]


def _marks(play: Callable[..., None], tune: Tune, draw: Random) -> Typed:
    """Return what stands under the strings: picked notes ring, some bars of a riff are muted."""
    mark = {_pick: "let ring--------", _riff: "P.M.------"}.get(play, "")
    return [{0: mark} if mark and draw.random() < 0.5 else {} for _ in tune.chords]


Shape = dict[int, list[int]]
"""The frets with notes of a chord that a hand reaches on each string, the lowest string 0."""


@cache
def _shapes(guitar: Guitar, chord: Chord) -> tuple[Shape, ...]:
    """Return the shapes whose lowest string has the root, on four strings or more."""
    shapes = (_reach(guitar, chord, place) for place in range(9))
    return tuple(shape for shape in shapes if len(shape) > 3)


def _reach(guitar: Guitar, chord: Chord, place: int) -> Shape:
    shape: Shape = {}
    for string, midi in enumerate(guitar.strings):
        frets = [fret for fret in range(place, place + 5) if _sounds(guitar, midi, fret, chord)]
        rooted = [f for f in frets if _class(guitar, midi, f) == chord.names[0].pitch_class]
        if shape and frets:
            shape[string] = frets
        elif rooted:
            shape[string] = rooted
    return shape


def _class(guitar: Guitar, midi: int, fret: int) -> int:
    return (midi + guitar.capo + fret) % 12


def _sounds(guitar: Guitar, midi: int, fret: int, chord: Chord) -> bool:
    return fret <= _MOST_FRET and _class(guitar, midi, fret) in chord.classes


def _pick(bar: list[dict[int, str]], slots: Sequence[Slot], shape: Shape, draw: Random) -> None:
    """One string after the other, the lowest where a group starts."""
    low, *others = shape
    order = draw.sample(others, len(others))
    for n, slot in enumerate(slots):
        string = low if slot.opens_group else order[n % len(order)]
        if slot.opens_beat or draw.random() < 0.7:
            bar[string][n] = str(shape[string][0])


def _strum(bar: list[dict[int, str]], slots: Sequence[Slot], shape: Shape, draw: Random) -> None:
    """All strings at once, with dead strokes between."""
    for n, slot in enumerate(slots):
        if slot.opens_group or draw.random() < 0.35:
            for string, frets in shape.items():
                bar[string][n] = str(frets[0])
        elif draw.random() < 0.2:
            for string in shape:
                bar[string][n] = "x"


def _riff(bar: list[dict[int, str]], slots: Sequence[Slot], shape: Shape, draw: Random) -> None:
    """One note after the other on the lower strings, some of them slurred."""
    strings = list(shape)[:3]
    last: tuple[int, int, int] | None = None
    for n, slot in enumerate(slots):
        if not slot.opens_group and draw.random() < 0.25:
            continue
        string = draw.choice(strings)
        fret = draw.choice(shape[string])
        if last is not None and last[1] == string and draw.random() < 0.6:
            _slur(bar[string], last, fret, draw)
        bar[string][n] = str(fret) + ("~" if draw.random() < 0.04 else "")
        last = (n, string, fret) if not bar[string][n].endswith("~") else None


def _slur(row: dict[int, str], last: tuple[int, int, int], fret: int, draw: Random) -> None:
    before, _, old = last
    if fret != old and old and fret:
        up = fret > old
        row[before] += draw.choice(("h", "/")) if up else draw.choice(("p", "\\"))


def type_drums(tune: Tune, draw: Random) -> list[Row]:
    """Return the rows of a kit: a ride or hi-hat, a snare that answers, a bass drum."""
    pattern = _kit(tune.slots[0], draw)
    bars = [pattern if _same(slots, tune) else _kit(slots, draw) for slots in tune.slots]
    rows = [Row(f"  {drum}", [bar[drum] for bar in bars], "-") for drum in pattern]
    return [Row("drums", ()), *rows]


def _same(slots: Sequence[Slot], tune: Tune) -> bool:
    return [slot.label for slot in slots] == [slot.label for slot in tune.slots[0]]


def _kit(slots: Sequence[Slot], draw: Random) -> dict[str, dict[int, str]]:
    groups = [n for n, slot in enumerate(slots) if slot.opens_group]
    answers = groups[1::2] or [len(slots) - 1]
    free = [n for n in range(1, len(slots)) if n not in answers]
    kicks = {0, *draw.sample(free, min(len(free), draw.randint(1, 3)))}
    ghosts = draw.sample(free, min(len(free), draw.randint(0, 2)))
    snare = dict.fromkeys(ghosts, "g") | {n: draw.choice("oO") for n in answers}
    return {
        "HH": {n: "X" if s.opens_group else "x" for n, s in enumerate(slots) if _rides(s, draw)},
        "SD": snare,
        "BD": dict.fromkeys(sorted(kicks), "o"),
    }


def _rides(slot: Slot, draw: Random) -> bool:
    return slot.opens_beat or draw.random() < 0.75

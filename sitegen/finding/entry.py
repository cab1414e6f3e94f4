"""What a write-up holds that can be searched for, as values that can be kept and compared.

Times are in `TICKS` to the quarter note, rounded: a search asks for a rhythm, it does not engrave
one. Bars are the written numbers. Everything sounds as it is heard, not as it is fingered.
"""

from msgspec import Struct

TICKS = 24
"""How many ticks a quarter note has: sixteenths, triplets of them and thirty-seconds are whole."""


class ChordStep(Struct, frozen=True, gc=False):
    """A chord of a progression.

    `root` is a pitch class, C = 0; `notes` are the semitones of the chord over its root, and of
    the bass behind a slash, in hexadecimal digits ("037a", "047/4"); `family` is that of its triad
    (see `sitegen.harmony.progressions.cores`). It sounds in the bars from `bar` to `last_bar`.
    """

    symbol: str
    root: int
    notes: str
    family: str
    bar: int
    last_bar: int


class Progression(Struct, frozen=True, gc=False):
    """The chords of a chart as they are played, equal neighbours as one.

    `tonic` is a pitch class, -1 without a key, and `minor` says that the key's third is minor.
    The steps from `loop_start`, `loop_length` of them, are one pass of its loop; 0 and 0 where no
    loop makes up most of it.
    """

    steps: tuple[ChordStep, ...]
    tonic: int = -1
    minor: bool = False
    loop_start: int = 0
    loop_length: int = 0


class Melody(Struct, frozen=True, gc=False):
    """The line of one part: MIDI numbers, the onset of each from the start, and its bar.

    `bass` says that it is a bass line, `sung` that a voice has it; `tonic` is a pitch class, -1
    without a key.
    """

    part: str
    midi: tuple[int, ...]
    onsets: tuple[int, ...]
    bars: tuple[int, ...]
    tonic: int = -1
    bass: bool = False
    sung: bool = False


class Beat(Struct, frozen=True, gc=False):
    """One bar of drums, and all the bars that have just the same.

    `hits` are the onsets from the bar line by the label of the drum ("BD", "SD"); `length` is the
    bar's. Ghost notes are left out.
    """

    meter: str
    length: int
    hits: tuple[tuple[str, tuple[int, ...]], ...]
    bars: tuple[int, ...]


class Technique(Struct, frozen=True, gc=False):
    """Something that the engine found in a chart, and the bars where it is seen, if it says."""

    name: str
    bars: tuple[int, ...] = ()


class ChartEntry(Struct, frozen=True, gc=False):
    """What one chart holds; `anchor` leads to it on its page, `name` is "Example 3".

    `tempo` is in the beats that the meter is felt in, a minute, 0 where none is given.
    `instruments` are the parts' families, `qualities` the canonical suffixes of the chords ("m7").
    `traits` are figures that write-ups are compared by: a fact's path and what it says. `id` is
    the author's name for the chart, `bars` how many are counted, `at` the second of the recording
    where it is heard, -1 where nobody says.
    """

    anchor: str
    name: str
    title: str
    kind: str
    meter: str = ""
    key: str = ""
    tempo: float = 0
    feel: str = ""
    instruments: tuple[str, ...] = ()
    tunings: tuple[str, ...] = ()
    qualities: tuple[str, ...] = ()
    progression: Progression | None = None
    melodies: tuple[Melody, ...] = ()
    beats: tuple[Beat, ...] = ()
    techniques: tuple[Technique, ...] = ()
    traits: tuple[tuple[str, str], ...] = ()
    id: str = ""
    bars: int = 0
    at: int = -1


class Section(Struct, frozen=True, gc=False):
    """A section of the form plan: its name, the letter found for it, its length in bars.

    `start` is where it starts in the recording, in seconds, -1 where nothing says.
    """

    name: str
    letter: str
    bars: float
    start: float = -1


class Entry(Struct, frozen=True, gc=False):
    """What a write-up holds; `sections` are those of its first form plan."""

    charts: tuple[ChartEntry, ...] = ()
    sections: tuple[Section, ...] = ()

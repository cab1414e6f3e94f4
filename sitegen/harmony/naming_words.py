"""The words for a reading of notes: why they are this chord, or no chord at all."""

from collections.abc import Iterable, Iterator, Sequence

from sitegen.harmony.canonical import name_quality
from sitegen.harmony.chord_degree import ChordDegree, read_degrees
from sitegen.harmony.note_names import degree as name_degree
from sitegen.harmony.readings import lacks_fifth, lacks_third
from sitegen.score.chord import Chord
from sitegen.score.pitch import PitchName

_TRIADS = {"": read_degrees("R 3 5"), "m": read_degrees("R ♭3 5")}
_COLOURS_FROM, _FEWEST_COLOURS = 9, 2
_INTERVALS = (
    "a unison",
    "a minor second",
    "a major second",
    "a minor third",
    "a major third",
    "a fourth",
    "a tritone",
    "a fifth",
    "a minor sixth",
    "a major sixth",
    "a minor seventh",
    "a major seventh",
)


def say_inversion(chord: Chord, degrees: frozenset[ChordDegree], in_bass: ChordDegree) -> str:
    """Return how notes fit a chord that holds them all, with one of its degrees in the bass."""
    return f"{_inside(chord, degrees)}, with {_place(in_bass)} in the bass"


def say_foreign_bass(chord: Chord, degrees: frozenset[ChordDegree]) -> str:
    """Return how notes fit a chord over a bass that is no note of it."""
    return f"{_inside(chord, degrees)}, over {chord.bass}, which is no note of it"


def say_rootless(chord: Chord, degrees: frozenset[ChordDegree], in_bass: ChordDegree) -> str:
    """Return how notes fit a chord whose root does not sound."""
    heard = [str(degree) for degree in sorted(degrees) if degree.number > 1]
    kind = f"{' '.join(heard)} of {chord.root}{chord.quality}"
    return f"{kind} without its root, with {_place(in_bass)} in the bass"


def say_cluster(names: Iterable[PitchName]) -> str:
    """Return what notes are that stand side by side."""
    return f"a cluster: {' '.join(map(str, names))}"


def say_interval(names: Sequence[PitchName]) -> str:
    """Return what two notes are that make no chord."""
    bass, other = names
    name = _INTERVALS[(other.pitch_class - bass.pitch_class) % 12]
    return f"two notes, {name} from {bass} up to {other}"


def say_no_chord(names: Iterable[PitchName]) -> str:
    """Return what notes are that no chord holds."""
    return f"no chord of thirds: {' '.join(map(str, names))}"


def say_melody(melody: PitchName, chord: Chord | None) -> str:
    """Return what follows a reason where the melody was left out: what it is over the chord."""
    if chord is None:
        return f", the melody's {melody} left out"
    return f", under a melody on {melody}, its {name_degree(melody, chord)}"


def _place(degree: ChordDegree) -> str:
    return "the root" if degree.number == 1 else f"its {degree}"


def _inside(chord: Chord, degrees: frozenset[ChordDegree]) -> str:
    """Return what of the chord sounds: its members, and what it goes without."""
    kind = f"{chord.root}{chord.quality}"
    gaps = [
        name for name, lacks in (("third", lacks_third), ("fifth", lacks_fifth)) if lacks(degrees)
    ]
    without = f" without a {' or a '.join(gaps)}" if gaps else ""
    upper = next((f" ({text})" for text in _upper_structures(chord, degrees)), "")
    return f"{' '.join(chord.degrees)} of {kind}{without}{upper}"


def _upper_structures(chord: Chord, degrees: frozenset[ChordDegree]) -> Iterator[str]:
    """Yield the triads that two or more colours make over the seventh chord below, D over C7."""
    colours = {degree for degree in degrees if degree.number >= _COLOURS_FROM}
    core = degrees - colours
    if len(colours) < _FEWEST_COLOURS or not {3, 7} <= {degree.number for degree in core}:
        return
    by_semitones = {degree.semitones: degree for degree in degrees}
    for root, (name, triad) in ((r, t) for r in sorted(colours) for t in _TRIADS.items()):
        tones = [by_semitones.get((root.semitones + d.semitones) % 12) for d in triad]
        if all(tones) and len(colours.intersection(tones)) >= _FEWEST_COLOURS:
            below = f"{chord.root}{name_quality(core).text}"
            yield f"{root.above(chord.root)}{name} over {below}"

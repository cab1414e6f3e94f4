"""Chords named from notes, and notes read from symbols, beside music21's answers.

Each meaning is sounded on 12 roots as MIDI numbers in close position, with its root in the bass
and then with each other member there. Over another bass no source tells what a musician says,
so a reading of exactly these notes over this bass is right when

- its root is the root of the chord that was sounded, X over its own note: C/E, Am7/G; or
- it is an everyday chord in root position: C6 over A is Am7, Csus2 over G is Gsus4; or
- it is the same kind of chord on another root, where the kind repeats within the octave: dim7,
  +, 7♭5.

The rows "or equal" also count every other reading of exactly these notes over this bass whose
kind of chord is known: an everyday type, a meaning of the reference files or one of the handbook
list below. Theory calls them equal, and many inputs belong to several of the chords asked for
(C6/G is Am7/G, C6/9 over D is D9sus4), of which no answer can name more than one. The rows "the
most possible" count, by the three rules, the cases that the best answer to each input would
serve: what no namer that hears notes and bass alone can pass.

In root position only the root that was sounded is right. Its row "or equal" counts the inversion
of a known chord too: Am♯5 is named F/A, Am♭6 Fmaj7/A.

The meanings of five Python libraries were first named and read before any rule was changed for
them; since then their misses have brought one, that a 13 is rarer over maj7 than over 7.
"""

import json
import re
import warnings
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path

from bench.figure import Figure

from sitegen.harmony import name_chord, read_chord
from sitegen.harmony.qualities import QUALITIES

_REFERENCE = Path(__file__).parents[1] / "reference"
_FILE, _HELD_BACK = _REFERENCE / "chord_classes.json", _REFERENCE / "chord_classes_python.json"
_ROOTS = "C Db D Eb E F F# G Ab A Bb B".split()
_SIGNS = str.maketrans({"b": "♭", "#": "♯"})
_EVERYDAY = " m 5 dim aug sus2 sus4 6 m6 7 maj7 m7 m7b5 dim7 mmaj7 7sus4 add9 madd9 9 maj9 m9 6/9"
# What jazz handbooks list beyond the file (from memory): altered dominants, suspensions, minors.
_HANDBOOK = (
    "7b5 7#9 7b9#9 7b9#11 7#9#11 7b5b9 7#5b9 7#5#9 9#11 9#5 7b13 9b13 13#9 13b9#11 13#9#11 "
    "7sus4b9 13sus4b9 9sus4 13sus4 maj7#5 maj9#5 maj7b5 maj13 6/9#11 m6/9 m11 m13 mmaj11 m7add13 "
    "7add13 m6add11 add#11 dimmaj7 m7#5 maj7sus4 maj7#9 (b5) maj11 mmaj13 7sus4b9b13 maj9sus4 "
    "9no5 m7no5 maj7no5 13no5 no3add9 7no3 alt"
)
_ROOT, _LIBRARY = Fraction(97, 100), "music21"
_ANOTHER, _ALL = Fraction(90, 100), Fraction(1)
_LOWEST = 48

Classes = frozenset[int]


@dataclass(frozen=True)
class Case:
    """One chord as it sounds: the pitch classes over its root, its root and its bass."""

    over_root: Classes
    root: int
    bass: int

    @property
    def classes(self) -> Classes:
        """The pitch classes that sound."""
        return _moved(self.over_root, self.root)

    @property
    def numbers(self) -> list[int]:
        """MIDI numbers from the bass up, in close position."""
        return sorted(_LOWEST + self.bass + (c - self.bass) % 12 for c in self.classes)


@dataclass(frozen=True)
class Answer:
    """The root and bass that a namer gave to exactly the notes that sound."""

    root: int
    bass: int


def measure() -> list[Figure]:
    """Return the figures of naming from notes and of reading from symbols."""
    published, held_back = _meanings(_FILE), _meanings(_HELD_BACK)
    others = {_meaning(quality) for quality in _handbook()} - published - held_back
    return [
        *_naming("published meanings", published, _ROOT, _ANOTHER),
        *_naming("five Python libraries, once held back", held_back, _ROOT, _ANOTHER),
        *_naming("22 everyday types", _everyday(), _ALL, _ROOT),
        *_naming("our table and handbooks, the rest", others, _ROOT, _ANOTHER),
        _reading("", _FILE),
        _reading(" held back", _HELD_BACK),
    ]


def _naming(of: str, sets: Iterable[Classes], root: Fraction, slash: Fraction) -> Iterator[Figure]:
    chosen = sorted(sets, key=sorted)
    rooted = [Case(classes, number, number) for classes in chosen for number in range(12)]
    slashed = [
        Case(classes, number, (number + member) % 12)
        for classes in chosen
        for number in range(12)
        for member in sorted(classes - {0})
    ]
    yield _figure("names, root position", of, rooted, is_sounded, root)
    yield _figure("names, root position, or equal", of, rooted, is_equal, root)
    yield _figure("names, another bass", of, slashed, is_right, slash)
    most = most_possible(slashed, is_right)
    yield Figure("names, another bass, most possible", of, most, len(slashed), slash)
    yield _figure("names, another bass, or equal", of, slashed, is_equal, slash)


def _figure(
    question: str,
    of: str,
    cases: list[Case],
    right: Callable[[Case, Answer | None], bool],
    target: Fraction,
) -> Figure:
    ours = sum(right(case, our_answer(case)) for case in cases)
    theirs = sum(right(case, library_answer(case)) for case in cases)
    return Figure(question, of, ours, len(cases), target, _LIBRARY, theirs)


def most_possible(cases: Iterable[Case], right: Callable[[Case, Answer | None], bool]) -> int:
    """Return how many cases one answer to each input, the same notes and bass, can serve."""
    inputs: dict[tuple[Classes, int], list[Case]] = {}
    for case in cases:
        inputs.setdefault((case.classes, case.bass), []).append(case)
    return sum(
        max(sum(right(case, Answer(root, bass)) for case in alike) for root in range(12))
        for (_, bass), alike in inputs.items()
    )


def is_sounded(case: Case, answer: Answer | None) -> bool:
    """Tell whether the answer has the root of the chord that was sounded."""
    return answer == Answer(case.root, case.bass)


def is_right(case: Case, answer: Answer | None) -> bool:
    """Tell whether the answer is right by the first three rules of this module."""
    if answer is None or answer.bass != case.bass:
        return False
    over_answer = _moved(case.classes, -answer.root)
    in_root_position = answer.root == answer.bass
    return (
        answer.root == case.root
        or (in_root_position and over_answer in _everyday())
        or over_answer == case.over_root
    )


def is_equal(case: Case, answer: Answer | None) -> bool:
    """Tell whether the answer is right, or another known chord of the same notes and bass."""
    if answer is None or answer.bass != case.bass:
        return False
    return is_right(case, answer) or _moved(case.classes, -answer.root) in _known()


@cache
def our_answer(case: Case) -> Answer | None:
    """Return what `name_chord` ranks first."""
    chord = name_chord(case.numbers)[0].chord
    if chord is None or set(chord.pitch_classes) != case.classes:
        return None
    return Answer(chord.root.pitch_class, chord.bass.pitch_class)


@cache
def library_answer(case: Case) -> Answer | None:
    """Return what music21 names the same notes, its symbol read back by music21 itself."""
    from music21.chord import Chord  # noqa: PLC0415 - slow to import
    from music21.harmony import ChordSymbol, chordSymbolFigureFromChord  # noqa: PLC0415

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            symbol = ChordSymbol(chordSymbolFigureFromChord(Chord(case.numbers)))
            root, bass = symbol.root().pitchClass, symbol.bass().pitchClass
        except Exception:  # noqa: BLE001 - whatever it raises, it has no answer
            return None
    return Answer(root, bass) if set(symbol.pitchClasses) == case.classes else None


def _reading(which: str, file: Path) -> Figure:
    """Return how many spellings of a file are read as the pitch classes it gives them."""
    known = json.loads(file.read_text(encoding="utf-8"))["classes"].values()
    spelled = [
        (s, frozenset(entry["pitch_classes"])) for entry in known for s in entry["spellings"]
    ]
    cases = [
        ((root + spelling).translate(signs), _moved(classes, number))
        for spelling, classes in spelled
        for number, root in enumerate(_ROOTS)
        for signs in ({}, _SIGNS)
    ]
    ours = sum(_read(text) == classes for text, classes in cases)
    theirs = sum(_library_reads(text) == classes for text, classes in cases)
    of = f"{len(spelled)} spellings{which}, 12 roots, 2 signs"
    return Figure("symbols read", of, ours, len(cases), _ALL, _LIBRARY, theirs)


def _read(text: str) -> Classes:
    return frozenset(read_chord(text).pitch_classes)


def _library_reads(text: str) -> Classes:
    """Return music21's reading; its flats of roots are written -, and its signs are ASCII."""
    from music21.harmony import ChordSymbol  # noqa: PLC0415 - slow to import

    plain = text.replace("♭", "b").replace("♯", "#")
    figure = re.sub(r"^([A-G])b", r"\1-", plain)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        try:
            return frozenset(ChordSymbol(figure).pitchClasses)
        except Exception:  # noqa: BLE001 - whatever it raises, it has no answer
            return frozenset()


@cache
def _meanings(file: Path) -> frozenset[Classes]:
    known = json.loads(file.read_text(encoding="utf-8"))["classes"]
    return frozenset(frozenset(entry["pitch_classes"]) for entry in known.values())


@cache
def _known() -> frozenset[Classes]:
    published = _meanings(_FILE) | _meanings(_HELD_BACK)
    return published | _everyday() | frozenset(map(_meaning, _HANDBOOK.split()))


@cache
def _everyday() -> frozenset[Classes]:
    return frozenset(map(_meaning, _EVERYDAY.split(" ")))


def _handbook() -> Iterator[str]:
    yield from _HANDBOOK.split()
    yield from (quality.name for quality in QUALITIES)


def _meaning(quality: str) -> Classes:
    return _moved(_read(f"C{quality}"), 0)


def _moved(classes: Iterable[int], semitones: int) -> Classes:
    return frozenset((number + semitones) % 12 for number in classes)

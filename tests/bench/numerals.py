"""Roman numerals: the analysed Bach chorales of music21's corpus, and a table of figures.

Chorales. Every numeral of an analysis is turned into notes by music21; the notes are named by
`name_chord`, as the stack of thirds that they spell; the passage, all chords up to the next
change of key, is numbered by `roman_line`; and the numerals must be equal in degree, case,
quality, inversion and the degree that they are applied to. The writers' conventions differ and
are made equal so: the analysts leave out the accidental of III, VI and VII in minor, and `maj`
before 7, write o for ° and 2 for 42; the case of an applied chord's goal is not compared, since
they follow the goal's next chord in it and we its scale. Every third chorale, by its place in the
sorted corpus, is held back: no rule was made or changed after one of its misses.

Madrigals. Every third of Monteverdi's 48 in the same way, without the numerals of fewer than three
different notes. These are held back alike; the others were looked at after the chorales.

The library is asked with its secondary dominants off, as it is unless told otherwise.

Table. The figures of `FIGURES` in twelve keys: the chord of the figure gives the figure back.
"""

from collections.abc import Iterator
from fractions import Fraction

from bench.figure import Figure
from bench.library_numerals import equalize, library_numeral
from bench.numeral_analyses import Case, read_chorales, read_madrigals
from bench.numeral_figures import FIGURES, TONICS

from sitegen.harmony import read_chord, roman, roman_line
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

PRIMARY, APPLIED, ALL = Fraction(995, 1000), Fraction(57, 58), Fraction(1)


def measure() -> list[Figure]:
    """Return the figures of the chorales and madrigals, and of the table."""
    chorales, madrigals = list(read_chorales()), list(read_madrigals())
    return [*_chorale_figures(chorales), *_madrigal_figures(madrigals), _table_figure()]


def _chorale_figures(cases: list[Case]) -> Iterator[Figure]:
    for question, is_applied, target in (
        ("primary numerals", False, PRIMARY),
        ("applied numerals", True, APPLIED),
    ):
        asked = [case for case in cases if case.is_applied == is_applied]
        yield _figure(question, "20 analysed chorales", asked, target)
        for part, held in (("looked at", False), ("held back", True)):
            of_part = [case for case in asked if case.is_held_back == held]
            yield _figure(question, f"of these {part}", of_part, target)


def _madrigal_figures(cases: list[Case]) -> Iterator[Figure]:
    for question, is_applied, target in (
        ("primary numerals", False, PRIMARY),
        ("applied numerals", True, APPLIED),
    ):
        asked = [case for case in cases if case.is_applied == is_applied]
        yield _figure(question, "16 madrigals, held back", asked, target)


def _figure(question: str, cases_of: str, cases: list[Case], target: Fraction) -> Figure:
    ours = sum(case.ours == case.written for case in cases)
    library = sum(case.library == case.written for case in cases)
    return Figure(question, cases_of, ours, len(cases), target, "music21", library)


def _table_figure() -> Figure:
    rows = [(row, tonic) for row in FIGURES for tonic in TONICS]
    ours = library = 0
    for (figure, symbol, mode), tonic in rows:
        key = Key(PitchName.read(tonic), mode)
        chord = _move(symbol, key.tonic)
        ours += roman(chord, key) == figure == roman_line([chord], key)[0]
        library += library_numeral(chord, key) == equalize(figure, key, is_ours=True)
    cases_of = f"{len(FIGURES)} figures in 12 keys"
    return Figure("figures from chords", cases_of, ours, len(rows), ALL, "music21", library)


def _move(symbol: str, tonic: PitchName) -> Chord:
    """Return a chord that is written in C, in the key on `tonic`."""
    chord = read_chord(symbol)
    if not isinstance(chord, Chord):
        raise TypeError(symbol)
    up = Interval.between_names(PitchName("C"), tonic).above_name
    moved = read_chord(f"{up(chord.root)}{chord.quality}/{up(chord.bass)}")
    if not isinstance(moved, Chord):
        raise TypeError(symbol)
    return moved

"""What of a line comes again: its longest figure, its most repeated one, and its sequences.

`figures` says what a figure is. The longest one is sought among those that start where a phrase
does or with the first note of a bar, the others also where a note starts on a felt beat. Of equals
the one with more statements, then the earlier one is taken.

A sequence is a figure stated again at once at another pitch, each time as far off in pitch and
time: two statements or more (three of a figure of three notes) with no note between them. It is
real where all its intervals stay the same, diatonic where they follow the scale (Kostka and Payne,
"Tonal Harmony", on sequences; from memory; two statements are enough here).
"""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from sitegen.analysis.melody.figures import FEWEST_NOTES, Figure, apart, recurring
from sitegen.analysis.melody.line import MelodicLine
from sitegen.analysis.melody.phrases import Phrase
from sitegen.analysis.melody.recurrence import recurrence_sentence
from sitegen.analysis.melody.wording import distance_words
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact, Place
from sitegen.analysis.wording import capitalised, the_part

_MANY = 3


def motif_facts(line: MelodicLine, phrases: tuple[Phrase, ...]) -> list[Fact]:
    """Return the figures and sequences of a line."""
    if len(line) < 2 * FEWEST_NOTES:
        return []
    heads = _heads(line, phrases)
    beats = set(line.pulse.beats)
    on_beats = [index for index, start in enumerate(line.starts) if start in beats]
    runs = [*recurring(line, phrases, sorted(heads.union(on_beats)))]
    leading = [apart(length, [s for s in starts if s in heads]) for length, starts in runs]
    figures = [*filter(None, (apart(length, starts) for length, starts in runs))]
    sequence = _best_sequence(line, figures)
    facts = [*_longest(line, [*filter(None, leading)], sequence), *_most_repeated(line, figures)]
    return facts if sequence is None else [*facts, _sequence_fact(line, sequence)]


def _heads(line: MelodicLine, phrases: Iterable[Phrase]) -> set[int]:
    """Return the notes that start a phrase or are the first of a bar."""
    firsts = {index + 1 for index, (a, b) in enumerate(pairwise(line.bars)) if a != b}
    return {0, *firsts, *(phrase[0] for phrase in phrases)}


def _longest(line: MelodicLine, figures: list[Figure], sequence: Figure | None) -> list[Fact]:
    if not figures:
        return []
    found = max(figures, key=lambda figure: (figure.length, len(figure.starts), -figure.starts[0]))
    told = _told_starts(line, sequence)
    sentence = "" if told.issuperset(found.starts) else recurrence_sentence(line, found)
    path, length = f"{line.prefix}.longest-figure", found.length
    return [Fact(path, length, str(length), "notes", _statements(line, found), sentence)]


def _most_repeated(line: MelodicLine, figures: list[Figure]) -> list[Fact]:
    if not figures:
        return []
    found = max(figures, key=lambda figure: (len(figure.starts), figure.length, -figure.starts[0]))
    count, path = len(found.starts), f"{line.prefix}.most-repeated-figure"
    return [Fact(path, count, str(count), "times", _statements(line, found))]


def _statements(line: MelodicLine, figure: Figure) -> tuple[Place, ...]:
    return tuple(line.stretch(start, start + figure.length) for start in figure.starts)


def _best_sequence(line: MelodicLine, figures: list[Figure]) -> Figure | None:
    found = (run for figure in figures for run in _sequences(line, figure))
    return max(found, key=lambda f: (len(f.starts), f.length, -f.starts[0]), default=None)


def _sequences(line: MelodicLine, figure: Figure) -> Iterator[Figure]:
    """Return the runs of statements that follow each other as a sequence does."""
    run: list[int] = []
    before: tuple[int, int] | None = None
    for start, after in pairwise(figure.starts):
        step = (line.starts[after] - line.starts[start], line.steps[after] - line.steps[start])
        adjoins = after - start == figure.length and step[1] != 0
        if adjoins and step == before:
            run.append(after)
            continue
        yield from _long_enough(figure, run)
        run, before = ([start, after], step) if adjoins else ([], None)
    yield from _long_enough(figure, run)


def _long_enough(figure: Figure, run: list[int]) -> Iterator[Figure]:
    fewest = _MANY if figure.length == FEWEST_NOTES else 2
    if len(run) >= fewest:
        yield Figure(figure.length, tuple(run))


def _told_starts(line: MelodicLine, sequence: Figure | None) -> set[int]:
    return {*sequence.starts} if sequence is not None and _is_told(line, sequence) else set()


def _is_told(line: MelodicLine, sequence: Figure) -> bool:
    """Tell whether a sequence has a sentence of its own; a bass has them from its chords."""
    return len(sequence.starts) >= _MANY and not line.is_bass


def _sequence_fact(line: MelodicLine, sequence: Figure) -> Fact:
    first, second = sequence.starts[:2]
    move = line.steps[second] - line.steps[first]
    kind = "real" if _is_real(line, sequence) else "diatonic"
    way = f"{'up' if move > 0 else 'down'} {distance_words(move)}"
    again = " each time" if len(sequence.starts) > 2 else ""  # noqa: PLR2004
    text = f"a {kind} sequence {way}{again}"
    sentence = ""
    if _is_told(line, sequence):
        bars = [line.notes[i].bar for s in range(len(sequence.starts)) for i in sequence.notes(s)]
        where, name = capitalised(bars_said(bars)), the_part(line.part)
        sentence = f"{where}: {name} takes one figure {way} each time, a {kind} sequence."
    places = _statements(line, sequence)
    return Fact(f"{line.prefix}.sequence", text, text, "", places, sentence)


def _is_real(line: MelodicLine, figure: Figure) -> bool:
    """Tell whether all statements have the same intervals to the semitone."""
    shapes = {line.semitones[start : start + figure.length - 1] for start in figure.starts}
    return len(shapes) == 1

"""Bass lines that go by step: scales up and down, chromatic descents, the lament bass.

A stepwise line is four notes or more that move by semitones and whole tones in one direction.
Symbols do not say in which octave a bass lies, so that a step there is the smaller way from note
to note; a played line must really move by step.

The lament bass is the fall from 1 to 5 in minor, 1 ♭7 ♭6 5, by the scale or with semitones
between: E. Rosand, "The Descending Tetrachord: An Emblem of Lament", *The Musical Quarterly* 65
(1979), from memory; Purcell's Dido goes by semitones all the way, G F♯ F E E♭ D.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from sitegen.analysis.bass.bass_line import BassLine, BassTone, by_bass
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.roots.wording import names_said
from sitegen.score.key import Key

_FEWEST, _LITTLE = 4, 2
_DOWN, _UP = -1, 1
_SEMITONE, _WHOLE_TONE, _OCTAVE = 1, 2, 12
# Semitones below the octave, from the tonic to the dominant.
_LAMENT = (0, 10, 8, 7)
_CHROMATIC_LAMENT = (0, 11, 10, 9, 8, 7)

Run = Sequence[BassTone]
"""Tones that move by step in one direction."""


def step_facts(line: BassLine, key: Key | None, *, told: bool) -> list[Fact]:
    """Return the longest runs of a line and its lament bass; sentences only where `told`."""
    tones = [by_bass(stretch) for stretch in line.stretches]
    falls = [run for stretch in tones for run in _runs(stretch, _DOWN, _WHOLE_TONE)]
    rises = [run for stretch in tones for run in _runs(stretch, _UP, _WHOLE_TONE)]
    laments = [found for run in falls if (found := _lament(run, key))]
    facts = [
        *_run_facts(line, "bass-descent", falls),
        *_run_facts(line, "bass-ascent", rises),
        *_chromatic_facts(line, "chromatic-bass-descent", falls, _DOWN),
        *_chromatic_facts(line, "chromatic-bass-ascent", rises, _UP),
    ]
    if laments:
        facts.append(_lament_fact(line, laments[0]))
    if not told:
        return facts
    return _with_sentences(line, facts, falls, rises, laments)


def _runs(tones: Sequence[BassTone], way: int, widest: int) -> Iterator[Run]:
    """Yield every longest run of four tones or more by steps of `widest` semitones at most."""
    if len(tones) < _FEWEST:
        return
    start = 0
    for place in range(1, len(tones) + 1):
        if place < len(tones) and 0 < way * _step(tones[place - 1], tones[place]) <= widest:
            continue
        if place - start >= _FEWEST:
            yield tones[start:place]
        start = place


def _step(first: BassTone, second: BassTone) -> int:
    """Return the semitones from tone to tone, negative downwards."""
    if first.midi is not None and second.midi is not None:
        return second.midi - first.midi
    up = (second.sound - first.sound) % _OCTAVE
    return up if up <= _OCTAVE // 2 else up - _OCTAVE


def _lament(run: Run, key: Key | None) -> Run | None:
    """Return the part of a fall that goes from 1 to 5 in a minor key through ♭7 and ♭6."""
    if key is None:
        return None
    tonic = key.tonic.pitch_class
    above = [(tone.sound - tonic) % _OCTAVE for tone in run]
    if not set(above) >= set(_LAMENT) or not _is_minor(key):
        return None
    for start in (place for place, number in enumerate(above) if number == 0):
        end = next((n for n in range(start, len(run)) if above[n] == _LAMENT[-1]), None)
        if end is not None and set(_LAMENT) <= set(above[start : end + 1]):
            return run[start : end + 1]
    return None


@lru_cache(maxsize=128)
def _is_minor(key: Key) -> bool:
    return key.is_minor


def _run_facts(line: BassLine, path: str, runs: Sequence[Run]) -> list[Fact]:
    if not runs:
        return []
    longest = max(runs, key=len)
    places = tuple(tone.place for tone in longest)
    return [Fact(line.prefix + path, len(longest), str(len(longest)), "notes", places)]


def _chromatic_facts(line: BassLine, path: str, runs: Sequence[Run], way: int) -> list[Fact]:
    return _run_facts(line, path, [part for run in runs for part in _runs(run, way, _SEMITONE)])


def _lament_fact(line: BassLine, run: Run) -> Fact:
    between = len(run) - len(_LAMENT)
    whole = len(_CHROMATIC_LAMENT) - len(_LAMENT)
    kind = "chromatic" if between == whole else "partly chromatic" if between else "diatonic"
    return Fact(f"{line.prefix}lament-bass", kind, kind, "", tuple(tone.place for tone in run))


def _with_sentences(
    line: BassLine,
    facts: Sequence[Fact],
    falls: Sequence[Run],
    rises: Sequence[Run],
    laments: Sequence[Run],
) -> list[Fact]:
    """Return the facts with what they tell; a lament is told as such and not as a fall too."""
    sentences = {}
    if laments:
        sentences["lament-bass"] = _told_lament(line, laments)
    told = {_names(run) for run in laments}
    plain = [run for run in falls if not any(_goes_little_beyond(run, name) for name in told)]
    if plain:
        sentences["bass-descent"] = _told_run(line, plain, _DOWN)
    if rises:
        sentences["bass-ascent"] = _told_run(line, rises, _UP)
    return [
        Fact(
            fact.path,
            fact.value,
            fact.text,
            fact.unit,
            fact.evidence,
            sentences.get(fact.path.removeprefix(line.prefix), ""),
        )
        for fact in facts
    ]


def _goes_little_beyond(run: Run, told: str) -> bool:
    """Tell whether a run is a line that is told already, or one with two notes more at most."""
    return told in _names(run) and len(run) <= len(told.split()) + _LITTLE


def _told_lament(line: BassLine, runs: Sequence[Run]) -> str:
    first = runs[0]
    way = "by semitones" if len(first) == len(_CHROMATIC_LAMENT) else "by step"
    said = f"the lament bass, {_names(first)}, {way} from 1 down to 5 in minor"
    return f"{_start(line, first)} {said}{_again(first, runs)}."


def _told_run(line: BassLine, runs: Sequence[Run], way: int) -> str:
    """Return what the longest run does, and where the same notes come again."""
    longest = max(runs, key=len)
    verb = "falls" if way == _DOWN else "rises"
    chromatic = max(_runs(longest, way, _SEMITONE), key=len, default=())
    said = f"{_start(line, longest)} the bass {verb} by step, {_names(longest)}"
    if len(chromatic) == len(longest):
        said = f"{_start(line, longest)} the bass {verb} by semitones, {_names(longest)}"
    elif chromatic:
        said += f", by semitones from {chromatic[0].name} to {chromatic[-1].name}"
    return f"{said}{_again(longest, runs)}."


def _again(told: Run, runs: Sequence[Run]) -> str:
    """Return where the notes of a run come again."""
    alike = [run for run in runs if run is not told and _names(run) == _names(told)]
    bars = bars_said(run[0].held.home for run in alike)
    return f", and again from {bars}" if bars else ""


def _names(run: Run) -> str:
    return names_said(tone.name for tone in run)


def _start(line: BassLine, run: Run) -> str:
    bars = bars_said(range(run[0].held.home, run[-1].held.home + 1)).capitalize()
    return f"{bars}{line.speaker}:"

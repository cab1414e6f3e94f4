"""Which degrees of the author's key sound, and where the tonic does."""

from collections.abc import Iterator

from sitegen.analysis.reading import ChordReading, Fact, Place
from sitegen.analysis.tonality.heard import Hearing
from sitegen.analysis.tonality.modes import undecided
from sitegen.score.chord import Chord
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

# A loop without its tonic is one from so many chords of so many kinds on.
_LEAST_CHORDS, _LEAST_KINDS = 4, 3


def degree_facts(hearing: Hearing) -> Iterator[Fact]:
    """Yield the degrees that never sound, and the bars and chords of the tonic."""
    key = hearing.reading.chart.key
    if key is None:
        return
    missing = _missing(hearing, key)
    if missing:
        numbers = " ".join(map(str, missing))
        sentence = _missing_sentence(hearing, key, missing)
        yield Fact("scale-degrees-missing", numbers, numbers, sentence=sentence)
    yield _tonic_bars(hearing, key.tonic)
    yield from _tonic_chords(hearing, key.tonic)


def _missing(hearing: Hearing, key: Key) -> list[int]:
    """Return the degrees whose letter never sounds, altered or not, nor as another name."""
    steps = {(name.step - key.tonic.step) % 7 for name in hearing.names}
    return [
        step + 1
        for step, name in enumerate(key.scale)
        if step not in steps and name.pitch_class not in hearing.classes
    ]


def _missing_sentence(hearing: Hearing, key: Key, missing: list[int]) -> str:
    if 3 in missing and not {3, 4} & {  # noqa: PLR2004 - the third degree
        (number - key.tonic.pitch_class) % 12 for number in hearing.classes
    }:
        return f"No third over {key.tonic} sounds, neither the major nor the minor."
    return undecided(hearing, key)


def _tonic_bars(hearing: Hearing, tonic: PitchName) -> Fact:
    first: dict[int, Place] = {}
    for note in hearing.notes:
        if note.bar not in first and note.pitch.name.pitch_class == tonic.pitch_class:
            first[note.bar] = note.place
    count = len(first)
    sentence = "" if count else f"The tonic, {tonic}, never sounds."
    return Fact("tonic-bars", count, str(count), "bars", tuple(first.values()), sentence)


def _tonic_chords(hearing: Hearing, tonic: PitchName) -> Iterator[Fact]:
    chords = [c for c in hearing.reading.chords if isinstance(c.chord, Chord)]
    if not chords:
        return
    on_tonic = [c for c in chords if c.chord.root == tonic]
    sounds = tonic.pitch_class in hearing.classes
    is_without = not on_tonic and sounds and _is_progression(chords)
    sentence = f"No chord stands on the tonic, {tonic}." if is_without else ""
    places = tuple(Place(c.bar, c.beat) for c in on_tonic)
    yield Fact("tonic-chords", len(on_tonic), str(len(on_tonic)), "chords", places, sentence)


def _is_progression(chords: list[ChordReading]) -> bool:
    kinds = {chord.chord for chord in chords}
    return len(chords) >= _LEAST_CHORDS and len(kinds) >= _LEAST_KINDS

"""The mode on a chart's tonic, and the notes that make it so."""

from collections.abc import Iterator

from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.analysis.tonality.heard import Hearing
from sitegen.score.key import Key
from sitegen.score.pitch import PitchName

# The degree that sets a mode apart from the major or minor that shares its third: any rudiments
# book. Locrian has no fifth to rest on and is left out.
_MAKES = {"lydian": 4, "mixolydian": 7, "dorian": 6, "phrygian": 2}
_MODES = ("lydian", "major", "mixolydian", "dorian", "minor", "phrygian")
# The pairs of modes that players waver between, by the degree that would decide.
_UNDECIDED = {("major", "mixolydian"): "seventh", ("dorian", "minor"): "sixth"}
_LEAST_NAMES = 5


def mode_facts(hearing: Hearing) -> Iterator[Fact]:
    """Yield the mode that alone holds all notes on the author's tonic, unless major or minor."""
    key = hearing.reading.chart.key
    if key is None:
        return
    holding = holding_modes(hearing, key.tonic)
    if len(holding) == 1 and holding[0] in _MAKES:
        yield _mode_fact(hearing, key, Key(key.tonic, holding[0]))


def holding_modes(hearing: Hearing, tonic: PitchName) -> tuple[str, ...]:
    """Return the modes, locrian apart, whose scale on `tonic` holds all that is heard."""
    return tuple(m for m in _MODES if hearing.fits(Key(tonic, m)))


def undecided(hearing: Hearing, key: Key) -> str:
    """Return a sentence where one missing degree leaves the mode of a key open; else ""."""
    modes = holding_modes(hearing, key.tonic)
    degree = _UNDECIDED.get(modes) if len(modes) == 2 else None  # noqa: PLR2004
    if degree is None or len(hearing.names) < _LEAST_NAMES or key.mode not in modes:
        return ""
    other = Key(key.tonic, next(mode for mode in modes if mode != key.mode))
    return f"No {degree} sounds, so the notes fit {other} as well as {key}."


def _mode_fact(hearing: Hearing, written: Key, heard: Key) -> Fact:
    name = heard.scale[_MAKES[heard.mode] - 1]
    places = tuple(note.place for note in hearing.notes if note.pitch.name == name)
    whole = heard.mode if written.mode == heard.mode else str(heard)
    sentence = f"{name} in {bars_said(places)} makes it {whole}."
    return Fact("mode-evidence", heard.mode, heard.mode, "", places, sentence)

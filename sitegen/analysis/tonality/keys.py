"""The key that is found, its runner-up, and two keys that share their notes."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from sitegen.analysis.places import listed
from sitegen.analysis.reading import Fact
from sitegen.analysis.tonality.heard import Hearing
from sitegen.harmony import KeyFinding, find_key
from sitegen.harmony.key_finding import key_with, lowest_signature
from sitegen.score.interval import Interval
from sitegen.score.key import Key

# A key that the notes fit so well is told to an author who wrote another.
_CLEAR = 0.85
# From so much on a finding is set beside the author's key.
_SPEAKING = 0.5
# A key that begins the chart and fits best is alone unless the next has this share of both.
_OPEN = 0.35
# What rock is read in; lydian and phrygian are rare there (Temperley, The Musical Language of
# Rock, 2018; from memory).
_COMMON_MODES = ("major", "minor", "dorian", "mixolydian")
_LEADING_TONE = Interval(-1, -1)


def key_facts(hearing: Hearing) -> Iterator[Fact]:
    """Yield the key found, how sure it is, the next, and how the author's stands to it."""
    found = find_key((note.pitch, note.duration) for note in hearing.notes)
    best, second = found[:2]
    fit = Fraction(round(best.fit * 100), 100)
    yield Fact("key-found", str(best.key), str(best.key))
    yield Fact("key-fit", fit, f"{round(best.fit * 100)} %", "of belief")
    yield Fact("key-runner-up", str(second.key), str(second.key))
    key = hearing.reading.chart.key
    if key is not None and best.fit >= _SPEAKING:
        word = _agreement(key, best.key)
        yield Fact("key-agreement", word, word, sentence=_contradiction(key, found))
    yield from _readings(hearing, found)


def _agreement(key: Key, found: Key) -> str:
    if key.tonic.pitch_class == found.tonic.pitch_class:
        return "agrees" if key.is_minor == found.is_minor else "same tonic"
    related = {key.fifths % 12, Key(key.tonic, "minor" if key.is_minor else "major").fifths % 12}
    return "relative" if found.fifths % 12 in related else "differs"


def _contradiction(key: Key, found: Sequence[KeyFinding]) -> str:
    best = found[0]
    if best.fit < _CLEAR or any(_agreement(key, f.key) != "differs" for f in found[:2]):
        return ""
    return f"The notes and chords speak for {best.key} rather than {key}."


def _readings(hearing: Hearing, found: Sequence[KeyFinding]) -> Iterator[Fact]:
    """Yield two keys of the one signature, where the notes leave both open."""
    keys = _open_keys(hearing, found)
    if keys is None:
        return
    names = [str(key) for key in keys]
    sentence = "" if hearing.reading.chart.key else _open_sentence(hearing, keys)
    yield Fact("key-readings", ", ".join(names), " or ".join(names), sentence=sentence)


def _open_keys(hearing: Hearing, found: Sequence[KeyFinding]) -> tuple[Key, Key] | None:
    signature = only_signature(hearing)
    if signature is None:
        return None
    at_home = [f.key for f in found[:2] if f.key.fifths == signature]
    common = [key_with(signature, mode) for mode in _COMMON_MODES]
    first, *others = hearing.opening_basses or (-1,)
    opener = [key for key in common if key.tonic.pitch_class == first]
    if at_home[:1] == opener and _leads(found):
        return None
    later = [key for place in others for key in common if key.tonic.pitch_class == place]
    keys = [*dict.fromkeys((*opener, *at_home, *later))]
    return (keys[0], keys[1]) if len(keys) > 1 else None


def _leads(found: Sequence[KeyFinding]) -> bool:
    best, second = found[:2]
    return second.fit < _OPEN * (best.fit + second.fit)


def only_signature(hearing: Hearing) -> int | None:
    """Return the one signature whose scale holds all that is heard; None for none or several."""
    lowest = lowest_signature(note.pitch for note in hearing.notes)
    holding = [
        signature
        for signature in range(lowest, lowest + 12)
        if hearing.fits(key_with(signature, "major"))
    ]
    return holding[0] if len(holding) == 1 else None


def _open_sentence(hearing: Hearing, keys: Sequence[Key]) -> str:
    reasons = ["the notes are the same"]
    for key in keys:
        if key.mode == "minor":
            leading = _LEADING_TONE.above_name(key.tonic)
            reasons.append(f"no leading tone, {leading}, points to {key.tonic}")
    openers = [k.tonic for k in keys if k.tonic.pitch_class in hearing.opening_basses]
    if len(openers) == len(keys):
        reasons.append("both tonics begin a bar")
    elif openers:
        reasons.append(f"only {openers[0]} begins a bar")
    names = " or ".join(str(key) for key in keys)
    return f"Reads as {names}: {listed(reasons)}."

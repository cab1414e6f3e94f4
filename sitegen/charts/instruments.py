"""What a part is played on, from its name and its line in the head."""

import re
from dataclasses import dataclass

from sitegen.diagnostics import did_you_mean
from sitegen.score.instrument import (
    FEWEST_STRINGS,
    MOST_STRINGS,
    STANDARD,
    TUNINGS,
    Fretted,
    Instrument,
    Reading,
    Tuning,
    lowered,
)
from sitegen.score.interval import Interval
from sitegen.score.pitch import Pitch, PitchName

FRETTED = frozenset({"guitar", "bass", "ukulele", "mandolin", "banjo"})
HIGHEST_CAPO = 12
LOWEST_STRING, HIGHEST_STRING = 16, 84
_FAMILIES = {
    "drums": ("drums", "drum", "kit"),
    "bass": ("bass",),
    "guitar": ("guitar",),
    "ukulele": ("ukulele",),
    "mandolin": ("mandolin",),
    "banjo": ("banjo",),
    "voice": ("voice", "vocal", "vocals", "singer", "choir", "harmony", "melody"),
    "keys": ("keys", "piano", "organ", "synth", "pad", "clavinet"),
    "lead": ("lead", "riff", "hook", "solo"),
    "strings": ("strings", "violin", "viola", "cello", "fiddle"),
    "horns": ("horns", "brass", "sax", "saxophone", "trumpet", "trombone", "horn"),
    "winds": ("flute", "clarinet", "oboe", "bassoon", "recorder", "harmonica", "whistle"),
    "mallets": ("vibraphone", "marimba", "glockenspiel", "bells"),
}
_BY_WORD = {word: family for family, words in _FAMILIES.items() for word in words}
# From the sounding to the written pitch of a transposing instrument: common practice, no source.
_READS_IN = {
    "Bb": Interval(1, 2),
    "B♭": Interval(1, 2),
    "A": Interval(2, 3),
    "Eb": Interval(5, 9),
    "E♭": Interval(5, 9),
    "F": Interval(4, 7),
    "G": Interval(3, 5),
    "D": Interval(-1, -2),
}
_OCTAVES = {"up": Interval(7, 12), "down": Interval(-7, -12)}
_CAPO = re.compile(r"capo\s+(\d{1,2})")
_READS_OCTAVE = re.compile(r"reads an octave (up|down)")
_READS_KEY = re.compile(r"reads in (\S+?)(?:,? and an octave (up|down))?")
_NOTE_STANDARD = re.compile(r"([A-G][b#♭♯]?) standard")
_AT_PITCH = ("at pitch", "standard")


def family_of(name: str) -> str | None:
    """Return the family a part's name tells ("lead guitar 2" is a guitar), None for others."""
    known = [word for word in name.split() if word in _BY_WORD]
    if "bass" in known and "drum" in known:
        return "drums"
    playable = [word for word in known if _BY_WORD[word] in FRETTED or _BY_WORD[word] == "drums"]
    # "bass guitar" is a bass, "lead guitar" a guitar, "bass clarinet" no bass.
    if playable and all(_BY_WORD[word] in FRETTED | {"drums", "lead"} for word in known):
        return _BY_WORD[playable[0]]
    return _BY_WORD[known[-1]] if known else None


@dataclass
class _Settings:
    """What a part's head line has said so far."""

    tuning: str = ""
    capo: int = 0
    reading: Reading | None = None
    clef: str = ""


def read_instrument(
    name: str, value: str, strings: int | None, *, has_strings: bool
) -> Instrument:
    """Return the instrument of part `name` as its head line `value` ("" without one) sets it.

    `has_strings` tells whether the part has string rows, `strings` how many strings they show,
    None where that cannot be told.
    Raises ValueError with a sentence for the author.
    """
    settings = _Settings()
    for item in _items(value):
        _apply(item, settings)
    family = family_of(name) or "other"
    fretted = None
    if has_strings or family in FRETTED:
        fretted = _read_fretted(family, settings, strings)
    elif settings.tuning and settings.tuning not in _AT_PITCH:
        raise ValueError(f'"{settings.tuning}" is a tuning, but {name} has no strings')
    elif settings.capo:
        raise ValueError(f"{name} takes no capo")
    return Instrument(family, fretted, settings.reading, settings.clef)


def _items(value: str) -> list[str]:
    items = [" ".join(item.split()) for item in re.split(r",(?! and an octave)", value)]
    return [item for item in items if item]


def _apply(item: str, settings: _Settings) -> None:
    if match := _CAPO.fullmatch(item):
        settings.capo = int(match[1])
        if not 0 < settings.capo <= HIGHEST_CAPO:
            raise ValueError(f"a capo sits at frets 1 to {HIGHEST_CAPO}, not {settings.capo}")
    elif match := _READS_OCTAVE.fullmatch(item):
        settings.reading = Reading(item, _OCTAVES[match[1]])
    elif match := _READS_KEY.fullmatch(item):
        settings.reading = Reading(item, _reads_in(match[1], match[2]))
    elif item in ("treble clef", "bass clef"):
        settings.clef = item.removesuffix(" clef")
    elif settings.tuning:
        raise ValueError(f'"{item}" is a second tuning beside "{settings.tuning}"')
    else:
        settings.tuning = item


def _reads_in(key: str, octave: str | None) -> Interval:
    if key not in _READS_IN:
        raise ValueError(f'no instrument reads in "{key}"; {did_you_mean(key, _READS_IN)}')
    interval = _READS_IN[key]
    if octave is None:
        return interval
    more = _OCTAVES[octave]
    return Interval(interval.steps + more.steps, interval.semitones + more.semitones)


def _read_fretted(family: str, settings: _Settings, strings: int | None) -> Fretted | None:
    text = settings.tuning if settings.tuning not in ("", "at pitch") else "standard"
    free = _free_tuning(text)
    if free is not None:
        tuning = free
        standard = STANDARD.get((family, len(tuning)), tuning)
    else:
        shown = strings or 0
        standard = _standard(
            family, shown if (family, shown) in STANDARD else _usual_count(family)
        )
        tuning = _named_tuning(family, text, standard)
    return Fretted(tuning, standard, settings.capo)


def _usual_count(family: str) -> int:
    counts = [count for named, count in STANDARD if named == family]
    if not counts:
        raise ValueError("its tuning is not known; name the strings from low to high")
    return 6 if family == "guitar" else min(counts)


def _standard(family: str, count: int) -> Tuning:
    if (family, count) not in STANDARD:
        what = f"a {family} with {count} strings" if family != "other" else "this part"
        raise ValueError(f"{what} has no standard tuning; name the strings from low to high")
    return STANDARD[family, count]


def _free_tuning(text: str) -> Tuning | None:
    words = text.split()
    try:
        pitches = tuple(Pitch.read(word) for word in words)
    except ValueError:
        return None
    if not FEWEST_STRINGS <= len(pitches) <= MOST_STRINGS:
        limits = f"{FEWEST_STRINGS} to {MOST_STRINGS}"
        raise ValueError(f"{len(pitches)} strings are named; an instrument has {limits}")
    for pitch in pitches:
        if not LOWEST_STRING <= pitch.midi <= HIGHEST_STRING:
            raise ValueError(f"no string is tuned to {pitch}")
    return Tuning(" ".join(str(pitch) for pitch in pitches), pitches)


def _named_tuning(family: str, text: str, standard: Tuning) -> Tuning:
    named = {
        _plain(name): tuning
        for (owner, name, count), tuning in TUNINGS.items()
        if owner == family and count == len(standard)
    }
    if _plain(text) in named:
        return named[_plain(text)]
    if match := _NOTE_STANDARD.fullmatch(text):
        return _note_standard(PitchName.read(match[1]), text, standard)
    names = sorted({tuning.name for tuning in named.values()})
    raise ValueError(
        f'no tuning of {len(standard)} strings is called "{text}"; {did_you_mean(text, names)}'
    )


def _note_standard(name: PitchName, text: str, standard: Tuning) -> Tuning:
    """Return the standard tuning moved so that its lowest string is `name`, at most a fifth."""
    interval = Interval.between_names(standard.strings[0].name, name)
    if interval.semitones > 4:  # noqa: PLR2004 - a third up at most, else down
        interval = Interval(interval.steps - 7, interval.semitones - 12)
    return lowered(standard, text, interval)


def _plain(name: str) -> str:
    return name.lower().replace("-", " ").replace("♯", "#").replace("♭", "b")

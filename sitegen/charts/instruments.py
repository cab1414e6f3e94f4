"""What a part is played on, from its name and its line in the head."""

import re
from dataclasses import dataclass

from sitegen.charts.head import UnfitValueError
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
_CAPO = re.compile(r"capo(?: at| on)?(?: fret)? (\S+)", re.IGNORECASE)
_READS_OCTAVE = re.compile(r"reads an octave (up|down)")
_READS_KEY = re.compile(r"reads in (\S+?)(?:,? and an octave (up|down))?")
_NOTE_STANDARD = re.compile(r"([A-G][b#♭♯]?) standard", re.IGNORECASE)
_STRINGS = re.compile(r"(\d|four|five|six|seven|eight)[- ]strings?\s*(.*)", re.IGNORECASE)
_COUNTS = {"four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8}
_LETTERS = re.compile(r"(?:[A-G][b#♭♯]?\s*){4,8}")
_SMALL_WORDS = frozenset({"a", "an", "one", "to", "tune", "tuned", "tuning"})
_SAME_STEPS = {
    "semitone down": "half step down",
    "step down": "whole step down",
    "full step down": "whole step down",
    "tone down": "whole step down",
    "whole tone down": "whole step down",
}
_AT_PITCH = ("at pitch", "standard")
_TUNING_HINT = (
    "a tuning has a usual name, or names its strings from low to high: D2 A2 D3 G3 B3 E4"
)


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
    strings: int | None = None
    capo: int = 0
    reading: Reading | None = None
    clef: str = ""


def read_instrument(
    name: str, value: str, strings: int | None, *, has_strings: bool
) -> Instrument:
    """Return the instrument of part `name` as its head line `value` ("" without one) sets it.

    `has_strings` tells whether the part has string rows, `strings` how many strings they show,
    None where that cannot be told.
    Raises UnfitValueError with a sentence for the author.
    """
    settings = _Settings()
    for item in _items(value):
        _apply(item, settings)
    family = family_of(name) or "other"
    fretted = None
    if has_strings and family == "lead":
        family = "guitar"
    if has_strings or family in FRETTED:
        fretted = _read_fretted(family, settings, settings.strings or strings)
    elif settings.tuning and settings.tuning not in _AT_PITCH:
        message = f'"{settings.tuning}" is a tuning, but {name} has no strings'
        hint = f"write {name}: at pitch, or {name}: reads in Bb"
        raise UnfitValueError(message, word=settings.tuning, hint=hint)
    elif settings.capo:
        raise UnfitValueError(f"{name} takes no capo", hint="a capo sits on frets")
    return Instrument(family, fretted, settings.reading, settings.clef)


def _items(value: str) -> list[str]:
    items = [" ".join(item.split()) for item in re.split(r",(?! and an octave)", value)]
    return [item for item in items if item]


def _apply(item: str, settings: _Settings) -> None:
    if match := _CAPO.fullmatch(item):
        settings.capo = _read_capo(match[1])
    elif match := _READS_OCTAVE.fullmatch(item):
        settings.reading = Reading(item, _OCTAVES[match[1]])
    elif match := _READS_KEY.fullmatch(item):
        settings.reading = Reading(item, _reads_in(match[1], match[2]))
    elif item in ("treble clef", "bass clef"):
        settings.clef = item.removesuffix(" clef")
    elif match := _STRINGS.fullmatch(item):
        settings.strings = _COUNTS.get(match[1].lower()) or int(match[1])
        if match[2]:
            _apply(match[2], settings)
    elif settings.tuning:
        message = f'"{item}" is said beside the tuning "{settings.tuning}"'
        hint = f"{settings.tuning}, capo 2 says tuning and capo; one tuning is enough"
        raise UnfitValueError(message, word=item, hint=hint)
    else:
        settings.tuning = item


def _read_capo(text: str) -> int:
    fret = int(text) if re.fullmatch(r"[0-9]{1,3}", text) else 0
    if 0 < fret <= HIGHEST_CAPO:
        return fret
    message = f"a capo sits at frets 1 to {HIGHEST_CAPO}, not {text}"
    raise UnfitValueError(message, word=text, hint="write the fret as a number: capo 2")


def _reads_in(key: str, octave: str | None) -> Interval:
    if key not in _READS_IN:
        hint = f"instruments read in {', '.join(sorted(_READS_IN))}; a concert part says nothing"
        raise UnfitValueError(f'no instrument reads in "{key}"', word=key, hint=hint)
    interval = _READS_IN[key]
    if octave is None:
        return interval
    more = _OCTAVES[octave]
    return Interval(interval.steps + more.steps, interval.semitones + more.semitones)


def _read_fretted(family: str, settings: _Settings, strings: int | None) -> Fretted | None:
    text = settings.tuning if settings.tuning not in ("", "at pitch") else "standard"
    free = _free_tuning(text)
    if free is not None:
        standard = STANDARD.get((family, len(free)), free)
        return Fretted(free, standard, settings.capo)
    shown = settings.strings or strings or 0
    if settings.strings is None and (family, shown) not in STANDARD:
        shown = _usual_count(family)
    standard = _standard(family, shown)
    tuning = _lettered_tuning(text, standard) or _named_tuning(family, text, standard)
    return Fretted(tuning, standard, settings.capo)


def _usual_count(family: str) -> int:
    counts = [count for named, count in STANDARD if named == family]
    if not counts:
        raise UnfitValueError("its tuning is not known", hint=_TUNING_HINT)
    return 6 if family == "guitar" else min(counts)


def _standard(family: str, count: int) -> Tuning:
    if (family, count) not in STANDARD:
        what = f"a {family} with {count} strings" if family != "other" else "this part"
        raise UnfitValueError(f"{what} has no standard tuning", hint=_TUNING_HINT)
    return STANDARD[family, count]


def _free_tuning(text: str) -> Tuning | None:
    words = text.split()
    if sum(word[-1:].isdecimal() for word in words) < FEWEST_STRINGS - 1:
        return None
    pitches = tuple(_string_pitch(word) for word in words)
    if not FEWEST_STRINGS <= len(pitches) <= MOST_STRINGS:
        limits = f"{FEWEST_STRINGS} to {MOST_STRINGS}"
        message = f"{len(pitches)} strings are named; an instrument has {limits}"
        raise UnfitValueError(message, hint=_TUNING_HINT)
    heights = [pitch.midi for pitch in pitches]
    if heights == sorted(heights, reverse=True):
        message = "the strings are named from high to low"
        raise UnfitValueError(message, word=words[1], hint="name the lowest string first")
    return Tuning(" ".join(str(pitch) for pitch in pitches), pitches)


def _string_pitch(word: str) -> Pitch:
    try:
        pitch = Pitch.read(word[:1].upper() + word[1:])
    except ValueError as wrong:
        raise UnfitValueError(str(wrong), word=word, hint=_TUNING_HINT) from None
    if not LOWEST_STRING <= pitch.midi <= HIGHEST_STRING:
        raise UnfitValueError(f"no string is tuned to {pitch}", word=word, hint=_TUNING_HINT)
    return pitch


def _lettered_tuning(text: str, standard: Tuning) -> Tuning | None:
    """Return a tuning given by letters, CGCFAD: each string as near as can be to its standard."""
    letters = re.findall(r"[A-G][b#♭♯]?", text) if _LETTERS.fullmatch(text) else []
    if len(letters) != len(standard):
        return None
    names = [PitchName.read(letter) for letter in letters]
    pairs = zip(names, standard.strings, strict=True)
    return Tuning(text, tuple(_nearest(name, string.midi) for name, string in pairs))


def _nearest(name: PitchName, midi: int) -> Pitch:
    """Return the pitch of this name nearest to `midi`; of two, the lower."""
    below = midi - (midi - name.pitch_class) % 12
    return Pitch.of(name, below if midi - below <= 6 else below + 12)  # noqa: PLR2004


def _named_tuning(family: str, text: str, standard: Tuning) -> Tuning:
    named = {
        _plain(name): tuning
        for (owner, name, count), tuning in TUNINGS.items()
        if owner == family and count == len(standard)
    }
    if _plain(text) in named:
        return named[_plain(text)]
    if match := _NOTE_STANDARD.fullmatch(text):
        name = match[1][0].upper() + match[1][1:]
        return _note_standard(PitchName.read(name), text, standard)
    message = f'no tuning of {len(standard)} strings is called "{text}"'
    hint = did_you_mean(text, {tuning.name for tuning in named.values()}) or _TUNING_HINT
    raise UnfitValueError(message, word=text, hint=hint)


def _note_standard(name: PitchName, text: str, standard: Tuning) -> Tuning:
    """Return the standard tuning moved so that its lowest string is `name`, at most a fifth."""
    interval = Interval.between_names(standard.strings[0].name, name)
    if interval.semitones > 4:  # noqa: PLR2004 - a third up at most, else down
        interval = Interval(interval.steps - 7, interval.semitones - 12)
    return lowered(standard, text, interval)


def _plain(name: str) -> str:
    """Return a tuning's name as it is compared: "tuned down a half step" is "half step down"."""
    text = name.lower().replace("-", " ").replace("♯", "#").replace("♭", "b")
    text = text.replace("1/2", "half").replace("½", "half")
    words = [word for word in text.split() if word not in _SMALL_WORDS]
    if words[:1] == ["down"]:
        words = [*words[1:], "down"]
    plain = " ".join(words)
    return _SAME_STEPS.get(plain, plain)

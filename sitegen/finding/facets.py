"""What write-ups are filed under in the archive: a table of facets, in words that musicians use.

The front matter goes first; where it says nothing of key, meter, tempo or tuning, the charts do.
"""

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from sitegen.article import FrontMatter
from sitegen.finding.chord_words import chord_words
from sitegen.finding.entry import Entry
from sitegen.score.key import MODES, Key
from sitegen.score.pitch import signs

Find = Callable[[FrontMatter, Entry], Iterable[str]]
Order = Callable[[str], tuple[int, ...]]

UNDATED = "not yet published"
MUSIC, INSIDE, PEOPLE = "The music", "What happens in it", "Who and when"
"""The groups that facets stand in."""

# Bands of tempo in beats a minute by their lowest: our own choice, no source.
_BANDS = (0, 50, 70, 90, 110, 130, 150, 170)
_NOTE_NAME = re.compile(r"(?<=\b[A-G])[b#](?![a-z])")
# "guitar in standard tuning" is the standard tuning.
_TUNING = re.compile(r"^(?:guitars? in )?(.+?)(?: tuning)?$")
_STANDARD, _CAPO = "standard", "capo"
_NOBODY = "other"
_OCTAVE, _MINUTE, _LONGEST = 12, 60, 8
# By semitones up, the smaller way round.
_MOTIONS = (
    "",
    "up a semitone",
    "up a whole tone",
    "up a minor third",
    "up a major third",
    "up a fourth",
    "by a tritone",
    "down a fourth",
    "down a major third",
    "down a minor third",
    "down a whole tone",
    "down a semitone",
)
_SHARES = ("under 20 %", "20 to 39 %", "40 to 59 %", "60 to 79 %", "80 % and more")


@dataclass(frozen=True)
class Facet:
    """One way of filing: `find` returns the values of a write-up, each as it is read.

    `order` is by what values are sorted; those without go by how many write-ups they have, then
    by name. `is_own` says that all values are words of a list of our own. `is_long` says that
    there may be as many values as write-ups.
    """

    id: str
    name: str
    group: str
    find: Find
    order: Order | None = None
    is_own: bool = False
    is_long: bool = False


def tempos(front: FrontMatter, entry: Entry) -> tuple[float, ...]:
    """Return the tempos in beats a minute: the song's, or those of the charts."""
    if front.song.tempo is not None:
        return (float(front.song.tempo.beats_per_minute),)
    return tuple(dict.fromkeys(chart.tempo for chart in entry.charts if chart.tempo))


def band_of(tempo: float) -> tuple[int, int | None]:
    """Return the lowest and the highest whole tempo of the band; no highest in the fastest."""
    place = max(n for n, lowest in enumerate(_BANDS) if lowest <= tempo)
    highest = _BANDS[place + 1] - 1 if place + 1 < len(_BANDS) else None
    return _BANDS[place], highest


def band_words(band: tuple[int, int | None]) -> str:
    """Return a band of tempo: "90 to 109", "under 50", "170 and faster"."""
    lowest, highest = band
    if highest is None:
        return f"{lowest} and faster"
    return f"{lowest} to {highest}" if lowest else f"under {highest + 1}"


def band_range(words: str) -> str:
    """Return a band, told in words, as the archive's address asks for it: "90..109"."""
    for band in map(band_of, _BANDS):
        if band_words(band) == words:
            lowest, highest = band
            return f"{lowest or ''}..{'' if highest is None else highest}"
    raise ValueError(f'"{words}" is no band of tempo')


def tuning_words(text: str) -> tuple[str, ...]:
    """Return a tuning as it is filed: "drop C#, capo 2" under drop C♯ and under capo 2."""
    named = _NOTE_NAME.sub(lambda sign: signs(sign[0]), text)
    parts = filter(None, (" ".join(part.split()) for part in named.split(",")))
    return tuple(_TUNING.sub(r"\1", part) for part in parts)


def _keys(front: FrontMatter, entry: Entry) -> Iterable[str]:
    if front.song.key is not None:
        return (str(front.song.key),)
    return (chart.key for chart in entry.charts)


def _modes(front: FrontMatter, entry: Entry) -> Iterable[str]:
    return (key.rpartition(" ")[2] for key in _keys(front, entry))


def _meters(front: FrontMatter, entry: Entry) -> Iterable[str]:
    if front.song.meter is not None:
        return (str(front.song.meter),)
    return (chart.meter for chart in entry.charts)


def _tempo_bands(front: FrontMatter, entry: Entry) -> Iterable[str]:
    return (band_words(band_of(tempo)) for tempo in tempos(front, entry))


def _tunings(front: FrontMatter, entry: Entry) -> Iterable[str]:
    """Return the tunings; a plain one is told only where no part has another."""
    if front.song.tuning:
        return tuning_words(front.song.tuning)
    found = dict.fromkeys(
        word for chart in entry.charts for name in chart.tunings for word in tuning_words(name)
    )
    if any(word != _STANDARD and not word.startswith(_CAPO) for word in found):
        found.pop(_STANDARD, None)
    return found


def _feels(_: FrontMatter, entry: Entry) -> Iterable[str]:
    return (chart.feel for chart in entry.charts)


def _instruments(_: FrontMatter, entry: Entry) -> Iterator[str]:
    for chart in entry.charts:
        yield from (family for family in chart.instruments if family != _NOBODY)


def _chords(_: FrontMatter, entry: Entry) -> Iterable[str]:
    suffixes = dict.fromkeys(suffix for chart in entry.charts for suffix in chart.qualities)
    return map(chord_words, suffixes)


def _techniques(_: FrontMatter, entry: Entry) -> Iterable[str]:
    return (one.name for chart in entry.charts for one in chart.techniques)


def _root_motions(_: FrontMatter, entry: Entry) -> Iterator[str]:
    for chart in entry.charts:
        steps = () if chart.progression is None else chart.progression.steps
        motions = ((after.root - before.root) % _OCTAVE for before, after in pairwise(steps))
        yield from (_MOTIONS[motion] for motion in dict.fromkeys(motions) if motion)


def _chord_tones(_: FrontMatter, entry: Entry) -> Iterator[str]:
    """Return how much of the tunes are notes of the chords; basses and chords are no tunes."""
    for chart in entry.charts:
        tunes = {one.part.replace(" ", "-") for one in chart.melodies if not one.bass}
        for path, share in chart.traits:
            part, dot, figure = path.rpartition(".")
            if dot and figure == "chord-tone-share" and part in tunes:
                yield _SHARES[min(int(Fraction(share) * len(_SHARES)), len(_SHARES) - 1)]


def _lengths(front: FrontMatter, _: Entry) -> Iterable[str]:
    seconds = front.song.length
    if seconds is None:
        return ()
    minutes = seconds // _MINUTE
    if minutes >= _LONGEST:
        return (f"{_LONGEST} minutes and longer",)
    return (f"{minutes} to {minutes + 1} minutes" if minutes else "under a minute",)


def _by_motion(words: str) -> tuple[int, ...]:
    return (_MOTIONS.index(words),)


def _by_share(words: str) -> tuple[int, ...]:
    return (_SHARES.index(words),)


def _by_length(words: str) -> tuple[int, ...]:
    first = words.split(maxsplit=1)[0]
    return (int(first) if first.isdecimal() else 0,)


def _year(front: FrontMatter, _: Entry) -> Iterable[str]:
    return () if front.song.year is None else (str(front.song.year),)


def _published(front: FrontMatter, _: Entry) -> Iterable[str]:
    return (UNDATED,) if front.published is None else (str(front.published.year),)


def _by_key(words: str) -> tuple[int, ...]:
    key = Key.read(words)
    return ord(key.tonic.letter), key.tonic.alteration, MODES.index(key.mode)


def _by_meter(words: str) -> tuple[int, ...]:
    count, unit = words.split("/")
    return int(unit), int(count)


def _by_band(words: str) -> tuple[int, ...]:
    return (int(band_range(words).partition(".")[0] or 0),)


def _years_down(words: str) -> tuple[int, ...]:
    return (-int(words),) if words != UNDATED else (-10_000,)


FACETS: tuple[Facet, ...] = (
    Facet("key", "Key", MUSIC, _keys, _by_key, is_own=True),
    Facet("mode", "Mode", MUSIC, _modes, is_own=True),
    Facet("meter", "Meter", MUSIC, _meters, _by_meter, is_own=True),
    Facet("tempo", "Tempo", MUSIC, _tempo_bands, _by_band, is_own=True),
    Facet("tuning", "Tuning", MUSIC, _tunings),
    Facet("feel", "Feel", MUSIC, _feels, is_own=True),
    Facet("length", "Length", MUSIC, _lengths, _by_length, is_own=True),
    Facet("instrument", "Instruments", MUSIC, _instruments, is_own=True),
    Facet("chord", "Chord types", INSIDE, _chords, is_own=True),
    Facet("root-motion", "Root motions", INSIDE, _root_motions, _by_motion, is_own=True),
    Facet("chord-tones", "Chord tones in tunes", INSIDE, _chord_tones, _by_share, is_own=True),
    Facet("technique", "Techniques", INSIDE, _techniques, is_own=True),
    Facet("artist", "Artists", PEOPLE, lambda front, _: (front.song.artist,), is_long=True),
    Facet("writer", "Writers", PEOPLE, lambda front, _: front.song.writers, is_long=True),
    Facet("producer", "Producers", PEOPLE, lambda front, _: front.song.producers, is_long=True),
    Facet("year", "Recorded in", PEOPLE, _year, _years_down, is_own=True),
    Facet("topic", "Topics", PEOPLE, lambda front, _: front.topics, is_long=True),
    Facet("published", "Written up in", PEOPLE, _published, _years_down, is_own=True),
)
"""All facets, in the order in which they are told."""

BY_ID = {facet.id: facet for facet in FACETS}

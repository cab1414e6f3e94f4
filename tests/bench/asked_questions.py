"""Questions for the search forms, drawn from what an archive's own charts hold."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from random import Random

from bench import archive_names as names
from bench.moved_chords import NAMES, moved

from sitegen.finding import ChartEntry, Entry

_ROMAN = "I bII II bIII III IV #IV V bVI VI bVII VII".split()
_TICKS_A_STEP = 6
Fields = dict[str, str]


@dataclass(frozen=True)
class Way:
    """A way of asking: its form, how its questions are drawn, and what is aimed at.

    `target` is in milliseconds and `bytes` what a first question may load, compressed.
    """

    name: str
    form: str
    draw: Callable[[Sequence[Entry], Random, int], list[Fields]]
    target: int = 50
    bytes: int = 300_000


def draw_chords(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return chords of charts in another key."""
    return [{"chords": " ".join(_some_chords(entries, lot, 6))} for _ in range(count)]


def draw_changed_chords(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return chords of charts in another key, two of them exchanged for others."""
    questions = []
    for _ in range(count):
        chords = _some_chords(entries, lot, 6)
        for place in lot.sample(range(len(chords)), 2):
            chords[place] = lot.choice(NAMES) + lot.choice(["", "m", "7", "maj7"])
        questions.append({"chords": " ".join(chords)})
    return questions


def draw_numerals(_entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return numerals of any degrees."""
    return [
        {"chords": " ".join(_numeral(lot) for _ in range(lot.randint(2, 5)))} for _ in range(count)
    ]


def draw_riffs(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return the same as `draw_tunes`, to be looked up in all lines."""
    return [{**asked, "lines": "any"} for asked in draw_tunes(entries, lot, count)]


def draw_tunes(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return notes of lines with their octaves, moved, every second one with a wrong note."""
    questions = []
    for number in range(count):
        notes = _some_notes(entries, lot)
        if number % 2:
            notes[lot.randrange(len(notes))] += lot.choice([-2, -1, 1, 2])
        named = [f"{NAMES[midi % 12]}{midi // 12 - 1}" for midi in notes]
        questions.append({"tune": " ".join(named)})
    return questions


def draw_names(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return notes of lines without octaves, moved."""
    drawn = [_some_notes(entries, lot) for _ in range(count)]
    return [{"tune": " ".join(NAMES[midi % 12] for midi in notes)} for notes in drawn]


def draw_contours(_entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return ups and downs."""
    signs = [
        lot.choices(["up", "down", "same"], [4, 4, 1], k=lot.randint(3, 9)) for _ in range(count)
    ]
    return [{"tune": " ".join(contour)} for contour in signs]


def draw_beats(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return bars of drums in sixteenths, every second one with a hit more."""
    bars = [beat for chart in _charts(entries) for beat in chart.beats if beat.meter == "4/4"]
    questions = []
    for number in range(count):
        beat = lot.choice(bars)
        steps = beat.length // _TICKS_A_STEP
        rows = []
        for drum, hits in beat.hits:
            row = ["." for _ in range(steps)]
            for tick in hits:
                row[tick // _TICKS_A_STEP] = "x"
            rows.append((drum, row))
        if number % 2:
            lot.choice(rows)[1][lot.randrange(steps)] = "x"
        written = " ".join(f"{drum} {''.join(row)}" for drum, row in rows)
        questions.append({"meter": "4/4", "steps": "sixteenths", "beat": written})
    return questions


def draw_words(entries: Sequence[Entry], lot: Random, count: int) -> list[Fields]:
    """Return words of captions, which thousands of charts share, and of songs and players."""
    titles = [chart.title for chart in _charts(entries) if chart.title]
    named = [lot.choice([names.song_title, names.person, names.act])(lot) for _ in range(count)]
    asked = [lot.choice([lot.choice(titles), name]).split() for name in named]
    return [{"words": " ".join(words[: lot.randint(1, 3)])} for words in asked]


def _charts(entries: Sequence[Entry]) -> list[ChartEntry]:
    return [chart for entry in entries for chart in entry.charts]


def _some_chords(entries: Sequence[Entry], lot: Random, most: int) -> list[str]:
    steps: tuple[object, ...] = ()
    while len(steps) < most:
        chart = lot.choice(lot.choice(entries).charts)
        steps = chart.progression.steps if chart.progression else ()
    assert chart.progression is not None
    length, semitones = lot.randint(3, most), lot.randrange(12)
    start = lot.randrange(len(steps) - length + 1)
    some = chart.progression.steps[start : start + length]
    return [moved(step.symbol, semitones) for step in some]


def _numeral(lot: Random) -> str:
    numeral = lot.choice(_ROMAN)
    return numeral.lower() if lot.random() < 1 / 2 else numeral


def _some_notes(entries: Sequence[Entry], lot: Random) -> list[int]:
    line: tuple[int, ...] = ()
    length = lot.randint(5, 12)
    while len(line) <= length:
        melodies = lot.choice(lot.choice(entries).charts).melodies
        line = lot.choice(melodies).midi if melodies else ()
    start, semitones = lot.randrange(len(line) - length), lot.randint(-6, 6)
    return [midi + semitones for midi in line[start : start + length]]


WAYS = (
    Way("chords", "chords_form", draw_chords),
    Way("chords, two changed", "chords_form", draw_changed_chords),
    Way("numerals", "chords_form", draw_numerals),
    Way("tune, octaves", "tune_form", draw_tunes),
    Way("tune, note names", "tune_form", draw_names),
    Way("tune, in all lines", "tune_form", draw_riffs),
    Way("contour", "tune_form", draw_contours),
    Way("beat", "beat_form", draw_beats),
    Way("words", "words_form", draw_words, 300, 250_000),
)

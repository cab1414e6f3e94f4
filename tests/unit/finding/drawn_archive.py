"""Write-ups drawn by lot, as far as the archive files them, and a plain search among them."""

import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from math import floor
from random import Random

from unit.finding.drawn import draw_progression

from sitegen.article import FrontMatter
from sitegen.article.front import Song
from sitegen.finding import ChartEntry, Entry, Melody, Technique
from sitegen.finding.facet_addresses import identity
from sitegen.finding.facets import FACETS, tempos
from sitegen.score.key import Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo

KEYS = "C major,A minor,C♯ minor,D♭ major,E dorian,F♯ mixolydian,B♭ lydian,G minor".split(",")
METERS = "4/4 3/4 6/8 7/8 12/8 5/4".split()
TUNINGS = ["standard", "drop C♯", "drop D", "half-step down", "DADGAD", "capo 2", "E4 B3 G3 D3"]
QUALITIES = ["", "m", "7", "m7", "maj7", "sus2", "m7♭5", "7♯9", "6/9", "(♭5)", "add9", "5"]
TECHNIQUES = [
    "pedal bass",
    "line cliché",
    "odd meter",
    "pickup",
    "ghost notes",
    "Neapolitan chord",
]
NAMES = [
    "Ada Brandt", "ada brandt", "Noor Hale-Bask", "Noor Hale Bask", "Zoë Lind", "Zoe\u0308 Lind",
    "Zoe Lind", "O’Hara", "O'Hara", "花", "C♯", "C sharp", "aux", "A & B", "<b>Bo</b>",
]  # fmt: skip
TOPICS = [
    "bass lines",
    "Bass Lines",
    "6/8",
    "6 8",
    "modal mixture",
    "100 %",
    "tea = coffee",
    "index",
]
WORDS = "Ledger Lantern Ferry Window Coat Éclair E♭ C# kettle KETTLE harbour".split()


@dataclass(frozen=True)
class Asked:
    """What is looked for: values by facet, whole tempos, words."""

    chosen: Mapping[str, frozenset[str]] = field(default_factory=dict)
    tempo: tuple[int | None, int | None] = (None, None)
    words: str = ""


def draw_chart(lot: Random, number: int) -> ChartEntry:
    """Return a chart of which only what it is filed under is told."""
    some = lot.sample
    techniques = tuple(Technique(name) for name in some(TECHNIQUES, lot.randrange(4)))
    return ChartEntry(
        f"chart-{number}",
        f"Example {number}",
        "",
        "notation",
        meter=lot.choice(METERS),
        key=lot.choice([*KEYS, ""]),
        tempo=lot.choice([0, 48, 72, 89.5, 90, 109.9, 110, 180]),
        feel=lot.choice(["straight", "swing"]),
        instruments=tuple(
            some(["guitar", "bass", "drums", "voice", "other"], lot.randrange(1, 4))
        ),
        tunings=tuple(some(TUNINGS, lot.randrange(3))),
        qualities=tuple(some(QUALITIES, lot.randrange(5))),
        techniques=techniques,
        progression=draw_progression(lot),
        melodies=(Melody("voice", (60, 62, 64), (0, 1, 2), (1, 1, 1)),),
        traits=(("voice.chord-tone-share", lot.choice(["0", "1/3", "3/5", "1"])),),
    )


def draw_song(lot: Random) -> Song:
    """Return a song that is silent of this and that."""
    known = lot.random
    names = [lot.choice(NAMES) for _ in range(3)]
    return Song(
        title=" ".join(lot.sample(WORDS, 2)) if known() < 0.8 else "",
        artist=lot.choice([*NAMES, ""]),
        year=lot.choice([None, 1969, 1987, 2011]),
        writers=tuple(dict.fromkeys(names[: lot.randrange(3)])),
        producers=tuple(names[2:] if known() < 0.5 else ()),
        key=Key.read(lot.choice(KEYS)) if known() < 0.6 else None,
        meter=Meter.read(lot.choice(METERS)) if known() < 0.6 else None,
        tempo=Tempo(Fraction(lot.choice([60, 90, 104, 209]))) if known() < 0.6 else None,
        tuning=lot.choice(["", "", "drop C#, capo 2", "guitar in standard tuning"]),
        length=lot.choice([None, 59, 60, 200, 480]),
    )


def draw_rows(seed: int, count: int) -> list[tuple[FrontMatter, Entry]]:
    """Return so many write-ups, the same for the same seed."""
    lot = Random(seed)  # noqa: S311 - no secret
    rows = []
    for number in range(count):
        charts = tuple(draw_chart(lot, n) for n in range(lot.choice([0, 1, 2, 4])))
        front = FrontMatter(
            title=f"{' '.join(lot.sample(WORDS, 2))} {number}",
            summary="Drawn by lot.",
            published=lot.choice([None, date(2024, 5, 1), date(2025, 6, 2), date(2026, 7, 3)]),
            song=draw_song(lot),
            topics=tuple(lot.sample(TOPICS, lot.randrange(3))),
        )
        rows.append((front, Entry(charts)))
    return rows


@dataclass(frozen=True)
class Told:
    """What there is to find of a write-up."""

    values: Mapping[str, frozenset[str]]
    tempos: tuple[float, ...]
    words: str


def tell(rows: Iterable[tuple[FrontMatter, Entry]]) -> list[Told]:
    """Return what there is to find of each write-up."""
    return [
        Told(
            {facet.id: frozenset(map(identity, facet.find(*row))) for facet in FACETS},
            tempos(*row),
            plain(f"{row[0].title} {row[0].song.title} {row[0].song.artist}"),
        )
        for row in rows
    ]


def slow_search(told: Sequence[Told], asked: Asked) -> list[int]:
    """Return the numbers of the write-ups that have all that is asked for."""
    return [number for number, one in enumerate(told) if fits(one, asked)]


def fits(told: Told, asked: Asked) -> bool:
    low, high = asked.tempo
    in_tempo = any((low or 0) <= floor(tempo) <= (high or 10**9) for tempo in told.tempos)
    return (
        all(told.values[name] & chosen for name, chosen in asked.chosen.items())
        and (asked.tempo == (None, None) or in_tempo)
        and all(word in told.words for word in plain(asked.words).split())
    )


def plain(text: str) -> str:
    """Return a text without capitals and accents, its accidentals as they are typed."""
    text = text.replace("♭", "b").replace("♯", "#")
    letters = unicodedata.normalize("NFD", text)
    return "".join(one for one in letters if not unicodedata.combining(one)).lower()

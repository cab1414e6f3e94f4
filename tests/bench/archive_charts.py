"""The charts of a synthetic write-up as they are typed: notation, changes and the form plan."""

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from bench.archive_grid import PULSES, Pulse, Row, System, count_bar, type_system
from bench.archive_harmony import Chord, choose_key, choose_progression, key_text
from bench.archive_parts import (
    GUITARS,
    Guitar,
    Tune,
    type_bass,
    type_chords,
    type_drums,
    type_guitar,
    type_keys,
    type_voice,
)

from sitegen.score.key import Key

_CASTS = (
    ("voice",),
    ("voice", "guitar"),
    ("guitar",),
    ("guitar", "bass"),
    ("guitar", "bass", "drums"),
    ("voice", "guitar", "bass", "drums"),
    ("voice", "keys", "bass"),
    ("bass", "drums"),
    ("drums",),
    ("keys", "bass"),
)
_SIZES = ((2,), (2, 2), (4,), (4, 4), (2, 2, 2), (3,))
_TEMPOS = {4: (66, 168), 8: (50, 84)}
_ODD_TEMPOS = (160, 240)
_PLACES = ("Intro", "Verse 1", "Pre-chorus", "Chorus 1", "Bridge", "Solo", "Outro")
_IDS = tuple(place.split()[0].lower() for place in _PLACES)


@dataclass(frozen=True)
class Song:
    """What all charts of a write-up share."""

    key: Key
    pulse: Pulse
    tempo: int
    guitar: Guitar

    @property
    def tempo_text(self) -> str:
        """The tempo as it is typed, with the note that it counts where that is no quarter."""
        if self.pulse.unit == 4:
            return str(self.tempo)
        return f"{'eighth' if self.is_odd else 'dotted quarter'} = {self.tempo}"

    @property
    def is_odd(self) -> bool:
        """True where the beats do not all group alike."""
        return len(set(self.pulse.groups)) > 1

    @property
    def bar_seconds(self) -> float:
        """How long a bar lasts."""
        counted = self.pulse.unit == 4 or self.is_odd
        return self.pulse.beats * 60 / self.tempo / (1 if counted else 3)


@dataclass(frozen=True)
class TypedChart:
    """A chart as typed: `body` is what stands under its id and title."""

    kind: str
    id: str
    title: str
    body: str
    chords: Sequence[Chord]

    @property
    def fence(self) -> str:
        """The whole block."""
        return f"```{self.kind}\nid: {self.id}\ntitle: {self.title}\n{self.body}\n```"


def choose_song(draw: Random) -> Song:
    """Return a song's key, meter, tempo and guitar."""
    pulse = draw.choice(PULSES)
    odd = pulse.unit == 8 and len(set(pulse.groups)) > 1
    tempo = draw.randrange(*(_ODD_TEMPOS if odd else _TEMPOS[pulse.unit]), 2)
    return Song(choose_key(draw), pulse, tempo, draw.choice(GUITARS))


def type_charts(song: Song, draw: Random) -> list[TypedChart]:
    """Return six charts: four or five of notation, the others changes."""
    changes = draw.choice((1, 2, 2))
    places = list(zip(_IDS, _PLACES, strict=True))
    notation = [_type_notation(song, *place, draw) for place in draw.sample(places, 6 - changes)]
    titles = draw.sample(("Verse", "Chorus", "Bridge"), changes)
    return notation + [_type_changes(song, title, draw) for title in titles]


def _head(song: Song, *more: str) -> list[str]:
    meter = f"meter: {song.pulse.text}"
    return [f"key: {key_text(song.key)}", meter, f"tempo: {song.tempo_text}", *more]


def _type_notation(song: Song, identity: str, place: str, draw: Random) -> TypedChart:
    cast, sizes = draw.choice(_CASTS), draw.choice(_SIZES)
    chords = choose_progression(song.key, sum(sizes), draw)
    parts = 1 if song.pulse.unit == 8 else draw.choice((2, 2, 2, 4))
    head = _head(song, *_instruments(song, cast))
    repeated = draw.random() < 0.25
    lines, done = [], 0
    for n, size in enumerate(sizes):
        slots = [count_bar(song.pulse, parts, draw) for _ in range(size)]
        tune = Tune(song.key, slots, chords[done : done + size])
        ends = (repeated and n == 0, repeated and n == len(sizes) - 1)
        lines += ["", *type_system(_system(tune, song, cast, ends, draw))]
        done += size
    title = f"{place}, {_said(cast)}"
    return TypedChart("notation", identity, title, "\n".join((*head, *lines)), chords)


def _said(cast: Sequence[str]) -> str:
    return cast[0] if len(cast) == 1 else f"{', '.join(cast[:-1])} and {cast[-1]}"


def _instruments(song: Song, cast: Sequence[str]) -> list[str]:
    lines = {"guitar": f"guitar: {song.guitar.text}", "bass": "bass: standard"}
    return [lines[name] for name in cast if name in lines]


def _system(
    tune: Tune, song: Song, cast: Sequence[str], repeats: tuple[bool, bool], draw: Random
) -> System:
    rows: list[Row] = [] if cast == ("drums",) else [type_chords(tune)]
    for name in cast:
        if name == "voice":
            rows += type_voice(tune, name, draw)
        elif name == "guitar":
            rows += type_guitar(tune, song.guitar, draw)
        else:
            rows += {"bass": type_bass, "keys": type_keys, "drums": type_drums}[name](tune, draw)
    opens = ["|"] * len(tune.slots)
    closes = [" "] * len(tune.slots)
    if repeats[0]:
        opens[0] = "|:"
    if repeats[1]:
        closes[-1] = ":"
    return System(tune.slots, rows, opens, closes)


def _type_changes(song: Song, title: str, draw: Random) -> TypedChart:
    bars = draw.choice((8, 8, 12, 16))
    chords = choose_progression(song.key, bars, draw)
    cells = [_cell(n, chords, song, draw) for n in range(bars)]
    lines = [f"| {' | '.join(cells[n : n + 4])} |" for n in range(0, bars, 4)]
    if draw.random() < 0.3:
        lines[0] = f"|:{lines[0][1:-1]}:|"
    body = "\n".join((*_head(song), "", *lines))
    identity = f"{title.lower()}-changes"
    return TypedChart("changes", identity, f"{title}, {bars} bars", body, chords)


def _cell(bar: int, chords: Sequence[Chord], song: Song, draw: Random) -> str:
    here = chords[bar].symbol
    if bar and chords[bar - 1].symbol == here:
        return "%"
    if draw.random() < 0.2 and song.pulse.beats == 4:
        return f"{here} {chords[(bar + 1) % len(chords)].symbol}"
    return here


@dataclass(frozen=True)
class Plan:
    """The form plan: its block, the seconds at which its sections start, and the whole length."""

    fence: str
    starts: dict[str, int]
    length: int


def type_plan(song: Song, title: str, charts: Sequence[TypedChart], draw: Random) -> Plan:
    """Return a plan of some sections that names the charts."""
    names = ("Intro", "Verse 1", "Chorus 1", "Verse 2", "Chorus 2", "Bridge", "Chorus 3", "Outro")
    lines: list[str] = []
    starts: dict[str, int] = {}
    sizes: dict[str, int] = {}
    bars = 0
    refers = {chart.id.split("-")[0]: f" | {chart.kind}: {chart.id}" for chart in charts}
    for name in names:
        same = name.split()[0] + " 1"
        size = draw.choice((4, 8, 8, 16)) if name.endswith("1") or " " not in name else sizes[same]
        sizes[name] = size
        starts[name] = round(bars * song.bar_seconds)
        bars += size
        again = f" | = {same}" if name not in (same, same.split()[0]) else ""
        more = again or refers.get(name.split()[0].lower(), "")
        lines.append(f"{name} | {size} | {clock(starts[name])}{more}")
    length = round(bars * song.bar_seconds)
    head = [*_head(song)[1:], f"length: {clock(length)}", ""]
    top = f"```form\nid: plan\ntitle: {title}, the plan\n"
    return Plan(top + "\n".join((*head, *lines)) + "\n```", starts, length)


def clock(seconds: int) -> str:
    return f"{seconds // 60}:{seconds % 60:02}"

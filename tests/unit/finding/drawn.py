"""Entries drawn by lot, alike enough that searches find something in them."""

from random import Random

from sitegen.finding import Beat, ChartEntry, ChordStep, Entry, Melody, Progression
from sitegen.harmony import read_chord
from sitegen.harmony.progressions import core
from sitegen.score.chord import Chord

CHORDS = "C Dm Em F G Am Bdim G7 Fmaj7 Am7 C/E G/B Csus2 F5 Bb Ab Fm D7 E7 Gsus4 Dm7 Cmaj7".split()
NAMES = "C Db D Eb E F Gb G Ab A Bb B".split()
METERS = {"4/4": 96, "3/4": 72, "6/8": 72, "7/8": 84}


def step(symbol: str, bar: int, last: int, shift: int = 0) -> ChordStep:
    chord = read_chord(symbol)
    assert isinstance(chord, Chord)
    found = core(chord)
    return ChordStep(
        _moved(chord, shift), (found.root + shift) % 12, found.notes, found.family, bar, last
    )


def _moved(chord: Chord, shift: int) -> str:
    root, bass = (NAMES[(name.pitch_class + shift) % 12] for name in (chord.root, chord.bass))
    return str(read_chord(f"{root}{chord.quality}{'' if root == bass else f'/{bass}'}"))


def draw_progression(lot: Random) -> Progression:
    """Return four to twelve chords of one key, as a loop now and then."""
    shift, bar = lot.randrange(12), 1
    symbols: list[str] = []
    while len(symbols) < lot.choice([2, 4, 4, 4, 8, 12]):
        symbol = lot.choice(CHORDS)
        if not symbols or symbols[-1] != symbol:
            symbols.append(symbol)
    is_loop = len(symbols) >= 2 and symbols[0] != symbols[-1] and lot.random() < 0.4
    passes = lot.choice([1, 2, 3]) if is_loop else 1
    steps = []
    for _ in range(passes):
        for symbol in symbols:
            last = bar + lot.choice([0, 0, 0, 1])
            steps.append(step(symbol, bar, last, shift))
            bar = last + lot.choice([0, 1, 1, 1])
    tonic = shift if lot.random() < 0.8 else -1
    loop = (0, len(symbols)) if is_loop else (0, 0)
    return Progression(tuple(steps), tonic, lot.random() < 0.4, *loop)


def draw_melody(lot: Random, part: str = "voice") -> Melody:
    """Return a line of mostly steps."""
    pitch, onset = lot.randrange(55, 70), 0
    midi, onsets = [], []
    for _ in range(lot.choice([5, 9, 16, 24, 40])):
        midi.append(pitch)
        onsets.append(onset)
        pitch = min(max(pitch + lot.choice([-4, -3, -2, -2, -1, 0, 1, 2, 2, 3, 5]), 40), 90)
        onset += lot.choice([6, 12, 12, 12, 24, 24, 36, 48])
    bars = tuple(1 + onset // 96 for onset in onsets)
    tonic = lot.randrange(-1, 12)
    is_bass, is_sung = part == "bass", part == "voice"
    return Melody(part, tuple(midi), tuple(onsets), bars, tonic, is_bass, is_sung)


def draw_beats(lot: Random) -> tuple[Beat, ...]:
    """Return one to three bars of drums."""
    meter = lot.choice(list(METERS))
    length = METERS[meter]
    beats = []
    for bar in range(lot.choice([1, 2, 3])):
        hits = tuple(
            (label, tuple(sorted(lot.sample(range(0, length, 12), lot.choice([1, 2, 3, 4])))))
            for label in sorted(lot.sample(["BD", "HH", "SD", "RC", "T1"], lot.choice([2, 3])))
        )
        beats.append(Beat(meter, length, hits, (bar + 1, bar + 5)))
    return tuple({beat.hits: beat for beat in beats}.values())


def draw_entries(seed: int, count: int, charts: int = 3) -> list[Entry]:
    """Return write-ups with so many charts each."""
    lot = Random(seed)  # noqa: S311 - drawn for tests
    return [Entry(tuple(_chart(lot, n) for n in range(charts))) for _ in range(count)]


def _chart(lot: Random, number: int) -> ChartEntry:
    return ChartEntry(
        f"chart-{number}",
        f"Example {number + 1}",
        "",
        "notation",
        tempo=lot.choice([0, 72, 88, 104, 120, 144]),
        feel=lot.choice(["straight", "straight", "swing", "shuffle"]),
        progression=draw_progression(lot) if lot.random() < 0.9 else None,
        melodies=tuple(
            draw_melody(lot, part)
            for part in ("voice", "bass", "guitar")[: lot.choice([0, 1, 2, 3])]
        ),
        beats=draw_beats(lot) if lot.random() < 0.6 else (),
    )

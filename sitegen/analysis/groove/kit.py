"""The drum kit bar by bar: which drum is hit where, and which bar is the groove."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from sitegen.analysis.groove.grid import GridBar, MeterGrid
from sitegen.analysis.groove.line import Line, Offsets
from sitegen.analysis.reading import NoteReading, Place
from sitegen.score.drums import KIT

Hit = tuple[int, str]
Stroke = tuple[int, str, bool, bool]

KICK = "BD"
SNARES = ("SD", "SS", "HC")
TOMS = ("T1", "T2", "FT")
KEEPERS = ("HH", "RC", "RB")
CRASHES = ("CC", "C2", "CH", "SC")
_SHORT = {"SD": "the snare", "RC": "the ride", "HC": "the clap"}
_LONGEST_GROOVE = 4
_ALIKE = 2 / 3


@dataclass(frozen=True)
class KitBar:
    """A whole bar of the kit.

    `hits` holds the note of each hit by its offset and row label. `shape` is what is compared:
    each hit with its offset, its label and whether it is open or a ghost note; a single crash
    counts as a stroke of the cymbal that keeps time.
    """

    bar: GridBar
    hits: dict[Hit, NoteReading]
    shape: frozenset[Stroke]

    @property
    def meter(self) -> MeterGrid:
        """The meter of the bar."""
        return self.bar.meter

    @property
    def number(self) -> int:
        """The bar's number."""
        return self.bar.number

    @cached_property
    def keeper(self) -> str:
        """The label of the cymbal that keeps time in the bar, "" without one."""
        counted = Counter(label for _, label in self.hits if label in KEEPERS)
        return counted.most_common(1)[0][0] if counted else ""

    def offsets(self, *labels: str) -> Offsets:
        """Return where any of some drums is hit."""
        return tuple(sorted({offset for offset, label in self.hits if label in labels}))

    @cached_property
    def snare(self) -> Offsets:
        """Where the snare, the side stick or a clap is, ghost notes left out."""
        return self.main_hits(*SNARES)

    def main_hits(self, *labels: str) -> Offsets:
        """Return where any of some drums is hit, ghost notes left out."""
        return tuple(
            sorted(
                {o for (o, label), n in self.hits.items() if label in labels and not n.note.ghost}
            )
        )

    def places(self, offsets: Sequence[int], *labels: str) -> tuple[Place, ...]:
        """Return the places of some drums' hits at some offsets."""
        found = []
        for offset in offsets:
            notes = [self.hits[offset, label] for label in labels if (offset, label) in self.hits]
            ids = tuple(note.id for note in notes if note.id)
            found.append(Place(notes[0].bar, notes[0].beat, ids))
        return tuple(found)


def drum_name(label: str) -> str:
    """Return a drum as a sentence calls it: "the snare", "the bass drum"."""
    return _SHORT.get(label) or (f"the {KIT[label].name}" if label in KIT else "a drum")


def read_kit(line: Line) -> list[KitBar]:
    """Return the whole bars in which the kit is played; `line` is the part's."""
    kit = []
    for bar, offsets in line.played:
        hits = {
            (offset, note.note.drum.label): note
            for offset in offsets
            for note in line.struck[bar.origin + offset]
            if note.note.drum is not None
        }
        if hits:
            kit.append(KitBar(bar, hits, _shape(hits)))
    return kit


def _shape(hits: dict[Hit, NoteReading]) -> frozenset[Stroke]:
    crashes = sum(label in CRASHES for _, label in hits)
    counted = Counter(label for _, label in hits if label in KEEPERS)
    keeper = counted.most_common(1)[0][0] if counted and crashes == 1 else ""
    return frozenset(
        (offset, keeper if keeper and label in CRASHES else label, n.note.opened, n.note.ghost)
        for (offset, label), n in hits.items()
    )


@dataclass(frozen=True)
class Groove:
    """The bars that a kit's part is made of: `bars`, one or more, come round again and again.

    `matches` are the indexes of the bars that equal their model.
    """

    bars: tuple[KitBar, ...]
    matches: tuple[int, ...]

    def model(self, index: int) -> KitBar:
        """Return what the bar with an index is compared with."""
        return self.bars[index % len(self.bars)]


def find_groove_bars(kit: Sequence[KitBar]) -> Groove | None:
    """Return the groove: the most frequent bar, or bars where two or four come round in turn.

    Where no bar returns, the bar that is most like the others, if it is like them at all.
    """
    if len(kit) < 2:  # noqa: PLR2004 - one bar has nothing to be compared with
        return None
    length = _cycle(kit)
    models = tuple(_model(kit[phase::length], kit) for phase in range(length))
    bars = tuple(model for model in models if model is not None)
    if len(bars) < length:
        return None
    groove = Groove(bars, ())
    matches = (i for i, bar in enumerate(kit) if bar.shape == groove.model(i).shape)
    return Groove(bars, tuple(matches))


def likeness(one: frozenset[Stroke], other: frozenset[Stroke]) -> float:
    """Return how alike two bars are, 0 to 1: L. R. Dice's coefficient (Ecology 26, 1945)."""
    return 2 * len(one & other) / (len(one) + len(other))


def _cycle(kit: Sequence[KitBar]) -> int:
    """Return after how many bars most of them come back: 1, 2 or 4."""
    best, most = 1, _returns(kit, 1)
    for length in (2, _LONGEST_GROOVE):
        share = _returns(kit, length)
        if len(kit) >= 2 * length and share > max(most, 1 / 2):
            best, most = length, share
    return best


def _returns(kit: Sequence[KitBar], length: int) -> float:
    pairs = list(zip(kit, kit[length:], strict=False))
    return sum(one.shape == other.shape for one, other in pairs) / len(pairs) if pairs else 0


def _model(bars: Sequence[KitBar], kit: Sequence[KitBar]) -> KitBar | None:
    shape, count = Counter(bar.shape for bar in bars).most_common(1)[0]
    if count > 1:
        return next(bar for bar in bars if bar.shape == shape)
    if len(kit) > 2 * _LONGEST_GROOVE:
        return None
    means = [sum(likeness(bar.shape, other.shape) for other in kit) - 1 for bar in bars]
    best = max(range(len(bars)), key=lambda n: (means[n], -n))
    return bars[best] if means[best] >= _ALIKE * (len(kit) - 1) else None

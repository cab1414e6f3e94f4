"""The second way to see a chart: as its players finger or read it, in files beside the page."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from sitegen.engraving import PlayerNames, engrave_plan, player_names, stand_alone
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.kinds.kind import Surroundings


@dataclass(frozen=True)
class OtherWay:
    """The drawing of a chart by the names of its players, which a reader asks for.

    `way` is what it is called, "as fingered" or "as read"; `told` says what differs from what
    sounds. `wide` and `narrow` are the names of the files with the drawing for
    a column and for a phone, and `files` is what stands in them.
    """

    way: str
    told: str
    wide: str
    narrow: str
    files: Mapping[str, bytes]


def draw_other_way(
    plan: ScorePlan, surroundings: Surroundings, summary: str, found: Collection[str]
) -> OtherWay | None:
    """Return a chart as it is fingered or read; None where that is what sounds.

    `plan` is that of the drawing of what sounds; `summary` says in a sentence what it shows;
    `found` are the ids of notes that a page points at.
    """
    names = player_names(plan.chart)
    if names is None:
        return None
    told = _told(names)
    title = f"{surroundings.name}, {_way(names)}"
    anchor, words = surroundings.anchor, f"{summary} {told}"
    drawn = engrave_plan(plan.named(names), anchor, title, words, found)
    wide, narrow = f"{anchor}-fingered.svg", f"{anchor}-fingered-narrow.svg"
    files = {
        wide: stand_alone(drawn.wide, drawn.glyphs),
        narrow: stand_alone(drawn.narrow, drawn.glyphs),
    }
    return OtherWay(_way(names), told, wide, narrow, files)


def _way(names: PlayerNames) -> str:
    return "as fingered" if names.fingered else "as read"


def _told(names: PlayerNames) -> str:
    """Return one sentence: "Shown as fingered: guitar in C major, and the chord names."."""
    chords = ", and the chord names" if names.chords.semitones % 12 else ""
    return f"Shown {_way(names)}: {', '.join(_parts(names))}{chords}."


def _parts(names: PlayerNames) -> Iterator[str]:
    """Yield the parts of each key together: "guitar and bass in D minor"."""
    together: dict[str, list[str]] = {}
    for part in names.parts:
        together.setdefault(str(names.keys.get(part, "")), []).append(part)
    for key, parts in together.items():
        yield f"{' and '.join(parts)}{f' in {key}' if key else ''}"

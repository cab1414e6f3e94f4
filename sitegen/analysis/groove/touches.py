"""How drums are struck: ghost notes and accents, counted and placed."""

from collections import Counter
from collections.abc import Callable, Sequence

from sitegen.analysis.groove.kit import Hit, KitBar
from sitegen.analysis.groove.wording import said_counts
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact, NoteReading

_MOST_SAID = 4
_SNARE = "SD"


def touch_facts(kit: Sequence[KitBar], prefix: str) -> list[Fact]:
    """Return the ghost notes and the accents of the kit's whole bars."""
    facts = []
    ghosts = [(bar, _hits(bar, lambda note: note.note.ghost)) for bar in kit]
    accents = [(bar, _hits(bar, lambda note: note.note.accent)) for bar in kit]
    for path, found in (("ghost-notes", ghosts), ("accents", accents)):
        count = sum(len(hits) for _, hits in found)
        if count:
            places = tuple(
                [p for bar, hits in found for o, d in hits for p in bar.places((o,), d)]
            )
            sentence = _ghost_sentence(ghosts) if found is ghosts else ""
            facts.append(Fact(f"{prefix}.{path}", count, str(count), "", places, sentence))
    return facts


def _hits(bar: KitBar, is_so: Callable[[NoteReading], bool]) -> tuple[Hit, ...]:
    return tuple(sorted([hit for hit, note in bar.hits.items() if is_so(note)]))


def _ghost_sentence(ghosts: Sequence[tuple[KitBar, tuple[Hit, ...]]]) -> str:
    """Return where the snare is ghosted, when most of the bars agree on a few places."""
    (hits, meter), count = Counter([(own, bar.meter) for bar, own in ghosts]).most_common(1)[0]
    labels = {label for _, label in hits}
    if labels != {_SNARE} or len(hits) > _MOST_SAID or 2 * count <= len(ghosts):
        return ""
    where = said_counts(meter, [offset for offset, _ in hits])
    bars = [bar.number for bar, own in ghosts if own == hits and bar.meter is meter]
    which = "" if count == len(ghosts) else f" in {bars_said(bars)}"
    notes = "a ghost note" if len(hits) == 1 else "ghost notes"
    return f"The snare has {notes} on {where}{which}."

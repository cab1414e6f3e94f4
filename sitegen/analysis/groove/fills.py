"""Fills: bars in which the drums leave the groove for toms and snare.

A bar is taken as a fill (the trade's word; this reading of it is ours) when it adds two hits or
more on the toms, or three on toms and snare together, to the bar it is compared with, while the
cymbal that keeps time leaves out a stroke; and when neither neighbour is the same bar. Where
the chart has no groove to compare with, three hits on two toms or more, after the cymbal has
stopped, in a chart whose other bars have no toms.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.analysis.groove.kit import (
    CRASHES,
    KEEPERS,
    SNARES,
    TOMS,
    Groove,
    Hit,
    KitBar,
    drum_name,
)
from sitegen.analysis.groove.line import Offsets
from sitegen.analysis.groove.wording import said_counts
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact
from sitegen.score.drums import KIT

_FEWEST_TOMS, _FEWEST_HITS = 2, 3
_MOST_SAID = 3


@dataclass(frozen=True)
class Fill:
    """A fill: its bar, the hits it adds, where the cymbal leaves out, and which cymbal it is."""

    bar: KitBar
    added: tuple[Hit, ...]
    dropped: Offsets
    keeper: str


def find_fills(kit: Sequence[KitBar], groove: Groove | None) -> list[Fill]:
    """Return the fills in order of time."""
    if groove is None:
        return _fills_alone(kit)
    fills = []
    for index, bar in enumerate(kit):
        model = groove.model(index)
        around = [kit[n].shape for n in (index - 1, index + 1) if 0 <= n < len(kit)]
        if bar.shape == model.shape or bar.shape in around or bar.meter is not model.meter:
            continue
        added = tuple(hit for hit in _drummed(bar) if hit not in model.hits)
        kept = bar.offsets(*KEEPERS, *CRASHES)
        dropped = tuple(o for o in model.offsets(*KEEPERS) if o not in kept)
        if _is_fill(added) and (dropped or not model.keeper):
            fills.append(Fill(bar, added, dropped, model.keeper))
    return fills


def fill_facts(fills: Sequence[Fill], prefix: str) -> list[Fact]:
    """Return the bars that are fills; the sentence tells the first ones."""
    if not fills:
        return []
    numbers = [fill.bar.number for fill in fills]
    places = tuple(
        place
        for fill in fills
        for offset in dict.fromkeys(offset for offset, _ in fill.added)
        for place in fill.bar.places((offset,), *TOMS, *SNARES)
    )
    words = bars_said(numbers)
    sentences = [_sentence(fill, alone=len(fills) == 1) for fill in fills[:_MOST_SAID]]
    return [Fact(f"{prefix}.fill", words, words, "", places, " ".join(sentences))]


def _drummed(bar: KitBar) -> list[Hit]:
    return sorted(
        (hit for hit, n in bar.hits.items() if hit[1] in TOMS + SNARES and not n.note.ghost),
        key=lambda hit: (hit[0], TOMS.index(hit[1]) if hit[1] in TOMS else -1),
    )


def _is_fill(added: Sequence[Hit]) -> bool:
    toms = sum(label in TOMS for _, label in added)
    return toms >= _FEWEST_TOMS or len(added) >= _FEWEST_HITS


def _fills_alone(kit: Sequence[KitBar]) -> list[Fill]:
    with_toms = [bar for bar in kit if bar.offsets(*TOMS)]
    if len(with_toms) != 1:
        return []
    bar = with_toms[0]
    stopped = max(bar.offsets(*KEEPERS), default=-1)
    added = tuple(hit for hit in _drummed(bar) if hit[0] > stopped)
    toms = [label for _, label in added if label in TOMS]
    if len(toms) < _FEWEST_HITS or len(set(toms)) < _FEWEST_TOMS:
        return []
    return [Fill(bar, added, (), bar.keeper)]


def _sentence(fill: Fill, *, alone: bool) -> str:
    the = "the" if alone else "a"
    told = [words for words in (_stop(fill), _filling(fill)) if words]
    return f"Bar {fill.bar.number} is {the} fill: {', '.join(told)}{_descent(fill)}."


def _stop(fill: Fill) -> str:
    """Return what the cymbal that keeps time does: "the hi-hat stops on 3"."""
    if not fill.keeper:
        return ""
    name, bar = drum_name(fill.keeper), fill.bar
    kept = bar.offsets(*KEEPERS, *CRASHES)
    if not fill.dropped:
        return f"{name} stops after {said_counts(bar.meter, kept[-1:])}"
    if not kept or kept == (0,):
        return f"{name} is silent"
    if fill.dropped[0] > kept[-1]:
        return f"{name} stops on {said_counts(bar.meter, fill.dropped[:1])}"
    if len(fill.dropped) > _MOST_SAID:
        return f"{name} is thinned out"
    return f"{name} leaves out {said_counts(bar.meter, fill.dropped)}"


def _filling(fill: Fill) -> str:
    """Return which drums fill which beats: "toms fill 3 and 4", "snare and toms fill the bar"."""
    toms = any(label in TOMS for _, label in fill.added)
    snare = any(label in SNARES for _, label in fill.added)
    who = "snare and toms fill" if toms and snare else "toms fill" if toms else "the snare fills"
    filled, meter = _filled_beats(fill), fill.bar.meter
    if len(filled) == len(meter.beats):
        return f"{who} the bar"
    to_the_end = tuple(filled) == meter.beats[-len(filled) :]
    if to_the_end and (len(filled) >= _MOST_SAID or not meter.is_felt_as_counted):
        return f"{who} from {said_counts(meter, filled[:1])} on"
    return f"{who} {said_counts(meter, filled)}"


def _filled_beats(fill: Fill) -> list[int]:
    """Return the felt beats, as offsets, during which something is added."""
    beats = fill.bar.meter.beats
    return sorted({max(beat for beat in beats if beat <= offset) for offset, _ in fill.added})


def _descent(fill: Fill) -> str:
    order = list(dict.fromkeys(label for _, label in fill.added if label in TOMS))
    if len(order) < _FEWEST_TOMS or order != sorted(order, key=TOMS.index):
        return ""
    return f", down from the {KIT[order[0]].name} to the {KIT[order[-1]].name}"

"""Where the snare stands against the beat, and what the bass drum does under it.

The backbeat is the snare (or the side stick, or a clap) on every second felt beat: 2 and 4 in
4/4, 4 in 6/8, 4 and 10 in 12/8. On 3 alone of four beats it is in half-time, on every off-beat
in double-time. Four on the floor is the bass drum on all four beats. Trade terms, common
practice, no source. Ghost notes never count; the snare between the beats is free.
"""

from collections import Counter
from collections.abc import Sequence

from sitegen.analysis.groove.grid import MeterGrid
from sitegen.analysis.groove.kit import KICK, SNARES, KitBar
from sitegen.analysis.groove.wording import said_counts
from sitegen.analysis.places import bars_said
from sitegen.analysis.reading import Fact

_FOUR = 4
_FEWEST_BARS = 2
_SENTENCES = {
    "half-time": "The snare leaves 2 and 4 for 3, a half-time backbeat",
    "double-time": "The snare is on every off-beat, a double-time backbeat",
}


def backbeat_facts(kit: Sequence[KitBar], prefix: str) -> list[Fact]:
    """Return where the backbeat is, if more than half of the bars have the same one."""
    kinds = [(_kind(bar), bar.meter) for bar in kit]
    (kind, meter), count = Counter(kinds).most_common(1)[0]
    if not kind or 2 * count <= len(kit):
        return []
    bars = [bar for bar, own in zip(kit, kinds, strict=True) if own == (kind, meter)]
    where = _where(meter, kind)
    text = where if kind == "backbeat" else f"{where}, {kind}"
    places = tuple([place for bar in bars for place in bar.places(bar.snare, *SNARES)])
    return [Fact(f"{prefix}.backbeat", text, text, "", places, _sentence(kit, bars, kind))]


def floor_facts(kit: Sequence[KitBar], prefix: str) -> list[Fact]:
    """Return in how many bars the bass drum is on all four beats and nowhere else."""
    bars = [
        bar
        for bar in kit
        if len(bar.meter.beats) == _FOUR and bar.offsets(KICK) == bar.meter.beats
    ]
    if not bars:
        return []
    places = tuple([place for bar in bars for place in bar.places(bar.offsets(KICK), KICK)])
    where = "" if len(bars) == len(kit) else f" in {bars_said(bar.number for bar in bars)}"
    sentence = f"Four on the floor{where}: the bass drum is on every beat."
    told = sentence if 2 * len(bars) > len(kit) else ""
    return [Fact(f"{prefix}.four-on-the-floor", len(bars), str(len(bars)), "bars", places, told)]


def _kind(bar: KitBar) -> str:
    """Return "backbeat", "half-time", "double-time" or "" for what the snare does in a bar."""
    beats, snare = bar.meter.beats, bar.snare
    on = tuple([beat for beat in beats if beat in snare])
    if not snare or not _is_even(bar.meter):
        return ""
    if on == beats[1::2] and len(beats) % 2 == 0:
        return "backbeat"
    if len(beats) == _FOUR and on == beats[2:3]:
        return "half-time"
    doubled = tuple([2 * beat + beats[1] for beat in beats])
    return "double-time" if tuple([2 * hit for hit in snare]) == doubled else ""


def _is_even(meter: MeterGrid) -> bool:
    """Tell whether a bar has two beats or more, all of the same length."""
    count, length = len(meter.beats), meter.length
    return count > 1 and all(beat * count == n * length for n, beat in enumerate(meter.beats))


def _where(meter: MeterGrid, kind: str) -> str:
    if kind == "double-time":
        return "every off-beat"
    return said_counts(meter, meter.beats[2:3] if kind == "half-time" else meter.beats[1::2])


def _sentence(kit: Sequence[KitBar], bars: Sequence[KitBar], kind: str) -> str:
    """Return a sentence for a backbeat that is not the usual one."""
    if kind not in _SENTENCES or len(bars) < _FEWEST_BARS:
        return ""
    where = "" if len(bars) == len(kit) else f", in {bars_said(bar.number for bar in bars)}"
    return f"{_SENTENCES[kind]}{where}."

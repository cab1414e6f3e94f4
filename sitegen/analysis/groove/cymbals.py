"""The cymbal that keeps time: in which note values it runs, and where the hi-hat opens.

Names of the runs are the trade's; the ride pattern is 1, 2 li, 3, 4 li (spelled with swung
eighths: 1, 2 &, 3, 4 &): common practice, no source.
"""

from collections.abc import Sequence

from sitegen.analysis.groove.kit import CRASHES, KitBar, drum_name
from sitegen.analysis.groove.line import Offsets
from sitegen.analysis.groove.wording import said_counts, said_value
from sitegen.analysis.reading import Fact
from sitegen.analysis.wording import capitalised
from sitegen.score.chart import Feel

_RUNS = {
    "half": "halves",
    "quarter": "quarters",
    "dotted quarter": "dotted quarters",
    "eighth": "eighths",
    "sixteenth": "sixteenths",
    "triplet eighth": "eighth triplets",
    "triplet sixteenth": "sixteenth triplets",
}
_SHUFFLE, _RIDE, _OFF_BEATS = "shuffled eighths", "swing pattern", "off-beat eighths"
_TELLING = {
    _SHUFFLE: "{} plays long and short on every beat, a shuffle.",
    _RIDE: "{} plays the swing pattern, every beat and a skip note after 2 and 4.",
    _OFF_BEATS: "{} plays only the off-beats.",
}
_TWICE = 2


def cymbal_facts(kit: Sequence[KitBar], ticks: int, prefix: str, feel: Feel) -> list[Fact]:
    """Return the run of the hi-hat and of the ride in most bars that they keep time in.

    The evidence is the first bar that has it.
    """
    facts = []
    for path, labels in (("hi-hat", ("HH",)), ("ride", ("RC", "RB"))):
        runs: dict[str, list[KitBar]] = {}
        for bar in kit:
            if bar.keeper in labels:
                runs.setdefault(_run(bar, labels, ticks, feel), []).append(bar)
        name, bars = max(runs.items(), key=lambda run: len(run[1]), default=("", []))
        if name:
            places = bars[0].places(bars[0].offsets(*labels), *labels)
            sentence = _TELLING.get(name, "").format(capitalised(drum_name(labels[0])))
            facts.append(Fact(f"{prefix}.{path}", name, name, "", places, sentence))
    return facts


def open_hat_facts(kit: Sequence[KitBar], prefix: str) -> list[Fact]:
    """Return how often the hi-hat opens; where, if it is the same in each of two bars or more."""
    opened = [(bar, offsets) for bar in kit if (offsets := _opened(bar))]
    if not opened:
        return []
    count = sum(len(offsets) for _, offsets in opened)
    places = tuple([place for bar, offsets in opened for place in bar.places(offsets, "HH")])
    sentence = ""
    bar, offsets = opened[0]
    everywhere = len(opened) == len(kit) and len({(b.meter, o) for b, o in opened}) == 1
    if everywhere and len(kit) >= _TWICE and len(offsets) <= _TWICE:
        sentence = f"The hi-hat opens on {said_counts(bar.meter, offsets)} in every bar."
    return [Fact(f"{prefix}.open-hats", count, str(count), "", places, sentence)]


def _opened(bar: KitBar) -> Offsets:
    return tuple(sorted([o for o, label, opened, _ in bar.shape if opened and label == "HH"]))


def _run(bar: KitBar, labels: Sequence[str], ticks: int, feel: Feel) -> str:
    """Return what a cymbal plays in a bar, a crash counted in: "eighths", "swing pattern", ""."""
    crashes, own = bar.offsets(*CRASHES), bar.offsets(*labels)
    struck = tuple(sorted({*own, *crashes})) if len(crashes) == 1 else own
    step, left = divmod(bar.meter.length, len(struck))
    if not left and struck == tuple(range(0, bar.meter.length, step)):
        return _RUNS.get(said_value(step, ticks), "")
    if bar.meter.swung:
        return _pattern(struck, bar.meter.beats, bar.meter.swung, feel)
    return ""


def _pattern(struck: Offsets, beats: Offsets, length: int, feel: Feel) -> str:
    """Return the name of a run that leaves gaps; `length` is that of a beat."""
    # In sixths of a tick, so that halves and thirds of a beat are whole.
    struck, beats = (tuple([6 * offset for offset in each]) for each in (struck, beats))
    if struck == tuple([beat + 3 * length for beat in beats]):
        return _OFF_BEATS
    for skip in [4 * length] if feel == "straight" else [4 * length, 3 * length]:
        if struck == tuple(sorted([*beats, *(beat + skip for beat in beats)])):
            return _SHUFFLE
        if struck == tuple(sorted([*beats, *(beat + skip for beat in beats[1::2])])):
            return _RIDE
    return ""

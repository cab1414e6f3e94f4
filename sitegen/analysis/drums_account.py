"""A bar of the drums in words: who hits on which counts."""

from bisect import bisect_left
from fractions import Fraction
from operator import attrgetter

from sitegen.analysis.reading import ChartReading
from sitegen.analysis.spoken import spoken_count, spoken_length, spoken_text
from sitegen.score.chart import Bar, Note, Part
from sitegen.score.drums import KIT

_FEWEST_IN_A_ROW = 3
_onset = attrgetter("onset")
_PLACES = {label: place for place, label in enumerate(KIT)}


def drums_sentence(reading: ChartReading, part: Part, bar: Bar) -> str:
    """Return one sentence: "Drums: hi-hat on every eighth; snare drum on 2, 4."."""
    hits: dict[tuple[int, str], list[Fraction]] = {}
    events = part.events
    first, last = (bisect_left(events, at, key=_onset) for at in (bar.start, bar.end))
    for event in events[first:last]:
        for note in event.notes:
            hits.setdefault(_sound(note), []).append(event.onset)
    name = spoken_text(part.name).capitalize()
    if not hits:
        return f"{name}: rest."
    told = (
        f"{what} on {_places(reading, bar, onsets)}" for (_, what), onsets in sorted(hits.items())
    )
    return f"{name}: {'; '.join(told)}."


def _sound(note: Note) -> tuple[int, str]:
    """Return a drum's place in the kit and its name with how it is struck: "open hi-hat"."""
    ways = {
        "accented": note.accent,
        "ghosted": note.ghost,
        "open": note.opened,
        "flammed": note.flam,
        "rolled": note.roll,
    }
    words = [way for way, is_so in ways.items() if is_so]
    if note.drum is None:
        return len(_PLACES), " ".join([*words, "a drum"])
    return _PLACES[note.drum.label], " ".join([*words, note.drum.name])


def _places(reading: ChartReading, bar: Bar, onsets: list[Fraction]) -> str:
    """Return the counts, or the one note value that fills the bar evenly."""
    step = bar.length / len(onsets)
    even = all(onset == bar.start + n * step for n, onset in enumerate(onsets))
    if len(onsets) >= _FEWEST_IN_A_ROW and even and spoken_length(step):
        return f"every {spoken_length(step)}"
    return ", ".join(spoken_count(reading.chart.beat_of(onset)[1]) for onset in onsets)

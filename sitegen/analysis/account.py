"""A chart in words: one sentence on the whole, and an account bar by bar.

It is the text alternative of a drawn chart, complete enough to learn the music from. What a bar
repeats is said once: "As bar 1."
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from fractions import Fraction

from sitegen.analysis.drums_account import drums_sentence
from sitegen.analysis.part_account import NamedNotes, named_notes, part_sentence
from sitegen.analysis.reading import ChartReading, ChordReading
from sitegen.analysis.spoken import (
    spoken_chord,
    spoken_count,
    spoken_key,
    spoken_roman,
    spoken_tempo,
    spoken_text,
)
from sitegen.analysis.wording import number_word
from sitegen.score.chart import Bar, Chart, Part

_MOST_CHORDS = 4
_MOST_METERS = 3
# A shorter sentence is sooner heard than looked up.
_WORTH_A_REFERENCE = 40


def summary(reading: ChartReading) -> str:
    """Return one sentence: "Two bars of 4/4 in E flat minor at 96: voice, over G suspended 2."."""
    chart = reading.chart
    count = chart.bar_count
    number = number_word(count).capitalize()
    meters = list(dict.fromkeys(str(bar.meter) for bar in chart.bars))
    parts = [f"{number} {'bar' if count == 1 else 'bars'} of {_joined(meters[:_MOST_METERS])}"]
    if chart.has_pickup:
        parts.append(" with a pickup")
    if chart.key is not None:
        parts.append(f" in {spoken_key(chart.key)}")
    if chart.tempo is not None:
        parts.append(f" at {spoken_tempo(chart.tempo)}")
    what = ", ".join(filter(None, (_joined(_player(p) for p in chart.parts), _over(chart))))
    return f"{''.join(parts)}{': ' if what else ''}{what}."


def _player(part: Part) -> str:
    """Return a part with whatever makes it sound other than usual: "guitar tuned drop D"."""
    fretted = part.instrument.fretted
    words = [spoken_text(part.name)]
    if fretted is not None and fretted.tuning.name != "standard":
        words.append(f" tuned {spoken_text(fretted.tuning.name)}")
    if fretted is not None and fretted.capo:
        words.append(f" with a capo at fret {fretted.capo}")
    return "".join(words)


def _over(chart: Chart) -> str:
    chords = list(dict.fromkeys(spoken_chord(event.chord) for event in chart.chords))
    if not chords:
        return ""
    named, more = chords[:_MOST_CHORDS], len(chords) - _MOST_CHORDS
    if more > 0:
        named.append(f"{more} more {'chord' if more == 1 else 'chords'}")
    return f"{'over ' if chart.parts else ''}{_joined(named)}"


def _joined(words: Iterable[str]) -> str:
    listed = list(words)
    return " and ".join(filter(None, (", ".join(listed[:-1]), *listed[-1:])))


def account(reading: ChartReading) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Return for each bar its place ("Bar 1", "Pickup") and what happens there as sentences."""
    told: dict[tuple[str, ...], str] = {}
    places: dict[str, int] = {}
    named = named_notes(reading)
    bars = []
    for bar in reading.chart.bars:
        place = _place(bar, places)
        music = _chord_sentences(reading, bar)
        music += [_part_sentence(reading, named, part, bar) for part in reading.chart.parts]
        said = _told_once(music, place, told)
        bars.append((place, (*_opening_signs(reading.chart, bar), *said, *_closing_signs(bar))))
    return tuple(bars)


def _place(bar: Bar, places: dict[str, int]) -> str:
    """Return the name of a bar; a number that comes again is told apart."""
    name = f"Bar {bar.number}" if bar.number else "Pickup"
    places[name] = places.get(name, 0) + 1
    return name if places[name] == 1 else f"{name}, part {places[name]}"


def _told_once(music: list[str], place: str, told: dict[tuple[str, ...], str]) -> list[str]:
    """Refer to an earlier bar with the same music, or part by part where only some repeat."""
    whole = tuple(music)
    if whole in told:
        return [f"As {_mid_sentence(told[whole])}."]
    said = []
    for sentence in music:
        name, colon, _ = sentence.partition(":")
        if colon and (sentence,) in told and len(sentence) > _WORTH_A_REFERENCE:
            said.append(f"{name}: as in {_mid_sentence(told[sentence,])}.")
        else:
            said.append(sentence)
    for key in (whole, *((sentence,) for sentence in music)):
        told.setdefault(key, place)
    return said


def _mid_sentence(place: str) -> str:
    return "the pickup" if place == "Pickup" else f"{place[0].lower()}{place[1:]}"


def _opening_signs(chart: Chart, bar: Bar) -> list[str]:
    """Return what stands over a bar and at its start."""
    said = [f"Section: {spoken_text(s.text)}." for s in chart.sections if _holds(bar, s.onset)]
    if bar.new_meter or bar is chart.bars[0]:
        said.append(f"In {bar.meter}.")
    if bar.repeat_start:
        said.append("A repeat starts.")
    if bar.ending:
        said.append(f"Ending {bar.ending.rstrip('.')} starts.")
    for remark in chart.remarks:
        if _holds(bar, remark.onset):
            count = spoken_count(chart.beat_of(remark.onset)[1])
            said.append(f"Remark on {count}: {spoken_text(remark.text)}.")
    return said


def _closing_signs(bar: Bar) -> list[str]:
    if bar.repeat_end:
        return ["The repeat ends here."]
    return ["The ending closes here."] if bar.ending_closes else []


def _holds(bar: Bar, onset: Fraction) -> bool:
    return bar.start <= onset < bar.end


def _chord_sentences(reading: ChartReading, bar: Bar) -> list[str]:
    chords = reading.chords
    first = bisect_right(chords, bar.start, key=lambda chord: chord.onset + chord.duration)
    sounding = chords[first : bisect_left(chords, bar.end, key=lambda chord: chord.onset)]
    if not sounding:
        return []
    said = "; ".join(_chord(reading.chart, chord, bar) for chord in sounding)
    return [f"{'Chord' if len(sounding) == 1 else 'Chords'}: {said}."]


def _chord(chart: Chart, chord: ChordReading, bar: Bar) -> str:
    name = spoken_chord(chord.chord)
    numeral = f" ({spoken_roman(chord.roman)})" if chord.roman else ""
    if chord.onset < bar.start:
        return f"{name} goes on"
    return f"{name}{numeral} on {spoken_count(chart.beat_of(chord.onset)[1])}"


def _part_sentence(reading: ChartReading, named: NamedNotes, part: Part, bar: Bar) -> str:
    if part.is_drums:
        return drums_sentence(reading, part, bar)
    return part_sentence(reading, named, part, bar)

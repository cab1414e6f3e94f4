"""The tempo mark: a note value, its number, and how the eighths are felt."""

from xml.etree.ElementTree import Element

from sitegen.engraving.mei.element import child, decimal
from sitegen.score.chart import Chart
from sitegen.score.tempo import BEATS

# SMuFL metronome marks: half U+ECA3, quarter U+ECA5, eighth U+ECA7, sixteenth U+ECA9, dot U+ECB7.
_SIGNS = {"half": "U+ECA3", "quarter": "U+ECA5", "eighth": "U+ECA7", "sixteenth": "U+ECA9"}
_DOT = "U+ECB7"
_FEELS = {"straight": "", "swing": "Swing", "shuffle": "Shuffle"}


def write_tempo(measure: Element, chart: Chart) -> None:
    """Write the tempo and the feel above the first bar; nothing when neither is said.

    A swung feel is words over straight eighths, as charts for players have it.
    """
    feel = _FEELS[chart.feel]
    if chart.tempo is None and not feel:
        return
    mark = child(measure, "tempo", staff=1, tstamp=1, place="above")
    if chart.tempo is None:
        mark.text = feel
        return
    mark.set("midi.bpm", decimal(float(chart.tempo.quarters_per_minute)))
    value = next(name for name, length in BEATS.items() if length == chart.tempo.beat)
    signs = [_SIGNS[value.removeprefix("dotted ")]] + [_DOT] * value.startswith("dotted ")
    for sign in signs:
        symbol = child(mark, "symbol", glyph_auth="smufl", glyph_num=sign)
    after = f" = {decimal(float(chart.tempo.beats_per_minute))}"
    symbol.tail = f"{after}   {feel}" if feel else after

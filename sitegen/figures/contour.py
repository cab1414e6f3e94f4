"""The contour of a melody: how high it stands over time, as a small drawing."""

from dataclasses import dataclass
from fractions import Fraction

from sitegen.score.chart import Chart, Event, Part
from sitegen.score.pitch import Pitch

WIDTH, HEIGHT = 720, 150
_LEFT, _RIGHT, _TOP, _BOTTOM = 44, 8, 14, 22


@dataclass(frozen=True)
class Contour:
    """A drawn contour and the sentence that says the same."""

    svg: str
    sentence: str


@dataclass(frozen=True)
class _Tone:
    onset: Fraction
    end: Fraction
    pitch: Pitch


def draw_contour(chart: Chart) -> Contour | None:
    """Return the contour of the chart's first pitched part, None when it has none.

    The highest note of each event counts. Time runs in proportion, pitch by semitones.
    """
    for part in chart.parts:
        tones = _tones(part)
        if tones:
            return Contour(_svg(chart, tones), _sentence(part, tones))
    return None


def _tones(part: Part) -> list[_Tone]:
    tones = []
    for event in part.voices[0]:
        top = _top(event)
        if top is not None:
            tones.append(_Tone(event.onset, event.end, top))
    return tones


def _top(event: Event) -> Pitch | None:
    pitches = [note.pitch for note in event.notes if note.pitch is not None]
    return max(pitches, key=lambda pitch: pitch.midi, default=None)


def _svg(chart: Chart, tones: list[_Tone]) -> str:
    low = min(tones, key=lambda tone: tone.pitch.midi).pitch
    high = max(tones, key=lambda tone: tone.pitch.midi).pitch
    span = max(high.midi - low.midi, 1)

    def across(onset: Fraction) -> str:
        place = _LEFT + (WIDTH - _LEFT - _RIGHT) * onset / chart.length
        return f"{float(place):.1f}"

    def up(pitch: Pitch) -> str:
        place = HEIGHT - _BOTTOM - (HEIGHT - _TOP - _BOTTOM) * (pitch.midi - low.midi) / span
        return f"{place:.1f}"

    parts = [f'<svg class="contour" viewBox="0 0 {WIDTH} {HEIGHT}" aria-hidden="true">']
    for bar in chart.bars:
        at = across(bar.start)
        parts.append(f'<path class="bar-line" d="M{at} {_TOP - 8}V{HEIGHT - _BOTTOM + 8}"/>')
        parts.append(f'<text x="{at}" y="{HEIGHT - 2}" dx="4">{bar.number}</text>')
    parts.extend(_label(pitch, up(pitch)) for pitch in dict.fromkeys((high, low)))
    line = ""
    previous: _Tone | None = None
    for tone in tones:
        joined = previous is not None and previous.end == tone.onset
        line += f"{'L' if joined else 'M'}{across(tone.onset)} {up(tone.pitch)}"
        line += f"H{across(tone.end)}"
        previous = tone
    parts.append(f'<path class="melody" d="{line}"/></svg>')
    return "".join(parts)


def _label(pitch: Pitch, at: str) -> str:
    return f'<text x="{_LEFT - 8}" y="{at}" dy="4" text-anchor="end">{pitch}</text>'


def _sentence(part: Part, tones: list[_Tone]) -> str:
    """Say where the line starts, how far it reaches and where it ends."""
    low = min(tones, key=lambda tone: tone.pitch.midi).pitch
    high = max(tones, key=lambda tone: tone.pitch.midi).pitch
    first, last = tones[0].pitch, tones[-1].pitch
    return (
        f"Contour of the {part.name}: from {first} to {last}, "
        f"between {low} at the lowest and {high} at the highest."
    )

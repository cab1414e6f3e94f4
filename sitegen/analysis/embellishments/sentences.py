"""Telling non-chord tones in a musician's words: which note, over what, where it goes."""

from collections.abc import Callable, Sequence

from sitegen.analysis.embellishments.embellishment import Embellishment
from sitegen.analysis.places import bars_said, listed
from sitegen.analysis.wording import capitalised, the_part
from sitegen.score.chart import Chart, Part, beat_text
from sitegen.score.chord import Chord
from sitegen.score.interval import Interval
from sitegen.score.metrical_weight import beat_level
from sitegen.score.pitch import PitchName

_MOST_TOLD = 3
_FEWEST_ANTICIPATIONS = 2
_OCTAVE, _NINTH = 8, 9


def suspension_sentence(_chart: Chart, part: Part, figures: Sequence[Embellishment]) -> str:
    """Return what stays into which chord and where it resolves: suspensions or retardations."""
    return _tell(part, figures, f"{figures[0].name}s", _suspended)


def appoggiatura_sentence(chart: Chart, part: Part, figures: Sequence[Embellishment]) -> str:
    """Return the appoggiaturas on strong beats; "" when there are none."""
    strong = [figure for figure in figures if _is_strong(chart, figure)]
    return _tell(part, strong, "appoggiaturas on strong beats", _leaning)


def anticipation_sentence(_chart: Chart, part: Part, figures: Sequence[Embellishment]) -> str:
    """Return where a part is ahead of its chords, when it is so more than once."""
    if len(figures) < _FEWEST_ANTICIPATIONS:
        return ""
    bars = bars_said(figure.place for figure in figures)
    who = capitalised(the_part(part))
    return f"{who} anticipates the next chord {len(figures)} times, in {bars}."


def pedal_sentence(_chart: Chart, part: Part, figures: Sequence[Embellishment]) -> str:
    """Return what stays while chords change; "" for a bass, whose pedals its own facts tell."""
    if part.instrument.family == "bass":
        return ""
    return _tell(part, figures, "pedals", _staying)


def _tell(
    part: Part,
    figures: Sequence[Embellishment],
    kind: str,
    told: Callable[[Embellishment], str],
) -> str:
    """Return each figure in words after its bar; many are counted and not told."""
    if not figures:
        return ""
    if len(figures) > _MOST_TOLD:
        bars = bars_said(figure.place for figure in figures)
        return f"{capitalised(the_part(part))} has {len(figures)} {kind}, in {bars}."
    clauses = [
        f"{bars_said([figure.place])}: {'it' if n else the_part(part)} {told(figure)}"
        for n, figure in enumerate(figures)
    ]
    return f"{capitalised('; '.join(clauses))}."


def _suspended(figure: Embellishment) -> str:
    way = "down" if figure.name == "suspension" else "up"
    return (
        f"carries {figure.pitch.name} from {figure.chord_before} into {figure.chords[0]} and"
        f" resolves it {way} to {figure.resolution.name},"
        f" a {_interval_figures(figure)}{figure.name}"
    )


def _leaning(figure: Embellishment) -> str:
    falls = figure.resolution.midi < figure.pitch.midi
    leaps, moves = ("leaps up", "falls") if falls else ("leaps down", "rises")
    return (
        f"{leaps} to {figure.pitch.name} over {figure.chords[0]} on beat"
        f" {beat_text(figure.place.beat)} and {moves} to {figure.resolution.name}, an appoggiatura"
    )


def _staying(figure: Embellishment) -> str:
    return (
        f"stays on {figure.pitch.name} from {figure.chord_before} through"
        f" {listed(map(str, figure.chords))} to {figure.chord_after}, a pedal"
    )


def _interval_figures(figure: Embellishment) -> str:
    """Return a suspension's intervals over the bass, "4–3 ", "" where the bass moves on."""
    chord = figure.chords[0]
    if not isinstance(chord, Chord) or chord != figure.chord_after:
        return ""
    high, low = (_number(chord.bass, name) for name in (figure.pitch.name, figure.resolution.name))
    if figure.name == "suspension" and (high, low) == (2, 1):
        high, low = _NINTH, _OCTAVE
    if figure.name == "retardation" and low == 1:
        low = _OCTAVE
    return f"{high}–{low} " if abs(high - low) == 1 else ""


def _number(bass: PitchName, name: PitchName) -> int:
    return Interval.between_names(bass, name).steps + 1


def _is_strong(chart: Chart, figure: Embellishment) -> bool:
    bar = chart.bar_at(figure.tones[0].onset)
    return figure.weight > beat_level(bar.meter) or figure.weight == 0

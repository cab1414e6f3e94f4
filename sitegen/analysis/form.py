"""The form of a song as a whole: letters, lengths, times, and what does not fit."""

from dataclasses import dataclass
from fractions import Fraction
from math import floor

from sitegen.analysis.form_clock import FormClock, Stretch, clock_form
from sitegen.analysis.letters import section_letters
from sitegen.diagnostics import Diagnostic, fault
from sitegen.score.form import Form, Section, bars_text
from sitegen.source import Source, Span


@dataclass(frozen=True)
class SectionReading:
    """One section in its place.

    `first_bar` counts from 1 and may end in a part of a bar. `start` and `seconds` are the best
    known place and length in the recording, `computed` the start at a steady tempo, `drift`
    the stated start minus the computed one; each is None where nothing gives it. `share` is the
    part of all bars.
    """

    section: Section
    letter: str
    first_bar: Fraction
    share: Fraction
    start: Fraction | None = None
    seconds: Fraction | None = None
    computed: Fraction | None = None
    drift: Fraction | None = None

    @property
    def end(self) -> Fraction | None:
        """The second after its last, None where nothing gives it."""
        if self.start is None or self.seconds is None:
            return None
        return self.start + self.seconds


@dataclass(frozen=True)
class FormReading:
    """A form with everything found in it.

    `references` are the ids of the charts that its sections name, each with its place; whether
    they exist can be told only where the whole article is known.
    """

    form: Form
    sections: tuple[SectionReading, ...]
    clock: FormClock
    diagnostics: tuple[Diagnostic, ...] = ()

    @property
    def references(self) -> tuple[tuple[str, Span], ...]:
        """The ids of charts that sections name, in order."""
        mentions = [chart for section in self.form.sections for chart in section.charts]
        return tuple((mention.id, mention.span) for mention in mentions)

    @property
    def letters(self) -> str:
        """The letters in order: "A B A B C B"."""
        return " ".join(reading.letter for reading in self.sections)

    @property
    def seconds(self) -> Fraction | None:
        """The length of the recording, stated or else to the end of the last section."""
        if self.form.song_length is not None:
            return Fraction(self.form.song_length)
        return self.clock.starts[-1] if self.clock.starts else None


def analyse_form(form: Form, source: Source) -> FormReading:
    """Return what is found in a form that has one section at least, written in `source`."""
    clock = clock_form(form)
    letters = section_letters(form.sections)
    bar = Fraction(1)
    readings: list[SectionReading] = []
    for place, (section, letter) in enumerate(zip(form.sections, letters, strict=True)):
        share = section.bars / form.bars
        reading = SectionReading(section, letter, bar, share, **_times(section, clock, place))
        readings.append(reading)
        bar += section.bars
    return FormReading(form, tuple(readings), clock, _misfits(form, clock, source))


def _times(section: Section, clock: FormClock, place: int) -> dict[str, Fraction]:
    times: dict[str, Fraction] = {}
    if clock.starts:
        times["start"] = clock.starts[place]
        times["seconds"] = clock.starts[place + 1] - clock.starts[place]
    if clock.computed:
        times["computed"] = clock.computed[place]
        if section.start_time is not None:
            times["drift"] = section.start_time - clock.computed[place]
    return times


def _misfits(form: Form, clock: FormClock, source: Source) -> tuple[Diagnostic, ...]:
    """Warn of stretches whose bars do not fill their time; once, when the tempo alone is off."""
    if not form.complete:
        return ()
    wrong = [stretch for stretch in clock.stretches if stretch.is_suspicious]
    if len(wrong) > 1 and len(wrong) == len(clock.stretches) and _agree(wrong):
        return (_wrong_tempo(form, clock, source),)
    return tuple(_wrong_stretch(form, stretch, source) for stretch in wrong)


def _agree(stretches: list[Stretch]) -> bool:
    """Tell whether one other tempo would make all stretches fit."""
    stated = sum((s.stated for s in stretches), Fraction(0))
    scale = stated / sum((s.steady for s in stretches), Fraction(0))
    return not any(stretch.scaled(scale).is_suspicious for stretch in stretches)


def _wrong_tempo(form: Form, clock: FormClock, source: Source) -> Diagnostic:
    tempo = form.tempo or form.sections[0].tempo
    beat = tempo.beat if tempo else Fraction(1)
    found = bpm_text((clock.quarters_per_minute or Fraction(0)) / beat)
    message = f"the start times ask for {found} beats a minute, the tempo is {tempo}"
    hint = "all sections agree on it: mend the tempo, the meter or all numbers of bars"
    span = form.tempo_span or form.span
    return fault("form-tempo", source, span, message, hint=hint)


def _wrong_stretch(form: Form, stretch: Stretch, source: Source) -> Diagnostic:
    section = form.sections[stretch.first]
    bars = sum((s.bars for s in form.sections[stretch.first : stretch.last]), Fraction(0))
    after = form.sections[stretch.last]
    until = f'up to "{after.name}"' if stretch.last - stretch.first > 1 else "here"
    steady, stated = seconds_text(stretch.steady), seconds_text(stretch.stated)
    message = (
        f"{bars_text(bars)} {until} last {steady} at the tempo, the times leave {stated} for them"
    )
    fitting = round(bars * stretch.stated / stretch.steady)
    hint = f"{bars_text(Fraction(fitting))} would fill {stated}" if fitting else ""
    related = ((after.span, "where they end"),)
    return fault("form-drift", source, section.bars_span, message, hint=hint, related=related)


def bpm_text(bpm: Fraction) -> str:
    """Return beats a minute with one decimal where it says something: "96", "95.2"."""
    return _one_decimal(bpm)


def seconds_text(seconds: Fraction) -> str:
    """Return a number of seconds with one decimal where it says something: "1.3 s", "40 s"."""
    return f"{_one_decimal(seconds)} s"


def _one_decimal(number: Fraction) -> str:
    """Round half up, as everybody does by hand."""
    return f"{floor(number * 10 + Fraction(1, 2)) / 10:g}"

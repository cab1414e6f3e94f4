"""What a form shows, as facts that prose can cite and as sentences."""

from fractions import Fraction
from math import floor

from sitegen.analysis.form import FormReading, SectionReading, bpm_text, seconds_text
from sitegen.analysis.form_clock import ROUNDING
from sitegen.analysis.letters import PRIME, stem
from sitegen.analysis.reading import Fact, Place
from sitegen.analysis.wording import number_word, percent
from sitegen.score.clock import clock_text
from sitegen.score.form import bars_number, bars_text
from sitegen.score.tempo import Tempo


def form_facts(reading: FormReading) -> tuple[Fact, ...]:
    """Return the facts of a form.

    Always `bars`, `sections` and `letters`; `length` (seconds), `chorus` (start of the first
    chorus in seconds), `drift` (seconds that the last stated start is late, negative when
    early) and `tempo-implied` (average beats a minute between stated starts) where known.
    """
    form = reading.form
    facts = [
        Fact("bars", _plain(form.bars), bars_number(form.bars)),
        Fact("sections", len(form.sections), str(len(form.sections))),
        Fact("letters", reading.letters, reading.letters),
    ]
    if reading.seconds is not None:
        facts.append(Fact("length", reading.seconds, time_text(reading.seconds), "s"))
    chorus = first_chorus(reading)
    if chorus is not None and chorus.start is not None:
        place = (_place(chorus),)
        facts.append(Fact("chorus", chorus.start, time_text(chorus.start), "s", place))
    return (*facts, *_tempo_facts(reading))


def _tempo_facts(reading: FormReading) -> list[Fact]:
    facts = []
    late = last_stated(reading)
    if late is not None and late.drift is not None:
        facts.append(Fact("drift", late.drift, _drift_text(late.drift), "s", (_place(late),)))
    implied = implied_tempo(reading)
    if implied is not None:
        facts.append(Fact("tempo-implied", implied, bpm_text(implied), "beats a minute"))
    return facts


def first_chorus(reading: FormReading) -> SectionReading | None:
    """Return the first section whose name makes it a chorus."""
    return next((s for s in reading.sections if stem(s.section.name) == "chorus"), None)


def last_stated(reading: FormReading) -> SectionReading | None:
    """Return the last section with a stated start, None where it is the only one."""
    stated = [s for s in reading.sections if s.section.start_time is not None]
    return stated[-1] if len(stated) > 1 else None


def implied_tempo(reading: FormReading) -> Fraction | None:
    """Return the average beats a minute between the stated starts, in the tempo's beat.

    Where there is no tempo, or more than one, quarters are counted, dotted quarters in compound
    meters.
    """
    quarters = reading.clock.quarters_per_minute
    if quarters is None:
        return None
    compound = Fraction(3, 2) if reading.form.meter.is_compound else Fraction(1)
    tempo = _tempo(reading)
    return quarters / (tempo.beat if tempo else compound)


def form_sentences(reading: FormReading) -> tuple[str, ...]:
    """Return the findings as sentences: the whole, the first chorus, what fills it, the tempo."""
    found = (
        form_summary(reading),
        _chorus_sentence(reading),
        _main_letter_sentence(reading),
        _tempo_sentence(reading),
    )
    return tuple(sentence for sentence in found if sentence)


def form_summary(reading: FormReading) -> str:
    """Return one sentence on the whole: "Six sections, 84 bars, 3:30: A B A B C B."."""
    count = len(reading.sections)
    sections = f"{number_word(count).capitalize()} {'section' if count == 1 else 'sections'}"
    length = f", {time_text(reading.seconds)}" if reading.seconds is not None else ""
    return f"{sections}, {bars_text(reading.form.bars)}{length}: {reading.letters}."


def _chorus_sentence(reading: FormReading) -> str:
    chorus = first_chorus(reading)
    if chorus is None:
        return ""
    before = chorus.first_bar - 1
    if not before:
        return "The song opens with its chorus."
    at = f" at {time_text(chorus.start)}," if chorus.start is not None else ""
    way = percent(before / reading.form.bars)
    return f"The first chorus comes{at} after {bars_text(before)}, {way} of the way in."


def _main_letter_sentence(reading: FormReading) -> str:
    """Say which letter fills most of the bars, where one does."""
    bars: dict[str, Fraction] = {}
    for section in reading.sections:
        letter = _plain_letter(section)
        bars[letter] = bars.get(letter, Fraction(0)) + section.section.bars
    most = max(bars.values())
    leading = [letter for letter, filled in bars.items() if filled == most]
    if len(bars) == 1 or len(leading) > 1:
        return ""
    letter = leading[0]
    name = next(s.section.name for s in reading.sections if _plain_letter(s) == letter)
    share = percent(most / reading.form.bars)
    total = bars_text(reading.form.bars)
    return f"{letter} ({stem(name)}) fills {bars_number(most)} of {total}, {share}."


def _tempo_sentence(reading: FormReading) -> str:
    late, implied = last_stated(reading), implied_tempo(reading)
    if late is None or implied is None:
        return ""
    average = f"{bpm_text(implied)} beats a minute on average"
    if late.drift is None:
        return f"The start times give {average}."
    tempo = _tempo(reading)
    steady = f"a steady {bpm_text(tempo.beats_per_minute)}" if tempo else "its tempos"
    furthest = max(reading.sections, key=_strayed)
    if _strayed(furthest) <= ROUNDING:
        return f"The start times keep to {steady} within a second."
    if abs(late.drift) <= ROUNDING:
        return (
            f"Against {steady} the recording is {_drift_text(furthest.drift)} "
            f"at {furthest.section.name}, and level again by {late.section.name}."
        )
    return (
        f"Against {steady} the recording runs {_drift_text(late.drift)} "
        f"by {late.section.name}: {average}."
    )


def _strayed(section: SectionReading) -> Fraction:
    return abs(section.drift or Fraction(0))


def _drift_text(drift: Fraction | None) -> str:
    """Return a drift as it is said: "1.3 s behind", "0.5 s ahead", "0 s" for none."""
    side = " behind" if drift and drift > 0 else " ahead" if drift else ""
    return f"{seconds_text(abs(drift or Fraction(0)))}{side}"


def _tempo(reading: FormReading) -> Tempo | None:
    """Return the tempo of all sections, None where there is none or more than one."""
    tempos = {section.tempo for section in reading.form.sections}
    return tempos.pop() if len(tempos) == 1 else None


def _plain_letter(section: SectionReading) -> str:
    return section.letter.split(PRIME)[0]


def _place(section: SectionReading) -> Place:
    """Return where a section starts as a bar and a count in it."""
    bar, rest = divmod(section.first_bar, 1)
    return Place(int(bar), 1 + rest * section.section.meter.count)


def _plain(number: Fraction) -> int | Fraction:
    return int(number) if number.denominator == 1 else number


def time_text(seconds: Fraction) -> str:
    """Return a time in the recording to the nearest second: "2:04"."""
    return clock_text(floor(seconds + Fraction(1, 2)))

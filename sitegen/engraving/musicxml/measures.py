"""The measures of one part: attributes, bar lines, voices and what stands over them."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from typing import Protocol
from xml.etree.ElementTree import Element

from sitegen.engraving.copyist import WrittenBar, WrittenVoice
from sitegen.engraving.mei.accidentals import Accidentals
from sitegen.engraving.mei.plan import ScorePlan
from sitegen.engraving.mei.staves import Staff
from sitegen.engraving.musicxml.directions import Standing, part_directions, stand, top_directions
from sitegen.engraving.musicxml.drums import DrumNotes
from sitegen.engraving.musicxml.element import child, ticks
from sitegen.engraving.musicxml.notes import PitchedNotes
from sitegen.engraving.musicxml.players import drum_instruments, player_id
from sitegen.engraving.musicxml.reading import (
    write_key,
    write_meter,
    write_staff,
    written_interval,
    written_key,
)
from sitegen.engraving.musicxml.rhythm import Placed, place_events
from sitegen.score.chart import Bar, Chart
from sitegen.score.playing_order import turns_of


class NoteWriter(Protocol):
    """Writes what one voice does at one place."""

    def write(self, measure: Element, placed: Placed) -> None:
        """Write a note, a chord or a rest into its measure."""


class Measures:
    """Writes the measures of the part on `staff`; the top one carries what is said for all."""

    def __init__(self, plan: ScorePlan, staff: Staff, divisions: int, *, player: int) -> None:
        self._bars = plan.chart.bars
        self._staff = staff
        self._divisions = divisions
        self._key = written_key(plan.chart.key, written_interval(staff))
        self._accidentals = Accidentals(self._key)
        self._voices = plan.voices[staff.part.name] if staff.part else ()
        instruments = _instruments(staff, player)
        self._writers: list[NoteWriter] = [
            DrumNotes(voice, instruments, divisions)
            if staff.kind == "drums"
            else PitchedNotes(staff, voice, plan.joins(voice), self._accidentals, divisions)
            for voice in self._voices
        ]
        self._standing = _by_bar(plan.chart, _directions(plan, staff, is_top=player == 1))
        self._numbers: set[int] = set()

    def write(self, home: Element) -> None:
        """Write all measures."""
        bracket = ""
        for number, bar in enumerate(self._bars):
            measure = child(home, "measure", **self._measure_number(bar))
            measure.tail = "\n"
            if bar.opens_line and number:
                child(measure, "print", new_system="yes")
            _write_left_line(measure, bar)
            self._write_attributes(measure, number)
            self._accidentals.open_bar()
            self._write_voices(measure, number)
            bracket = bar.ending or bracket
            closes = bar.ending_closes or number + 1 == len(self._bars)
            _write_right_line(measure, bar, bracket if closes else "")
            bracket = "" if closes else bracket

    def _measure_number(self, bar: Bar) -> dict[str, str]:
        """Return number and kind of a measure: a pickup and the rest of a split bar count not."""
        again = bar.number in self._numbers
        self._numbers.add(bar.number)
        if again:
            return {"number": f"X{bar.number}", "implicit": "yes"}
        return {"number": str(bar.number)} | ({} if bar.number else {"implicit": "yes"})

    def _write_attributes(self, measure: Element, number: int) -> None:
        meter = self._bars[number].meter
        if number and meter == self._bars[number - 1].meter:
            return
        attributes = child(measure, "attributes")
        if number:
            write_meter(attributes, meter)
            return
        child(attributes, "divisions", self._divisions)
        write_key(attributes, self._staff, self._key)
        write_meter(attributes, meter)
        write_staff(attributes, self._staff)
        if self._staff.kind == "slashes":
            slashes = child(child(attributes, "measure-style"), "slash", type="start")
            slashes.set("use-stems", "no")

    def _write_voices(self, measure: Element, number: int) -> None:
        """Write the voices one after the other; what stands over them goes with the first."""
        bar = self._bars[number]
        standing = self._standing.get(number, [])
        sounding = [v for v in self._voices if not v.bars[number].is_silent]
        shown = sounding or list(self._voices[:1])
        if not shown:
            self._write_silence(measure, bar, standing, voice=1)
        for place, voice in enumerate(shown):
            if place:
                back = child(measure, "backup")
                child(back, "duration", ticks(bar.length, self._divisions))
            over = [] if place else standing
            self._write_voice(measure, voice, voice.bars[number], over)

    def _write_voice(
        self, measure: Element, voice: WrittenVoice, bar: WrittenBar, standing: list[Standing]
    ) -> None:
        if bar.is_silent and bar.is_full:
            self._write_silence(measure, bar.bar, standing, voice=voice.number)
            return
        start = bar.bar.start - bar.bar.skipped
        waiting = list(standing)
        for placed in place_events(bar, voice.number):
            piece = placed.written.piece
            while waiting and waiting[0].onset < start + piece.end:
                first = waiting.pop(0)
                offset = first.onset - start - piece.start
                stand(measure, first.element, offset, self._divisions)
            self._writers[voice.number - 1].write(measure, placed)
        for late in waiting:
            stand(measure, late.element, late.onset - bar.bar.end, self._divisions)

    def _write_silence(
        self, measure: Element, bar: Bar, standing: list[Standing], *, voice: int
    ) -> None:
        """Write the rest of a whole measure, and over it all that stands there."""
        for each in standing:
            stand(measure, each.element, each.onset - bar.start, self._divisions)
        note = child(measure, "note")
        child(note, "rest", measure="yes")
        child(note, "duration", ticks(bar.length, self._divisions))
        child(note, "voice", voice)


def _instruments(staff: Staff, player: int) -> dict[int, str]:
    if staff.part is None or not staff.part.is_drums:
        return {}
    sounds = drum_instruments(staff.part, player_id(player))
    return {midi: identity for midi, (identity, _) in sounds.items()}


def _directions(plan: ScorePlan, staff: Staff, *, is_top: bool) -> Iterable[Standing]:
    if is_top:
        yield from top_directions(plan.chart, written_interval(staff))
    if staff.part is not None:
        yield from part_directions(staff.part)


def _by_bar(chart: Chart, standing: Iterable[Standing]) -> dict[int, list[Standing]]:
    """Return what stands in each bar by onset; an end at a bar line stands before it."""
    starts = [bar.start for bar in chart.bars]
    found: dict[int, list[Standing]] = {}
    for each in sorted(standing, key=lambda each: (each.onset, not each.ends)):
        search = bisect_left if each.ends else bisect_right
        number = max(search(starts, each.onset) - 1, 0)
        found.setdefault(number, []).append(each)
    return found


def _write_left_line(measure: Element, bar: Bar) -> None:
    if not (bar.repeat_start or bar.ending):
        return
    line = child(measure, "barline", location="left")
    if bar.repeat_start:
        child(line, "bar-style", "heavy-light")
    if bar.ending:
        child(line, "ending", bar.ending, number=_turns(bar.ending), type="start")
    if bar.repeat_start:
        child(line, "repeat", direction="forward")


def _write_right_line(measure: Element, bar: Bar, closing: str) -> None:
    """Write a line that is not plain; `closing` is the bracket that ends at it, "" for none."""
    style = "light-heavy" if bar.repeat_end else "light-light" if bar.double_bar else None
    if style is None and not closing:
        return
    line = child(measure, "barline", location="right")
    if style is not None:
        child(line, "bar-style", style)
    if closing:
        way = "stop" if bar.repeat_end else "discontinue"
        child(line, "ending", number=_turns(closing), type=way)
    if bar.repeat_end:
        child(line, "repeat", direction="backward")


def _turns(ending: str) -> str:
    return ", ".join(map(str, sorted(turns_of(ending))))

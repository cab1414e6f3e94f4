"""String events of a fretted part become notes: what sounds, what is fingered, how they join."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from sitegen.charts.grid.cells import Cell
from sitegen.charts.grid.faults import Faults
from sitegen.charts.grid.hold import Struck
from sitegen.charts.grid.players import Fingering
from sitegen.charts.grid.stringrows import Stopped, StringEvent, report_loose
from sitegen.harmony import line_goals
from sitegen.score.chart import Joining, Note
from sitegen.score.instrument import Fretted
from sitegen.score.pitch import Pitch

# Semitones above the open string at the nodes of the 2nd to 6th partial: f, 2f, 3f, ...
_NODES = {12: 12, 7: 19, 19: 19, 5: 24, 24: 24, 4: 28, 9: 28, 16: 28, 3: 31}
_JOINING: dict[str, Joining] = {
    "h": "hammer-on",
    "p": "pull-off",
    "b": "bend",
    "/": "slide",
    "\\": "slide",
}

WHOLE_STEP = 2
MOST_BEND = 5

_SLIDES: dict[str, Literal["up", "down"]] = {"/": "up", "\\": "down"}

Speller = Callable[[int, Fraction, int | None], Pitch]
"""Gives a MIDI number at an onset its name by key, chord and the number that the line goes to."""


def strike(
    events: Sequence[StringEvent],
    fretted: Fretted,
    spell: Speller,
    fingered: Fingering | None,
    faults: Faults,
) -> list[Struck]:
    """Return what a part strikes, the notes of all strings at one onset together.

    `events` are those of all strings and systems of the part; `fingered` gives a
    sounding pitch its fingered name.
    """
    by_onset: dict[Fraction, list[StringEvent]] = {}
    for event in events:
        by_onset.setdefault(event.onset, []).append(event)
    onsets = sorted(by_onset)
    following = dict(pairwise(onsets))
    on_string = {(e.note.string, e.onset): e.note for e in events if e.note is not None}
    previous = {after: onset for onset, after in following.items()}
    goals = dict(zip(onsets, _goals([by_onset[onset] for onset in onsets], fretted), strict=True))
    struck = []
    for onset in onsets:
        here = by_onset[onset]
        notes = []
        for stopped in (event.note for event in here if event.note is not None):
            after = on_string.get((stopped.string, following.get(onset, Fraction(-1))))
            before = on_string.get((stopped.string, previous.get(onset, Fraction(-1))))
            pitch = None
            if not stopped.dead:
                pitch = spell(_number(stopped, fretted), onset, goals[onset])
            name = fingered(pitch) if pitch is not None and fingered is not None else None
            note = _stopped_note(stopped, pitch, name, faults)
            notes.append(_joined(note, stopped, before, after, faults))
        notes.sort(key=lambda note: -(note.string or 0))
        struck.append(Struck(onset, tuple(notes), here[0].span))
    return struck


def _goals(moments: Sequence[Sequence[StringEvent]], fretted: Fretted) -> list[int | None]:
    """Return where the line goes from each moment, dead notes apart."""
    notes = [[event.note for event in events if event.note is not None] for events in moments]
    return line_goals([[_number(n, fretted) for n in here if not n.dead] for here in notes])


def _number(stopped: Stopped, fretted: Fretted) -> int:
    """Return the MIDI number that sounds; a harmonic at no node sounds as if stopped."""
    nodes = _NODES if stopped.harmonic else {}
    return fretted.sounding(stopped.string, nodes.get(stopped.fret, stopped.fret))


def _stopped_note(
    stopped: Stopped, pitch: Pitch | None, fingered: Pitch | None, faults: Faults
) -> Note:
    """Return the note by itself, without what leads to it and from it."""
    if stopped.harmonic and not stopped.dead and stopped.fret not in _NODES:
        frets = ", ".join(str(fret) for fret in sorted(_NODES))
        hint = f"the nodes lie at {frets}"
        faults.add("tab-harmonic", stopped.span, f"no harmonic at fret {stopped.fret}", hint=hint)
    return Note(
        stopped.span,
        pitch,
        fingered,
        string=stopped.string,
        fret=None if stopped.dead else stopped.fret,
        dead=stopped.dead,
        ghost=stopped.ghost,
        harmonic=stopped.harmonic,
        vibrato=bool(stopped.after) and any(sign.text == "~" for sign in stopped.after),
    )


def _joined(
    note: Note, stopped: Stopped, before: Stopped | None, after: Stopped | None, faults: Faults
) -> Note:
    """Return the note with how it starts and how it goes on to the next on its string."""
    note = _led_in(note, stopped, before, faults)
    signs = [*stopped.after, *(after.before if after is not None else ())]
    joining = [sign for sign in signs if sign.text in _JOINING]
    if not joining:
        return note
    sign = joining[0]
    if sign.text == "b":
        return _bent(note, stopped, after, faults)
    if after is not None:
        _check_direction(sign, stopped, after, faults)
        return replace(note, joins=_JOINING[sign.text])
    if sign.text in _SLIDES:
        return replace(note, slide_out=_SLIDES[sign.text])
    faults.add(
        "tab-join",
        stopped.row.span(sign.column, sign.end),
        f'"{sign.text}" leads to no note: nothing follows on this string',
        hint="the next event of the part must be a note on the same string",
    )
    return note


def _check_direction(sign: Cell, stopped: Stopped, after: Stopped, faults: Faults) -> None:
    """Warn of a hammer-on that does not go up, of a pull-off that does not go down."""
    rise = after.fret - stopped.fret
    is_wrong = (sign.text == "h" and rise <= 0) or (sign.text == "p" and rise >= 0)
    if not is_wrong or stopped.dead or after.dead:
        return
    way, other = ("hammer-on", "p") if sign.text == "h" else ("pull-off", "h")
    faults.add(
        "tab-direction",
        stopped.row.span(sign.column, sign.end),
        f"a {way} from fret {stopped.fret} to fret {after.fret}",
        hint=f'write "{other}" where the finger moves the other way, or mend the fret',
    )


def _led_in(note: Note, stopped: Stopped, before: Stopped | None, faults: Faults) -> Note:
    """Read the signs right before a number where no note of its string leads to it."""
    for sign in stopped.before:
        if sign.text == "~" or (before is None and sign.text not in _SLIDES):
            report_loose(sign, stopped.row, faults)
        elif before is None:
            note = replace(note, slide_in=_SLIDES[sign.text])
    return note


def _bent(note: Note, stopped: Stopped, after: Stopped | None, faults: Faults) -> Note:
    """Bend to the next note where that one lies in reach, else to the target, else by a tone."""
    reach = after.fret - stopped.fret if after is not None and not after.dead else 0
    if stopped.target is None and stopped.is_bent and 1 <= reach <= MOST_BEND:
        return replace(note, bend=reach, joins="bend")
    target = stopped.target if stopped.target is not None else stopped.fret + WHOLE_STEP
    if 1 <= target - stopped.fret <= MOST_BEND:
        return replace(note, bend=target - stopped.fret)
    faults.add(
        "tab-bend",
        stopped.span,
        f"a bend from fret {stopped.fret} to the pitch of fret {target}",
        hint=f"a bend goes up, by 1 to {MOST_BEND} frets",
    )
    return note

"""How notes of a part lead into one another: hammered, pulled, slid, bent."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from sitegen.engraving.copyist import WrittenEvent, WrittenVoice
from sitegen.score.chart import Joining, Note


@dataclass(frozen=True)
class Played:
    """One note of an event: its first and last written pieces and its place in the event."""

    first: WrittenEvent
    last: WrittenEvent
    index: int

    @property
    def note(self) -> Note:
        """The note itself."""
        return self.first.event.notes[self.index]

    @property
    def id(self) -> str:
        """The id of the note where it is struck."""
        return self.first.note_ids[self.index]

    @property
    def last_id(self) -> str:
        """The id of the last note that is tied to it."""
        return self.last.note_ids[self.index]


@dataclass(frozen=True)
class Join:
    """Two notes of which the first leads into the second."""

    kind: Joining
    start: Played
    end: Played


def played_notes(voice: WrittenVoice) -> Iterator[Played]:
    """Yield the notes of a voice by onset."""
    for number, event in enumerate(voice.part.voices[voice.number - 1]):
        sounding = [written for written in voice.written(number) if not written.piece.is_rest]
        if sounding:
            for index in range(len(event.notes)):
                yield Played(sounding[0], sounding[-1], index)


def joins_of(notes: Sequence[Played]) -> tuple[Join, ...]:
    """Return the joins of a voice by onset; what leads to no note of its string is none."""
    joins: list[Join] = []
    for number, played in enumerate(notes):
        if played.note.joins:
            end = next((later for later in notes[number:] if _follows(played, later)), None)
            if end is not None:
                joins.append(Join(played.note.joins, played, end))
    return tuple(joins)


def legato_runs(joins: tuple[Join, ...]) -> tuple[tuple[Join, ...], ...]:
    """Return hammer-ons and pull-offs in runs of one slur each; of several strings one run."""
    runs: list[list[Join]] = []
    for join in joins:
        if join.kind not in ("hammer-on", "pull-off"):
            continue
        if any(old.start.first == join.start.first for run in runs for old in run):
            continue
        leads = [run for run in runs if run[-1].end.first == join.start.first]
        if leads:
            leads[0].append(join)
        else:
            runs.append([join])
    return tuple(tuple(run) for run in runs)


def first_of_each(joins: tuple[Join, ...]) -> tuple[Join, ...]:
    """Return one join of each event: of several strings that move together the first."""
    found: dict[int, Join] = {}
    for join in joins:
        found.setdefault(join.start.first.number, join)
    return tuple(found.values())


def _follows(played: Played, later: Played) -> bool:
    """Return whether `later` is of the next event and, on strings, on the same one.

    Nothing leads into a dead note or out of one.
    """
    alive = not (played.note.dead or later.note.dead)
    following = later.first.number == played.first.number + 1
    return alive and following and later.note.string == played.note.string

"""What two write-ups can have in common, with how much it counts and how it is said.

The weights are our own choice, no source: what the music does counts for more than who made it,
and that for more than the words it is filed under.
"""

from collections.abc import Callable, Iterator
from itertools import pairwise

from msgspec import Struct

from sitegen.article import FrontMatter
from sitegen.finding.entry import Beat, Entry, Melody
from sitegen.finding.kinship.circles import circle, loops_of

LOOP = "loop"
_OPENING = 8
_DRUMS = ("BD", "SD", "SS", "HC")
_COMMON_METERS = frozenset({"4/4", ""})
_COMMON_TUNINGS = frozenset({"standard", ""})
_WEIGHTS = {
    LOOP: 5.0,
    "tune": 6.0,
    "groove": 3.0,
    "timeline": 3.0,
    "technique": 2.0,
    "meter": 1.5,
    "tuning": 1.5,
    "artist": 1.5,
    "writer": 1.5,
    "producer": 1.0,
    "topic": 1.0,
}
_OWN_WORDS = {
    "phrases that start late": "also starts its phrases late",
    "phrases that start early": "also starts its phrases early",
    "mostly chord tones": "its tune also keeps to the chords",
    "few chord tones": "its tune also keeps off the chords",
    "much syncopation": "its rhythm also leans off the beat",
    "little syncopation": "also keeps to the beat",
    "pickup": "also starts before the bar",
    "odd meter": "also in an odd meter",
    "change of key": "also changes its key",
    "change of meter": "also changes its meter",
    "chords ahead of the bar": "its chords also come ahead of the bar",
    "pedal at the top": "also holds a note above its chords",
    "four on the floor": "also has four on the floor",
}
_SAID: dict[str, Callable[[str], str]] = {
    "tune": lambda _: "a tune starts with the same steps",
    "groove": lambda _: "the same bass drum and snare",
    "timeline": lambda value: f"also plays the {value}",
    "technique": lambda value: _OWN_WORDS.get(value) or f"also has {_with_article(value)}",
    "meter": lambda value: f"also in {value}",
    "tuning": lambda value: f"also in {value}",
    "artist": lambda value: f"also by {value}",
    "writer": lambda value: f"also written by {value}",
    "producer": lambda value: f"also produced by {value}",
    "topic": lambda value: f"also on {value}",
}
_SINGULAR = frozenset(
    "backbeat bass chord cliché fifths fourths line motion sequence third".split()
)


class Sign(Struct, frozen=True, gc=False):
    """Something that write-ups can share, such as ("meter", "7/8")."""

    what: str
    value: str

    @property
    def weight(self) -> float:
        """How much it counts where nobody else has it."""
        return _WEIGHTS[self.what]

    def say(self) -> str:
        """Return what is said where it is shared; a loop is said with both loops in hand."""
        return _SAID[self.what](self.value)


def signs_of(front: FrontMatter, entry: Entry) -> tuple[Sign, ...]:
    """Return what a write-up has that another may have too, each once."""
    return tuple(dict.fromkeys((*_of_music(entry), *_of_words(front, entry))))


def _of_music(entry: Entry) -> Iterator[Sign]:
    for row in loops_of(entry):
        yield Sign(LOOP, circle(row))
    for chart in entry.charts:
        for melody in chart.melodies:
            if not melody.bass and len(melody.midi) > _OPENING:
                yield Sign("tune", _opening(melody))
        for beat in chart.beats[:1]:
            if groove := _groove(beat):
                yield Sign("groove", groove)
        for path, value in chart.traits:
            if path.endswith("timeline"):
                yield Sign("timeline", value)
        for technique in chart.techniques:
            yield Sign("technique", technique.name)


def _of_words(front: FrontMatter, entry: Entry) -> Iterator[Sign]:
    song = front.song
    meters = {str(song.meter or ""), *(chart.meter for chart in entry.charts)}
    yield from (Sign("meter", meter) for meter in sorted(meters - _COMMON_METERS))
    # A capo is no tuning.
    named = {tuning for chart in entry.charts for tuning in chart.tunings if "capo" not in tuning}
    tunings = {tuning.replace("#", "♯") for tuning in {song.tuning, *named}} - _COMMON_TUNINGS
    yield from (Sign("tuning", tuning) for tuning in sorted(tunings))
    if song.artist:
        yield Sign("artist", song.artist)
    yield from (Sign("writer", name) for name in song.writers)
    yield from (Sign("producer", name) for name in song.producers)
    yield from (Sign("topic", topic) for topic in front.topics)


def _opening(melody: Melody) -> str:
    steps = pairwise(melody.midi[:_OPENING])
    return " ".join(str(after - before) for before, after in steps)


def _groove(beat: Beat) -> str:
    """Return where bass drum and snare are in a bar; "" without either."""
    hits = [(label, onsets) for label, onsets in beat.hits if label in _DRUMS]
    return f"{beat.meter} {hits}" if len(hits) > 1 else ""


def _with_article(name: str) -> str:
    """Return a technique with "a" before it where it is one thing: "a lament bass"."""
    if name.rsplit(maxsplit=1)[-1] not in _SINGULAR or name.startswith("chords"):
        return name
    return f"{'an' if name[0] in 'aeiou' else 'a'} {name}"

"""The prose of a synthetic write-up: paragraphs around its charts, with roles and headings."""

from collections.abc import Iterator, Sequence
from random import Random

from bench.archive_charts import Plan, Song, TypedChart, clock
from bench.archive_harmony import ascii_name
from bench.archive_names import surname

_OPENINGS = (
    "I learned this song from a rehearsal tape and had the second bar wrong for a month.",
    "Nobody asks for this song twice, and nobody forgets it either.",
    "The first thing to hear is how little is played before the voice comes in.",
    "Somebody told me that this record was made in two evenings, and it sounds like it.",
)
_ABOUT_NOTES = (
    "The line turns on {note}, and {other} answers it.",
    "Everything leads to {note}; the band waits there for a moment.",
    "Play {note} softly and let {other} ring against it.",
    "{note} is the {degree} of {chord}, which is why the ear stays open.",
    "Between {note} and {other} lies the whole character of the phrase.",
    "With the third finger on {note}, the hand need not move before {chord}.",
)
_ABOUT_CHORDS = (
    "From {chord} to {next} the bass moves and the upper voices stay where they are.",
    "{chord} could be replaced, but then {next} would come as no surprise.",
    "The {degree} of {chord} falls to a note of {next}, by step and without hurry.",
    "Under {chord} the guitars leave out the third, and the voice supplies it.",
    "Count the beats before {next}: there are fewer of them than one thinks.",
    "At {at} the same chords come back, with {chord} held for longer.",
)
_ABOUT_TIME = (
    "In {see} the accents fall between the beats, so practise it slowly with a click.",
    "The drummer, {name}, told me that the fill at {at} was a mistake that they kept.",
    "Listen at {at} for the place where the band breathes together.",
    "What {see} shows is played twice as loud on the record as on the page.",
    "Between {at} and the end the tempo holds, and the players lean back against it.",
    "{name} counts the bars aloud here; I have never managed without.",
)
_PLAIN = (
    "The recording is dry, and every finger can be heard on the strings.",
    "I would not call it difficult, but it punishes a heavy hand.",
    "That is the sort of detail which disappears when it is played too fast.",
    "A reader asked me whether a capo helps, and for this passage it does not.",
    "Take the repeat quietly, then let the last bar have all the weight.",
    "There is a *second* guitar far to the left, which doubles the lowest notes only.",
    "Whoever sings it will want to breathe before the long note, and not after it.",
    "On the record it is **one** take, with the cough at the end left in.",
    "Keep the sound clean, and keep the volume where neighbours and ears can bear it.",
)
_HEADINGS = (
    "How it goes",
    "What the hands do",
    "Where it turns",
    "The other voice",
    "Coming back",
)
_DEGREES = ("R", "b3", "3", "5", "b7", "9", "11")


class Prose:
    """Writes the text of one write-up, about `words` words of it."""

    def __init__(
        self,
        song: Song,
        charts: Sequence[TypedChart],
        plan: Plan,
        words: int,
        draw: Random,
    ) -> None:
        self._song = song
        self._charts = charts
        self._plan = plan
        self._share = words // (len(charts) + 1)
        self._draw = draw

    def text(self) -> str:
        """Return the whole body, its charts among the paragraphs."""
        return "\n\n".join(self._blocks())

    def _blocks(self) -> Iterator[str]:
        yield self._paragraph(self._charts[0], self._share // 2, self._draw.choice(_OPENINGS))
        yield self._plan.fence
        yield self._table()
        for chart in self._charts:
            yield f"## {chart.title.split(',')[0]}: {self._draw.choice(_HEADINGS).lower()}"
            yield self._paragraph(chart, self._share // 2)
            yield chart.fence
            yield self._paragraph(chart, self._share // 2)
        yield "## How to practise it"
        yield "\n".join(f"{n}. {self._sentence(self._charts[-1])}" for n in (1, 2, 3))
        yield self._paragraph(self._charts[-1], self._share // 4) + "[^hand]"
        yield f"[^hand]: {self._draw.choice(_PLAIN)}"

    def _paragraph(self, chart: TypedChart, words: int, opening: str = "") -> str:
        text = [opening] if opening else [self._sentence(chart)]
        while sum(len(sentence.split()) for sentence in text) < words:
            sentence = self._sentence(chart)
            text += [] if sentence in text else [sentence]
        return " ".join(text)

    def _sentence(self, chart: TypedChart) -> str:
        draw = self._draw
        pool = draw.choice((_ABOUT_NOTES, _ABOUT_CHORDS, _ABOUT_TIME, _PLAIN))
        first, second = draw.choice(chart.chords), draw.choice(chart.chords)
        note, other = (ascii_name(draw.choice(first.names)) for _ in range(2))
        return draw.choice(pool).format(
            note=f"{{note {note}{draw.randint(3, 5)}}}",
            other=f"{{note {other}{draw.randint(3, 5)}}}",
            degree=f"{{degree {draw.choice(_DEGREES)}}}",
            chord=f"{{chord {first.symbol}}}",
            next=f"{{chord {second.symbol}}}",
            see=f"{{see {chart.id}}}",
            at=f"{{at {clock(draw.choice(list(self._plan.starts.values())))}}}",
            name=surname(draw),
        )

    def _table(self) -> str:
        chords = {chord.symbol: chord for chart in self._charts for chord in chart.chords}
        rows = ["| chord | its notes |", "|---|---|"]
        for symbol, chord in list(chords.items())[:5]:
            notes = " ".join(f"{{note {ascii_name(name)}}}" for name in chord.names)
            rows.append(f"| {{chord {symbol}}} | {notes} |")
        return "\n".join(rows)

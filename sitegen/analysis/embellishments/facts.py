"""How many non-chord tones of each kind a part has, with where, and the telling ones in words.

Paths, each left out where a part has none; kinds as `definitions` states them. Suspensions,
retardations and pedals are counted where a note is held into a chord as well. Repeats count
once, as written.

- `<part>.passing-tones`: how many tones pass by step between chord tones.
- `<part>.neighbour-tones`: how many leave a chord tone by step and return to it.
- `<part>.double-neighbours`: how many times both neighbours come before the chord tone returns.
- `<part>.incomplete-neighbours`: how many tones are joined by step on one side only.
- `<part>.escape-tones`: how many leave a chord tone by step and leap the other way.
- `<part>.appoggiaturas`: how many are leapt to on the stronger place and resolve by step.
- `<part>.anticipations`: how many times a tone of the next chord comes before that chord.
- `<part>.suspensions`: how many chord tones stay into the next chord and resolve down by step.
- `<part>.retardations`: the same, resolved up by step.
- `<part>.pedals`: how many times a chord tone stays while a chord without it passes.
"""

from collections.abc import Callable, Iterator, Sequence

from sitegen.analysis.embellishments.embellishment import Embellishment, list_embellishments
from sitegen.analysis.embellishments.sentences import (
    anticipation_sentence,
    appoggiatura_sentence,
    pedal_sentence,
    suspension_sentence,
)
from sitegen.analysis.reading import ChartReading, Fact
from sitegen.score.chart import Chart, Part

_Figures = Sequence[Embellishment]


def _silence(_chart: Chart, _part: Part, _figures: _Figures) -> str:
    return ""


# Each name's path, which in words is its unit, and who tells the telling ones.
_TOLD: dict[str, tuple[str, Callable[[Chart, Part, _Figures], str]]] = {
    "passing": ("passing-tones", _silence),
    "neighbour": ("neighbour-tones", _silence),
    "double neighbour": ("double-neighbours", _silence),
    "incomplete neighbour": ("incomplete-neighbours", _silence),
    "escape": ("escape-tones", _silence),
    "appoggiatura": ("appoggiaturas", appoggiatura_sentence),
    "anticipation": ("anticipations", anticipation_sentence),
    "suspension": ("suspensions", suspension_sentence),
    "retardation": ("retardations", suspension_sentence),
    "pedal": ("pedals", pedal_sentence),
}


def find_embellishments(reading: ChartReading) -> tuple[Fact, ...]:
    """Return the facts of all parts on their non-chord tones, in the order of the paths."""
    figures = list_embellishments(reading.chart, reading.notes)
    return tuple(_facts(reading.chart, figures)) if figures else ()


def _facts(chart: Chart, figures: _Figures) -> Iterator[Fact]:
    for part in chart.parts:
        mine = [figure for figure in figures if figure.part == part.name]
        for name in _TOLD:
            alike = [figure for figure in mine if figure.name == name]
            if alike:
                yield _fact(chart, part, alike)


def _fact(chart: Chart, part: Part, figures: _Figures) -> Fact:
    path, tell = _TOLD[figures[0].name]
    count = sum(figure.count for figure in figures)
    unit = path.replace("-", " ")
    return Fact(
        f"{part.name.replace(' ', '-')}.{path}",
        count,
        str(count),
        unit if count > 1 else unit.removesuffix("s"),
        tuple(figure.place for figure in figures),
        tell(chart, part, figures),
    )

"""How much of a song a write-up quotes in notation, whose the song is, and what is missing.

No number of bars is safe by itself: this counts, and decides nothing.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from sitegen.analysis.form import FormReading
from sitegen.analysis.reading import ChartReading
from sitegen.article import Article
from sitegen.diagnostics import Diagnostic, fault
from sitegen.score.chart import Chart
from sitegen.site.study import Study

CAUTION = "no number of bars is safe by itself: ask a licensed adviser where you publish"

_Bar = tuple[object, int]


@dataclass(frozen=True)
class Quoted:
    """What a write-up quotes: `bars` in notation, of `all_bars` in the song by its own plan.

    `all_bars` is 0 where there is no complete plan. `holder` and `note` are the front matter's,
    `sources` how many it names.
    """

    bars: int
    all_bars: Fraction
    holder: str
    note: str
    sources: int

    @property
    def share(self) -> Fraction | None:
        """The part of the song that is quoted, at most 1; None where its length is not known."""
        return min(Fraction(self.bars) / self.all_bars, Fraction(1)) if self.all_bars else None


def quoted_in(study: Study) -> Quoted:
    """Return what a write-up quotes; a progression and a plan are no notation.

    Bars of charts that are placed in the recording (`at`) count once where they overlap; the bars
    of all others count by themselves.
    """
    values = [chart.analysis.value for chart in study.charts if chart.analysis is not None]
    charts = [value.chart for value in values if isinstance(value, ChartReading)]
    forms = [value.form for value in values if isinstance(value, FormReading)]
    bars = len({bar for n, chart in enumerate(charts) for bar in _bars(chart, n)})
    all_bars = forms[0].bars if forms and forms[0].complete else Fraction(0)
    front = study.article.front if study.article is not None else None
    if front is None:
        return Quoted(bars, all_bars, "", "", 0)
    return Quoted(bars, all_bars, front.rights.holder, front.rights.note, len(front.sources))


def _bars(chart: Chart, number: int) -> Iterable[_Bar]:
    """Return what tells each bar of a chart of notes from those of others."""
    if not any(part.events for part in chart.parts):
        return ()
    count = chart.bar_count
    if chart.start_time is None or chart.tempo is None:
        return [(number, bar) for bar in range(count)]
    meter = chart.bars[0].meter
    seconds = meter.length / chart.tempo.quarters_per_minute * 60
    first = round(chart.start_time / seconds)
    return [((meter, seconds), first + bar) for bar in range(count)]


def find_missing_rights(article: Article, quoted: Quoted) -> tuple[Diagnostic, ...]:
    """Return a warning each for a missing holder and for missing sources.

    Only a write-up that is said to be published, and that quotes notes, is warned about.
    """
    if not quoted.bars or "status: published" not in article.front_text:
        return ()
    source = article.source
    span = source.line_span(1)
    faults = []
    if not quoted.holder:
        message = f"{_counted(quoted.bars)} of a song stand here, and nothing says whose it is"
        hint = f"write rights: and below it holder: with the owner's name; {CAUTION}"
        faults.append(fault("rights-holder", source, span, message, hint=hint))
    if not quoted.sources:
        message = "the write-up names no source for what it says of the song"
        hint = "write sources: and below it - who: and what: was said or heard"
        faults.append(fault("sources-missing", source, span, message, hint=hint))
    return tuple(faults)


def _counted(bars: int) -> str:
    return "1 bar" if bars == 1 else f"{bars} bars"


def quoted_words(quoted: Quoted) -> str:
    """Return a sentence for the page; "" where no notes are quoted."""
    if not quoted.bars:
        return ""
    are = "is" if quoted.bars == 1 else "are"
    share = quoted.share
    part = "" if share is None else f", {round(100 * share)} % of the song by its plan"
    return f"{_counted(quoted.bars)} of the song {are} quoted here in notation{part}."


def rights_line(name: str, quoted: Quoted) -> str:
    """Return a write-up's line of the ledger of rights."""
    share = quoted.share
    of_song = "" if share is None else f" of {float(quoted.all_bars):g} ({round(100 * share)} %)"
    holder = quoted.holder or "no holder named"
    note = f"; {quoted.note}" if quoted.note else ""
    sources = "1 source" if quoted.sources == 1 else f"{quoted.sources} sources"
    return f"{name}: {_counted(quoted.bars)}{of_song} in notation; {holder}; {sources}{note}"


def rights_record(name: str, quoted: Quoted) -> dict[str, object]:
    """Return the same for other programs."""
    return {
        "file": name,
        "bars": quoted.bars,
        "all_bars": float(quoted.all_bars) or None,
        "share": None if quoted.share is None else round(float(quoted.share), 4),
        "holder": quoted.holder or None,
        "note": quoted.note or None,
        "sources": quoted.sources,
    }

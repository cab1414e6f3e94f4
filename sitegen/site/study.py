"""One write-up or page studied: its charts read, named and analysed, its references resolved."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from sitegen.article import Article, load_source, read_article, read_page
from sitegen.article.front import Video
from sitegen.charts.defaults import SongDefaults
from sitegen.diagnostics import Diagnostic, ordered
from sitegen.kinds.kind import Analysis, ChartKind, Surroundings
from sitegen.kinds.studied import compare_analyses
from sitegen.score.credits import Credits
from sitegen.site.attachments import find_images
from sitegen.site.beside import FolderBeside
from sitegen.site.bounds import find_excess
from sitegen.site.bug import Bug, attempt
from sitegen.site.citations import Citable, Citation, resolve_citation, unknown_chart
from sitegen.site.content import ContentFile, shown, unreadable
from sitegen.site.links import find_links
from sitegen.site.numbering import NamedChart, ReadChart, name_charts
from sitegen.site.recording import find_recording
from sitegen.site.taken_names import find_taken_names
from sitegen.source import Passage, Source, Span


@dataclass(frozen=True)
class StudiedChart:
    """A chart with what was found in it; `analysis` is None when the chart could not be read."""

    named: NamedChart
    surroundings: Surroundings
    analysis: Analysis | None


@dataclass(frozen=True)
class Study:
    """Everything known of one write-up before it is drawn.

    `article` is None when its file cannot be read at all. `citations` say what stands for the
    roles that speak of charts, by their span; `files` are the pictures and other files that
    are published beside it, by their path from the folder. `video` is the front matter's with
    the whole address of its host's player.
    """

    file: ContentFile
    article: Article | None
    charts: tuple[StudiedChart, ...] = ()
    citations: Mapping[Span, Citation] = field(default_factory=dict)
    files: Mapping[str, Path] = field(default_factory=dict)
    diagnostics: tuple[Diagnostic, ...] = ()
    bugs: tuple[Bug, ...] = ()
    video: Video = field(default=Video())

    @property
    def name(self) -> str:
        """The file's name as people see it."""
        return shown(self.file.path)

    def place(self, chart: ReadChart) -> str:
        """Return where a chart stands, in words."""
        return _place(chart.kind.name, chart.passage)


Read = Callable[[Source, Sequence[str]], tuple[Article, tuple[Diagnostic, ...]]]


def study_file(file: ContentFile, kinds: tuple[ChartKind, ...]) -> Study:
    """Return what is known of a write-up or page; its file is read anew, and nothing is drawn."""
    read: Read = read_page if file.is_page else read_article
    name = shown(file.path)
    try:
        data = file.read()
    except OSError as wrong:
        return Study(file, None, diagnostics=(unreadable(file.path, wrong),))
    bugs: list[Bug] = []
    source, faults = load_source(data, name)
    found = attempt(bugs, f"reading {name}", read, source, [kind.name for kind in kinds])
    if found is None:
        return Study(file, None, diagnostics=faults, bugs=tuple(bugs))
    article, more = found
    return _Desk(file, article, kinds, bugs, [*faults, *more]).study()


def song_defaults(article: Article, folder: Path | None = None) -> SongDefaults:
    """Return what the charts of a write-up take over from its front matter and from `folder`."""
    song = article.front.song
    beside = None if folder is None else FolderBeside(folder)
    return SongDefaults(song.key, song.meter, song.tempo, beside)


class _Desk:
    """Where one article is worked on; `faults` and `bugs` grow as the work goes on."""

    def __init__(
        self,
        file: ContentFile,
        article: Article,
        kinds: tuple[ChartKind, ...],
        bugs: list[Bug],
        faults: list[Diagnostic],
    ) -> None:
        self.file = file
        self.article = article
        self.kinds = {kind.name: kind for kind in kinds}
        self.bugs = bugs
        self.faults = faults

    def study(self) -> Study:
        charts = self._compare(self._analyse(self._read_charts()))
        citations = self._resolve(charts)
        images, faults = find_images(self.file, self.article.source, self.article.images)
        anchors = [chart.named.anchor for chart in charts]
        linked, dead = find_links(self.file, self.article, anchors)
        video, recorded, unheard = find_recording(self.file, self.article)
        files = linked | images | recorded
        taken = find_taken_names(self.article, files, anchors)
        excess = find_excess(self.article, files)
        diagnostics = ordered([*self.faults, *faults, *dead, *unheard, *taken, *excess])
        return Study(
            self.file,
            self.article,
            charts,
            citations,
            files,
            diagnostics,
            tuple(self.bugs),
            video,
        )

    def _read_charts(self) -> tuple[NamedChart, ...]:
        """Return the charts that a reader made something of; a lost one still has its id."""
        defaults = song_defaults(self.article, self.file.folder)
        read = []
        for fence in self.article.fences:
            kind = self.kinds[fence.name]
            doing = f"reading {_place(fence.name, fence.passage)}"
            reading = attempt(self.bugs, doing, kind.read, fence.passage, defaults)
            if reading is not None:
                # A block that is not closed holds the text after it, which is no chart.
                self.faults += reading.diagnostics if fence.closed else ()
                read.append(ReadChart(kind, fence.passage, reading))
        anchors = frozenset(heading.anchor for heading in self.article.headings)
        named, faults = name_charts(read, anchors)
        self.faults += faults
        return named

    def _analyse(self, named: Sequence[NamedChart]) -> tuple[StudiedChart, ...]:
        headings = {heading.text.lower(): heading.anchor for heading in self.article.headings}
        names = {chart.id: (chart.anchor, chart.name) for chart in named}
        source, song = self.article.source, self.article.front.song
        holder = self.article.front.rights.holder
        credits_ = Credits(song.title, song.artist, song.writers, holder)
        return tuple(
            self._analyse_one(
                chart,
                Surroundings(chart.anchor, chart.name, headings, names, source, credits_),
            )
            for chart in named
        )

    def _analyse_one(self, named: NamedChart, surroundings: Surroundings) -> StudiedChart:
        value = named.chart.reading.chart
        if value is None:
            return StudiedChart(named, surroundings, None)
        doing = f"analysing {_place(named.chart.kind.name, named.chart.passage)}"
        analysis = attempt(self.bugs, doing, named.chart.kind.analyse, value, surroundings)
        if analysis is not None:
            self.faults += analysis.diagnostics
        return StudiedChart(named, surroundings, analysis)

    def _compare(self, charts: tuple[StudiedChart, ...]) -> tuple[StudiedChart, ...]:
        """Return the charts with what is found by holding one against the other."""
        analyses = {chart.named.id: chart.analysis for chart in charts if chart.analysis}
        names = {chart.named.id: chart.named.name for chart in charts}
        doing = "comparing the charts"
        found = attempt(self.bugs, doing, compare_analyses, analyses, names) or analyses
        # Where two charts were given one id, only the one that keeps it was compared.
        return tuple(
            replace(chart, analysis=found[chart.named.id])
            if chart.analysis is not None and chart.analysis is analyses[chart.named.id]
            else chart
            for chart in charts
        )

    @property
    def _lost(self) -> bool:
        """True where a block that is not closed may have swallowed charts."""
        return not all(fence.closed for fence in self.article.fences)

    def _resolve(self, charts: Sequence[StudiedChart]) -> dict[Span, Citation]:
        citable = {c.named.id: Citable(c.named.anchor, c.named.name, c.analysis) for c in charts}
        citations = {}
        for use in self.article.roles:
            found = resolve_citation(use, citable, self.article.source)
            if isinstance(found, Citation):
                citations[use.span] = found
            elif found is not None and not (found.code == "chart-unknown" and self._lost):
                self.faults.append(found)
        for chart in charts:
            for named, span in chart.analysis.references if chart.analysis else ():
                if named not in citable and not self._lost:
                    self.faults.append(unknown_chart(named, span, citable, self.article.source))
        return citations


def _place(kind: str, passage: Passage) -> str:
    return f"the {kind} chart at {passage.source.path}:{passage.opening.line}"

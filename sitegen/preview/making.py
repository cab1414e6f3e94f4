"""What a worker process does: it makes pages, and remembers what it read and drew for them."""

import hashlib
import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from sitegen.kinds.kind import ChartKind
from sitegen.pages.theme import Theme
from sitegen.preview.jobs import (
    FrontsJob,
    Job,
    Made,
    PageJob,
    ThemeState,
    Told,
    TopJob,
    pack,
)
from sitegen.preview.memory import Remembered, WarmCache
from sitegen.preview.remarks import Remark, UnfitThemeError, of_bugs, of_faults
from sitegen.site.bug import Bug, attempt
from sitegen.site.code_mark import code_mark
from sitegen.site.content import ContentFile
from sitegen.site.kept_drawings import KeptDrawings
from sitegen.site.pressing import MadePage, load_once, make_page
from sitegen.site.publications.gathering import make_publications
from sitegen.site.refusal import RefusedError
from sitegen.site.related import related_views, set_related
from sitegen.site.study import study_file
from sitegen.site.survey import Survey, look_at_front, survey_of
from sitegen.site.top import make_top


class Maker:
    """Makes pages; `cache` is the folder of drawn charts, None for none."""

    def __init__(self, kinds: tuple[ChartKind, ...], cache: Path | None) -> None:
        self._kinds = tuple(Remembered(kind).kind for kind in kinds)
        self._kept = KeptDrawings(WarmCache(cache), code_mark())
        names = "|".join(re.escape(kind.name) for kind in kinds)
        self._opening = re.compile(
            rf"^[ \t>]*(?:`{{3,}}|~{{3,}})[ \t]*(?:{names})\b", re.MULTILINE
        )

    def do(self, job: Job) -> tuple[Made, ...]:
        """Do a job; one result for each file, or one for the page."""
        match job:
            case FrontsJob(files):
                return tuple(Made(self._look(file)) for file in files)
            case PageJob():
                return (self._make(job),)
            case TopJob():
                return (self._make_top(job),)

    def _look(self, file: ContentFile) -> Told:
        """Return what the front matter tells; the charts are counted by their opening lines."""
        survey = look_at_front(file)
        try:
            text = file.read().decode(errors="replace")
        except OSError:
            text = ""
        return replace(_told(survey), charts=len(self._opening.findall(text)))

    def _make(self, job: PageJob) -> Made:
        study = study_file(job.sheet.file, self._kinds)
        survey = survey_of(study, strict=False)
        told, remarks = _told(survey), of_faults(survey.diagnostics)
        theme = job.theme.folder
        has_title = told.front is not None and bool(told.front.title)
        if not survey.is_good and (job.has_good or not has_title):
            return Made(told, remarks=(*of_bugs(survey.bugs, theme), *remarks))
        bugs: list[Bug] = []
        sheet = replace(job.sheet, draft=survey.is_draft)
        loaded = attempt(bugs, "loading the theme", _load, job.theme)
        page = MadePage()
        if loaded is not None:
            # Nobody links to a preview; a card would take as long as a small chart.
            page = make_page(sheet, study, loaded, self._kept, shared=False)
        # What fails in a page that has faults anyway comes of them.
        bugs += page.bugs if survey.is_good else survey.bugs
        remarks = (*of_bugs(bugs, theme), *remarks)
        if not page.files:
            return Made(told, remarks=remarks)
        is_good = survey.is_good and not bugs
        return _made(told, page.files, page.attachments, remarks, is_good=is_good)

    def _make_top(self, job: TopJob) -> Made:
        def make() -> Mapping[str, bytes]:
            pages, assets = make_top(_load(job.theme), job.settings, job.articles, job.menu)
            published = make_publications(job.settings, job.articles, (), pages, lambda _: "")
            return {**pages, **published, **assets}

        bugs: list[Bug] = []
        files = attempt(bugs, "making the archive", make)
        doing = "finding related write-ups"
        related = attempt(bugs, doing, _set_related, job) or {}
        told, remarks = Told(None), of_bugs(bugs, job.theme.folder)
        if files is None:
            return Made(told, remarks=remarks, related=related)
        return replace(_made(told, files, {}, remarks, is_good=True), related=related)


def _set_related(job: TopJob) -> Mapping[str, bytes]:
    theme = _load(job.theme)
    found = related_views(job.articles)
    return {address: set_related(views, theme) for address, views in found.items()}


def _load(theme: ThemeState) -> Theme:
    # The theme's number is what its state is known by, so that it is loaded anew with each.
    try:
        return load_once(theme.folder, (str(theme.number), ""))
    except RefusedError as refused:
        raise UnfitThemeError(str(refused)) from refused


def _told(survey: Survey) -> Told:
    return Told(survey.front, survey.charts, survey.is_draft, survey.linked, survey.entry)


def _made(
    told: Told,
    files: Mapping[str, bytes],
    attachments: Mapping[str, Path],
    remarks: tuple[Remark, ...],
    *,
    is_good: bool,
) -> Made:
    packed = pack(files)
    whole = hashlib.blake2b(packed, digest_size=12)
    for name, path in sorted(attachments.items()):
        with suppress(OSError):  # it was taken away just now, which the next look tells
            info = path.stat()
            whole.update(f"{name}\0{info.st_size}\0{info.st_mtime_ns}\0".encode())
    return Made(told, packed, attachments, whole.hexdigest(), remarks, is_good)

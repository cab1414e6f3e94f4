"""What a build is made from, held against what the last one was made from."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from sitegen.diagnostics import draw_frame
from sitegen.site.cache import Cache, key_of
from sitegen.site.code_mark import code_mark
from sitegen.site.content import ARTICLES_FOLDER, PAGES_FOLDER, Content, ContentFile
from sitegen.site.content_folder import SETTINGS_FILE
from sitegen.site.order import Order
from sitegen.site.records import Record, Records
from sitegen.site.snapshot import Snapshot, hashes_below, is_same, take_snapshot
from sitegen.site.standing import known_inputs, write_standing

if TYPE_CHECKING:
    from sitegen.site.build import Report


@dataclass(frozen=True)
class Materials:
    """The files of a build, and hashes of them.

    `places` are where the files of the `snapshot` stand; `mark` is the state of the program.
    `inputs` has for each write-up and page a hash of all that it is read from, `look` is one of
    all that the look of every page comes from. `records` are those of the last build.
    """

    places: tuple[Path, ...]
    snapshot: Snapshot
    mark: str
    inputs: Mapping[ContentFile, str]
    look: str
    records: Records = field(default=Records(None, ""))


def gather(order: Order, content: Content, theme: Path) -> Materials:
    """Return what a build is made from, as it is at this moment."""
    rooms = [content.folder / room for room in (ARTICLES_FOLDER, PAGES_FOLDER)]
    places = (content.settings_path, *rooms, theme)
    snapshot = take_snapshot(places, known_inputs(order))
    top = hashes_below(content.folder, snapshot)
    articles = hashes_below(content.folder / ARTICLES_FOLDER, snapshot)
    mark = code_mark()
    common = (mark, order.strict, top.get(SETTINGS_FILE))
    # A page's name in faults is the one seen from where the user stands.
    place = (Path.cwd(), order.content)
    free = key_of(common, place, top.get(PAGES_FOLDER))
    inputs = {
        file: key_of(common, place, articles.get(file.folder.name)) for file in content.articles
    }
    inputs |= dict.fromkeys(content.pages, free)
    look = key_of(mark, hashes_below(theme.parent, snapshot).get(theme.name))
    cache = None if order.cache is None else Cache(order.cache)
    key = key_of("records", content.folder.absolute(), order.out.absolute())
    return Materials(places, snapshot, mark, inputs, look, Records.load(cache, key))


def keep(
    order: Order, materials: Materials, records: Mapping[str, Record], report: "Report"
) -> str:
    """Keep what the next build can use, and what it can say where nothing has changed.

    Returns why nothing could be kept, "" else. After a failure of the program nothing is said
    without another try.
    """
    if order.cache is None:
        return ""
    trouble = Cache(order.cache).find_trouble()
    if not trouble:
        _keep(order, order.cache, materials, records, report)
    return trouble and f"{order.cache} cannot be written: {trouble}"


def _keep(
    order: Order,
    cache: Path,
    materials: Materials,
    records: Mapping[str, Record],
    report: "Report",
) -> None:
    if not is_same(take_snapshot(materials.places, materials.snapshot), materials.snapshot):
        return  # somebody wrote while we read: who knows what was read
    materials.records.keep(records)
    Cache(cache).prune()
    if report.bugs:
        return
    said = [draw_frame(found) for found in report.diagnostics]
    failed = any(found.is_error for found in report.diagnostics)
    summary = report.summary_without_time()
    write_standing(order, materials.places, materials.snapshot, said, summary, failed=failed)

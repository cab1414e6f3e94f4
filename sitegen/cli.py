"""The command sitegen: options, progress and exit status; the work is done in the rooms below.

Exit status: 0 clean, 1 faults in the content, 2 wrong usage, 3 a bug in the program. Each command
imports what it needs when it runs, so that the help is there at once.
"""

import errno
import os
import signal
import sys
import time
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import IO, TYPE_CHECKING, NoReturn

import click

from sitegen import __version__
from sitegen.site.refusal import RefusedError

if TYPE_CHECKING:
    from sitegen.diagnostics import Diagnostic
    from sitegen.site.bug import Bug
    from sitegen.site.edition import Step
    from sitegen.site.inspection import Inspection

CLEAN, FAULTS, USAGE, BUG = range(4)
INTERRUPTED, TERMINATED = 130, 143
LONG = 1.0
"""Seconds of work after which progress is shown."""

MOST_JOBS = 256
_TRACE = "SITEGEN_TRACE"
_PATH = click.Path(path_type=Path)
_EXISTING = click.Path(path_type=Path, exists=True)


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__)
def sitegen() -> None:
    """Publish breakdowns of recorded songs, with engraved and analysed music.

    The content folder is `content` under the current folder, or the current folder itself where
    it holds a site.toml.
    """


@sitegen.command()
@click.argument("content", required=False, type=_EXISTING)
@click.option("--out", default="published", type=_PATH, show_default=True, help="Folder to make.")
@click.option("--theme", metavar="NAME|PATH", help="Theme in place of the one in site.toml.")
@click.option(
    "--jobs",
    type=click.IntRange(min=1, max=MOST_JOBS),
    metavar="N",
    help="Processes to use; without it, as many as are worth their start.",
)
@click.option("--drafts", is_flag=True, help="Build drafts as well, marked as such.")
@click.option("--strict", is_flag=True, help="Count warnings as errors.")
@click.option("--no-cache", is_flag=True, help="Make everything anew, and keep nothing for later.")
@click.option("--force", is_flag=True, help="Replace the folder even if sitegen did not make it.")
def build(  # noqa: PLR0913, PLR0917 - one for each option
    content: Path | None,
    out: Path,
    theme: str | None,
    jobs: int | None,
    drafts: bool,
    strict: bool,
    no_cache: bool,
    force: bool,
) -> int:
    """Make the site of a content folder.

    A write-up with errors keeps the page it had, if it had one; all others are built. The new site
    takes the place of the old one in one step, at the end.
    """
    from sitegen.site.cache import default_cache_folder  # noqa: PLC0415 - as below
    from sitegen.site.order import Order  # noqa: PLC0415 - as below
    from sitegen.site.standing import find_standing  # noqa: PLC0415 - as below

    cache = None if no_cache else default_cache_folder()
    order = Order(_content(content), out, (), theme, jobs, drafts, strict, cache, force)
    standing = find_standing(order)
    if standing is not None:
        for frame in standing.said:
            click.echo(f"{frame}\n", err=True)
        click.echo(f"nothing to do: {standing.summary}")
        return FAULTS if standing.failed else CLEAN
    from sitegen.kinds import KINDS  # noqa: PLC0415 - with nothing to do none of this is needed
    from sitegen.site.build import build_site  # noqa: PLC0415 - as above
    from sitegen.site.workforce import ease_collection  # noqa: PLC0415 - as above

    ease_collection()
    with _progress() as step:
        report = build_site(replace(order, kinds=KINDS), step)
    _show_faults(report.diagnostics, sys.stderr)
    _show_bugs(report.bugs)
    click.echo(report.summary())
    return _status(report.diagnostics, report.bugs)


@sitegen.command()
@click.argument("content", required=False, type=_EXISTING)
@click.option(
    "--port",
    type=click.IntRange(min=0, max=65535),
    metavar="N",
    help="Port of this machine to use; 0 takes any free one.",
)
@click.option("--theme", metavar="NAME|PATH", help="Theme in place of the one in site.toml.")
@click.option(
    "--jobs",
    type=click.IntRange(min=1, max=MOST_JOBS),
    metavar="N",
    help="Processes that make the pages you have not asked for yet.",
)
def preview(content: Path | None, port: int | None, theme: str | None, jobs: int | None) -> int:
    """Show the site while you write it.

    It stands on this machine alone, drafts included. Each save is made into its page at once, an
    open page follows it, and faults stand over the page until they are mended. Ctrl-C ends it.
    """
    from sitegen.kinds import KINDS  # noqa: PLC0415 - the help needs none of the rooms
    from sitegen.preview.serving import PORT, PreviewOrder, preview_site  # noqa: PLC0415 - as above
    from sitegen.site.cache import default_cache_folder  # noqa: PLC0415 - as above

    chosen = PORT if port is None else port
    cache = default_cache_folder()
    order = PreviewOrder(_content(content), KINDS, chosen, theme, jobs, cache)
    preview_site(order, lambda address: click.echo(f"The site stands at {address}"))
    return CLEAN


@sitegen.command()
@click.argument("paths", nargs=-1, type=_EXISTING, metavar="[PATH]...")
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json"]),
    default="text",
    show_default=True,
    help="For people, or a list for other programs.",
)
@click.option("--strict", is_flag=True, help="Count warnings as errors.")
@click.option("--about", metavar="CODE", help="Tell what the code of a fault means, and no more.")
@click.option("--rights", is_flag=True, help="Tell what each write-up quotes, and whose it is.")
@click.option("--links", is_flag=True, help="List the links to other hosts; none is asked.")
@click.option("--ask-hosts", is_flag=True, help="With --links, ask each host whether it is there.")
def check(
    paths: tuple[Path, ...],
    form: str,
    strict: bool,
    about: str | None,
    rights: bool,
    links: bool,
    ask_hosts: bool,
) -> int:
    """Tell every fault in the content, and draw nothing.

    PATH is a write-up, a page, a folder of them or a whole content folder.
    """
    if ask_hosts and not links:
        raise RefusedError("--ask-hosts asks about what --links lists: give both")
    if rights and links:
        raise RefusedError("--rights and --links each print a list of their own: give one")
    if about is not None:
        return _tell_code(about)
    from sitegen.kinds import KINDS  # noqa: PLC0415 - the help needs none of the rooms
    from sitegen.site.inspection import inspect  # noqa: PLC0415 - as above

    inspection = inspect(paths or (_content(None),), KINDS, strict=strict)
    if rights:
        return _tell_rights(inspection, form)
    if links:
        return _list_links(inspection, form, asked=ask_hosts)
    if form == "json":
        click.echo(inspection.as_json())
    else:
        _show_faults(inspection.diagnostics, sys.stdout)
        click.echo(inspection.summary())
    _show_bugs(inspection.bugs)
    return _status(inspection.diagnostics, inspection.bugs)


def _tell_rights(inspection: "Inspection", form: str) -> int:
    from sitegen.site.rights import CAUTION, rights_line  # noqa: PLC0415 - as above

    if form == "json":
        click.echo(inspection.rights_as_json())
    else:
        for name, quoted in inspection.rights():
            click.echo(rights_line(name, quoted))
        click.echo(f"{CAUTION[0].upper()}{CAUTION[1:]}.")
    return _status((), inspection.bugs)


def _list_links(inspection: "Inspection", form: str, *, asked: bool) -> int:
    from sitegen.site.inspection import links_as_json  # noqa: PLC0415 - as above
    from sitegen.site.outward_links import ask_hosts, outward_links  # noqa: PLC0415 - as above

    links = outward_links(inspection.studies)
    if asked:
        links = ask_hosts(links)
    if form == "json":
        click.echo(links_as_json(links))
    else:
        for link in links:
            click.echo(str(link))
    return _status((), inspection.bugs)


def _tell_code(name: str) -> int:
    from sitegen.diagnostics import CATALOGUE, did_you_mean, explain_code  # noqa: PLC0415

    code = CATALOGUE.get(name)
    if code is None:
        hint = did_you_mean(name, CATALOGUE)
        raise RefusedError(f'no fault has the code "{name}"' + (f"; {hint}" if hint else ""))
    click.echo(explain_code(code))
    return CLEAN


@sitegen.command()
@click.argument("article", type=_EXISTING)
@click.option("--json", "as_json", is_flag=True, help="Print all of it, for other programs.")
def explain(article: Path, as_json: bool) -> int:
    """Print what is found in a write-up's charts.

    ARTICLE is its file or its folder. Among what is printed are the facts that prose can cite.
    """
    from sitegen.kinds import KINDS  # noqa: PLC0415 - the help needs none of the rooms
    from sitegen.site.explanation import explain_article  # noqa: PLC0415 - as above

    explanation = explain_article(article, KINDS)
    if as_json:
        click.echo(explanation.as_json())
    else:
        _show_faults(explanation.diagnostics, sys.stderr)
        click.echo(explanation.as_text())
    _show_bugs(explanation.bugs)
    return _status(explanation.diagnostics, explanation.bugs)


@sitegen.command()
@click.argument("slug")
@click.option("--title", default="", help="The write-up's title; made of the slug without.")
def start(slug: str, title: str) -> int:
    """Make a new write-up that builds at once.

    It stands in breakdowns/SLUG/article.md in the content folder and says what to replace.
    Where there is no content folder yet, `content` is made with its settings.
    """
    from sitegen.site.content import shown  # noqa: PLC0415 - as above
    from sitegen.site.content_folder import default_content  # noqa: PLC0415 - as above
    from sitegen.site.starting import start_article  # noqa: PLC0415 - as above

    content = default_content(Path.cwd()) or Path.cwd() / "content"
    for file in start_article(content, slug, title):
        click.echo(f"made {shown(file)}")
    click.echo("Look at it with: sitegen preview")
    return CLEAN


def run() -> NoReturn:
    """Run the command line and leave with its exit status.

    Whoever ends the process in good order (SIGTERM) has it tidy up first, as Ctrl-C does.
    """
    signal.signal(signal.SIGTERM, _end)
    sys.exit(main(sys.argv[1:]))


def _end(_number: int, _frame: object) -> NoReturn:
    signal.signal(signal.SIGTERM, signal.SIG_IGN)
    raise SystemExit(TERMINATED)


def main(arguments: Sequence[str]) -> int:
    """Run the command line `arguments` and return the exit status, without any traceback."""
    try:
        status = sitegen.main(list(arguments), prog_name="sitegen", standalone_mode=False)
    except click.ClickException as wrong:
        wrong.show()
        return USAGE
    except RefusedError as refused:
        _complain(f"Error: {refused}")
        return USAGE
    except (click.Abort, KeyboardInterrupt):
        click.echo("stopped", err=True)
        return INTERRUPTED
    except BrokenPipeError:
        # Whoever read our output has gone; keep Python from flushing into the closed pipe.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return CLEAN
    except Exception as wrong:  # noqa: BLE001 - a bug of ours is told in plain words
        return _failure(arguments, wrong)
    return status if isinstance(status, int) else CLEAN


def _complain(text: str) -> None:
    """Write to standard error what may hold the name of any file."""
    from sitegen.diagnostics.printable import printable  # noqa: PLC0415 - the help needs no room

    click.echo(printable(text), err=True)


def _failure(arguments: Sequence[str], wrong: Exception) -> int:
    if isinstance(wrong, OSError) and wrong.errno in {errno.ENOSPC, errno.EDQUOT}:
        _complain("Error: there is no room on the disk for what is printed or kept: make room")
        return USAGE
    import traceback  # noqa: PLC0415 - hardly ever needed

    from sitegen.site.bug import Bug  # noqa: PLC0415 - as above

    _show_bugs([Bug(f"running: sitegen {' '.join(arguments)}", traceback.format_exc())])
    return BUG


def _content(given: Path | None) -> Path:
    """Return the content folder; raises UsageError where there is none."""
    from sitegen.site.content_folder import (  # noqa: PLC0415 - as above
        check_readable,
        default_content,
        find_content,
    )

    for folder in (Path.cwd() / "content", Path.cwd()) if given is None else (given,):
        check_readable(folder)
    found = default_content(Path.cwd()) if given is None else find_content(given)
    if found is None:
        place = "here" if given is None else f"at {given}"
        raise RefusedError(
            f"no content folder {place}: one holds a site.toml; `sitegen start SLUG` makes one"
        )
    return found


def _show_faults(diagnostics: Iterable["Diagnostic"], stream: IO[str]) -> None:
    from sitegen.diagnostics import draw_frame  # noqa: PLC0415 - the help needs none of the rooms

    for diagnostic in diagnostics:
        click.echo(f"{draw_frame(diagnostic)}\n", file=stream)


def _show_bugs(bugs: Iterable["Bug"]) -> None:
    for bug in bugs:
        _complain(f"sitegen failed while {bug.doing}.")
        if os.environ.get(_TRACE):
            _complain(bug.trace)
        else:
            click.echo(
                "This is a fault of sitegen and not of yours. Please report it with the write-up "
                f"and with what the same command prints when {_TRACE}=1 is set.",
                err=True,
            )


@contextmanager
def _progress() -> Iterator["Step"]:
    """Yield what is told of progress: a bar on a terminal, once the work proves to be long."""
    if not sys.stderr.isatty():
        yield lambda _doing, _done, _total: None
        return
    from rich.console import Console  # noqa: PLC0415 - only a terminal needs it
    from rich.progress import Progress  # noqa: PLC0415 - as above

    bar = Progress(console=Console(stderr=True), transient=True)
    task = bar.add_task("")
    began = time.monotonic()

    def step(doing: str, done: int, total: int) -> None:
        if not bar.live.is_started and time.monotonic() - began > LONG:
            bar.start()
        bar.update(task, description=doing, completed=done, total=total)

    try:
        yield step
    finally:
        bar.stop()


def _status(diagnostics: Iterable["Diagnostic"], bugs: Sequence["Bug"]) -> int:
    if bugs:
        return BUG
    return FAULTS if any(diagnostic.is_error for diagnostic in diagnostics) else CLEAN

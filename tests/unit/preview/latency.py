"""How long a save takes to reach an open page, beside a floor measured in the same run.

`save_to_event(content, cache, slug, edit)` starts the command on a content folder, opens the event
stream of one write-up, saves changed texts one after the other and takes the time from
each save to the state that it brings. `floor(path)` is one Markdown render of the same text and
one template. Both return seconds, one for each round; the least of each tells most.
"""

from collections.abc import Callable, Sequence
from pathlib import Path
from time import perf_counter
from typing import Any

from unit.preview.process import running

Edit = Callable[[str, int], str]


def save_to_event(
    content: Path, cache: Path, slug: str, edit: Edit, rounds: int = 5
) -> tuple[float, ...]:
    """Return the seconds from each save to its event; the write-up is as it was afterwards.

    `edit` gives the text to save from the first one and the number of the round.
    """
    path = content / "breakdowns" / slug / "article.md"
    text = path.read_text(encoding="utf-8")
    with running(content, cache) as (_, site), site.follow(f"/breakdowns/{slug}/") as page:
        state = page.until(lambda one: one["page"] != "never made")
        times = []
        try:
            for number in range(rounds + 1):
                known = state["page"]
                fresh = path.with_name("article.md~")
                fresh.write_text(edit(text, number), encoding="utf-8")
                began = perf_counter()
                fresh.replace(path)
                state = page.until(differs(known))
                times.append(perf_counter() - began)
        finally:
            path.write_text(text, encoding="utf-8")
    # In the first round the process may only just get to know the write-up.
    return tuple(times[1:])


def differs(known: object) -> Callable[[dict[str, Any]], bool]:
    """Return what tells a state of another page than the one that is known."""
    return lambda state: bool(state["page"] != known)


def add_prose(text: str, number: int) -> str:
    """Return a write-up with a sentence more at its end."""
    return f"{text}\nA sentence more, the number {number}.\n"


def floor(path: Path, rounds: int = 5) -> tuple[float, ...]:
    """Return the seconds of one Markdown render of a file and one template around it."""
    import jinja2  # noqa: PLC0415 - the measure alone needs them
    from markdown_it import MarkdownIt  # noqa: PLC0415 - as above

    page = jinja2.Environment(autoescape=True).from_string("<main>{{ body|safe }}</main>")
    text = path.read_text(encoding="utf-8")
    times = []
    for _ in range(rounds):
        began = perf_counter()
        page.render(body=MarkdownIt().render(text))
        times.append(perf_counter() - began)
    return tuple(times)


def told(name: str, times: Sequence[float], least: float) -> str:
    """Return a line for a measure: the least time, and what it is over the floor."""
    over = (min(times) - least) * 1000
    return f"{name}: {min(times) * 1000:.0f} ms, {over:.0f} ms over the floor"

"""A chart kind made for tests, and content folders that use it."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from sitegen.analysis.reading import Fact, Place
from sitegen.charts.defaults import SongDefaults
from sitegen.diagnostics import fault
from sitegen.kinds.kind import (
    Analysis,
    BarAccount,
    ChartKind,
    Drawing,
    Reading,
    Surroundings,
)
from sitegen.source import Passage

HEAD = "---\ntitle: {title}\nsummary: Made for a test.\nstatus: {status}\n{more}---\n\n"
WriteArticle = Callable[..., Path]


def read_claps(passage: Passage, defaults: SongDefaults) -> Reading:
    """Read rows of claps, `x x x`; `?` is a fault, the words `break NAME` fail on purpose."""
    lines = [line for line in passage.lines if line.text.strip()]
    pairs = [line.text.split(": ", 1) for line in lines if ": " in line.text]
    head = {name: value.strip() for name, value in pairs}
    body = " ".join(line.text for line in lines if ": " not in line.text)
    if "break reading" in body:
        raise ZeroDivisionError
    faults = tuple(
        fault("mark-sign", passage.source, line.span(0, 1), "a clap is written x")
        for line in lines
        if "?" in line.text
    )
    chart = None if faults else (body, str(defaults.key or ""))
    return Reading(head.get("id", ""), head.get("title", ""), chart, faults)


def analyse_claps(chart: tuple[str, str], _: Surroundings) -> Analysis:
    """Count the claps."""
    body, key = chart
    if "break analysing" in body:
        raise ZeroDivisionError
    number = body.count("x")
    facts = (
        Fact("claps", number, str(number), "claps", (Place(1, Fraction(1)),)),
        Fact("key", key, key),
    )
    return Analysis(chart, {"claps": number}, facts, ())


def draw_claps(analysis: Analysis, _: Surroundings) -> Drawing:
    """Draw the claps as a picture that is not looked at here."""
    body, _key = analysis.value
    if "break drawing" in body:
        raise ZeroDivisionError
    return Drawing("claps", body, "Claps.", (BarAccount("Bar 1", (body,)),), {"x": "<i/>"})


CLAPS = ChartKind("claps", read_claps, analyse_claps, draw_claps, "x x x")


@pytest.fixture
def content(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a content folder under the current folder."""
    monkeypatch.chdir(tmp_path)
    folder = tmp_path / "content"
    folder.mkdir()
    (folder / "site.toml").write_text('title = "Side Two"\n', encoding="utf-8")
    return folder


@pytest.fixture
def write_article(content: Path) -> WriteArticle:
    """Return what writes a write-up, by its slug and its words."""

    def write(
        slug: str, words: str, *, title: str = "", status: str = "draft", more: str = ""
    ) -> Path:
        path = content / "breakdowns" / slug / "article.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        head = HEAD.format(title=title or slug, status=status, more=more)
        path.write_text(head + words, encoding="utf-8")
        return path

    return write


@pytest.fixture
def claps() -> ChartKind:
    """Return a kind of chart that needs no other room."""
    return CLAPS


PIECES = {
    "pages/frame.html": "<title>{% block name %}{% endblock %}</title>"
    '<link rel="stylesheet" href="{{ site.root }}{{ stylesheet }}">'
    '{% for link in site.menu %}<a class="menu" href="{{ link.href }}">{{ link.text }}</a>'
    "{% endfor %}{% block main %}{% endblock %}",
    "pages/article.html": '{% extends "pages/frame.html" %}'
    "{% block name %}{{ article.front.title }}{% endblock %}"
    "{% block main %}{{ article.body|safe }}"
    '{% if article.plan %}<p class="plan">{{ article.plan.name }}</p>{% endif %}'
    '{% if article.earlier %}<a rel="prev" href="{{ article.earlier.href }}">x</a>{% endif %}'
    '{% if article.later %}<a rel="next" href="{{ article.later.href }}">x</a>{% endif %}'
    "{% if article.draft %}DRAFT{% endif %}<!--related--><!--/related-->{% endblock %}",
    "pages/archive.html": '{% extends "pages/frame.html" %}{% block main %}'
    "{% for entry in archive.entries %}"
    '<a href="{{ entry.href }}">{{ entry.front.title }} ({{ entry.charts }})</a>'
    "{% endfor %}{% endblock %}",
    "pages/page.html": '{% extends "pages/frame.html" %}{% block main %}{{ page.body|safe }}'
    "{% endblock %}",
    "pages/missing.html": '{% extends "pages/frame.html" %}{% block main %}{{ page.title }}'
    "{% endblock %}",
    "pieces/chart.html": '<figure id="{{ chart.anchor }}">{{ chart.name }}: {{ chart.title }}'
    "{{ chart.drawing.content }}</figure>",
    "pieces/related.html": "{% for one in related %}"
    '<a href="{{ one.link.href }}">{{ one.link.text }}: {{ one.reason }}</a>{% endfor %}',
    "pieces/roles.html": '<b data-href="{{ role.href }}">{{ role.text }}</b>',
    "styles/1.css": "p { color: black }\n",
}


@pytest.fixture
def theme(tmp_path: Path) -> Path:
    """Return the folder of a theme as small as one can be."""
    return write_theme(tmp_path / "plain")


def write_theme(folder: Path) -> Path:
    """Write a theme as small as one can be, and return its folder."""
    for name, text in PIECES.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    return folder

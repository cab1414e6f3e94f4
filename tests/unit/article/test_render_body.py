"""The body's HTML: charts and roles in their places, tables in a box that scrolls."""

from sitegen.article import Fence, RoleUse, read_article, read_page, render_body
from sitegen.source import Source, Span

FRONT = "---\ntitle: Low Tide\n---\n"


def draw_fence(fence: Fence) -> str:
    return f"<figure>{fence.passage.text}</figure>\n"


def draw_role(use: RoleUse) -> str:
    return f"<i>{use.argument}</i>"


def test_charts_and_roles_are_drawn_where_they_stand() -> None:
    body = "- Over {chord G}:\n\n  ```changes\n  | G |\n  ```\n\n  ```text\n  {chord G}\n  ```\n"
    article, faults = read_article(Source("a.md", FRONT + body), ("changes",))

    assert faults == ()
    assert render_body(article, draw_fence, draw_role) == (
        "<ul>\n<li>\n<p>Over <i>G</i>:</p>\n<figure>| G |</figure>\n"
        '<pre><code class="language-text">{chord G}\n</code></pre>\n</li>\n</ul>\n'
    )


def test_a_table_scrolls_in_its_own_box() -> None:
    article, _ = read_article(Source("a.md", FRONT + "| a |\n|--:|\n| {note Eb2} |\n"), ())
    html = render_body(article, draw_fence, draw_role)

    assert html.startswith(
        '<div class="table-scroll" role="group" aria-label="Table" tabindex="0">\n<table>\n'
    )
    assert html.endswith("</table>\n</div>\n")
    assert '<td style="text-align:right"><i>Eb2</i></td>' in html


def test_a_table_goes_by_the_name_of_its_heading() -> None:
    body = '## The *riff* in {chord G"}\n\nText.\n\n> | a |\n> |--|\n\n## B\n\n| c |\n|--|\n'
    article, _ = read_article(Source("a.md", FRONT + body), ())
    html = render_body(article, draw_fence, draw_role)

    assert 'aria-label="Table: The riff in {chord G&quot;}"' in html
    assert 'aria-label="Table: B"' in html


def test_cells_that_a_table_has_no_room_for_are_told() -> None:
    table = "> | a | b |\n> |---|---|\n> | c | d | e \\| f | |\n> | g |\n"
    _, faults = read_article(Source("a.md", FRONT + table), ())

    assert [(fault.code, fault.span) for fault in faults] == [("table-cells", Span(6, 13, 6, 19))]
    assert not faults[0].is_error


def test_a_body_can_be_rendered_again() -> None:
    article, _ = read_article(Source("a.md", FRONT + "![a *b*](c.png)^[d]\n\n## E"), ())

    first = render_body(article, draw_fence, draw_role)
    assert render_body(article, draw_fence, draw_role) == first


def test_a_page_is_read_like_a_write_up() -> None:
    page, faults = read_page(Source("a.md", FRONT + "Over {chord G}.\n"), ())

    assert faults == ()
    assert render_body(page, draw_fence, draw_role) == "<p>Over <i>G</i>.</p>\n"


def test_an_empty_body_is_empty() -> None:
    article, faults = read_article(Source("a.md", FRONT), ())

    assert (render_body(article, draw_fence, draw_role), faults) == ("", ())


def test_a_head_cell_speaks_of_its_column() -> None:
    article, _ = read_article(
        Source("a.md", "---\ntitle: T\n---\n\n| a | b |\n|---|---|\n| 1 | 2 |\n"), ()
    )
    html = render_body(article, lambda _: "", lambda _: "")
    assert html.count('<th scope="col">') == 2

"""Links to other hosts are listed with their places, and asked only when told to."""

import http.server
import json
import threading
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from sitegen.cli import main, sitegen

WriteArticle = Callable[..., Path]


@pytest.fixture
def host() -> Iterator[str]:
    """Serve a host that has one page and answers no HEAD for another."""

    class Handler(http.server.BaseHTTPRequestHandler):
        def do_HEAD(self) -> None:
            self.send_response({"/there": 200, "/no-head": 405}.get(self.path, 404))
            self.end_headers()

        def do_GET(self) -> None:
            self.send_response(200)
            self.end_headers()

        def log_message(self, *_: object) -> None:
            """Print nothing."""

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()
    thread.join()


def test_every_link_is_listed_with_its_place(write_article: WriteArticle) -> None:
    video = "video:\n  page: https://host.example/watch/7\n  holder: The Gantry\n"
    words = "See [this](https://other.example/a?b=c) and [that](#there).\n\n## There\n"
    path = write_article("one", words, status="draft", more=video)
    lines = path.read_text(encoding="utf-8").splitlines()
    run = CliRunner().invoke(sitegen, ["check", "--links"])
    assert run.exit_code == 0
    name = "content/breakdowns/one/article.md"
    video_line = lines.index("  page: https://host.example/watch/7") + 1
    link_line = lines.index(words.splitlines()[0]) + 1
    assert run.output.splitlines() == [
        f"{name}:{video_line}:9: https://host.example/watch/7",
        f"{name}:{link_line}:5: https://other.example/a?b=c",
    ]
    run = CliRunner().invoke(sitegen, ["check", "--links", "--format", "json"])
    records = json.loads(run.output)
    assert [record["line"] for record in records] == [video_line, link_line]
    assert {record["answer"] for record in records} == {None}


def test_hosts_are_asked_when_told_to(write_article: WriteArticle, host: str) -> None:
    links = "\n".join(f"[{n}]({host}/{n})" for n in ("there", "gone", "no-head"))
    dead = "[dead](http://127.0.0.1:9/x)\n"
    write_article("one", f"{links}\n{dead}", status="draft")
    run = CliRunner().invoke(sitegen, ["check", "--links", "--ask-hosts"])
    answers = [line.split(" ", 2)[2] for line in run.output.splitlines()]
    assert answers[:3] == ["is there", "answers 404", "is there"]
    assert answers[3].startswith("does not answer: ")


@pytest.mark.usefixtures("content")
@pytest.mark.parametrize("options", [["--ask-hosts"], ["--rights", "--links"]])
def test_options_that_do_not_go_together_are_refused(options: list[str]) -> None:
    assert main(["check", *options]) == 2

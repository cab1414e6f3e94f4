"""What the server answers, and what nobody gets from it."""

import socket
from pathlib import Path

import pytest
from unit.preview.conftest import PATIENCE, Serve, Write

from sitegen.preview.app import place_of
from sitegen.preview.hosts import HOST


@pytest.mark.parametrize(
    ("path", "place"),
    [
        ("", ("", "")),
        ("index.html", ("", "index.html")),
        ("icon.svg", ("", "icon.svg")),
        ("about", ("about/", "")),
        ("about/", ("about/", "")),
        ("about/index.html", ("about/", "index.html")),
        ("breakdowns/low-tide", ("breakdowns/low-tide/", "")),
        ("breakdowns/low-tide/", ("breakdowns/low-tide/", "")),
        ("breakdowns/low-tide/stage/left.png", ("breakdowns/low-tide/", "stage/left.png")),
        ("styles/liner.css", ("styles/", "liner.css")),
    ],
)
def test_a_path_belongs_to_a_page(path: str, place: tuple[str, str]) -> None:
    assert place_of(path) == place


def test_this_machine_is_answered(preview: Serve) -> None:
    with preview() as site:
        for name in ("127.0.0.1", "localhost", "LOCALHOST"):
            assert site.get("/~preview/live.js", f"{name}:{site.port}")[0] == 200


def test_another_name_is_not_answered(preview: Serve, write: Write) -> None:
    write("low-tide")
    with preview() as site:
        assert "low-tide" in site.get("/")[1]
        others = (
            "songs.example",
            f"songs.example:{site.port}",
            "127.0.0.1",
            f"127.0.0.1:{site.port + 1}",
            f"127.0.0.1.songs.example:{site.port}",
            f"songs.example#127.0.0.1:{site.port}",
            f"[::1]:{site.port}",
        )
        for host in others:
            for path in ("/", "/~preview/live.js", "/~preview/events"):
                status, text = site.get(path, host)
                assert status == 421, host
                assert "low-tide" not in text


def test_two_names_are_not_answered(preview: Serve) -> None:
    with preview() as site, socket.create_connection((HOST, site.port), PATIENCE) as own:
        host = f"Host: {HOST}:{site.port}\r\n"
        own.sendall(f"GET / HTTP/1.1\r\n{host}{host}\r\n".encode())
        answer = own.recv(100)

    assert answer.split()[1] in {b"400", b"421"}


def test_nobody_else_can_connect(preview: Serve) -> None:
    with preview() as site, pytest.raises(ConnectionRefusedError):
        # Another address of this machine, which a server on all of them would answer.
        socket.create_connection(("127.0.0.2", site.port), PATIENCE)


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE"])
def test_nothing_can_be_sent(preview: Serve, method: str) -> None:
    with preview() as site:
        assert site.get("/", method=method)[0] == 405


def test_no_other_site_may_use_what_is_served(preview: Serve) -> None:
    with preview() as site:
        headers = site.headers("/~preview/live.js")

    assert headers["cross-origin-resource-policy"] == "same-origin"
    assert headers["cache-control"] == "no-store"
    assert "access-control-allow-origin" not in headers


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/breakdowns/low-tide/../../secret.txt",
        "/breakdowns/low-tide/%2e%2e/%2e%2e/%2e%2e/secret.txt",
        "/breakdowns/low-tide/..%5c..%5csecret.txt",
        "/breakdowns/low-tide/article.md",
        "/breakdowns/low-tide/secret.txt",
        "/breakdowns/%2e%2e/site.toml",
        "/site.toml",
        "//etc/passwd",
        "/etc/passwd",
        "/styles/../pages/article.html",
        "/pages/article.html",
        "/~preview/serving.py",
        "/~preview/page/live.js",
    ],
)
def test_only_what_belongs_to_the_site_is_reached(
    preview: Serve, write: Write, content: Path, path: str
) -> None:
    write("low-tide")
    (content.parent / "secret.txt").write_text("SECRET", encoding="utf-8")
    link = content / "breakdowns" / "low-tide" / "secret.txt"
    link.symlink_to(content.parent / "secret.txt")
    with preview() as site:
        status, text = site.get(path)

    assert status == 404
    assert "SECRET" not in text
    assert "title =" not in text
    assert "root:" not in text


def test_a_page_has_its_address_with_a_slash(preview: Serve, write: Write) -> None:
    write("low-tide")
    with preview() as site:
        assert site.get("/breakdowns/low-tide")[0] == 307
        assert site.get("/breakdowns/low-tide/index.html")[0] == 200


def test_a_folder_at_the_top_shows_its_index(preview: Serve, write: Write, content: Path) -> None:
    write("low-tide")
    (content / "site.toml").write_text('title = "Side Two"\ntheme = "liner"\n', encoding="utf-8")
    with preview() as site:
        status, text = site.get("/find/?chords=i+bVI")
        assert (status, site.get("/find")[0]) == (200, 307)
        assert text == site.get("/find/index.html")[1]
        assert "Find a passage" in text
        assert site.get("/archive/")[0] == 200
        assert site.get("/shelf/")[0] == 404


def test_a_missing_file_of_a_page_is_followed_as_missing(preview: Serve, write: Write) -> None:
    write("low-tide")
    path = "/breakdowns/low-tide/stage.pdf"
    with preview() as site:
        status, text = site.get(path)
        with site.follow(path) as page:
            state = page.next()

    assert status == 404
    assert f'data-state="{state["page"]}"' in text


def test_only_the_preview_has_its_script(
    preview: Serve, write: Write, content: Path, theme: Path
) -> None:
    from sitegen.cli import main  # noqa: PLC0415 - only this test builds

    write("low-tide")
    out = content.parent / "published"
    assert main(["build", str(content), "--out", str(out), "--drafts", "--no-cache"]) == 0
    pages = list(out.rglob("*.html"))
    with preview() as site:
        shown = site.get("/breakdowns/low-tide/")[1]

    assert "~preview/live.js" in shown
    assert len(pages) == 3
    for file in (path for path in out.rglob("*") if path.is_file()):
        assert b"~preview" not in file.read_bytes(), file
    assert theme.is_dir()

"""The addresses of a host's player: where the moment and the recording's name belong."""

import re

import pytest

from sitegen.article.embeds import fill_seconds, is_name, read_embed, read_pattern

ADDRESS = "https://host.example/frame/7?start={seconds}"


@pytest.mark.parametrize("text", [ADDRESS, "https://host.example/7#t={seconds}", "low-tide_7~a.b"])
def test_an_embed_is_an_address_with_its_moment_or_a_name(text: str) -> None:
    assert read_embed(text) == text
    assert is_name(text) is not text.startswith("https:")


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("http://host.example/{seconds}", "is not an https address"),
        ("https://host.example/7", "has no {seconds}"),
        ("https://{seconds}.example/7", "leaves open which host it is"),
        ("https://host.example/{id}?start={seconds}", "neither an address nor a name"),
        ("https:///7?start={seconds}", "neither an address nor a name"),
        ("javascript:play({seconds})", "neither an address nor a name"),
        ("data:text/html,{seconds}", "neither an address nor a name"),
        ("//host.example/{seconds}", "neither an address nor a name"),
        ("low tide", "neither an address nor a name"),
        ("../low-tide", "neither an address nor a name"),
        ('https://host.example/"onload="{seconds}', "neither an address nor a name"),
    ],
)
def test_an_embed_that_no_frame_may_show_is_refused(text: str, words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)) as refused:
        read_embed(text)

    assert text in str(refused.value)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (ADDRESS, "has no {id}"),
        ("https://host.example/{id}", "has no {seconds}"),
        ("https://{id}.example/?start={seconds}", "leaves open which host it is"),
        ("low-tide", "neither an address nor a name"),
    ],
)
def test_a_pattern_needs_both_places(text: str, words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)):
        read_pattern(text)


def test_the_moment_is_put_where_the_host_reads_it() -> None:
    assert fill_seconds(ADDRESS, 83) == "https://host.example/frame/7?start=83"

"""The links of write-ups that lead to other hosts: listed, and asked only when told to."""

import urllib.error
import urllib.request
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from sitegen.article.front_values import is_web_address
from sitegen.site.study import Study
from sitegen.source import Span

PATIENCE = 10
"""Seconds that a host is given to answer."""
_AT_ONCE = 8
_GONE = 400
_NO_HEAD = frozenset({403, 405, 501})


@dataclass(frozen=True)
class OutwardLink:
    """A link to another host and where it stands; `answer` is what the host said, if asked."""

    address: str
    file: str
    span: Span
    answer: str = ""

    def __str__(self) -> str:
        place = f"{self.file}:{self.span.line}:{self.span.column}"
        return f"{place}: {self.address}{f' {self.answer}' if self.answer else ''}"

    def as_record(self) -> dict[str, object]:
        """Return the link for other programs."""
        return {
            "address": self.address,
            "file": self.file,
            "line": self.span.line,
            "column": self.span.column,
            "answer": self.answer or None,
        }


def outward_links(studies: Iterable[Study]) -> tuple[OutwardLink, ...]:
    """Return all links to other hosts in the order of the files; nothing is asked."""
    return tuple(link for study in studies for link in _links(study))


def _links(study: Study) -> Iterator[OutwardLink]:
    article = study.article
    if article is None:
        return
    video = article.front.video
    for field in ("page", "file", "embed"):
        address = getattr(video, field)
        if is_web_address(address) and field in video.places:
            yield OutwardLink(address, study.name, video.places[field])
    for use in article.links:
        if is_web_address(use.target):
            yield OutwardLink(use.target, study.name, use.span)


def ask_hosts(links: Sequence[OutwardLink]) -> tuple[OutwardLink, ...]:
    """Return the links with what their hosts answer; each address is asked once."""
    addresses = list(dict.fromkeys(link.address for link in links))
    with ThreadPoolExecutor(_AT_ONCE) as pool:
        answers = dict(zip(addresses, pool.map(_ask, addresses), strict=True))
    return tuple(
        OutwardLink(link.address, link.file, link.span, answers[link.address]) for link in links
    )


def _ask(address: str, method: str = "HEAD") -> str:
    """Return "is there", or what is wrong; only the head of the page is asked for."""
    request = urllib.request.Request(address, method=method)  # noqa: S310 - http and https only
    try:
        with urllib.request.urlopen(request, timeout=PATIENCE):  # noqa: S310 - as above
            return "is there"
    except urllib.error.HTTPError as wrong:
        if method == "HEAD" and wrong.code in _NO_HEAD:
            return _ask(address, "GET")
        return f"answers {wrong.code}" if wrong.code >= _GONE else "is there"
    except (OSError, ValueError) as wrong:
        reason = getattr(wrong, "reason", wrong)
        return f"does not answer: {reason}"

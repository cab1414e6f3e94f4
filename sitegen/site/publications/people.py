"""Who made the songs and who told what of them: every name with the write-ups it stands in."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sitegen.article import FrontMatter
from sitegen.pages.views import Link
from sitegen.site.addresses import PEOPLE, href, root_of
from sitegen.site.listing import Listed


@dataclass(frozen=True)
class Part:
    """What somebody did for the songs of some write-ups."""

    role: str
    write_ups: tuple[Link, ...]


@dataclass(frozen=True)
class Person:
    """A name as it is credited, with all it did."""

    name: str
    parts: tuple[Part, ...]


@dataclass(frozen=True)
class Letter:
    """The names under one letter."""

    letter: str
    people: tuple[Person, ...]


def people_of(articles: Sequence[Listed]) -> tuple[Letter, ...]:
    """Return the people of all write-ups in the order of the alphabet."""
    found: defaultdict[str, defaultdict[str, dict[str, Link]]]
    found = defaultdict(lambda: defaultdict(dict))
    for one in articles:
        link = Link(one.front.title, href(one.address, root_of(PEOPLE)))
        for name, role in _credits(one.front):
            found[name][role].setdefault(one.address, link)
    letters: defaultdict[str, list[Person]] = defaultdict(list)
    for name in sorted(found, key=lambda name: (name.casefold(), name)):
        parts = (Part(role, tuple(links.values())) for role, links in found[name].items())
        letters[_letter(name)].append(Person(name, tuple(parts)))
    return tuple(Letter(letter, tuple(letters[letter])) for letter in sorted(letters))


def _letter(name: str) -> str:
    first = name[:1].upper()
    return first if first.isalpha() else "#"


def _credits(front: FrontMatter) -> Iterator[tuple[str, str]]:
    song = front.song
    yield from _each("artist", [song.artist])
    yield from _each("wrote", song.writers)
    yield from _each("produced", song.producers)
    yield from _each("engineered", song.engineers)
    for performer in song.performers:
        # "Ada Brandt, bass": whoever plays is named first.
        name, _, played = (part.strip() for part in performer.partition(","))
        yield from _each(f"played {played}" if played else "played", [name])
    yield from _each("studio", [song.studio])
    yield from _each("source", [source.who for source in front.sources])


def _each(role: str, names: Iterable[str]) -> Iterator[tuple[str, str]]:
    return ((name.strip(), role) for name in names if name.strip())

"""All write-ups filed under the values of every facet."""

from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.article import FrontMatter
from sitegen.finding.entry import Entry
from sitegen.finding.facet_addresses import address_of, identity
from sitegen.finding.facets import FACETS, Facet


@dataclass(frozen=True)
class FiledValue:
    """A value, its address below that of its facet, and the numbers of its write-ups, rising."""

    words: str
    address: str
    numbers: tuple[int, ...]


@dataclass(frozen=True)
class FiledFacet:
    """A facet with all of its values, in their order."""

    facet: Facet
    values: tuple[FiledValue, ...]


def file_write_ups(rows: Sequence[tuple[FrontMatter, Entry]]) -> tuple[FiledFacet, ...]:
    """Return every facet that has values; `rows` are counted from 0.

    Values that differ only in capitals, blanks or Unicode form are one: it is called as most
    write-ups call it.
    """
    filed = (FiledFacet(facet, _values(facet, rows)) for facet in FACETS)
    return tuple(one for one in filed if one.values)


def _values(facet: Facet, rows: Sequence[tuple[FrontMatter, Entry]]) -> tuple[FiledValue, ...]:
    numbers: defaultdict[str, list[int]] = defaultdict(list)
    spellings: defaultdict[str, Counter[str]] = defaultdict(Counter)
    known: dict[str, str] = {}
    for number, row in enumerate(rows):
        for words in dict.fromkeys(facet.find(*row)):
            same = known.get(words)
            if same is None:
                same = known[words] = identity(words)
            if not same:
                continue
            spellings[same][" ".join(words.split())] += 1
            if numbers[same][-1:] != [number]:
                numbers[same].append(number)
    values = [_value(facet, spellings[same], found) for same, found in numbers.items()]
    return tuple(sorted(values, key=lambda value: _rank(facet, value)))


def _value(facet: Facet, spellings: Counter[str], numbers: Sequence[int]) -> FiledValue:
    most = max(spellings.values())
    words = min(text for text, count in spellings.items() if count == most)
    return FiledValue(words, address_of(words, is_own=facet.is_own), tuple(numbers))


def _rank(facet: Facet, value: FiledValue) -> tuple[tuple[int, ...], str, str]:
    first = (-len(value.numbers),) if facet.order is None else facet.order(value.words)
    return first, identity(value.words), value.words

"""What the templates of the archive's index are given: facets, their values, who stands there."""

from collections.abc import Sequence
from dataclasses import dataclass

from sitegen.pages.views import FacetView, GroupView, Link, SiteView, ValueLink


@dataclass(frozen=True)
class IndexView:
    """The index: all facets with their values, or the commonest of them."""

    site: SiteView
    title: str
    groups: tuple[GroupView, ...]


@dataclass(frozen=True)
class PartView:
    """One of the pages of a long list: its number, from 1, and links to all of them."""

    number: int
    links: tuple[Link, ...]


@dataclass(frozen=True)
class ValuesView:
    """The values of a facet, or one part of them; `index` leads to all facets."""

    site: SiteView
    facet: FacetView
    index: str
    part: PartView


@dataclass(frozen=True)
class ValueView:
    """The write-ups under one value, or one part of them.

    `lines` are HTML, one a write-up; `combined` leads to where the value is combined with others.
    """

    site: SiteView
    facet: Link
    value: ValueLink
    combined: str
    lines: Sequence[str]
    part: PartView

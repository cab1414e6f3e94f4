"""Inline roles as they stand in running text."""

import html5lib
import pytest

from sitegen.pages.theme import Theme
from sitegen.pages.views import RoleView
from sitegen.score.chord import Chord, NoChord
from sitegen.score.pitch import PitchName

E_FLAT = PitchName.read("Eb")
CHORD = Chord(E_FLAT, "m7♭5", (), (), PitchName.read("Db"), written="Ebm7b5/Db")


@pytest.mark.parametrize(
    ("view", "html"),
    [
        (
            RoleView("chord", "", CHORD),
            '<span class="chord">E♭m<sup>7♭5</sup>/D♭</span>',
        ),
        (RoleView("chord", "", NoChord()), '<span class="chord">N.C.</span>'),
        (RoleView("degree", "♭6"), '<span class="degree">♭6</span>'),
        (RoleView("note", "E♭2"), '<span class="pitch">E♭2</span>'),
        (
            RoleView("at", "1:23", href="v.html#t=83", seconds=83),
            (
                '<a class="moment" href="v.html#t=83" data-seconds="83">'
                '<time datetime="PT83S">1:23</time></a>'
            ),
        ),
        (
            RoleView("at", "1:23", seconds=83),
            '<time class="moment" datetime="PT83S">1:23</time>',
        ),
        (
            RoleView("see", "Example 1", href="#example-1"),
            '<a class="reference" href="#example-1">Example 1</a>',
        ),
        (
            RoleView("fact", "V43/vi"),
            '<data class="fact" value="V43/vi">V<sup>43</sup>/vi</data>',
        ),
        (RoleView("fact", "8"), '<data class="fact" value="8">8</data>'),
    ],
)
def test_a_role_is_set_in_one_line(theme: Theme, view: RoleView, html: str) -> None:
    assert theme.render_role(view) == html


@pytest.mark.parametrize("kind", ["chord", "degree", "note", "at", "see", "fact"])
def test_hostile_words_stay_words(theme: Theme, kind: str) -> None:
    words = '"><b>&'
    html = theme.render_role(RoleView(kind, words, href=words))  # type: ignore[arg-type]
    fragment = html5lib.parseFragment(html, treebuilder="etree")
    assert "".join(fragment.itertext()) == words

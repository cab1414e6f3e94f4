"""Write-ups are related by what their music does, and the reason is said as players say it."""

from dataclasses import replace
from itertools import permutations
from typing import Any

import pytest

from sitegen.article import FrontMatter
from sitegen.article.front import Song
from sitegen.finding import Beat, ChartEntry, ChordStep, Entry, Melody, Progression, Technique
from sitegen.finding.kinship import find_kin
from sitegen.finding.kinship.circles import circle, loop_row, say_circle
from sitegen.harmony import read_chord
from sitegen.harmony.progressions import core
from sitegen.score.chord import Chord

Filed = tuple[FrontMatter, Entry]


def loop(chords: str) -> Progression:
    steps = []
    for bar, symbol in enumerate(chords.split(), start=1):
        chord = read_chord(symbol)
        assert isinstance(chord, Chord)
        found = core(chord)
        steps.append(ChordStep(symbol, found.root, found.notes, found.family, bar, bar))
    return Progression(tuple(steps), loop_start=0, loop_length=len(steps))


def filed(title: str, *charts: ChartEntry, song: Song | None = None) -> Filed:
    return FrontMatter(title=title, song=song or Song()), Entry(charts)


def chart(**holds: Any) -> ChartEntry:  # noqa: ANN401 - each field has a type of its own
    return ChartEntry("a", "Example 1", "", "notation", **holds)


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [
        ("C G Am F", "D A Bm G", "the same four-chord loop, a whole tone higher"),
        ("C G Am F", "A E F#m D", "the same four-chord loop, a minor third lower"),
        ("C G Am F", "C G7 Am7 Fmaj7", "the same four-chord loop, in the same key"),
        ("C G Am F", "Am F C G", "the same four-chord loop from another of its chords"),
        (
            "C G Am F",
            "Cm Ab Eb Bb",
            "the same four-chord loop from another of its chords, a minor third higher",
        ),
        ("Am Dm E", "Ebm Abm Bb", "the same three-chord loop, a tritone higher"),
    ],
)
def test_loops_are_the_same_in_any_key_and_from_any_chord(one: str, other: str, said: str) -> None:
    row, their_row = loop_row(loop(one)), loop_row(loop(other))
    assert circle(row) == circle(their_row)
    assert say_circle(row, their_row) == said


@pytest.mark.parametrize("other", ["C Gm Am F", "C F Am G", "C G Am F Dm"])
def test_other_loops_are_not(other: str) -> None:
    assert circle(loop_row(loop("C G Am F"))) != circle(loop_row(loop(other)))


def test_the_closest_comes_first_and_says_what_counts_most() -> None:
    mine = filed("Mine", chart(progression=loop("C G Am F"), meter="7/8"))
    same = filed("Same loop", chart(progression=loop("E B C#m A"), meter="4/4"))
    odd = filed("Odd", chart(meter="7/8"))
    none = filed("None", chart(meter="4/4"))
    first, *_ = find_kin([mine, none, odd, same])
    assert [kin.place for kin in first] == [3, 2]
    assert first[0].reason == "the same four-chord loop, a major third higher"
    assert first[1].reason == "also in 7/8"


def test_two_reasons_are_given_and_no_kind_twice() -> None:
    song = Song(writers=("Ada Brandt", "Ilo Venn"), producers=("Halla Wick",))
    late = Technique("phrases that start late", (2,))
    one = filed("One", chart(techniques=(late,)), song=song)
    two = filed("Two", chart(techniques=(late,)), song=replace(song))
    ((kin,), _) = find_kin([one, two])
    assert kin.reason == "also starts its phrases late; also written by Ada Brandt"


def test_what_few_share_counts_more_than_what_many_share() -> None:
    pickup, lament = Technique("pickup"), Technique("lament bass")
    many = [filed(f"M{n}", chart(techniques=(pickup,))) for n in range(20)]
    rare = filed("Rare", chart(techniques=(lament,)))
    mine = filed("Mine", chart(techniques=(pickup, lament)))
    found = find_kin([*many, rare, mine])
    assert found[-1][0].place == 20
    assert found[-1][0].reason == "also has a lament bass"


def test_drums_and_tunes_are_compared_by_what_is_played() -> None:
    groove = Beat("4/4", 96, (("BD", (0, 48)), ("HH", (0, 12)), ("SD", (24, 72))), (1,))
    ride = Beat("4/4", 96, (("BD", (0, 48)), ("RC", (0, 24)), ("SD", (24, 72))), (4,))
    tune = Melody("voice", (60, 62, 64, 65, 67, 65, 64, 62, 60), tuple(range(9)), (1,) * 9)
    higher = Melody("lead", tuple(n + 5 for n in tune.midi), tuple(range(9)), (1,) * 9)
    one = filed("One", chart(beats=(groove,)), chart(melodies=(tune,)))
    two = filed("Two", chart(beats=(ride,)), chart(melodies=(higher,)))
    ((kin,), _) = find_kin([one, two])
    assert kin.reason == "a tune starts with the same steps; the same bass drum and snare"


def test_a_write_up_without_anything_in_common_has_none() -> None:
    assert find_kin([filed("One"), filed("Two")]) == ((), ())
    assert find_kin([]) == ()


def test_the_order_of_the_list_decides_between_equals_only() -> None:
    rows = [
        filed("A", chart(progression=loop("C G Am F"))),
        filed("B", chart(progression=loop("D A Bm G"), meter="5/4")),
        filed("C", chart(meter="5/4"), song=Song(artist="The Harbour Lamps")),
    ]
    for order in permutations(rows):
        found = find_kin(order)
        reasons = {
            one[0].title: [(order[kin.place][0].title, kin.reason) for kin in kins]
            for one, kins in zip(order, found, strict=True)
        }
        assert reasons["B"] == [
            ("A", "the same four-chord loop, a whole tone lower"),
            ("C", "also in 5/4"),
        ]

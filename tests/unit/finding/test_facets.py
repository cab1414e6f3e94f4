"""Write-ups are filed under what a musician looks for, each value at an address of its own."""

import re
import unicodedata
from datetime import date
from fractions import Fraction

import pytest
from unit.finding.drawn_archive import QUALITIES as SOME_QUALITIES
from unit.finding.drawn_archive import draw_rows

from sitegen.article import FrontMatter
from sitegen.article.front import Song
from sitegen.finding import ChartEntry, ChordStep, Entry, Melody, Progression, Technique
from sitegen.finding.chord_words import chord_words
from sitegen.finding.entries import BASS_TRITONE, ODD_METER
from sitegen.finding.facet_addresses import address_of, identity
from sitegen.finding.facet_line import line_facts
from sitegen.finding.facets import BY_ID, FACETS, band_of, band_range, band_words, tuning_words
from sitegen.finding.filing import file_write_ups
from sitegen.finding.techniques import SIGNS
from sitegen.harmony.qualities import QUALITIES
from sitegen.score.key import MODES, Key
from sitegen.score.meter import Meter
from sitegen.score.tempo import Tempo

CHART = ChartEntry(
    "chart-a", "Example 1", "", "notation", "7/8", "E dorian", 112, "swing", ("guitar", "other"),
    ("drop C#", "capo 2", "standard"), ("m7", "7♯9"), techniques=(Technique("pickup"),),
)  # fmt: skip
SONG = Song(
    "Low Tide", "The Harbour Lamps", 2011, writers=("Ada Brandt",), producers=("Bo Lind",),
    key=Key.read("C# minor"), meter=Meter.read("4/4"), tempo=Tempo(Fraction(104)),
    tuning="half-step down, capo 3",
)  # fmt: skip
FRONT = FrontMatter(
    title="Two chords", song=SONG, topics=("bass lines",), published=date(2026, 1, 2)
)


def found(name: str, front: FrontMatter, *charts: ChartEntry) -> list[str]:
    return list(BY_ID[name].find(front, Entry(charts)))


@pytest.mark.parametrize(
    ("name", "told", "silent"),
    [
        ("key", ["C♯ minor"], ["E dorian"]),
        ("mode", ["minor"], ["dorian"]),
        ("meter", ["4/4"], ["7/8"]),
        ("tempo", ["90 to 109"], ["110 to 129"]),
        ("tuning", ["half-step down", "capo 3"], ["drop C♯", "capo 2"]),
        ("feel", ["swing"], ["swing"]),
        ("instrument", ["guitar"], ["guitar"]),
        ("technique", ["pickup"], ["pickup"]),
        ("artist", ["The Harbour Lamps"], [""]),
        ("writer", ["Ada Brandt"], []),
        ("producer", ["Bo Lind"], []),
        ("year", ["2011"], []),
        ("topic", ["bass lines"], []),
        ("published", ["2026"], ["not yet published"]),
    ],
)
def test_the_song_goes_first_and_the_charts_where_it_is_silent(
    name: str, told: list[str], silent: list[str]
) -> None:
    assert found(name, FRONT, CHART) == told
    assert found(name, FrontMatter(title="x"), CHART) == silent


def test_a_write_up_that_says_nothing_is_filed_under_nothing_but_that() -> None:
    filed = file_write_ups([(FrontMatter(title="x"), Entry())])
    assert [(one.facet.id, one.values[0].words) for one in filed] == [
        ("published", "not yet published")
    ]
    assert file_write_ups([]) == ()


@pytest.mark.parametrize(
    ("text", "filed"),
    [
        ("drop C#, capo 2", ("drop C♯", "capo 2")),
        ("guitar in standard tuning, capo 3", ("standard", "capo 3")),
        ("standard tuning", ("standard",)),
        ("Bb standard", ("B♭ standard",)),
        ("open  G", ("open G",)),
        (" , ", ()),
    ],
)
def test_a_tuning_is_filed_in_its_parts(text: str, filed: tuple[str, ...]) -> None:
    assert tuning_words(text) == filed


@pytest.mark.parametrize(
    ("tempo", "words"),
    [
        (10, "under 50"),
        (49.9, "under 50"),
        (50, "50 to 69"),
        (89.5, "70 to 89"),
        (90, "90 to 109"),
        (109.9, "90 to 109"),
        (170, "170 and faster"),
        (600, "170 and faster"),
    ],
)
def test_a_tempo_is_in_one_band(tempo: float, words: str) -> None:
    assert band_words(band_of(tempo)) == words
    low, high = band_range(words).split("..")
    assert int(low or 0) <= int(tempo) <= int(high or 600)


# Handbook names: common practice, no source.
@pytest.mark.parametrize(
    ("suffix", "words"),
    [
        ("", "major triad"),
        ("m7", "minor seventh (m7)"),
        ("m7♭5", "half-diminished seventh (m7♭5)"),
        ("7♯9", "dominant seventh, sharp ninth (7♯9)"),
        ("7♭9♯11", "dominant seventh, flat ninth, sharp eleventh (7♭9♯11)"),
        ("maj9no3", "major ninth, without third (maj9no3)"),
        ("madd11", "minor triad, added eleventh (madd11)"),
        ("(♭5)", "major with flat fifth (♭5)"),
        ("6/9", "six-nine (6/9)"),
    ],
)
def test_chords_are_called_by_name(suffix: str, words: str) -> None:
    assert chord_words(suffix) == words


def test_every_quality_that_is_printed_has_a_name() -> None:
    named = [chord_words(quality.name) for quality in QUALITIES if quality.named]
    assert not [words for words in named if words.startswith("chord ")]
    assert len(set(named)) == len(named)


MOTIONS = "up a semitone,down a semitone,up a fourth,down a fourth,by a tritone".split(",")


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (59, "under a minute"),
        (60, "1 to 2 minutes"),
        (239, "3 to 4 minutes"),
        (480, "8 minutes and longer"),
    ],
)
def test_a_length_is_filed_by_its_minutes(seconds: int, words: str) -> None:
    assert found("length", FrontMatter(title="x", song=Song(length=seconds))) == [words]


def test_roots_are_filed_by_how_they_move() -> None:
    steps = tuple(
        ChordStep("", root, "047", "major", bar, bar) for bar, root in enumerate((0, 7, 5, 5, 11))
    )
    chart = ChartEntry("a", "", "", "changes", progression=Progression(steps))
    assert found("root-motion", FrontMatter(title="x"), chart) == [
        "down a fourth",
        "down a whole tone",
        "by a tritone",
    ]


def test_chord_tones_are_filed_of_tunes_only() -> None:
    shares = (("voice.chord-tone-share", "3/4"), ("bass.chord-tone-share", "1/10"))
    tunes = (Melody("voice", (), (), ()), Melody("bass", (), (), (), bass=True))
    chart = ChartEntry("a", "", "", "notation", melodies=tunes, traits=shares)
    assert found("chord-tones", FrontMatter(title="x"), chart) == ["60 to 79 %"]


def own_words() -> dict[str, list[str]]:
    """Return the words of the facets whose values are out of lists of our own."""
    tonics = [letter + sign for letter in "CDEFGAB" for sign in ("", "♭", "♯", "♭♭", "♯♯")]
    suffixes = {quality.name for quality in QUALITIES} | {*SOME_QUALITIES, "7♭9", "7♯9", "79"}
    return {
        "key": [f"{tonic} {mode}" for tonic in tonics for mode in MODES],
        "mode": list(MODES),
        "meter": [f"{n}/{unit}" for n in range(1, 65) for unit in (1, 2, 4, 8, 16, 32)],
        "tempo": [band_words(band_of(tempo)) for tempo in (10, 50, 70, 90, 110, 130, 150, 170)],
        "chord": [chord_words(suffix) for suffix in suffixes],
        "root-motion": [words for words in MOTIONS if words],
        "length": ["under a minute", "1 to 2 minutes", "3 to 4 minutes", "8 minutes and longer"],
        "technique": [*{sign.name for sign in SIGNS}, BASS_TRITONE, ODD_METER],
        "year": [str(year) for year in range(1900, 2100)],
        "published": ["not yet published", "2026"],
    }


def test_words_of_our_own_lists_have_plain_addresses_that_differ() -> None:
    for name, words in own_words().items():
        addresses = [address_of(one, is_own=BY_ID[name].is_own) for one in words]
        assert len(set(addresses)) == len(words), name
        assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", one) for one in addresses), name


ALIKE = [
    "bass lines", "bass-lines", "bass_lines", "bass, lines", "bäss lines", "ba ss lines", "C♯",
    "C sharp", "C#", "C", "c ++", "+", "plus", "花", "花火", "", "6/8", "6 8", "aux", "con", "..",
    "index", "x" * 80, "x" * 81, "a b", "ab", "O'Hara", "O’Hara", "ﬂ flat", "fi", "İ", "ı", "i",
]  # fmt: skip


def test_other_words_never_share_an_address() -> None:
    addresses = [address_of(words) for words in ALIKE]
    assert len({address.casefold() for address in addresses}) == len(ALIKE)
    assert all(re.fullmatch(r"[a-z0-9_-]{1,80}", one) for one in addresses)
    assert not {"aux", "con", "", ".."} & set(addresses)


def test_addresses_are_those_that_were_given_out() -> None:
    # Links from elsewhere lead there: they must not change with a later version.
    assert address_of("drop C♯") == "drop-c-sharp"
    assert address_of("Gantry Moth") == "gantry-moth"
    assert address_of("Noor Hadleigh-Bask") == "noor-hadleigh-bask_fb3bbc33"
    assert address_of("half-diminished seventh (m7♭5)", is_own=True) == (
        "half-diminished-seventh-m7-flat-5"
    )


def test_capitals_blanks_and_unicode_forms_make_no_difference() -> None:
    forms = ["Zoë Lind", "zoë  lind", unicodedata.normalize("NFD", "ZOË LIND")]
    assert len({identity(form) for form in forms}) == 1
    assert len({address_of(form) for form in forms}) == 1
    rows = [(FrontMatter(title="x", topics=(form,)), Entry()) for form in (*forms, forms[0])]
    (topic,) = (one for one in file_write_ups(rows) if one.facet.id == "topic")
    (value,) = topic.values
    assert (value.words, value.numbers) == ("Zoë Lind", (0, 1, 2, 3))


def test_values_stand_in_the_order_that_a_reader_expects() -> None:
    keys = ["C♯ minor", "A major", "C major", "C minor", "B♭ major", "C♭ major"]
    rows = [
        (FrontMatter(title="x", song=Song(key=Key.read(key), year=year)), Entry())
        for key, year in zip(keys, (1990, 2011, 1969, 2011, 1999, 2000), strict=True)
    ]
    filed = {one.facet.id: [value.words for value in one.values] for one in file_write_ups(rows)}
    assert filed["key"] == [
        "A major", "B♭ major", "C♭ major", "C major", "C minor", "C♯ minor"
    ]  # fmt: skip
    assert filed["year"] == ["2011", "2000", "1999", "1990", "1969"]
    assert filed["mode"] == ["major", "minor"]


def test_meters_and_bands_go_up() -> None:
    charts = tuple(
        ChartEntry("a", "", "", "notation", meter=meter, tempo=tempo)
        for meter, tempo in (("12/8", 200), ("4/4", 40), ("7/8", 95), ("3/4", 60))
    )
    filed = file_write_ups([(FrontMatter(title="x"), Entry(charts))])
    words = {one.facet.id: [value.words for value in one.values] for one in filed}
    assert words["meter"] == ["3/4", "4/4", "7/8", "12/8"]
    assert words["tempo"] == ["under 50", "50 to 69", "90 to 109", "170 and faster"]


def test_filing_loses_nothing_and_invents_nothing() -> None:
    rows = draw_rows(seed=3, count=120)
    for filed in file_write_ups(rows):
        for value in filed.values:
            having = [
                number
                for number, row in enumerate(rows)
                if identity(value.words) in {identity(w) for w in filed.facet.find(*row)}
            ]
            assert list(value.numbers) == having
        told = {identity(w) for row in rows for w in filed.facet.find(*row)} - {""}
        assert told == {identity(value.words) for value in filed.values}
    assert {one.facet.id for one in file_write_ups(rows)} == {facet.id for facet in FACETS}


def test_the_figures_beside_a_write_up_are_short() -> None:
    assert line_facts(FRONT, Entry()) == (
        ("Key", "C♯ minor"),
        ("Tempo", "104 bpm"),
        ("Meter", "4/4"),
        ("Tuning", "half-step down, capo 3"),
    )
    charts = (CHART, ChartEntry("b", "", "", "notation", tempo=89.5))
    told = dict(line_facts(FrontMatter(title="x"), Entry(charts)))
    assert told["Tempo"] == "89.5 to 112 bpm"
    assert line_facts(FrontMatter(title="x"), Entry()) == ()

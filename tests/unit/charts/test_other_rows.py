"""Chords, words, degrees, marks, sections, remarks and drums."""

from unit.charts.reading_aloud import chart_of, faults, played, read


def test_each_chord_lasts_until_the_next() -> None:
    chart = chart_of(
        read("""
            count | 1   2   3   4   | 1   2   3   4   |
            chord | Em      C/E     |     N.C.        |
            voice | E4              | E4              |
        """)
    )
    assert [f"{e.chord} {e.onset}+{e.duration}" for e in chart.chords] == [
        "Em 0+2",
        "C/E 2+3",
        "N.C. 5+3",
    ]
    assert str(chart.chord_at(chart.chords[1].onset)) == "C/E"


def test_syllables_are_dealt_to_the_notes_of_their_bar() -> None:
    chart = chart_of(
        read("""
            count | 1   &   2   &   3   4   | 1   2   3   4   |
            voice | E4  F4  G4  r   A4      |     B4  A4      |
            words | through- out the win-   | ter _           |
            words | all that we took        | home            |
        """)
    )
    sung = [
        [(s.verse, s.text, s.joined, s.held) for s in event.syllables]
        for event in chart.parts[0].voices[0]
        if event.notes
    ]
    assert sung == [
        [(1, "through", True, False), (2, "all", False, False)],
        [(1, "out", False, False), (2, "that", False, False)],
        [(1, "the", False, False), (2, "we", False, False)],
        [(1, "win", True, False), (2, "took", False, False)],
        [(1, "ter", False, False), (2, "home", False, False)],
        [(1, "", False, True)],
    ]


def test_a_syllable_without_a_note_is_a_fault_from_its_first_letter() -> None:
    reading = read("""
        count | 1   2   3   4   |
        voice | E4      F4      |
        words | one two three   |
    """)
    assert faults(reading) == ["words-many 3:17-22"]


def test_a_degree_stands_under_a_note_and_may_be_insisted_on() -> None:
    reading = read("""
        count  | 1   2   3   4   |
        chord  | C               |
        voice  | E4  F4      G4  |
        degree | 3   #11!    5   |
    """)
    chart = chart_of(reading)
    assert [(d.text, d.insists, str(d.onset)) for d in chart.degrees] == [
        ("3", False, "0"),
        ("♯11", True, "1"),
        ("5", False, "3"),
    ]


def test_marks_belong_to_notes_or_to_stretches() -> None:
    chart = chart_of(
        read("""
            count | 1   &   2   &   3   &   4   &   |
            voice | E4  F4  G4  A4  B4  A4  G4  F4  |
            mark  | >   .   P.M.---     <-------    |
        """)
    )
    part = chart.parts[0]
    assert [event.marks for event in part.voices[0]][:2] == [("accent",), ("staccato",)]
    assert [f"{s.kind} {s.onset} to {s.end}" for s in part.stretches] == [
        "palm mute 1 to 2",
        "crescendo 5/2 to 7/2",
    ]


def test_sections_and_remarks_stand_at_a_count() -> None:
    chart = chart_of(
        read("""
            count   | 1   2   3   4   | 1   2   3   4   |
            section | Verse one       | B               |
            voice   | E4              | E4              |
            say     |         half time
        """)
    )
    assert [f"{r.text} {r.onset}" for r in chart.sections] == ["Verse one 0", "B 4"]
    assert [f"{r.text} {r.onset}" for r in chart.remarks] == ["half time 2"]


def test_drums_have_a_voice_for_the_hands_and_one_for_the_feet() -> None:
    chart = chart_of(
        read("""
            count | 1   &   2   &   3   &   4   &   |
            drums
              HH  | x---x---x---x---x---x---x---o---|
              SD  | --------O---g-------f---b-------|
              BD  | x-----------x---x---------------|
        """)
    )
    assert played(chart, "drums", 0)[:4] == [
        "HH 0+1/2",
        "HH 1/2+1/2",
        "HH,SD 1+1/2",
        "HH,SD 3/2+1/2",
    ]
    assert played(chart, "drums", 1) == ["BD 0+1", "r 1+1/2", "BD 3/2+1/2", "BD 2+1", "r 3+1"]
    hands = [note for event in chart.parts[0].voices[0] for note in event.notes]
    snare = [note for note in hands if note.drum and note.drum.label == "SD"]
    assert [(n.accent, n.ghost, n.flam, n.roll) for n in snare] == [
        (True, False, False, False),
        (False, True, False, False),
        (False, False, True, False),
        (False, False, False, True),
    ]
    assert [note.midi for note in hands if note.opened] == [46]


def test_the_last_octave_named_stands() -> None:
    chart = chart_of(
        read("""
            count | 1   2   3   4   |
            voice | Bb4 C5  D   Eb,G|
        """)
    )
    assert played(chart) == ["B♭4 0+1", "C5 1+1", "D5 2+1", "E♭5,G5 3+1"]


def test_faults_of_other_rows_are_reported_where_they_stand() -> None:
    reading = read("""
        count  | 1   2   3   4   |
        chord  | Cmajj7          |
        voice  | E   F4  h4  G4  |
        degree | 3   x   r   5   |
        mark   |     !           |
        words  | a   b           |
        drums
          HH   | x---y---x---x---|
    """)
    assert sorted(faults(reading), key=lambda text: text.split()[1]) == [
        "chord-quality 2:11-16",
        "pitch 3:10-11",
        "pitch 3:18-20",
        "degree-text 4:14-15",
        "degree-text 4:18-19",
        "mark-sign 5:14-15",
        "drum-sign 8:14-15",
    ]


def test_a_part_without_a_usual_name_is_set_up_in_the_head() -> None:
    chart = chart_of(
        read("""
            saw: at pitch

            count | 1   2   3   4   |
            saw   | E5              |
        """)
    )
    assert chart.parts[0].name == "saw"


def test_a_transposing_instrument_reads_what_it_fingers() -> None:
    chart = chart_of(
        read("""
            sax: reads in Bb

            count | 1   2   3   4   |
            sax   | Bb3             |
        """)
    )
    (note,) = chart.parts[0].voices[0][0].notes
    assert (str(note.pitch), str(note.fingered)) == ("B♭3", "C4")


def test_rows_under_the_count_may_repeat_its_repeat_signs() -> None:
    chart = chart_of(
        read("""
            count |: 1   2   3   4   :| 1   2   3   4   ||
            chord |: C       G       :| F               ||
            voice |: E4      D4      :| C4              ||
        """)
    )
    assert played(chart) == ["E4 0+2", "D4 2+2", "C4 4+4"]
    assert [str(event.chord) for event in chart.chords] == ["C", "G", "F"]


def test_bar_lines_of_words_may_stand_anywhere() -> None:
    chart = chart_of(
        read("""
            count | 1 2 3 4 | 1 2 3 4 |
            voice | E4  D4  | C4      |
            words | stretched through | thoughts |
        """)
    )
    sung = [s.text for event in chart.parts[0].voices[0] for s in event.syllables]
    assert sung == ["stretched", "through", "thoughts"]


def test_marks_above_the_first_part_are_its_marks() -> None:
    chart = chart_of(
        read("""
            count | 1   2   3   4   |
            mark  | >       P.M.--- |
            guitar
              6   | 0---3---5-------|
        """)
    )
    first, *_ = chart.parts[0].voices[0]
    assert first.marks == ("accent",)
    assert [stretch.kind for stretch in chart.parts[0].stretches] == ["palm mute"]


def test_a_mistyped_drum_is_one_fault_and_so_is_a_second_row_of_one() -> None:
    reading = read("""
        count | 1   2   3   4   |
        drums
          HX  | x---x---x---x---|
    """)
    assert faults(reading) == ["row-unknown 3:3-5"]
    reading = read("""
        count | 1   2   3   4   |
        drums
          SD  | x---x---x---x---|
          sd  | --x-------------|
    """)
    assert faults(reading) == ["row-double 4:3-5"]

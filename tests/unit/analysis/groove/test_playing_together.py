"""Bass and bass drum, parts in one rhythm, call and response."""

from fractions import Fraction

from unit.analysis.groove.rhythms import facts_of, rhythm_chart, sentences_of, texts_of


def test_the_bass_is_counted_against_the_bass_drum_both_ways() -> None:
    facts = facts_of(rhythm_chart({"bass": "x-x-x-x-", "BD": "x--x--x-"}))
    assert facts["bass.with-kick-share"].value == Fraction(2, 3)
    assert facts["bass.on-kick-share"].value == Fraction(1, 2)
    assert [place.beat for place in facts["bass.with-kick-share"].evidence] == [1, 4]


def test_one_rhythm_of_bass_and_bass_drum_is_told() -> None:
    rows = {"bass": "x--x--x-|x--x--x-", "BD": "x--x--x-|x--x--x-"}
    assert "The bass and the bass drum play the same rhythm." in sentences_of(rhythm_chart(rows))


def test_a_bass_in_even_notes_over_an_even_bass_drum_is_not_told() -> None:
    rows = {"bass": "x-x-x-x-|x-x-x-x-", "BD": "x-x-x-x-|x-x-x-x-"}
    assert not [s for s in sentences_of(rhythm_chart(rows)) if s.startswith("The bass and")]
    eighths = {"bass": "xxxxxxxx|xxxxxxxx", "BD": "x---x---|x---x---"}
    assert sentences_of(rhythm_chart(eighths)) == []


def test_the_bass_note_that_meets_the_snare_is_told() -> None:
    rows = {"bass": "x--x--x-|x--x--x-", "BD": "x--x----|x--x----", "SD": "------x-|------x-"}
    start = "Every hit of the bass drum has a note of the bass with it"
    assert f"{start}; the bass meets the snare on 4." in sentences_of(rhythm_chart(rows))
    del rows["SD"]
    assert f"{start}; the bass is without it on 4." in sentences_of(rhythm_chart(rows))


def test_shares_between_parts_say_of_whom_they_are() -> None:
    facts = facts_of(rhythm_chart({"guitar": "x-x-x-x-", "bass": "x---x---"}))
    assert facts["guitar.with-bass-share"].value == 1
    assert facts["bass.with-guitar-share"].value == Fraction(1, 2)
    assert facts["bass.with-guitar-share"].unit == "of the guitar"


def test_parts_in_one_rhythm_are_told_unless_it_is_even() -> None:
    facts = facts_of(rhythm_chart({"guitar": "x--x--xx", "bass": "x--x--xx", "voice": "x-------"}))
    assert facts["same-rhythm"].text == "guitar and bass"
    assert facts["same-rhythm"].sentence == "Guitar and bass move in the same rhythm."
    even = facts_of(rhythm_chart({"guitar": "x-x-x-x-", "bass": "x-x-x-x-"}))
    assert even["same-rhythm"].sentence == ""


def test_a_part_that_plays_in_the_rests_of_the_voice_answers_it() -> None:
    rows = {"voice": "xxxxr---|xxx-r---", "lead": "r---xxxx|r-----xx"}
    facts = facts_of(rhythm_chart(rows))
    assert facts["lead.answers"].value == 2
    told = "The lead answers the voice in its rests, in bars 1 and 2."
    assert facts["lead.answers"].sentence == told


def test_a_part_that_also_plays_under_the_voice_does_not_answer() -> None:
    under = {"voice": "xxxxr---|xxx-r---", "lead": "x---xxxx|r-----xx"}
    held = {"voice": "xxxxr---|xxx-----", "lead": "r---xxxx|r-----xx"}
    once = {"voice": "xxxxr---|xxx-r---", "lead": "r---xxxx|r-------"}
    for rows in (under, held, once):
        assert "lead.answers" not in texts_of(rhythm_chart(rows))

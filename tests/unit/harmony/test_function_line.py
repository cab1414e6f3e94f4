"""What chords are in a progression, before it is written as numerals."""

from sitegen.harmony import function_line, read_chord, roman_line


def test_an_applied_chord_has_its_target_and_its_answer() -> None:
    _, applied, answer = function_line(["C", "D7", "G7"], "C major")
    assert applied is not None
    assert answer is not None
    assert applied.target is not None
    assert (applied.target.numeral, str(applied.target.name)) == ("V", "G")
    assert applied.answer == read_chord("G7")
    assert (answer.target, answer.answer) == (None, None)


def test_an_augmented_sixth_has_its_name() -> None:
    functions = function_line(["Cm", "Ab7", "G"], "C minor")
    assert [function.sixth for function in functions if function] == ["", "Ger65", ""]


def test_silence_has_no_function_and_is_read_across() -> None:
    functions = function_line(["D7", "N.C.", "G"], "C major")
    assert functions[1] is None
    assert functions[0] is not None
    assert functions[0].answer == read_chord("G")


def test_its_numerals_are_those_of_the_line() -> None:
    chords = ["C", "C", "Gm7", "C7", "N.C.", "F", "Db7", "C"]
    functions = function_line(chords, "C major")
    numerals = tuple(function.numeral if function else "" for function in functions)
    assert numerals == roman_line(chords, "C major")

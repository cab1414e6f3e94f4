"""A drum part as a grid of counts."""

from unit.charts.reading_aloud import chart_of, read

from sitegen.figures.drum_grid import GridRow, drum_grid

GROOVE = """
    show: drums, grid

    count | 1   &   2   &   3   &   4   &   | 1 e & a 2   3   4   |
    drums
      HH  | x---x---x---x---x---x---x---O---| x-x-x-x-x---x---x---|
      SD  | --------X-------g-------X---f---| --------o-------b---|
      BD  | x-----------x---x---------------| x-------------------|
"""


def test_a_beat_has_as_many_columns_as_its_hits_ask_for() -> None:
    first, second = drum_grid(chart_of(read(GROOVE)))
    assert first.counts == ("1", "&", "2", "&", "3", "&", "4", "&")
    assert second.counts == ("1", "e", "&", "a", "2", "3", "4")


def test_hits_stand_in_their_columns_with_the_signs_they_are_typed_in() -> None:
    first, _ = drum_grid(chart_of(read(GROOVE)))
    assert first.rows == (
        GridRow("hi-hat", ("x", "x", "x", "x", "x", "x", "x", "O")),
        GridRow("snare drum", ("", "", "X", "", "g", "", "X", "f")),
        GridRow("bass drum", ("x", "", "", "x", "x", "", "", "")),
    )


def test_a_pickup_is_counted_from_its_first_beat() -> None:
    pickup, _ = drum_grid(
        chart_of(
            read("""
                count | 4   | 1   2   3   4   |
                drums
                  SD  | o---| o---------------|
            """)
        )
    )
    assert (pickup.number, pickup.counts) == (0, ("4",))


def test_without_drums_there_is_no_grid() -> None:
    chart = chart_of(read("count | 1   2   3   4   |\nvoice | C4              |"))
    assert drum_grid(chart) == ()

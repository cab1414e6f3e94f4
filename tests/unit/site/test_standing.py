"""What is kept of a build is left where it cannot be written."""

from pathlib import Path

from sitegen.site.order import Order
from sitegen.site.snapshot import Stamp
from sitegen.site.standing import find_standing, known_inputs, write_standing


def test_a_name_whose_bytes_are_no_text_keeps_nothing_and_stops_nothing(tmp_path: Path) -> None:
    order = Order(tmp_path / "content", tmp_path / "out", (), cache=tmp_path / "cache")
    stray = {"content/a\udcff.png": Stamp(1, 1, "hash")}

    write_standing(order, [order.content], stray, [], "1 page", failed=False)

    assert find_standing(order) is None
    assert known_inputs(order) == {}

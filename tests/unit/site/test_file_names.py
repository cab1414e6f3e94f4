"""Names that some system cannot hold (Windows, "Naming Files, Paths, and Namespaces")."""

import pytest

from sitegen.site.file_names import LONGEST_NAME, find_name_fault


@pytest.mark.parametrize(
    "name",
    ["con", "NUL", "aux.png", "Com1.svg", "lpt9", "a/prn/b.png", "x.", "x ", " x", ".htaccess",
     "a:b", "a?", "a|b", 'a"b', "a\\b", "a*b", "a<b", "a\x01", "a\u202egnp.exe",
     "x" * (LONGEST_NAME + 1), "𝄞" * 60],
)  # fmt: skip
def test_a_name_that_some_system_cannot_hold_has_a_fault(name: str) -> None:
    assert find_name_fault(name)


@pytest.mark.parametrize(
    "name",
    ["console", "stage.png", "my stage.png", "com10", "קול", "für/é.svg", "x" * LONGEST_NAME],
)
def test_other_names_are_free(name: str) -> None:
    assert find_name_fault(name) == ""

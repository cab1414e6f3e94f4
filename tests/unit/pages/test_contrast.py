"""The theme's colours against WCAG 2.2, success criterion 1.4.3 (contrast at least 4.5 to 1).

Relative luminance and contrast ratio as WCAG 2.2 defines them:
https://www.w3.org/TR/WCAG22/#dfn-relative-luminance and #dfn-contrast-ratio.
"""

import re
from pathlib import Path

import pytest

STYLES = Path(__file__).parents[3] / "themes" / "liner" / "styles"
LEAST = 4.5
GROUNDS = {
    "ink": ("paper", "sheet", "plan-1", "plan-2", "plan-3", "plan-4"),
    "faded": ("paper", "sheet"),
    "accent": ("paper", "sheet"),
    "tension": ("paper", "sheet"),
    "on-label": ("label",),
}
PAIRS = [(text, ground) for text, grounds in GROUNDS.items() for ground in grounds]


def luminance(colour: str) -> float:
    digits = colour.removeprefix("#")
    if len(digits) == 3:
        digits = "".join(2 * digit for digit in digits)
    shares = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (
        share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def pairs_of_colours() -> list[tuple[str, str, str]]:
    """Return each colour's name with its value on a light page and on a dark one."""
    css = (STYLES / "10-tokens.css").read_text(encoding="utf-8")
    return re.findall(r"--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\);", css)


def printed_colours() -> dict[str, str]:
    css = (STYLES / "90-print.css").read_text(encoding="utf-8")
    return dict(re.findall(r"--([\w-]+):\s*(#[0-9a-fA-F]{3,6})\s*;", css))


SCHEMES = {
    "light": {name: light for name, light, _ in pairs_of_colours()},
    "dark": {name: dark for name, _, dark in pairs_of_colours()},
    "paper": printed_colours(),
}


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # The ends of the scale by the definition: 1 to 1 and 21 to 1.
        ("#fff", "#ffffff", 1.0),
        ("#000", "#fff", 21.0),
        # Worked by hand from the definition: (1.05) / (0.0722 + 0.05) and (0.2126 + 0.05) / 0.05.
        ("#0000ff", "#ffffff", 8.59),
        ("#ff0000", "#000000", 5.25),
    ],
)
def test_contrast_follows_the_definition(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("name", SCHEMES)
@pytest.mark.parametrize(("text", "ground"), PAIRS)
def test_text_can_be_read_on_its_ground(name: str, text: str, ground: str) -> None:
    colours = SCHEMES[name]
    assert contrast(colours[text], colours[ground]) >= LEAST


@pytest.mark.parametrize("name", ["light", "dark"])
def test_a_colour_too_pale_for_text_is_seen(name: str) -> None:
    colours = SCHEMES[name]
    assert contrast(colours["hairline"], colours["paper"]) < LEAST


@pytest.mark.parametrize("name", ["dark", "paper"])
def test_every_scheme_sets_every_colour(name: str) -> None:
    assert SCHEMES[name].keys() == SCHEMES["light"].keys()


def test_text_has_no_colour_but_those_that_are_measured() -> None:
    used = {
        name
        for path in STYLES.glob("*.css")
        for name in re.findall(r"(?<![\w-])color:\s*([^;]+);", path.read_text(encoding="utf-8"))
    }
    # What is pressed stands in paper's colour on ink: the same pair the other way round.
    assert used <= {"inherit", "var(--paper)", *(f"var(--{text})" for text in GROUNDS)}
    assert "var(--ink)" in used

"""How wide short texts are, in the text face that verovio measures with."""

# Advance widths in thousandths of the size (Adobe's metrics of Times Roman, from memory).
_WIDTHS = {
    **dict.fromkeys("0123456789xgn", 500),
    **dict.fromkeys("()r", 333),
    **dict.fromkeys("<>", 564),
    **dict.fromkeys("lti", 278),
    **dict.fromkeys(" .", 250),
    "P": 556,
    "M": 889,
    "e": 444,
}
_USUAL = 500


def text_width(text: str, size: float) -> float:
    """Return the width of a line of text in the unit of `size`, close enough to keep clear of."""
    return sum(_WIDTHS.get(char, _USUAL) for char in text) * size / 1000

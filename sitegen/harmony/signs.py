"""The signs that writers type in chord symbols, each brought to one form of the same length."""

# One character for one, so that an index into the plain text is an index into the written one.
_ALIKE = {
    "b": "♭",
    "#": "♯＃",
    "-": "\u2212\u2013\u2010\u2011\u2012\u2014",
    "Δ": "\u2206\u25b3\u25b5",
    "°": "º˚ᵒ",
    "ø": "Ø∅⌀",
    "/": "\u2044\u2215",
    " ": "\u00a0\u2009\u202f",
    **dict(zip("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹", strict=True)),
}
_PLAIN = str.maketrans({sign: plain for plain, signs in _ALIKE.items() for sign in signs})


def plain(text: str) -> str:
    """Return `text`, as long as before, with b # - Δ ° ø for all their look-alikes.

    U+2212 MINUS and the dashes are -, ♭ is b; ♮ 𝄫 𝄪 stay.
    """
    return text.translate(_PLAIN)

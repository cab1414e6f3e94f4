"""What is wrong with a chord symbol, and where in it."""


class ChordSymbolError(ValueError):
    """Text that is no chord symbol.

    `code` is a code of the catalogue; `message` names the fault and `hint` says what helps;
    `start` and `end` are code-point offsets of the faulty part within the text.
    """

    def __init__(self, code: str, message: str, start: int, end: int, hint: str = "") -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.start = start
        self.end = end
        self.hint = hint

"""What a command cannot do as asked: wrong usage, not a fault in the content."""


class RefusedError(Exception):
    """The command cannot be followed; the message is for the user."""

"""What a command cannot do as asked: wrong usage, not a fault in the content."""


class RefusedError(Exception):
    """The command cannot be followed; the message is for the user."""


def reason_of(wrong: OSError) -> str:
    """Return the system's reason as it stands within a sentence."""
    reason = wrong.strerror or str(wrong)
    return f"{reason[:1].lower()}{reason[1:]}"

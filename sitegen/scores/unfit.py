"""Why a score that was read cannot be used."""


class UnfitScoreError(Exception):
    """A score that was read and cannot be used; the text says why."""

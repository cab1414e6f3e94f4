"""Which write-ups belong together by their music, and the reason in words."""

from sitegen.finding.kinship.kin import Kin, find_kin

__all__ = ["Kin", "find_kin"]

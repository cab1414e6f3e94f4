"""The exact number that time is counted in: every room takes it from here."""

from fractions import Fraction

__all__ = ["Fraction"]

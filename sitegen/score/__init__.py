"""The musical values that every room speaks in: frozen, without I/O.

Time is exact: a `fractions.Fraction`, counted in quarter notes from the start of the chart.
"""

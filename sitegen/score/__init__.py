"""The musical values that every room speaks in: frozen, without I/O, pure standard library.

Time is exact: a `Fraction`, counted in quarter notes from the start of the chart.
"""

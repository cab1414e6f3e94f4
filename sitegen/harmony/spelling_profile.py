"""What speaks for the sharp name, and what for the flat name, of a note outside its signature.

The weights were estimated by logistic regression from two of every three pieces, with one
signature throughout, of the four collections named in `key_profiles`; positive ones speak for the
sharp. They agree with what books on harmony teach: a note that goes up by a semitone is sharp,
one that goes down by a semitone is flat, and a note that sounds a major third below calls for the
sharp, one a fourth below for the flat.
"""

USUAL = (3.7, 1.5, 0.5, -1.8, -4.4)
"""For the ♯4 (or ♭5) of the signature's major key, its ♯1, ♯5, ♯2 and ♯6: its usual name."""

NEXT = {1: 1.3, -1: -2.0}
"""For the semitones up to the very next note."""
PREVIOUS = {1: 0.4, -1: -0.1}
"""For the semitones up to the note just before."""
GOAL = {-2: 1.7, -1: -0.6, 1: 3.1, 2: -0.1}
"""For the semitones up to the first later note that lies at most a whole tone away."""
SOURCE = {-2: 2.2, -1: 0.5, 1: 1.3, 2: -1.1}
"""For the semitones up to the last earlier note that lies at most a whole tone away."""

SURROUNDINGS = (-0.3, 7.6, -6.2, 5.5, -2.1, 1.3, 0.7, -4.8, 6.8, -7.5, 3.5, -5.7)
"""For the share that each pitch class, from the note's own up, has of the notes around it."""

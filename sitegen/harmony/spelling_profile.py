"""What speaks for the sharp name, and what for the flat name, of a note outside its signature.

The weights were estimated by logistic regression from two of every three of the chorales
harmonised by Bach and of the tunes of Ryan's Mammoth Collection, and from samples of O'Neill's
Music of Ireland (two of every twelve) and Aird's Airs (two of every nine); positive ones speak
for the sharp. They agree with what books on harmony teach: a note that goes up by a semitone is
sharp, one that goes down by a semitone is flat, and a note that sounds a major third below calls
for the sharp, one a fourth below for the flat.
"""

USUAL = (4.3, 2.0, 0.9, -0.6, -4.1)
"""For the ♯4 (or ♭5) of the signature's major key, its ♯1, ♯5, ♯2 and ♯6: its usual name."""

NEXT = {1: 0.7, -1: -1.8}
"""For the semitones up to the very next note."""
PREVIOUS = {1: 0.8, -1: -1.0}
"""For the semitones up to the note just before."""
GOAL = {-2: 0.9, -1: -1.0, 1: 2.8, 2: -0.9}
"""For the semitones up to the first later note that lies at most a whole tone away."""
SOURCE = {-2: 1.2, -1: -0.6, 1: 0.8, 2: -1.7}
"""For the semitones up to the last earlier note that lies at most a whole tone away."""

SURROUNDINGS = (-0.9, 2.6, -3.1, 2.5, -0.8, 0.5, 0.2, -1.9, 3.9, -1.8, 1.8, -0.6)
"""For the share that each pitch class, from the note's own up, has of the notes around it."""

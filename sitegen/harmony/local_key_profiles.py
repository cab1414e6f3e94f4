"""What one beat of music says for the key that holds there.

The weights were estimated by a linear-chain conditional random field over the 24 major and
minor keys (Lafferty, McCallum and Pereira 2001; from memory) from the keys that the analysts of
music21's Bach chorales and Monteverdi madrigals marked, beat by beat: the first two of every three
pieces. `tests/bench/estimate_local_keys.py` holds the procedure. They speak of shorter stretches
than `key_profiles`, and know neither beginning nor end.
"""

Weights = dict[str, tuple[float, ...]]

PRESENCE: Weights = {
    "major": (0.83, -0.92, 0.91, -0.52, 0.72, 0.96, -1.25, 0.68, -1.06, 0.07, -2.19, 0.17),
    "minor": (1.17, -1.05, 0.88, -0.24, -0.87, 0.53, -0.55, 0.92, -0.43, -0.83, -0.79, -0.38),
}
"""The weight of each degree, from the tonic up in semitones, that sounds in a beat."""
BASS: Weights = {
    "major": (-0.09, -1.61, -0.61, -0.53, 0.08, -0.29, -0.37, 0.0, 0.05, 0.1, 0.08, 0.45),
    "minor": (0.59, 0.49, 0.36, 1.02, -0.03, 0.26, 0.64, 0.55, 0.86, -0.1, 0.54, 0.33),
}
"""The weight of the lowest degree that sounds in a beat."""
CHANGE_COST = 3.5
"""What a change of key costs, in the same natural units of log-odds.

The field by itself asks 4.6 and finds too few changes; 3.5 gives the most beats their key when the
three collections count alike (from 2.5, 3.0, 3.5, 4.7 and 6.0, on the same pieces).
"""
CERTAINTY = 0.75
"""A stretch is as sure as so much of its sums, over the root of its beats."""

"""How well each of the twelve notes fits a key: ratings from listening experiments."""

# Krumhansl and Kessler (1982), Tracing the dynamic changes in perceived tonal organization in a
# spatial representation of musical keys, Psychological Review 89: mean ratings of probe tones,
# from the tonic up in semitones. From memory of the printed table.
MAJOR_PROFILE = (6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88)
MINOR_PROFILE = (6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17)

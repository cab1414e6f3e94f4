"""What a chart's notes and chords do: named against each other, counted, compared. Pure."""

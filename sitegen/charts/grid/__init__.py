"""The aligned rows of a `notation` block: time by text columns under a count row."""

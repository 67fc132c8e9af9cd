"""Tables of one operation: CSV in, the same rows with their results out."""

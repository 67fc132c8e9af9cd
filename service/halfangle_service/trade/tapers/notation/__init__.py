"""How a drawing writes the angle of a taper, read: one grammar, and nothing guessed."""

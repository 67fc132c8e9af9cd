"""The searches behind a stack, on integers of 0.1 nm, by counted work."""

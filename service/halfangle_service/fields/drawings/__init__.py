"""A drawing that an answer has where it is asked for."""

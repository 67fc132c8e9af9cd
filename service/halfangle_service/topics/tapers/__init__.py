"""Tapers: dimensions, standard series, and what follows from them."""

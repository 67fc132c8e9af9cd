"""Curves: an operation over a range of one or two of its numbers, in one call, as arrays."""

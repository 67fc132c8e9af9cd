"""Tolerances of sine bars and plates by standard."""

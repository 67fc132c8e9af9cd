"""Definitions of runout, coaxiality and concentricity by standard."""

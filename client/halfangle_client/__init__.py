"""Typed client of Halfangle, the service of toolroom calculations."""

__version__ = "0.1.0"

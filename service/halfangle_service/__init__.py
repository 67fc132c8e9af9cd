"""Halfangle: toolroom calculations with their limits, error budget and source."""

#: The release of the calculations. It is part of every answer: the same request at the same
#: release gives the same bytes.
__version__ = "0.2.0"

"""Cones and tapers: measuring, feeding, reading a drawing's callout."""

"""Measuring tools of the bench: bores, angles past 45°, small angles, squares, lever indicators."""

"""Sine bars and sine plates: from an angle to a height and back."""

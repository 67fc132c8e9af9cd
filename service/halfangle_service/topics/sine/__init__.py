"""Sine bars and sine plates: settings, stacks, tapers, compound plates, errors of the angle."""

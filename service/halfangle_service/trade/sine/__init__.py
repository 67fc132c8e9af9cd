"""Sine bars and plates: settings, compound plates, low stacks, angle errors."""

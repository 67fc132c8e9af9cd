"""Inspection: what to expect of a check, what a measurement proves, and angles off a profile."""

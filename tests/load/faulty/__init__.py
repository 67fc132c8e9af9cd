"""Faults that a service meets in years of use, each tried on one of its own."""

"""Calibration by comparison, comparison through drift, and what time does to a calibration."""

"""Means of measuring an angle, a taper or a runout: what to expect, what each proves, what not."""

"""The grinding wheel: dressing an angle, and what that does to the work."""

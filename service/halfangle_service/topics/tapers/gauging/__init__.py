"""Tapers, vees and dovetails gauged over rolls, over balls and by depth."""

"""Runout: indicate an axis true, budget what is left, tell socket from part."""

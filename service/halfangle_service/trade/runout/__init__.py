"""Runout: readings, reversal, conversion, budgets."""

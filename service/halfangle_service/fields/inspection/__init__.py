"""Means of measuring as requests state them, and what each comes to as answers write it."""

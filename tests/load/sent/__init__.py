"""Requests made to be sent: known ones of every operation, and hostile ones."""

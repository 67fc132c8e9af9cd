"""Clearance of each way through the whole stroke and a full turn, a file a kind of set-up.

`answer` is what is asked of the room and answered, `under` what all set-ups share, `every` picks
the set-up of a way.
"""

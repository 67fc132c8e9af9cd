"""Published tables, transcribed a second time apart from the service's own, and held against them.

The transcriptions are `tests/published/tables/`, each with its source in its head. What is here
compares one table as the service loads it, cell by cell, and gives the differences as text, none
where all is held; `every.py` names the check of each of the service's files.
"""

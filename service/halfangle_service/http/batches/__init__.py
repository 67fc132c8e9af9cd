"""Many requests in one: rows of any operations, answered in order while they still arrive."""

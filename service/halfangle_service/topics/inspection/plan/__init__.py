"""One subject, an inspection planned: too much for one file, so each part has one.

`feature` is the part with its tolerances, `at_hand` the means there are, `plate` the one that a
stack sets, `result` what is answered; `plan` puts them together and declares the operation.
"""

"""One subject, an inspection planned: too much for one file, so each part has one.

`request` is what is asked, `feature` the part with its tolerances, `plate` the means that a stack
sets and `reached` what comes of it, `result` what is answered; `plan` puts them together with the
means of `fields/inspection`, and declares the operation.
"""

"""A whole job planned: every way that the shop has for a feature, proved and ranked.

`plan` is what is asked and answered, and the operation. `features` is what is wanted, `shop/`
what the shop has, `ways/` one file a way with its settings, stacks and budget, `result` how a way
is answered, `ranking` the one rule by which they are ordered.
"""

"""One subject, a center ground on a sine plate: a plan of one way.

`plan` is what is asked, and the operation; `result` how it is answered: the figures of that way, as
`jobs.plan` has them, under the names of a center. `advice` is what a hand would add.
"""

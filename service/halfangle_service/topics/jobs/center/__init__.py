"""One subject, a center ground on a sine plate: too much for one file, so each part has one.

`plan` is what is asked and answered, and the operation; it puts together what the other files each
ask, answer and work out: `shank`, `setting` (plate and stack), `angle_budget`, `runout_budget`,
`downfeed`, `steps` and `checks`.
"""

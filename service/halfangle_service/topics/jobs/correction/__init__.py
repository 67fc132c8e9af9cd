"""What was measured after grinding, and the change of the set-up that mends it.

What is asked stands in `request`, what is answered in `result`. `measured` reads a deviation out of
an angle or a contact; `one_angle` and `settings` change the set-up of one, `compound` that of two;
`seats` tells socket from part, `causes` ranks what it may have been, `advice` says what to mind;
`correction` is the operation.
"""

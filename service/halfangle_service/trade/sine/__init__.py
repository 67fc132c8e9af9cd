"""Sine bars and plates: settings, tapers on them, compound plates, stacks, errors of the angle.

- `geometry`: the sine relation of one plate, and what follows from it at once
- `setting_table`: the same for a range of angles, as columns and as CSV
- `taper_holding`: a taper on a plate, between centers, on its generator, in a vee
- `compound`: a two-axis plate and the surface on it; `compound_stacks`, `compound_drawing`
- `low_stack`: one set's blocks under both rolls; `block_swap`: which of a stack to change
- `angle_model`: what turns a set-up's angle away; `angle_error`: its budget; `angle_requirements`:
  the budget turned round, to what must be held
"""

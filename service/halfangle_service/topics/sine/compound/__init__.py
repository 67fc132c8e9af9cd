"""A compound (two-axis) sine plate: its settings, the surface on it, the work and its stacks."""

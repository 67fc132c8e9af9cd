"""Stacks of gauge blocks: what is asked of the box, and what stack answers it."""

"""Gauge blocks: stacks from the blocks that a shop owns."""

"""Stacks of gauge blocks: what is asked of the box, and what stack answers it.

What is asked: one stack (`one_stack`), several at once (`several`), whether a stack as wrung is
right (`wrung`, with the single mistakes of `mistakes`), how far its height may be off
(`height_budget`). What answers: the fewest blocks by nominal size (`choosing`), the nearest by
measured size (`nearest`), angle blocks added and subtracted (`angle_blocks`, and which of those
alike in `angle_pieces`). `supply` is the box that all of them build from; `search` holds the
searches behind them.
"""

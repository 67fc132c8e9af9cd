"""A stack's sizes beside it, each led to its block; millimetres on paper."""

from collections.abc import Sequence

from halfangle_service.trade.drawing.marks import ABOVE_AND_BELOW, TEXT, Point, Words
from halfangle_service.trade.drawing.metrics import ABOVE, text_width
from halfangle_service.trade.drawing.notes import LEADING
from halfangle_service.trade.drawing.sheet import Sheet

#: Leaders: how far the words stand off the stack, and the level bit beside them.
OFF, _SHOULDER, _SPACE = 8.0, 2.0, 0.8


def ladder_width(lines: Sequence[str], heading: str) -> float:
    """Width that a ladder takes beside its stack, with its leaders."""
    widths = (*(text_width(line, TEXT) for line in lines), text_width(heading, TEXT, bold=True))
    return OFF + _SPACE + max(widths)


def draw_ladder(
    sheet: Sheet,
    levels: Sequence[float],
    lines: Sequence[str],
    edge: float,
    heading: str,
    lowest: float,
    *,
    left: bool = False,
) -> None:
    """Write a stack's heading, and under it each block's size from the top down.

    `levels` are the blocks' middles on paper from the top down, `edge` the side of the stack beside
    which they are written, `lowest` the level under which none should stand where that can be.
    """
    steps = _spread([*levels], lowest - ABOVE_AND_BELOW / 2.0)
    sign = -1.0 if left else 1.0
    start = edge + sign * (OFF + _SPACE)
    for level, step, line in zip(levels, steps, lines, strict=True):
        elbow: Point = (edge + sign * (OFF - _SHOULDER), step)
        sheet.line([(edge, level), elbow, (edge + sign * OFF, step)], "thin")
        sheet.write(_words(line, start, step, left=left))
    top = (steps[0] if steps else lowest) - LEADING
    sheet.write(_words(heading, start, top, left=left, bold=True))


def _words(text: str, start: float, middle: float, *, left: bool, bold: bool = False) -> Words:
    x = start - text_width(text, TEXT, bold=bold) if left else start
    return Words(text, (x, middle + (ABOVE - 0.5) * TEXT), TEXT, bold)


def _spread(levels: list[float], lowest: float) -> list[float]:
    """Levels a line apart, as near their own as can be: the middle of each crowd stays."""
    crowds: list[list[float]] = []
    for level in levels:
        crowds.append([level])
        while len(crowds) > 1 and _first(crowds[-1]) - _last(crowds[-2]) < LEADING:
            last = crowds.pop()
            crowds[-1] += last
    steps = [_first(crowd) + LEADING * k for crowd in crowds for k in range(len(crowd))]
    over = max(0.0, steps[-1] - lowest) if steps else 0.0
    # What would stand too low pushes up what is above it, and no more than that.
    for place in range(len(steps) - 1, -1, -1):
        limit = lowest if place == len(steps) - 1 else steps[place + 1] - LEADING
        steps[place] = min(steps[place], limit) if over else steps[place]
    return steps


def _first(crowd: list[float]) -> float:
    return sum(crowd) / len(crowd) - LEADING * (len(crowd) - 1) / 2.0


def _last(crowd: list[float]) -> float:
    return _first(crowd) + LEADING * (len(crowd) - 1)

"""A stack's sizes beside it, each led to its block; millimetres on paper."""

from collections.abc import Sequence

from halfangle_service.trade.drawing.marks import TEXT, Words
from halfangle_service.trade.drawing.metrics import ABOVE, text_width
from halfangle_service.trade.drawing.notes import LEADING
from halfangle_service.trade.drawing.sheet import Sheet

#: Leaders: how far the words stand off the stack, and the level bit beside them.
OFF, _SHOULDER, _SPACE = 6.0, 1.5, 0.8
#: How far the whole is moved, down or up, until it lies free; not at all where it never does.
_SHIFTS = (*(sign * 4.0 * step for step in range(10) for sign in (1.0, -1.0)), 0.0)


def ladder_width(lines: Sequence[str], heading: str) -> float:
    """Width that a ladder takes beside its stack, with its leaders."""
    widths = (*(text_width(line, TEXT) for line in lines), text_width(heading, TEXT, bold=True))
    return OFF + 1.0 + _SPACE + max(widths)


def draw_ladder(
    sheet: Sheet,
    levels: Sequence[float],
    lines: Sequence[str],
    sides: tuple[float, float],
    heading: str,
    *,
    left: bool = False,
) -> None:
    """Write a stack's heading, and under it each block's size from the top down.

    `levels` are the blocks' middles on paper from the top down; `sides` that of the stack and the
    one to which the leaders run level, so that they cross nothing that ends there.
    """
    edge, end = sides
    sign = -1.0 if left else 1.0
    knee = sign * max(sign * edge, sign * end + 1.0)
    start = knee + sign * OFF
    steps = _spread(levels)
    first = start + sign * _SPACE
    for shift in _SHIFTS:
        moved = [step + shift for step in steps]
        words = [
            _words(line, first, step, left=left) for line, step in zip(lines, moved, strict=True)
        ]
        if heading:
            words.append(_words(heading, first, moved[0] - LEADING, left=left, bold=True))
        if sheet.room.all_free([box for one in words for box in one.boxes()], 0.3):
            break
    for level, step in zip(levels, moved, strict=True):
        elbow = (start - sign * _SHOULDER, step)
        sheet.line([(edge, level), (knee, level), elbow, (start, step)], "thin")
    for one in words:
        sheet.write(one)


def _words(text: str, start: float, middle: float, *, left: bool, bold: bool = False) -> Words:
    x = start - text_width(text, TEXT, bold=bold) if left else start
    return Words(text, (x, middle + (ABOVE - 0.5) * TEXT), TEXT, bold)


def _spread(levels: Sequence[float]) -> list[float]:
    """Levels a line apart, as near their own as can be: the middle of each crowd stays."""
    crowds: list[list[float]] = []
    for level in levels:
        crowds.append([level])
        while len(crowds) > 1 and _first(crowds[-1]) - _last(crowds[-2]) < LEADING:
            last = crowds.pop()
            crowds[-1] += last
    return [_first(crowd) + LEADING * place for crowd in crowds for place in range(len(crowd))]


def _first(crowd: list[float]) -> float:
    return sum(crowd) / len(crowd) - LEADING * (len(crowd) - 1) / 2.0


def _last(crowd: list[float]) -> float:
    return _first(crowd) + LEADING * (len(crowd) - 1)

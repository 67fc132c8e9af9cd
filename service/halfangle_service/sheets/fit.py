"""How large a sheet's text can be so that all of it finds room on one page.

Heights are estimated, since the page must be the same where no font is at hand. The estimate is
rather too high than too low: a test makes the pages of many sheets and counts them.
"""

import math
from collections.abc import Iterable, Sequence

from halfangle_service.sheets.model import Check, Fact, Log, Paper, Sheet, Stack, Step
from halfangle_service.trade.drawing.metrics import text_width

#: Words in Arial, or in what has its widths, beside the drawings' type; what the ragged end of a
#: line leaves free, as a share of the size.
_REGULAR, _BOLD, _RAGGED = 0.87, 0.82, 1.3
#: Cautions of a step beside the step itself.
_SMALLER = 0.9
_MM_PER_POINT = 25.4 / 72.0
#: How much too high full pages are estimated.
_TOO_HIGH = 1.045
#: Height of a line, as a share of its size.
LINE = 1.18
#: Width and height within the margins of 10 and 7 mm, in millimetres.
PAPER_MM: dict[Paper, tuple[float, float]] = {"a4": (190.0, 283.0), "letter": (195.9, 265.4)}


#: Sizes in points that are tried, the largest first; where none fits, the last, and a second page.
SIZES = (
    10.0,
    9.4,
    8.2,
    7.8,
    7.4,
    7.1,
    6.8,
    6.6,
    6.4,
    6.2,
    6.0,
    7.2,
)


def size_for(sheet: Sheet, paper: Paper) -> float:
    """The largest size at which the sheet is one page of a paper."""
    width, room = PAPER_MM[paper]
    fits = (size for size in SIZES[:-1] if _height(sheet, size, width) <= _room(size, room))
    return next(fits, SIZES[-1])


def _room(size: float, room: float) -> float:
    """Room by estimate; the smallest type is tried where a finer estimate may still find some."""
    return room * (_TOO_HIGH if size == min(SIZES) else 1.0)


def in_two(steps: Sequence[Step]) -> int:
    """How many steps stand in the first of two columns of like height."""
    heights = [_step(step, 84.0, 8.0) for step in steps]
    half, before = sum(heights) / 2.0, 0.0
    for place, height in enumerate(heights):
        if before + height / 2.0 > half:
            return place
        before += height
    return len(steps)


def _lines(text: str, width: float, points: float, *, bold: bool = False) -> int:
    """Lines that a text takes in a width."""
    size = points * _MM_PER_POINT
    long = text_width(text, size, bold=bold) * (_BOLD if bold else _REGULAR)
    return 1 if long <= width else math.ceil(long / (width - _RAGGED * size))


def _text(text: str, width: float, points: float, *, bold: bool = False) -> float:
    """Height that a text takes in a width."""
    return _lines(text, width, points, bold=bold) * points * LINE * _MM_PER_POINT


def _height(sheet: Sheet, points: float, width: float) -> float:
    """Height of all that is on a sheet."""
    return sum(
        (
            _head(sheet, width),
            sum(_text(line, width - 10.0, 11.0, bold=True) + 1.0 for line in sheet.stops),
            18.0 if sheet.stops else 0.0,
            _top(sheet, width),
            _steps(sheet.steps, width, points),
            _checks(sheet.checks, width, points),
            _log(sheet.log, points),
            _titled(sheet.cautions, width, points),
            13.0 if sheet.blanks else 0.0,
            _rest(sheet, width, points),
            2.0,
        )
    )


def _head(sheet: Sheet, width: float) -> float:
    beside = width - 33.0
    title = _lines(sheet.title, beside, 19.0, bold=True) * 19.0 * 1.1 * _MM_PER_POINT
    judged = 8.0 if sheet.judgement else 0.0
    return max(27.0, 4.0 + title + _text(sheet.about, beside, 9.5) + judged + 2.5)


def _top(sheet: Sheet, width: float) -> float:
    drawing = sheet.drawing
    beside = (0.41 if drawing else 1.0) * width
    texts = 6.2 * len(sheet.figures) + _stacks(sheet.stacks, beside) + _facts(sheet.facts, beside)
    return 2.5 + max(texts, drawing.height + (4.0 if drawing.caption else 1.0) if drawing else 0.0)


def _stacks(stacks: Sequence[Stack], width: float) -> float:
    """Heights of the stacks; those under rolls are written large."""
    height = 0.0
    for stack in stacks:
        points, around, between = (10.0, 5.0, 7.6) if stack.spare else (17.0, 10.4, 9.2)
        size = points * _MM_PER_POINT
        words = "".join(one.size for one in stack.blocks) + stack.height * stack.spare
        marks = "".join(one.mark for one in stack.blocks)
        long = text_width(words, size, bold=True) * _BOLD + between * len(stack.blocks)
        long += text_width(marks, 6.5 * _MM_PER_POINT) * _REGULAR
        height += around + math.ceil(long / (width - _RAGGED * size)) * size * 1.2
    return height


def _facts(facts: Iterable[Fact], width: float) -> float:
    return sum(
        max(_text(fact.value, 0.7 * width, 7.6, bold=True), _text(fact.name, 0.27 * width, 7.6))
        + 0.5
        for fact in facts
    )


def _step(step: Step, width: float, points: float) -> float:
    """Height of a step; its cautions are written a little smaller, on lines of the same height."""
    cautions = "".join(f" {caution}" for caution in step.cautions)
    size = points * _MM_PER_POINT
    long = (text_width(step.action, size) + _SMALLER * text_width(cautions, size)) * _REGULAR
    lines = math.ceil(long / (width - 8.6 - _RAGGED * size))
    return lines * points * LINE * _MM_PER_POINT + 0.6


def _steps(steps: Sequence[Step], width: float, points: float) -> float:
    if not steps:
        return 0.0
    parted = in_two(steps)
    columns = (steps[:parted], steps[parted:])
    return 6.0 + max(sum(_step(step, 0.49 * width, points) for step in one) for one in columns)


def _checks(checks: Sequence[Check], width: float, points: float) -> float:
    if not checks:
        return 0.0
    points = min(points, 7.8)
    row = points * LINE * _MM_PER_POINT + 0.9
    height = 6.0 + 4.0
    for check in checks:
        named = _text(check.name + check.how, 0.3 * width, 0.94 * points)
        names = sum(_lines(one.name, 0.12 * width, points) - 1 for one in check.readings)
        height += max(row * len(check.readings) + names * (row - 0.9), named + 0.9)
    return height


def _log(log: Log | None, points: float) -> float:
    return 0.0 if log is None else 18.0 + points * LINE * _MM_PER_POINT + 8.0 * len(log.pieces)


def _titled(lines: Sequence[str], width: float, points: float) -> float:
    return 6.0 + sum(_text(line, width, points) + 0.5 for line in lines) if lines else 0.0


def _rest(sheet: Sheet, width: float, points: float) -> float:
    whole = (" ".join((text.title, *text.lines)) for text in sheet.rest)
    height = sum(_text(text, width, 0.92 * points) + 0.5 for text in whole)
    return height + 1.5 if sheet.rest else 0.0

"""How large a sheet's text can be so that all of it finds room on one page.

Heights are estimated, since the page must be the same where no font is at hand. A sign of Arial, or
of what stands in for it, is a little less than half of its size wide in running text. The estimate
is rather too high than too low: a test makes the pages of many sheets and counts them.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from halfangle_service.sheets.model import Check, Fact, Paper, Sheet, Stack, Step

#: Width of a sign of running text, and of a bold one, as shares of its size.
_SIGN, _BOLD = 0.48, 0.53
_MM_PER_POINT = 25.4 / 72.0
#: Height of a line, as a share of its size.
LINE = 1.22
#: Width and height within the margins of 10 and 8 mm, in millimetres.
PAPER_MM: dict[Paper, tuple[float, float]] = {"a4": (190.0, 281.0), "letter": (195.9, 263.4)}


@dataclass(frozen=True, slots=True)
class Size:
    """Size of the text in points, and the most height of the drawing in millimetres."""

    points: float
    drawing: float


#: What is tried, the largest first; the last is taken where nothing fits, and a second page with it.
SIZES = (
    Size(10.0, 110.0),
    Size(9.2, 96.0),
    Size(8.6, 88.0),
    Size(8.0, 78.0),
    Size(7.6, 72.0),
    Size(7.3, 66.0),
    Size(7.0, 62.0),
    Size(6.8, 58.0),
    Size(7.2, 66.0),
)


def size_for(sheet: Sheet, paper: Paper) -> Size:
    """The largest size at which the sheet is one page of a paper."""
    width, room = PAPER_MM[paper]
    return next((size for size in SIZES[:-1] if _height(sheet, size, width) <= room), SIZES[-1])


def in_two(steps: Sequence[Step]) -> int:
    """How many steps stand in the first of two columns of like height."""
    heights = [_step(step, 84.0, 8.0) for step in steps]
    half, before = sum(heights) / 2.0, 0.0
    for place, height in enumerate(heights):
        if before + height / 2.0 > half:
            return place
        before += height
    return len(steps)


def _lines(text: str, width: float, points: float, sign: float = _SIGN) -> int:
    """Lines that a text takes in a width."""
    return max(1, math.ceil(len(text) * sign * points * _MM_PER_POINT / width))


def _text(text: str, width: float, points: float, sign: float = _SIGN) -> float:
    """Height that a text takes in a width."""
    return _lines(text, width, points, sign) * points * LINE * _MM_PER_POINT


def _height(sheet: Sheet, size: Size, width: float) -> float:
    """Height of all that is on a sheet."""
    points = size.points
    return sum(
        (
            _head(sheet, width),
            sum(_text(line, width - 10.0, 11.0, _BOLD) + 1.0 for line in sheet.stops),
            18.0 if sheet.stops else 0.0,
            _top(sheet, size, width),
            _steps(sheet.steps, width, points),
            _checks(sheet.checks, width, points),
            _titled(sheet.cautions, width, points),
            13.0 if sheet.blanks else 0.0,
            _rest(sheet, width, points),
            5.0,
        )
    )


def _head(sheet: Sheet, width: float) -> float:
    beside = width - 33.0
    title = _lines(sheet.title, beside, 19.0, _BOLD) * 19.0 * 1.1 * _MM_PER_POINT
    judged = 8.0 if sheet.judgement else 0.0
    return max(30.0, 4.0 + title + _text(sheet.about, beside, 10.0) + judged + 2.5)


def _top(sheet: Sheet, size: Size, width: float) -> float:
    drawn = sheet.drawing is not None
    beside = (0.41 if drawn else 1.0) * width
    texts = _stacks(sheet.stacks, beside) + _facts(sheet.facts, beside)
    return 2.5 + max(texts, size.drawing + 4.0 if drawn else 0.0)


def _stacks(stacks: Sequence[Stack], width: float) -> float:
    """Heights of the stacks, the first of which is written large."""
    height = 0.0
    for place, stack in enumerate(stacks):
        points, around = (18.0, 11.5) if place == 0 else (12.0, 9.5)
        signs = sum(len(block.size) + len(block.mark) / 2.0 + 3.5 for block in stack.blocks)
        lines = math.ceil(signs * _BOLD * points * _MM_PER_POINT / width)
        height += around + lines * points * 1.2 * _MM_PER_POINT
    return height


def _facts(facts: Iterable[Fact], width: float) -> float:
    return sum(
        max(_text(fact.value, 0.64 * width, 8.0, _BOLD), _text(fact.name, 0.32 * width, 8.0)) + 0.6
        for fact in facts
    )


def _step(step: Step, width: float, points: float) -> float:
    whole = " ".join((step.action, *step.cautions))
    return _text(whole, width - 8.4, 0.97 * points) + 0.6


def _steps(steps: Sequence[Step], width: float, points: float) -> float:
    if not steps:
        return 0.0
    parted = in_two(steps)
    columns = (steps[:parted], steps[parted:])
    return 6.0 + max(sum(_step(step, 0.49 * width, points) for step in one) for one in columns)


def _checks(checks: Sequence[Check], width: float, points: float) -> float:
    if not checks:
        return 0.0
    row = points * LINE * _MM_PER_POINT + 0.9
    height = 6.0 + 4.0
    for check in checks:
        named = _text(check.name + check.how, 0.3 * width, 0.94 * points)
        names = sum(_lines(one.name, 0.12 * width, points) - 1 for one in check.readings)
        height += max(row * len(check.readings) + names * (row - 0.9), named + 0.9)
    return height


def _titled(lines: Sequence[str], width: float, points: float) -> float:
    return 6.0 + sum(_text(line, width, points) + 0.5 for line in lines) if lines else 0.0


def _rest(sheet: Sheet, width: float, points: float) -> float:
    whole = (" ".join((text.title, *text.lines)) for text in sheet.rest)
    height = sum(_text(text, width, 0.92 * points) + 0.5 for text in whole)
    return height + 1.5 if sheet.rest else 0.0

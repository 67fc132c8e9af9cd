"""Scales that a drawing may have, and the bar that stays true however it is printed.

Scales are ratios, paper over part; lengths on paper in millimetres.
"""

import math
from itertools import count

from halfangle_service.trade.units import Units, to_mm
from halfangle_service.trade.wording import plain

#: Steps of a decade: those of ISO 5455 (1, 2, 5) and, so that a sheet is filled, some between.
_STEPS = (1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0)
_BAR_STEPS = (5.0, 2.0, 1.0)
#: Bars on a sheet of true size, longest first.
_BARS: dict[Units, tuple[float, ...]] = {
    "in": (4.0, 2.0, 1.0, 0.5),
    "mm": (100.0, 50.0, 20.0, 10.0),
}


def scale_within(most: float) -> float:
    """The largest round scale that is no larger than `most`, paper over part.

    >>> scale_within(0.44), scale_within(1.9), scale_within(0.0301)
    (0.4, 1.5, 0.025)
    """
    if most >= 1.0:
        decade = 10.0 ** math.floor(math.log10(most))
        return max(step * decade for step in _STEPS if step * decade <= most * (1.0 + 1e-9))
    decade = 10.0 ** math.floor(math.log10(1.0 / most))
    rounds = (step * decade * more for more in (1.0, 10.0) for step in _STEPS)
    return 1.0 / min(n for n in rounds if n * most >= 1.0 - 1e-9)


def scale_words(scale: float) -> str:
    """Write a scale, paper over part.

    >>> scale_words(0.4), scale_words(20.0), scale_words(1.0)
    ('1 : 2.5', '20 : 1', '1 : 1')
    """
    return f"{plain(scale, 4)} : 1" if scale >= 1.0 else f"1 : {plain(1.0 / scale, 4)}"


def bar_within(most_mm: float, scale: float, units: Units) -> float:
    """Longest round length, in `units`, that takes no more than `most_mm` on paper.

    >>> bar_within(40.0, 0.5, "in"), bar_within(40.0, 0.5, "mm")
    (2.0, 50.0)
    """
    most = most_mm / to_mm(scale, units)
    top = math.floor(math.log10(most))
    lengths = (step * 10.0 ** (top - down) for down in count() for step in _BAR_STEPS)
    return next(length for length in lengths if length <= most * (1.0 + 1e-9))


def paper_bar(most_mm: float, units: Units) -> float:
    """Longest usual bar on paper, in `units`, of no more than so many millimetres.

    >>> paper_bar(120.0, "in"), paper_bar(120.0, "mm")
    (4.0, 100.0)
    """
    usual = _BARS[units]
    return next((bar for bar in usual if to_mm(bar, units) <= most_mm), usual[-1])

"""Total run-out: sections of one surface read with an indicator that is set once. In one unit.

Along a cylinder parallel to its axis, the reading of a section is its mean radius and what a turn
adds; the whole surface's highest less lowest reading is the total run-out (ISO 1101:2017).
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from halfangle_service.trade.decimals import tidy


@dataclass(frozen=True, slots=True)
class SurfaceRunout:
    """What readings of sections along a surface say.

    `slope` is the rise of the mean reading for a unit of length along the axis, least squares;
    `left` the range of the means about that line.
    """

    total: float
    circular: tuple[float, ...]
    means: tuple[float, ...]
    slope: float
    left: float


def surface_runout(stations: Sequence[float], sections: Sequence[Sequence[float]]) -> SurfaceRunout:
    """Total and circular run-out of sections at stations along the axis, all in one unit."""
    means = [float(np.mean(section)) for section in sections]
    tops = [max(section) for section in sections]
    bottoms = [min(section) for section in sections]
    places = np.asarray(stations, dtype=np.float64)
    away = places - places.mean()
    apart = np.ptp(places)
    # A mean is noisy in its last bits, and means alike have no slope.
    steepest = max(abs(mean) for mean in means) / float(apart)
    slope = tidy(float(away @ np.asarray(means)) / float(away @ away), steepest)
    line = np.asarray(means) - slope * away
    return SurfaceRunout(
        total=max(tops) - min(bottoms),
        circular=tuple(top - bottom for top, bottom in zip(tops, bottoms, strict=True)),
        means=tuple(means),
        slope=slope,
        left=tidy(float(np.ptp(line)), steepest * float(apart)),
    )

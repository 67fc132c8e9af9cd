"""Small angles as autocollimators and levels read them, in radians.

A reading in mm/m is a rise over a run: a tangent. In arc-seconds and microradians it is the angle.
"""

from typing import Literal

from halfangle_service.trade import elementary
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN

TiltUnit = Literal["arcsecond", "microradian", "mm-per-m"]


def tilt_of(reading: float, unit: TiltUnit) -> float:
    """Angle in radians of a reading."""
    if unit == "mm-per-m":
        return elementary.atan(reading / 1000.0)
    return reading / (ARCSEC_PER_RADIAN if unit == "arcsecond" else 1e6)


def apart(reading: float, turned: float, unit: TiltUnit) -> tuple[float, float]:
    """Tilt and the instrument's own zero error from readings before and after half a turn.

    Turned by half a turn the instrument reads the tilt the other way and its zero error the same.
    """
    one, other = tilt_of(reading, unit), tilt_of(turned, unit)
    return (one - other) / 2.0, (one + other) / 2.0

"""Eccentricities as complex vectors: modulus is the offset, argument where the center lies.

Lengths in one unit, directions in degrees. A runout by eccentricity is a TIR of twice the modulus.
An indicator reads highest where the metal comes nearest to it: on an external surface where the
center lies, in a bore opposite to it.
"""

import cmath
import math
from typing import Literal

Surface = Literal["external", "internal"]
#: A sum of vectors this small a part of what went into it is rounding of the arithmetic.
ROUNDING = 1e-12
#: Decimals of a direction in degrees that are no rounding of the arithmetic.
DECIMALS = 10


def vector(eccentricity: float, direction_degrees: float) -> complex:
    """The vector of an eccentricity and the direction in which the center lies."""
    return cmath.rect(eccentricity, math.radians(direction_degrees))


def direction(offset: complex) -> float | None:
    """Direction of a vector in degrees, from 0 to below 360; None of nothing."""
    return _in_one_turn(cmath.phase(offset)) if offset else None


def _in_one_turn(angle_rad: float) -> float:
    return round(math.degrees(angle_rad) % 360.0, DECIMALS) % 360.0


def center_of(as_read: complex, surface: Surface) -> complex:
    """Where the center lies, by what is read on a surface; and what is read, by where it lies.

    The same either way: in a bore the two are opposite.
    """
    return -as_read if surface == "internal" else as_read


def without_rounding(offset: complex, of: float) -> complex:
    """A vector, or nothing where it is rounding alone; `of` is the length of what made it."""
    return offset if abs(offset) > ROUNDING * of else 0j


def difference(one: complex, other: complex) -> complex:
    """One vector less another, nothing where that is rounding alone."""
    return without_rounding(one - other, abs(one) + abs(other))


def split(m_0: complex, m_180: complex) -> tuple[complex, complex]:
    """Tell socket from part by two readings, the part turned half a turn in its socket.

    Socket (m_0 + m_180)/2 and part (m_0 - m_180)/2, both as they stand at 0.
    """
    return difference(m_0, -m_180) / 2.0, difference(m_0, m_180) / 2.0


def best_clocking(socket: complex, part: complex) -> float | None:
    """By how many degrees to turn the part in its socket, so that both vectors oppose.

    None where either runs true, and any clocking is as good.
    """
    if not (socket and part):
        return None
    return _in_one_turn(cmath.phase(-socket) - cmath.phase(part))


def weight(z_1: float, z_2: float, station: float) -> float:
    """Weight of the second of two sections on the line through both, at a station."""
    return (station - z_1) / (z_2 - z_1)


def along(e_1: complex, z_1: float, e_2: complex, z_2: float, station: float) -> complex:
    """Eccentricity vector at a station, on the line through two sections."""
    share = weight(z_1, z_2, station)
    of = abs(e_1) * (1.0 + abs(share)) + abs(e_2) * abs(share)
    return without_rounding(e_1 + (e_2 - e_1) * (station - z_1) / (z_2 - z_1), of)

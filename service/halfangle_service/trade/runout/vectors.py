"""Eccentricities as complex vectors: modulus is the offset, argument the high spot.

Lengths in one unit, high spots in degrees. A runout by eccentricity is a TIR of twice the modulus.
"""

import cmath
import math


def vector(eccentricity: float, high_spot_degrees: float) -> complex:
    """The vector of an eccentricity and its high spot."""
    return cmath.rect(eccentricity, math.radians(high_spot_degrees))


def high_spot(eccentricity: complex) -> float:
    """Direction of a vector in degrees, from 0 to below 360; 0 of nothing."""
    return math.degrees(cmath.phase(eccentricity)) % 360.0


def split(m_0: complex, m_180: complex) -> tuple[complex, complex]:
    """Tell socket from part by two readings, the part turned half a turn in its socket.

    Socket (m_0 + m_180)/2 and part (m_0 - m_180)/2, both as they stand at 0.
    """
    return (m_0 + m_180) / 2.0, (m_0 - m_180) / 2.0


def best_clocking(socket: complex, part: complex) -> float:
    """By how many degrees to turn the part in its socket, so that both vectors oppose."""
    if not (socket and part):
        return 0.0
    return math.degrees(cmath.phase(-socket) - cmath.phase(part)) % 360.0


def weight(z_1: float, z_2: float, station: float) -> float:
    """Weight of the second of two sections on the line through both, at a station."""
    return (station - z_1) / (z_2 - z_1)


def along(e_1: complex, z_1: float, e_2: complex, z_2: float, station: float) -> complex:
    """Eccentricity vector at a station, on the line through two sections."""
    return e_1 + (e_2 - e_1) * (station - z_1) / (z_2 - z_1)

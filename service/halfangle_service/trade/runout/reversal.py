"""Reversal and the line of an axis: eccentricities as complex vectors, lengths in one unit."""

import math


def split(m_0: complex, m_180: complex) -> tuple[complex, complex]:
    """Tell socket from part by two readings, the part turned half a turn in its socket.

    Socket (m_0 + m_180)/2 and part (m_0 - m_180)/2, both as they stand at 0.
    """
    return (m_0 + m_180) / 2.0, (m_0 - m_180) / 2.0


def along(e_1: complex, z_1: float, e_2: complex, z_2: float, station: float) -> complex:
    """Eccentricity vector at a station, on the line through two sections."""
    return e_1 + (e_2 - e_1) * (station - z_1) / (z_2 - z_1)


def uncertainty_along(u_1: float, z_1: float, u_2: float, z_2: float, station: float) -> float:
    """Standard uncertainty of the eccentricity at a station, both sections independent.

    Derived here: the line weighs the sections by 1 - t and t, t = (z - z1)/(z2 - z1).
    """
    share = (station - z_1) / (z_2 - z_1)
    return math.hypot(u_1 * (1.0 - share), u_2 * share)

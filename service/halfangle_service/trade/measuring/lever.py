"""A lever indicator's reading and the movement that made it. Angles in radians, one unit of length.

The dial is graduated for a lever that lies along the surface: a turn δ of a lever of length l reads
l δ. A lever that stands at an angle to the surface moves its tip square to the surface by l [sin a
− sin(a − δ)], which for a small reading is δ l cos a: the cosine. A ball, or a cylinder across the
lever, touches at the same place of itself at every angle to it, and adds nothing (derived here).
"""

from halfangle_service.trade import elementary


def movement(reading: float, angle_rad: float, lever: float | None) -> float:
    """Movement square to the surface; positive readings turn the lever toward the surface's line.

    Without the lever's length the angle is taken to stay as it is over the reading.
    """
    if lever is None:
        return reading * elementary.cos(angle_rad)
    half = reading / (2.0 * lever)
    return 2.0 * lever * elementary.sin(half) * elementary.cos(angle_rad - half)

"""Other ways to set a taper than a sine setting: their settings, and what an error of each does.

Angles in radians, lengths in one unit. α is the half angle.
"""

from halfangle_service.trade import elementary


def set_over(work_length: float, half_rad: float) -> float:
    """Tailstock set-over for work held on ball centers: L sin α."""
    return work_length * elementary.sin(half_rad)


def set_over_rule(work_length: float, half_rad: float) -> float:
    """Set-over by the shop rule, taper × length / 2: L tan α."""
    return work_length * elementary.tan(half_rad)


def scale_arc(radius: float, half_rad: float) -> float:
    """Arc along a swivel's scale: r α."""
    return radius * half_rad


def scale_chord(radius: float, half_rad: float) -> float:
    """Chord across a swivel's scale: 2 r sin(α / 2)."""
    return 2.0 * radius * elementary.sin(half_rad / 2.0)


def offset(bar_length: float, half_rad: float) -> float:
    """Offset of a taper attachment's bar over its length: l tan α."""
    return bar_length * elementary.tan(half_rad)


def per_set_over(work_length: float, half_rad: float) -> float:
    """Half angle for one unit of set-over: 1 / (L cos α)."""
    return 1.0 / (work_length * elementary.cos(half_rad))


def per_work_length(work_length: float, half_rad: float) -> float:
    """Half angle for one unit more of length between the center holes: −tan α / L."""
    return -elementary.tan(half_rad) / work_length


def per_offset(bar_length: float, half_rad: float) -> float:
    """Half angle for one unit of a taper attachment's offset over its bar: cos² α / l."""
    return elementary.cos(half_rad) ** 2 / bar_length


def diameter_per_radian(length: float, half_rad: float) -> float:
    """Difference of diameters over a length for one radian of the half angle: 2 L / cos² α."""
    return 2.0 * length / elementary.cos(half_rad) ** 2

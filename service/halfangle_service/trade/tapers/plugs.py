"""Tapers gauged by depth: a plug in a socket, a ring over a plug.

Angles in radians, lengths in one consistent unit. α is the half angle. Every station lies on the
axis, 0 at the part's large end (a socket's mouth, a plug's large end) and rising toward the small
end; negative outside the part. A gauge has a known diameter at its line or sharp edge, whose
station is its depth. Derived here: where gauge and part touch, they share the diameter.
"""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit


def diameter_by_depth(
    gauge_diameter: float, depth: float, half_angle_rad: float, station: float
) -> float:
    """Part's diameter at a station from a gauge at its depth: D + 2 (depth − station) tan α."""
    return gauge_diameter + 2.0 * (depth - station) * elementary.tan(half_angle_rad)


def depth_of_gauge(large_diameter: float, gauge_diameter: float, half_angle_rad: float) -> float:
    """Depth at which a gauge of that diameter rests; the way back of `diameter_by_depth`."""
    return (large_diameter - gauge_diameter) / (2.0 * elementary.tan(half_angle_rad))


def half_angle_by_depths(
    first_diameter: float, first_depth: float, second_diameter: float, second_depth: float
) -> float:
    """Half angle from two gauges: tan α = (D1 − D2) / (2 (p2 − p1)); the smaller goes deeper."""
    difference, apart = first_diameter - second_diameter, second_depth - first_depth
    if difference == 0.0:
        raise Impossible(
            f"Two gauges of one diameter, {of_any_unit(first_diameter)}, give no taper.",
            fields={"second_gauge_diameter": "should differ from gauge_diameter"},
        )
    if difference * apart <= 0.0:
        raise Impossible(
            f"Diameters that differ by {of_any_unit(difference)} rest {of_any_unit(apart)} apart: "
            "on a taper "
            "the smaller diameter lies nearer to the small end.",
            fields={
                "second_gauge_depth": "should be the greater one for the smaller diameter; each "
                "gauge with its own depth"
            },
        )
    return elementary.atan(difference / (2.0 * apart))


def engaged_length(depth: float, gauge_length: float, length: float) -> float:
    """Length over which a gauge touches that runs from its line toward the small end.

    0 for a sharp edge on the part; refused where the gauge misses the part.
    """
    start, end = max(depth, 0.0), min(depth + gauge_length, length)
    if end < start:
        raise Impossible(
            f"The gauge reaches from {of_any_unit(depth)} to {of_any_unit(depth + gauge_length)} "
            "and misses "
            f"the part's cone, which runs from 0 to {of_any_unit(length)}.",
            fields={"gauge_depth": f"should bring the gauge between 0 and {of_any_unit(length)}"},
        )
    return end - start

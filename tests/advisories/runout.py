"""Advisories of runout."""

from advisories.row import Request, Row, caution, note

_INDICATE, _CREST, _V_BLOCK = "runout.indicate", "runout.off-crest", "runout.v-block"


def _read(*readings: float) -> list[Request]:
    """Readings at equal steps round a turn."""
    step = 360 / len(readings)
    return [{"angular_position": step * k, "reading": r} for k, r in enumerate(readings)]


ROWS: tuple[Row, ...] = (
    caution(
        "eccentricity-below-resolution",
        _INDICATE,
        {"indicator_resolution": 0.000708},
        {"indicator_resolution": 0.000707},
    ),
    caution(
        "eccentricity-below-resolution",
        _INDICATE,
        {"repeatability": 0.0002604},
        {"repeatability": 0.0002603},
        "send the repeatability",
    ),
    note(
        "stray-not-told",
        _INDICATE,
        {},
        {"readings": _read(0.0004, 0.0002, -0.0002, -0.0004, -0.0002)},
        "Readings to spare: 1.",
        "1 at least",
    ),
    caution(
        "find-the-crest",
        _CREST,
        {"half_angle_tolerance_arcsec": 185.8},
        {"half_angle_tolerance_arcsec": 185.9},
    ),
    note("v-hides-eccentricity", _V_BLOCK, {}, None),
    caution("lobes-hidden", _V_BLOCK, {"max_lobes": 7}, {"max_lobes": 6}, "with 7 lobes"),
)

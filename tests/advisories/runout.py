"""Advisories of runout."""

from advisories.row import Request, Row, caution, note

_INDICATE, _CREST, _V_BLOCK = "runout.indicate", "runout.off-crest", "runout.v-block"
_TRUE_UP = "runout.true-up"


def _read(*readings: float) -> list[Request]:
    """Readings at equal steps round a turn."""
    step = 360 / len(readings)
    return [{"angular_position": step * k, "reading": r} for k, r in enumerate(readings)]


def _unplaced(*readings: float) -> list[Request]:
    """The same, without the angles."""
    return [{"reading": reading} for reading in readings]


#: Five readings of the near section of the example, and four with ovality of 0.0002 in.
_FIVE = {"station": 1, "readings": _read(0.0003, 0.0005, 0.0001, -0.0004, -0.0005)}
_OVAL = {"station": 1, "readings": _read(0.0004, 0.0003, -0.0002, -0.0005)}
_SWING = {"kind": "swing", "station": 4, "pivot_station": 0}


def _rising(by: float) -> list[Request]:
    """Two sections of one form, the second higher by so much."""
    return [
        {"station": station, "section_readings": [low, low + 0.1]}
        for station, low in ((0, 0.0), (40, by))
    ]


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
    note(
        "taken-at-equal-steps",
        _INDICATE,
        {"readings": _unplaced(0.0003, 0.0004, -0.0003, -0.0004)},
        {"readings": _read(0.0003, 0.0004, -0.0003, -0.0004)},
        "the 4 were taken at equal steps of 90°",
    ),
    note(
        "taken-at-equal-steps",
        _TRUE_UP,
        {"near": {"station": 1, "readings": _unplaced(0.0003, 0.0004, -0.0003, -0.0004)}},
        {"near": {"station": 1, "readings": _read(0.0003, 0.0004, -0.0003, -0.0004)}},
        "at the near section",
    ),
    caution(
        "find-the-crest",
        _CREST,
        {"half_angle_tolerance_arcsec": 185.8},
        {"half_angle_tolerance_arcsec": 185.9},
    ),
    note("v-hides-eccentricity", _V_BLOCK, {}, None),
    caution("lobes-hidden", _V_BLOCK, {"max_lobes": 7}, {"max_lobes": 6}, "with 7 lobes"),
    note(
        "stray-not-told",
        _TRUE_UP,
        {"far": {**_FIVE, "station": 4}},
        {"near": _FIVE},
        "at the near section: 1",
    ),
    note(
        "tap-within-uncertainty",
        _TRUE_UP,
        {"repeatability": 0.0002373},
        {"repeatability": 0.0002372},
        "slide",
        "leave it",
    ),
    note(
        "limit-kept-already",
        _TRUE_UP,
        {"limit_tir": 0.002765},
        {"limit_tir": 0.002764},
    ),
    note(
        "one-station-true",
        _TRUE_UP,
        {"tap_places": [_SWING]},
        {"tap_places": [_SWING, {"kind": "slide", "station": 0}]},
        "the station at 5.5 in",
    ),
    note(
        "form-not-tapped-out",
        _TRUE_UP,
        {"near": _OVAL, "indicator_resolution": 0.0000996},
        {"indicator_resolution": 0.0001004},
        "0.00020 in",
        "the near section",
    ),
    caution(
        "form-past-limit",
        _TRUE_UP,
        {"near": _OVAL, "limit_tir": 0.000199},
        {"limit_tir": 0.000201},
        "0.00020 in",
        "the near section",
    ),
    note(
        "taper-makes-the-runout",
        "runout.total",
        {"sections": _rising(0.1001)},
        {"sections": _rising(0.1)},
        "taper",
    ),
)

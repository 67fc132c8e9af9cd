"""Advisories of `inspection.plan`."""

from advisories.row import Row, caution, note

_PLAN = "inspection.plan"
#: A steep taper by a grade; the longest of the example's other words are left as they are.
_GRADED = {
    "feature": {
        "kind": "taper-plug",
        "rate_of_taper": 0.3334,
        "gauge_diameter": 1.5,
        "length": 2,
        "cone_angle_grade": "AT9",
        "large_diameter_tolerance": 0.001,
    }
}
_SOCKET = {
    "feature": {
        "kind": "taper-socket",
        "designation": "morse-3",
        "included_angle_tolerance_arcsec": 40,
    },
    "balls": {
        "ball_diameters": [0.8125, 0.9375],
        "measure_error_limit": 0.0001,
        "roll_error_limit": 0.00001,
    },
}
_FACE = {
    "feature": {
        "kind": "angled-face",
        "face_angle": 45.1,
        "rise": 0.5,
        "tolerance_arcsec": 60,
    }
}

ROWS: tuple[Row, ...] = (
    note(
        "grades-from-memory",
        _PLAN,
        _GRADED,
        {"feature__cone_angle_grade": None, "feature__included_angle_band_arcsec": 40},
    ),
    caution(
        "steeper-than-the-grades",
        _PLAN,
        _GRADED,
        {"feature__rate_of_taper": 0.3333},
    ),
    caution(
        "unstated-contributions",
        _PLAN,
        {"rolls__measure_error_limit": None},
        {"rolls__measure_error_limit": 0.00005},
        "measure_error_limit",
    ),
    caution(
        "tolerance-unproved",
        _PLAN,
        {"feature__included_angle_tolerance_arcsec": 6.12},
        {"feature__included_angle_tolerance_arcsec": 6.16},
        "12.2″",
    ),
    note("bluing-blind", _PLAN, {}, {"bluing": None}),
    caution(
        "odd-size", _PLAN, {"rolls__roll_diameters": [0.0196]}, {"rolls__roll_diameters": [0.0198]}
    ),
    caution(
        "odd-size",
        _PLAN,
        {**_SOCKET, "balls__ball_diameters": [0.9, 3.95]},
        {"balls__ball_diameters": [0.9, 3.93]},
    ),
    caution("set-of-other-units", _PLAN, {"set": "metric-88"}, {"set": "inch-81"}, "metric blocks"),
    caution(
        "size-of-other-units",
        _PLAN,
        {"set": None, "sizes": [0.1, 1.5]},
        {"sizes": [0.1, 0.5]},
        "1.5 is a size of metric sets",
    ),
    caution("steep-angle", _PLAN, _FACE, {"feature__face_angle": 44.9}),
)

"""Advisories of a center's plan."""

from advisories.row import Request, Row, caution, note, stop

_CENTER = "jobs.center"
_STRAIGHT: Request = {"kind": "straight", "diameter": 0.822}
_METRIC: Request = {
    "units": "mm",
    "set": "metric-88",
    "large_diameter": 20,
    "center_distance": 127,
    "limit_tir": 0.01,
    "grinding_allowance": 0.1,
    "angle_errors": {},
    "runout_errors": {},
}
#: Blocks of which a wrong one changes the height by one step, and no second stack to compare with.
_ALIKE: Request = {
    "set": None,
    "sizes": [0.1001, 0.1002, 2.0, 0.4],
    "included_angle": "60 00 09.5",
}

ROWS: tuple[Row, ...] = (
    stop(
        "angle-not-held",
        _CENTER,
        {"included_angle_tolerance_arcsec": 1.99},
        {"included_angle_tolerance_arcsec": 2.01},
        "does not hold the angle",
        "wheel_face_error_limit_arcsec",
    ),
    caution(
        "angle-not-sure",
        _CENTER,
        {"included_angle_tolerance_arcsec": 44},
        {"included_angle_tolerance_arcsec": 44.1},
        "wheel_face_error_limit_arcsec",
    ),
    stop(
        "runout-not-held",
        _CENTER,
        {"limit_tir": 0.0000324},
        {"limit_tir": 0.0000325},
        "does not keep the runout",
        "adapter is the first",
    ),
    caution(
        "runout-not-sure",
        _CENTER,
        {"limit_tir": 0.000189},
        {"limit_tir": 0.00019},
        "adapter is the first",
    ),
    caution(
        "unstated-contributions",
        _CENTER,
        {"runout_errors__adapter_tir": None},
        {"runout_errors__adapter_tir": 0.0001},
        ": adapter_tir.",
    ),
    caution(
        "unstated-contributions",
        _CENTER,
        {"angle_errors__particle": None},
        {"angle_errors__particle": 0},
        ": particle.",
    ),
    note(
        "stack-not-exact",
        _CENTER,
        {"included_angle": "60 00 30"},
        {"included_angle": 60},
        "2.5003",
        "1.4″",
    ),
    caution("steep-angle", _CENTER, {"included_angle": 90.2}, {"included_angle": 90}),
    caution(
        "heavy-pass",
        _CENTER,
        {"downfeed_step": 0.00101},
        {"downfeed_step": 0.001},
        "0.00101 in",
        "Up to 0.00100 in",
    ),
    caution(
        "heavy-pass", _CENTER, _METRIC | {"downfeed_step": 0.0301}, {"downfeed_step": 0.03}, "mm"
    ),
    caution(
        "much-stock",
        _CENTER,
        {"grinding_allowance": 0.0201},
        {"grinding_allowance": 0.02},
        "0.02010 in",
    ),
    caution(
        "much-stock",
        _CENTER,
        _METRIC | {"grinding_allowance": 0.501},
        {"grinding_allowance": 0.5},
        "0.5010 mm",
    ),
    caution(
        "wrong-block-unseen",
        _CENTER,
        _ALIKE | {"included_angle_tolerance_arcsec": 9.55},
        {"included_angle_tolerance_arcsec": 9.56},
    ),
    caution(
        "tolerance-unproved",
        _CENTER,
        {"included_angle_tolerance_arcsec": 56.2},
        {"included_angle_tolerance_arcsec": 56.3},
        "±56.2″",
    ),
    caution(
        "tolerance-unproved",
        _CENTER,
        {"shank": _STRAIGHT, "included_angle_tolerance_arcsec": 60},
        {"included_angle_tolerance_arcsec": 60.1},
        "±60.0″",
    ),
    note("no-room-for-rolls", _CENTER, {"large_diameter": 0.0841}, {"large_diameter": 0.0842}),
    note(
        "no-room-for-rolls",
        _CENTER,
        {"shank": _STRAIGHT},
        {"shank__diameter": 0.8222},
        "shoulder",
    ),
    note(
        "no-room-for-rolls",
        _CENTER,
        {"shank": _STRAIGHT | {"diameter": 0.7501}},
        {"shank__diameter": 0.75},
    ),
    caution("set-of-other-units", _CENTER, {"set": "metric-88"}, {"set": "inch-81"}),
    caution(
        "size-of-other-units",
        _CENTER,
        {"set": None, "sizes": [2, 0.5, 7.5]},
        {"sizes": [2, 0.5, 0.1]},
        "7.5",
    ),
    caution("wheel-safety", _CENTER, {}, None, "1910.215"),
)

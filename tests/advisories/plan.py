"""Advisories of the plan of a whole job."""

from advisories.row import Request, Row, caution, note, stop

_PLAN, _ROUTING = "jobs.plan", "jobs.routing"
_PLATE: Request = {"name": "5 in plate", "center_distance": 5}
_SET: Request = {"name": "set", "set": "inch-81"}
_WHEEL: Request = {
    "name": "7 in wheel",
    "wheel_diameter": 7,
    "wheel_width": 0.75,
    "dresser": {"kind": "scale", "graduation": "0 05"},
    "depth_per_pass": 0.001,
}
_SIDE: Request = {"name": "cup wheel", "rated_for_side": True, "usable_width": 0.7501}
_WORKHEAD: Request = {
    "name": "cylindrical grinder",
    "grinder": "cylindrical",
    "graduation": "0 05",
    "wheel_diameter": 12,
}
_FACE: Request = {"kind": "angled-face", "rise": 0.2, "tolerance_arcsec": 120}
_SOCKET: Request = {
    "kind": "taper-socket",
    "designation": "morse-4",
    "length": 3,
    "included_angle_tolerance_arcsec": 120,
}
_SPINDLE: Request = {"wheel_diameter": 0.75, "reach": 3.5}
#: Ways of which nothing was stated.
_UNSTATED: Request = {
    "feature__limit_tir": None,
    "equipment__sine_plates": [_PLATE],
    "equipment__block_sets": [_SET],
}

ROWS: tuple[Row, ...] = (
    caution("wheel-safety", _PLAN, {}, None),
    caution(
        "wrong-block-unseen",
        _PLAN,
        {
            "feature__included_angle": "59 47",
            "feature__included_angle_tolerance_arcsec": 15,
            "equipment__measuring__stack_reading_error_limit": 0.000211,
        },
        {"equipment__measuring__stack_reading_error_limit": 0.00021},
        "second person",
    ),
    caution(
        "tolerance-unproved",
        _PLAN,
        {"feature__included_angle_tolerance_arcsec": 44.2},
        {"feature__included_angle_tolerance_arcsec": 44.3},
        "finer means",
    ),
    caution(
        "best-way-may-not-hold",
        _PLAN,
        {"feature__included_angle_tolerance_arcsec": 44},
        {"feature__included_angle_tolerance_arcsec": 44.1},
        "sine plate",
        "±44″",
    ),
    caution(
        "best-way-may-not-hold",
        _PLAN,
        {"equipment__runout_errors__adapter_tir": None},
        {"equipment__runout_errors__adapter_tir": 0.0001},
        "runout",
    ),
    stop(
        "no-way-fits",
        _PLAN,
        {"feature__included_angle_tolerance_arcsec": 1.99},
        {"feature__included_angle_tolerance_arcsec": 2.01},
        "keeps ±",
        "not ±1.99″",
    ),
    stop(
        "no-way-fits",
        _PLAN,
        {"feature__limit_tir": 0.0000324},
        {"feature__limit_tir": 0.0000325},
        "does not keep the runout",
    ),
    stop(
        "chosen-way-does-not-hold",
        _ROUTING,
        {"way": "2", "feature__limit_tir": 0.0000324},
        {"feature__limit_tir": 0.0000325},
        "quarter turn",
        "does not keep the runout",
    ),
    caution(
        "chosen-way-may-not-hold",
        _ROUTING,
        {"way": "quarter-turn"},
        {"way": "1"},
        "quarter turn",
    ),
    caution(
        "no-way-known",
        _PLAN,
        _UNSTATED,
        {"equipment__block_sets": [{**_SET, "grade": "asme-0"}]},
    ),
    caution(
        "steep-angle",
        _PLAN,
        {"equipment__spin_fixture": None, "feature__included_angle": 90.1},
        {"feature__included_angle": 90},
    ),
    note(
        "side-grinding-last",
        _PLAN,
        {"equipment__wheel_sides": [_SIDE]},
        {"equipment__wheel_sides": [{**_SIDE, "usable_width": 0.745}]},
    ),
    caution(
        "magnetic-holding",
        _PLAN,
        {},
        {
            "equipment__sine_plates": None,
            "equipment__block_sets": None,
            "equipment__swivelled_workheads": [_WORKHEAD],
        },
    ),
    caution(
        "dressed-angle-unproved",
        _PLAN,
        {"equipment__dressed_wheels": [_WHEEL]},
        {"equipment__dressed_wheels": [{**_WHEEL, "wheel_width": 0.64}]},
    ),
    caution("dressing-safety", _PLAN, {}, None),
    caution("grinding-dust", _PLAN, {}, None),
    caution(
        "clamped-on-an-upright",
        _PLAN,
        {"equipment__sine_plates": [{**_PLATE, "largest_angle": 60}]},
        {"equipment__sine_plates": [{**_PLATE, "largest_angle": 59.9}]},
    ),
    caution(
        "driven-work",
        _PLAN,
        {"equipment__swivelled_workheads": [{**_WORKHEAD, "largest_angle": 30}]},
        {"equipment__swivelled_workheads": [{**_WORKHEAD, "largest_angle": 29.9}]},
    ),
    caution(
        "work-may-slide",
        _PLAN,
        {"feature": {**_FACE, "face_angle": 8.51}},
        {"feature": {**_FACE, "face_angle": 8.5}},
        "8.51°",
        "Carbide",
    ),
    caution(
        "internal-wheel-speed",
        _PLAN,
        {
            "feature": _SOCKET,
            "equipment__internal_spindle": _SPINDLE,
            "equipment__spin_fixture": None,
        },
        {"feature": {**_SOCKET, "kind": "taper-plug"}},
        "overhang of 3.5 in",
        "was not stated",
    ),
    caution(
        "long-quill",
        _PLAN,
        {
            "feature": _SOCKET,
            "equipment__internal_spindle": {**_SPINDLE, "quill_diameter": 0.6995},
        },
        {"equipment__internal_spindle": {**_SPINDLE, "quill_diameter": 0.7}},
    ),
    caution(
        "deep-pass",
        _PLAN,
        {"equipment__dressed_wheels": [{**_WHEEL, "depth_per_pass": 0.00201}]},
        {"equipment__dressed_wheels": [{**_WHEEL, "depth_per_pass": 0.0005}]},
    ),
    caution(
        "long-dress",
        _PLAN,
        {
            "feature__large_diameter": 0.19,
            "equipment__dressed_wheels": [{**_WHEEL, "depth_per_pass": 0.00094}],
        },
        {"equipment__dressed_wheels": [{**_WHEEL, "depth_per_pass": 0.00095}]},
    ),
    caution(
        "set-of-other-units",
        _PLAN,
        {"equipment__block_sets": [{**_SET, "set": "metric-88", "grade": "asme-0"}]},
        {"equipment__block_sets": [{**_SET, "grade": "asme-0"}]},
    ),
    caution(
        "size-of-other-units",
        _PLAN,
        {"equipment__block_sets": [{"name": "few", "sizes": [2, 0.5, 7.5]}]},
        {"equipment__block_sets": [{"name": "few", "sizes": [2, 0.5, 0.1]}]},
        "7.5",
    ),
)

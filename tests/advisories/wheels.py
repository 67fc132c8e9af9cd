"""Advisories of the wheel: its speed, its dressing, its flank, its setting up."""

from advisories.row import Request, Row, caution, note, stop

_CHOOSE, _DRESSING, _ERRORS = "wheels.choose", "wheels.dressing", "wheels.dressing-errors"
_FLANK, _SETUP, _SPEED = "wheels.flank", "wheels.setup-errors", "wheels.speed"


def _observed(off: float) -> list[Request]:
    """Pieces whose angles grow by 1″ each, the middle one so much off the line."""
    errors = {1: 0.0, 2: 1.0 + off, 3: 2.0}
    return [
        {"piece_since_dress": piece, "measured_error_arcsec": error}
        for piece, error in errors.items()
    ]


_SPEEDS: tuple[Row, ...] = (
    stop("over-marked-speed", _SPEED, {"rpm": 3601}, {"rpm": 3600}, "3601 per", "3600 per"),
    stop(
        "over-marked-speed",
        _SPEED,
        {"largest_machine_rpm": 3449},
        {"largest_machine_rpm": 3450},
        "3450 per minute is over largest_machine_rpm (3449",
    ),
    stop(
        "flange-too-small",
        _SPEED,
        {"flange_diameter": 2.33},
        {"flange_diameter": 2.334},
        "measure 2.33 in;",
        "is 2.33333",
    ),
    stop("side-not-rated", _SPEED, {"grinding_side": True}, {"grinding_side": False}, "not known"),
    stop(
        "side-not-rated",
        _SPEED,
        {"grinding_side": True, "rated_for_side": False},
        {"rated_for_side": True},
        "stated not",
    ),
    caution(
        "straight-wheel-side",
        _SPEED,
        {"grinding_side": True, "rated_for_side": True},
        {"wheel_type": "6-straight-cup"},
    ),
    caution("wheel-unknown", _SPEED, {"marked_rpm": None}, {"marked_rpm": 3600}, "marked_rpm"),
    caution(
        "new-diameter-unknown",
        _SPEED,
        {"marked_rpm": None, "marked_ft_per_min": 6500},
        {"new_diameter": 7},
    ),
    caution("unusual-speed", _SPEED, {"rpm": 537}, {"rpm": 537.1}, "4.999", "5 to 160"),
    caution(
        "unusual-speed",
        _SPEED,
        {"rpm": 17187, "marked_rpm": 18000},
        {"rpm": 17186},
        "160",
    ),
    caution(
        "unusual-size",
        _SPEED,
        {"wheel_diameter": 39.38, "rpm": 900},
        {"wheel_diameter": 39.37},
        "wheel_diameter is 39.38 in",
        "39.4",
    ),
    caution(
        "unusual-size",
        _SPEED,
        {"wheel_diameter": 0.787, "worn_diameter": None, "wheel_type": None},
        {"wheel_diameter": 0.788},
        "wheel_diameter is 0.787 in",
    ),
    caution(
        "unusual-size",
        _SPEED,
        {"worn_diameter": 0.787},
        {"worn_diameter": 0.788},
        "worn_diameter is 0.787 in",
    ),
    caution(
        "unusual-size",
        _SPEED,
        {"new_diameter": 39.38},
        {"new_diameter": 39.37},
        "new_diameter is 39.38 in",
    ),
    caution("wheel-safety", _SPEED, {}, None, "1910.215"),
)

#: The dressed wheel as the only way, and one way that says little of itself.
_DRESSED_ONLY = {f"ways__{way}": None for way in ("sine_plate", "wheel_side", "swivelled_workhead")}
_SIDE = {"usable_width": 1, "swivel_error_limit_arcsec": 10}

_CHOICES: tuple[Row, ...] = (
    stop(
        "no-way-fits",
        _CHOOSE,
        {"ways": {"wheel_side": _SIDE}},
        {"ways__wheel_side": _SIDE | {"rated_for_side": True}},
        "Every way described is ruled out",
        "Do not grind",
    ),
    stop(
        "no-way-fits",
        _CHOOSE,
        {"included_angle_tolerance_arcsec": 1.473, "ways__dressed_wheel": None},
        {"included_angle_tolerance_arcsec": 1.474},
        "Every way described is ruled out",
    ),
    caution(
        "no-way-known",
        _CHOOSE,
        {"ways": {"wheel_side": {"usable_width": 1, "rated_for_side": True}}},
        {"ways__wheel_side": _SIDE | {"rated_for_side": True}},
        "none of its errors was stated",
    ),
    caution(
        "best-way-may-not-hold",
        _CHOOSE,
        {"included_angle_tolerance_arcsec": 32.2},
        {"included_angle_tolerance_arcsec": 32.3},
        "sine-plate",
        "±32.2″",
        "-0.3″ ± 32.2″",
    ),
    note("side-grinding-last", _CHOOSE, {}, {"ways__wheel_side": None}),
    note("check-the-ground-angle", _CHOOSE, {}, None),
    caution(
        "deep-pass",
        _CHOOSE,
        {"ways__dressed_wheel__depth_per_pass": 0.000985},
        {"ways__dressed_wheel__depth_per_pass": 0.000984},
        "0.000985",
        "0.0009843 in",
    ),
    caution(
        "long-dress",
        _CHOOSE,
        {"large_diameter": 0.247},
        {"large_diameter": 0.2468},
        "0.098 in",
    ),
    caution(
        "long-dress",
        _CHOOSE,
        {"large_diameter": 0.2, "ways__dressed_wheel__depth_per_pass": 0.000749},
        {"ways__dressed_wheel__depth_per_pass": 0.00075},
        "101 passes",
        "Past 100 passes",
    ),
    caution(
        "unusual-size", _CHOOSE, {"wheel_diameter": 39.38}, {"wheel_diameter": 39.37}, "39.38 in"
    ),
    caution("wheel-safety", _CHOOSE, {}, None, "1910.215"),
)

_DRESSINGS: tuple[Row, ...] = (
    caution("thread-left", _DRESSING, {"overlap_ratio": 0.999}, {"overlap_ratio": 1}),
    caution("glazing", _DRESSING, {"overlap_ratio": 10.01}, {"overlap_ratio": 10}, "10.01"),
    caution(
        "deep-pass",
        _DRESSING,
        {"depth_per_pass": 0.0251},
        {"depth_per_pass": 0.025},
        "0.0251",
        "0.025 mm",
    ),
    caution("long-dress", _DRESSING, {"passes": 101}, {"passes": 100}, "101 passes", "2.525 mm"),
    caution(
        "long-dress",
        _DRESSING,
        {"passes": 100, "depth_per_pass": 0.02501},
        {"depth_per_pass": 0.025},
        "2.501 mm",
        "2.5 mm",
    ),
    caution("unusual-size", _DRESSING, {"nose_radius": 5.01}, {"nose_radius": 5}, "5.01 mm"),
    caution(
        "unusual-size",
        _DRESSING,
        {"nose_radius": 0.0199, "depth_per_pass": 0.001},
        {"nose_radius": 0.02},
        "0.0199 mm",
    ),
    caution("unusual-size", _DRESSING, {"width_to_dress": 301}, {"width_to_dress": 300}, "301 mm"),
    caution(
        "unusual-size", _DRESSING, {"width_to_dress": 0.499}, {"width_to_dress": 0.5}, "0.499 mm"
    ),
    caution(
        "unusual-size",
        _DRESSING,
        {"nose_radius": None, "active_width": 10.1},
        {"active_width": 10},
        "10.1 mm",
    ),
    caution(
        "unusual-size",
        _DRESSING,
        {"nose_radius": None, "active_width": 0.0199},
        {"active_width": 0.02},
        "0.0199 mm",
    ),
    caution(
        "outside-the-rule",
        _DRESSING,
        {"overlap_ratio": 6.01},
        {"overlap_ratio": 6},
        "1 to 6",
        "6.01",
    ),
    note(
        "roughness-not-told",
        _DRESSING,
        {"nose_radius": None, "active_width": 0.27},
        dict.fromkeys(("known_lead", "known_depth_per_pass", "known_roughness_micrometre")),
    ),
    note("diamond-drag", _DRESSING, {}, None, "10° to 15°"),
    caution("dressing-safety", _DRESSING, {}, None, "speed marked on the wheel"),
)

_DRESSING_ERRORS: tuple[Row, ...] = (
    stop(
        "beyond-tolerance",
        _ERRORS,
        {"included_angle_tolerance_arcsec": 129.9},
        {"included_angle_tolerance_arcsec": 130},
        "-130.0″",
        "±129.9″",
    ),
    caution(
        "unseen-errors",
        _ERRORS,
        {},
        {"dresser_angle_error_arcsec": 0},
        "dresser-angle",
    ),
    note("diamond-height-is-a-form-error", _ERRORS, {}, {"diamond_height": 0}, "hyperbola"),
    caution("unusual-size", _ERRORS, {"nose_radius": 0.197}, {"nose_radius": 0.1968}, "0.197 in"),
    caution("dressed-angle-unproved", _ERRORS, {}, None),
    caution("dressing-safety", _ERRORS, {}, None),
)

_FLANKS: tuple[Row, ...] = (
    caution(
        "radius-on-the-surface",
        _FLANK,
        {"edge_radius": 0.15},
        {"edge_radius": 0.149},
    ),
    note("steep-flank", _FLANK, {"work__included_angle": 120.1}, {"work__included_angle": 120}),
    note("other-zero", _FLANK, {"work__included_angle": 90.1}, {"work__included_angle": 90}),
    caution(
        "stack-off-the-angle",
        _FLANK,
        {"set": None, "sizes": [1], "work__included_angle": "60 00 20.1"},
        {"work__included_angle": "60 00 19.9"},
        "-10.0″",
    ),
    caution(
        "flange-not-stated",
        _FLANK,
        {"wheel_diameter": 1.109},
        {"wheel_diameter": 1.111},
        "0.37",
        "1.109",
    ),
    caution(
        "flange-not-stated",
        _FLANK,
        {"wheel_diameter": 1.109},
        {"flange_diameter": 0.3},
        "a third",
    ),
    caution("deep-pass", _FLANK, {"depth_per_pass": 0.000985}, {"depth_per_pass": 0.000984}),
    caution(
        "long-dress",
        _FLANK,
        {"work__large_diameter": 0.207, "depth_per_pass": 0.002},
        {"work__large_diameter": 0.2068},
        "50 passes take 0.0985 in",
    ),
    caution(
        "long-dress",
        _FLANK,
        {"work__large_diameter": 0.1101},
        {"work__large_diameter": 0.11},
        "101 passes",
    ),
    caution("unusual-size", _FLANK, {"wheel_diameter": 39.38}, {"wheel_diameter": 39.37}),
    caution("unusual-size", _FLANK, {"wheel_width": 11.82}, {"wheel_width": 11.81}, "11.82 in"),
    caution(
        "set-of-other-units",
        _FLANK,
        {"set": "metric-88"},
        {"set": "inch-81"},
        "metric",
    ),
    caution(
        "size-of-other-units",
        _FLANK,
        {"set": None, "sizes": [1, 7.5]},
        {"sizes": [1, 0.5]},
        "7.5",
    ),
    caution("dressed-angle-unproved", _FLANK, {}, None),
    caution("dressing-safety", _FLANK, {}, None),
)

_SETTING_UP: tuple[Row, ...] = (
    stop(
        "side-not-rated",
        _SETUP,
        {"way": "wheel-side", "rated_for_side": False},
        {"rated_for_side": True},
        "stated not to be rated",
    ),
    stop("side-not-rated", _SETUP, {"way": "wheel-side"}, {"rated_for_side": True}, "not known"),
    note(
        "offset-harmless-when-traversed",
        _SETUP,
        {"feed": "traversed"},
        {"feed": "plunge"},
    ),
    note(
        "offset-harmless-when-traversed",
        _SETUP,
        {"feed": "traversed"},
        {"axis_offset": 0},
    ),
    caution(
        "surface-not-straight",
        _SETUP,
        {"axis_offset": 0.668},
        {"axis_offset": 0.667},
        "0.1 µm",
    ),
    caution("unusual-size", _SETUP, {"wheel_diameter": 39.38}, {"wheel_diameter": 39.37}),
    caution(
        "magnetic-holding",
        _SETUP,
        {"way": "dressed-wheel"},
        {"grinder": "cylindrical"},
    ),
    caution("wheel-safety", _SETUP, {}, None),
)

_DIAMOND, _RADIUS, _REDRESS = "wheels.diamond", "wheels.radius", "wheels.redress"

_TOOLS: tuple[Row, ...] = (
    stop(
        "diamond-digs-in",
        _DIAMOND,
        {"nib_lean": -4.11},
        {"nib_lean": -4.08},
        "0°00'50\" against",
        "less than 0° of drag",
    ),
    caution("unusual-drag", _DIAMOND, {"nib_lean": 9.3}, {"nib_lean": 9.25}, "15°02'21\""),
    caution("unusual-drag", _DIAMOND, {"nib_lean": 5.88}, {"nib_lean": 5.92}, "9°58'34\""),
    caution("see-the-rotation", _DIAMOND, {}, None, "way the wheel turns"),
    caution("unusual-size", _DIAMOND, {"wheel_diameter": 39.38}, {"wheel_diameter": 39.37}),
    caution("dressing-safety", _DIAMOND, {}, None),
    caution("pin-on-edges", _RADIUS, {"pin_diameter": 1.001}, {"pin_diameter": 1}),
    caution(
        "diamond-off-height",
        _RADIUS,
        {"diamond_height": 0.1732},
        {"diamond_height": 0.1716},
        "0.00051 in larger",
    ),
    caution("unusual-size", _RADIUS, {"wheel_diameter": 39.38}, {"wheel_diameter": 39.37}),
    caution("dressing-safety", _RADIUS, {}, None),
    caution(
        "first-piece-not-sure", _REDRESS, {"tolerance_arcsec": 5.06}, {"tolerance_arcsec": 5.08}
    ),
    note(
        "growth-not-told",
        _REDRESS,
        {"observed_pieces": _observed(0.87), "size_tolerance": None},
        {"observed_pieces": _observed(0.86)},
    ),
    caution(
        "far-past-the-observed",
        _REDRESS,
        {"tolerance_arcsec": 22.4},
        {"tolerance_arcsec": 22.2},
        "piece 27",
        "to 13",
    ),
    caution("dressing-safety", _REDRESS, {}, None),
)

ROWS = (*_SPEEDS, *_CHOICES, *_DRESSINGS, *_DRESSING_ERRORS, *_FLANKS, *_SETTING_UP, *_TOOLS)

"""Advisories of centers and their holes."""

from advisories.row import Row, caution, note, stop

_ADAPTER, _CONTACT, _EFFECT = "centers.adapter", "centers.contact", "centers.effect"
_HOLE, _LIMITS = "centers.hole", "centers.limits"
_BALLS, _CALLOUT, _LOBES = "centers.balls", "centers.callout", "centers.out-of-round"
_OFFSET, _REGRIND = "centers.standing-offset", "centers.regrind"

ROWS: tuple[Row, ...] = (
    caution(
        "bears-at-small-end",
        _ADAPTER,
        {"shank__rate_of_taper": 0.049950},
        {"shank__rate_of_taper": 0.049951},
        "small end only",
    ),
    note(
        "bears-at-large-end",
        _ADAPTER,
        {"shank__rate_of_taper": 0.049951},
        {"shank__rate_of_taper": 0.0499508},
        "nose",
    ),
    caution(
        "not-self-holding",
        _ADAPTER,
        {"socket": {"rate_of_taper": 0.1224}},
        {"socket": {"rate_of_taper": 0.1223}},
        "drawbar",
    ),
    caution(
        "edge-bearing", _CONTACT, {"hole_included_angle": 59.9997}, {"hole_included_angle": 60}
    ),
    caution(
        "edge-bearing",
        _CONTACT,
        {"hole_included_angle": 60.0003},
        {"hole_included_angle": 60},
    ),
    note(
        "told-apart-by-clocking",
        _EFFECT,
        {"part_at_first": {"tir": 0.0001, "high_spot": 0}},
        {"part_at_first": None},
    ),
    note(
        "told-apart-by-clocking",
        _EFFECT,
        {"part_at_second": {"tir": 0.0001, "high_spot": 0}},
        {"part_at_second": None},
    ),
    caution("bench-centers-off", _EFFECT, {"second_height": 0.0001}, {"second_height": 0}),
    caution("bench-centers-off", _EFFECT, {"second_line": -0.0001}, {"second_line": 0}),
    note("dead-center-no-runout", _LIMITS, {"limit_position": None}, {"limit_position": 0.0002}),
    note("table-from-memory", _HOLE, {"type": "R"}, {"type": "A"}),
    note("mouth-unprotected", _HOLE, {}, {"type": "B"}),
    note("mouth-unprotected", _HOLE, {"type": "plain"}, {"type": "bell"}),
    note(
        "chamfer-not-reached", _HOLE, {"type": "B", "mouth_diameter": 5.29}, {"mouth_diameter": 5.3}
    ),
    note(
        "chamfer-not-reached",
        _HOLE,
        {"units": "in", "type": "bell", "ball_diameter": None, "mouth_diameter": 0.199},
        {"mouth_diameter": 0.2},
    ),
    caution("not-60-degrees", _HOLE, {"included_angle": 59.99}, {"included_angle": 60}),
    caution(
        "near-the-body",
        _HOLE,
        {"units": "in", "type": "plain", "ball_diameter": None, "mouth_diameter": 0.226},
        {"mouth_diameter": 0.225},
    ),
    note(
        "balls-below-the-face",
        _BALLS,
        {"chamfer_diameter": 32.5},
        {"chamfer_diameter": 32.4},
        "depth gauge",
    ),
    caution("callout-not-in-table", _CALLOUT, {"text": "A 4.01/8.5"}, {"text": "A 4/8.5"}),
    caution("callout-not-in-table", _CALLOUT, {"text": "A 4/8.4"}, {"text": "A 4/8.5"}, "8.4"),
    note("second-figure-is-the-cone", _CALLOUT, {"text": "B 4 x 8.5"}, {"text": "B 4/12.5"}),
    caution("type-c-by-standard", _CALLOUT, {"text": "C 4/8.5"}, {"text": "A 4/8.5"}, "GB/T 145"),
    note(
        "dead-center-form-stands",
        _LOBES,
        {"out_of_round": "center"},
        {"out_of_round": "hole"},
    ),
    note("live-seat-sticks", _LOBES, {"center_turns": True}, {"center_turns": False}, "friction"),
    caution("oval-seat-moves", _LOBES, {"side_force": 0.001}, {"side_force": 0}, "Lap the hole"),
    caution(
        "lobed-seat-moves",
        _LOBES,
        {"lobes": 3, "side_force": 259.9},
        {"side_force": 259.8},
        "0.866",
    ),
    note(
        "set-the-offset-out",
        _OFFSET,
        {"offset_toward_wheel": 0.0000313},
        {"offset_toward_wheel": 0.0000312},
    ),
    stop(
        "center-too-short",
        _REGRIND,
        {"smallest_point_stick_out": 2.4923},
        {"smallest_point_stick_out": 2.4922},
        "2.4922",
        "2.4923",
    ),
    caution("runout-asks-for-more", _REGRIND, {"tir": None}, {"tir": 0}),
    caution("wheel-safety", _REGRIND, {}, None),
    caution("wheel-safety", _REGRIND, {"tir": None, "wear": None}, None),
)

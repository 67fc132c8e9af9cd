"""Advisories of the diamond, the dressed radius and the dress that is due."""

from advisories.row import Request, Row, caution, note, stop

_DIAMOND, _RADIUS, _REDRESS = "wheels.diamond", "wheels.radius", "wheels.redress"


def _observed(off: float) -> list[Request]:
    """Pieces whose angles grow by 1″ each, the middle one so much off the line."""
    errors = {1: 0.0, 2: 1.0 + off, 3: 2.0}
    return [
        {"piece_since_dress": piece, "measured_error_arcsec": error}
        for piece, error in errors.items()
    ]


ROWS: tuple[Row, ...] = (
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
    caution("deep-pass", _DIAMOND, {"feed_per_pass": 0.000985}, {"feed_per_pass": 0.000984}),
    caution("long-dress", _DIAMOND, {"feed_per_pass": 0.0985}, {"feed_per_pass": 0.0984}),
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
        "no-scatter",
        _REDRESS,
        {"observed_pieces": _observed(0.0), "size_tolerance": None},
        {"observed_pieces": _observed(0.001)},
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

"""Advisories of a correction after a measurement."""

from advisories.row import Request, Row, caution, note

_CORRECTION = "jobs.correction"
_CONTACT: Request = {
    "kind": "contact",
    "surface": "external",
    "touches": "large-end",
    "contact_length": 1,
}
_FOUND: Request = {"tir": 0.0002, "high_spot": 30, "eccentricity_standard_uncertainty": 0.00001}


def _error(arcsec: float) -> Request:
    """The half angle measured with so much error, known to 10″ either way."""
    return {
        "kind": "angle",
        "measured_error_arcsec": arcsec,
        "measurement_error_limit_arcsec": 10,
    }


def _reseated(**more: float) -> Request:
    """A runout read twice, of work that is to be clocked."""
    return {
        "kind": "reseating",
        "surface": "external",
        "at_0": _FOUND,
        "at_180": {**_FOUND, "tir": 0.0006, "high_spot": 100},
        **more,
    }


_COMPOUND: Request = {
    "kind": "compound-plate",
    "base_axis": "x",
    "base_center_distance": 5,
    "upper_center_distance": 5,
}


def _views(y_arcsec: float) -> Request:
    """A face that rises to the right alone, as its side view shows it."""
    return {"kind": "projected-angles", "x_angle": 10, "y_angle": y_arcsec / 3600}


def _surface(y_arcsec: float) -> Request:
    """The same measured, known to 10″ either way."""
    found = {"kind": "surface", "orientation": _views(y_arcsec)}
    return {**found, "measurement_error_limit_arcsec": 10}


_SEATS: Request = {"work": None, "set_up": None, "observations": {}}

ROWS: tuple[Row, ...] = (
    note(
        "leave-as-it-is",
        _CORRECTION,
        {"measured": _error(-9.49)},
        {"measured__measured_error_arcsec": -9.51},
        "9.5″",
    ),
    note(
        "leave-as-it-is",
        _CORRECTION,
        {**_SEATS, "measured": _reseated(limit_tir=0.000234)},
        {"measured__limit_tir": 0.000233},
    ),
    caution(
        "uncertainty-not-stated",
        _CORRECTION,
        {"measured": {"kind": "angle", "measured_error_arcsec": -30}},
        {"measured": _error(-30)},
    ),
    caution(
        "uncertainty-not-stated",
        _CORRECTION,
        {**_SEATS, "measured": {**_reseated(), "at_0": {"tir": 0.0002, "high_spot": 30}}},
        {"measured": _reseated()},
    ),
    caution(
        "amount-not-told",
        _CORRECTION,
        {"measured": _CONTACT},
        {"measured": {**_CONTACT, "gap_at_other_end": 0.0001}},
        "larger",
    ),
    caution(
        "graduation-coarse",
        _CORRECTION,
        {"set_up": {"kind": "swivel", "graduation": "0 01"}, "measured": _error(-39.9)},
        {"measured__measured_error_arcsec": -40.1},
        "20.1″",
    ),
    caution(
        "look-for-a-wrong-block",
        _CORRECTION,
        {"measured": _error(-60.1)},
        {"measured__measured_error_arcsec": -59.9},
        "60″",
    ),
    caution(
        "stack-far-off",
        _CORRECTION,
        {"set": None, "sizes": [2, 0.5, 0.3], "measured": _error(-60.1)},
        {"measured__measured_error_arcsec": -59.9},
        "60″",
    ),
    caution(
        "hinge-not-at-zero",
        _CORRECTION,
        {
            "work": {"kind": "compound-face", "orientation": _views(0)},
            "set_up": _COMPOUND,
            "measured": _surface(9.6),
            "observations": {},
        },
        {"measured": _surface(9.45)},
        "base plate",
        "side",
    ),
    note("correct-the-cause", _CORRECTION, {}, {"set_up": {"kind": "swivel"}}),
    caution(
        "mend-the-cause-first",
        _CORRECTION,
        {"observations": {"grows_along_batch": True}},
        {"observations": {"grows_along_batch": None}},
        "wheel breakdown",
        "Dress oftener",
    ),
    caution(
        "set-of-other-units",
        _CORRECTION,
        {"set": "metric-88", "set_up": {"kind": "sine-plate", "center_distance": 5}},
        {"set": "inch-81"},
    ),
    caution(
        "size-of-other-units",
        _CORRECTION,
        {"set": None, "sizes": [2, 0.5, 7.5]},
        {"sizes": [2, 0.5, 0.3]},
    ),
)

"""Advisories of `inspection.comparator`."""

from advisories.row import Row, caution, note

_COMPARATOR = "inspection.comparator"
_STRAIGHT = [{"x": x, "y": y} for x, y in ((0.05, -0.0289), (0.1, -0.0577), (0.15, -0.0866))]
_LONGER = [*_STRAIGHT, {"x": 0.2, "y": -0.1155}]
#: Five points on a line but for the middle one, which lies 0.000300 beside it.
_CROWNED = [{"x": x, "y": 0.0003 * (x == 0.15)} for x in (0.05, 0.1, 0.15, 0.2, 0.25)]
_OVERLAY = {
    "included_angle": 60,
    "large_diameter": 0.5,
    "length": 0.4,
    "large_diameter_tolerance": 0.002,
    "included_angle_tolerance_arcsec": 1,
    "magnification": 13.6,
    "formats": ["svg"],
}

ROWS: tuple[Row, ...] = (
    note("stray-not-told", _COMPARATOR, {"other_flank": _STRAIGHT}, {"other_flank": _LONGER}, "1"),
    # The scatter is 0.00015 at 3 degrees of freedom: chance 1 in 100 at 1.94 of picking's.
    caution(
        "flank-not-straight",
        _COMPARATOR,
        {"flank": _CROWNED, "picking_standard_uncertainty": 0.0000794},
        {"picking_standard_uncertainty": 0.0000799},
        "`flank`",
    ),
    caution(
        "band-not-seen",
        _COMPARATOR,
        {"overlay": _OVERLAY},
        {"overlay__magnification": 13.65},
        "at more than",
    ),
)

"""Advisories of `inspection.overlay`."""

from advisories.row import Row, caution

ROWS: tuple[Row, ...] = (
    caution(
        "band-not-seen",
        "inspection.overlay",
        {"included_angle_tolerance_arcsec": 1, "magnification": 13.5},
        {"magnification": 13.62},
        "at more than",
    ),
)

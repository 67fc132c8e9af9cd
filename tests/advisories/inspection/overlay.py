"""Advisories of `inspection.overlay`."""

from advisories.row import Row, caution

ROWS: tuple[Row, ...] = (
    caution(
        "band-not-seen",
        "inspection.overlay",
        {"included_angle_tolerance_arcsec": 1, "magnification": 13.6},
        {"magnification": 13.65},
        "at more than",
    ),
)

"""Advisories of readings in turn and along a line."""

from advisories.row import Row, caution, note

_DRIFT, _STRAIGHT = "inspection.drift", "inspection.straightness"

ROWS: tuple[Row, ...] = (
    caution(
        "order-not-balanced",
        _DRIFT,
        {"reading_order": "AABB"},
        {"reading_order": "ABBA"},
        "ABBA",
    ),
    note(
        "drift-not-steady",
        _DRIFT,
        {"repeatability": 0.00001736},
        {"repeatability": 0.00001737},
        "repeatability",
    ),
    note(
        "datum-in-the-reading",
        _STRAIGHT,
        {"datum_straightness": None},
        {"datum_straightness": 0},
        "datum_straightness",
    ),
)

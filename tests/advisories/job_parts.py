"""Advisories of a plan's feed and clearance."""

from advisories.row import Row, caution, note

_PLAN = "jobs.plan"

ROWS: tuple[Row, ...] = (
    caution(
        "heavy-pass",
        _PLAN,
        {"feeding__rough_downfeed_per_pass": 0.00101},
        {"feeding__rough_downfeed_per_pass": 0.001},
        "0.00101 in",
    ),
    caution(
        "much-stock",
        _PLAN,
        {"feeding__grinding_allowance": 0.0201},
        {"feeding__grinding_allowance": 0.02},
        "0.02010 in",
    ),
    caution(
        "clearance-not-known",
        _PLAN,
        {"room__gap_wanted": None},
        {"room__gap_wanted": 0.1},
        "room/gap_wanted",
    ),
    caution(
        "clearance-not-known",
        _PLAN,
        {
            "feature": {
                "kind": "angled-face",
                "face_angle": 30,
                "rise": 0.2,
                "tolerance_arcsec": 120,
            }
        },
        {
            "feature": {
                "kind": "center",
                "included_angle": 60,
                "included_angle_tolerance_arcsec": 120,
                "large_diameter": 0.75,
            }
        },
        "feature/work_body",
    ),
    note("prove-by-hand", _PLAN, {}, None, "full turn of the work"),
)

"""Advisories of a plan's feed and clearance."""

from advisories.row import Request, Row, caution, note

_PLAN = "jobs.plan"


def _observed(last: float) -> list[Request]:
    """Three pieces of which the middle one lies off the line of the others."""
    errors = ((1, 1.0), (2, 2.6), (3, last))
    return [{"piece_since_dress": n, "measured_error_arcsec": e} for n, e in errors]


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
    caution(
        "wear-not-steady",
        _PLAN,
        {
            "equipment__wheel__breakdown_per_piece": None,
            "observed_pieces": _observed(4.72),
        },
        {"observed_pieces": _observed(4.69)},
        "dressed between",
    ),
    caution(
        "way-ruled-out",
        _PLAN,
        {"equipment__spin_fixture__stick_out": 0.394},
        {"equipment__spin_fixture__stick_out": 0.395},
        "foul by",
        "stand out",
    ),
    caution(
        "gap-too-small",
        _PLAN,
        {"room__gap_wanted": 0.221},
        {"room__gap_wanted": 0.22},
        "0.2202 in",
        "0.2210 in is wanted",
        "stand out",
    ),
    note("prove-by-hand", _PLAN, {}, None, "full turn of the work"),
)

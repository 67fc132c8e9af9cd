"""Advisories of `inspection.verdict`."""

from advisories.row import Row, caution, note

_VERDICT = "inspection.verdict"
_SIMPLE = {"decision_rule": "simple-acceptance"}
#: A runout in place of the example's angle.
_RUNOUT = {
    **dict.fromkeys(("measured_included_angle", "included_angle", "coverage_factor")),
    **dict.fromkeys(("included_angle_tolerance_arcsec", "expanded_uncertainty_arcsec")),
    "standard_uncertainty": 0.0001,
    "limit_tir": 0.001,
}

ROWS: tuple[Row, ...] = (
    caution(
        "coarser-than-agreed",
        _VERDICT,
        {**_SIMPLE, "smallest_capability_index": 2.501},
        {"smallest_capability_index": 2.5},
        "2.5",
    ),
    # U of 10.2″ is 5.1″ standard, and 10″ are 1.96 of them.
    caution(
        "no-value-proves-it",
        _VERDICT,
        {"expanded_uncertainty_arcsec": 10.21},
        {"expanded_uncertainty_arcsec": 10.2},
        "the included angle",
    ),
    caution(
        "risk-shared",
        _VERDICT,
        {**_SIMPLE, "measured_included_angle": "60 00 06.72"},
        {"measured_included_angle": "60 00 06.70"},
        "94.9 %",
    ),
    caution(
        "risk-shared",
        _VERDICT,
        {**_SIMPLE, "measured_included_angle": "60 00 13.28"},
        {"measured_included_angle": "60 00 13.30"},
    ),
    note(
        "tir-may-be-nothing",
        _VERDICT,
        {**_RUNOUT, "measured_tir": 0.000244},
        {"measured_tir": 0.000245},
        "1 time in 20",
    ),
)

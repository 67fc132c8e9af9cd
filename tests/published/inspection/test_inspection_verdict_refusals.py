"""What a verdict cannot be given on is refused, with the fields that do not go together."""

from typing import Any

import pytest

from halfangle_service.errors import Disagreement
from support import Call

ANGLE = {"measured_included_angle": 60, "included_angle": 60, "included_angle_tolerance_arcsec": 10}
DIAMETER = {"measured_diameter": 20.0, "largest_diameter": 20.01}
TIR = {"measured_tir": 0.001, "limit_tir": 0.002}
WARM = {"part_temperature_celsius": 25, "part_material": "steel"}


@pytest.mark.parametrize(
    ("request_", "field", "why"),
    [
        ({}, "measured_tir", "One of"),
        ({**ANGLE, **TIR}, "measured_tir", "sent together"),
        ({"measured_diameter": 20.0}, "smallest_diameter", "No limit was sent"),
        ({"measured_tir": 0.1}, "limit_tir", "No limit was sent"),
        ({**DIAMETER, "limit_tir": 0.1}, "limit_tir", "says nothing of it"),
        ({**ANGLE, "half_angle": 30}, "half_angle", "says nothing of it"),
        ({**ANGLE, "standard_uncertainty": 0.1}, "standard_uncertainty", "says nothing of it"),
        ({**TIR, "standard_uncertainty_arcsec": 1}, "standard_uncertainty_arcsec", "says nothing"),
        ({**TIR, **WARM}, "part_material", "says nothing of it"),
        ({**DIAMETER, **WARM}, "instrument_material", "part and instrument have grown"),
        ({**DIAMETER, "smallest_diameter": 20.01}, "smallest_diameter", "no smaller than"),
        (
            {"measured_included_angle": 60, "included_angle": 60},
            "included_angle_tolerance_arcsec",
            "about the angle that is wanted",
        ),
        ({**ANGLE, "largest_included_angle": 61}, "largest_included_angle", "sent together"),
        ({**DIAMETER, "expanded_uncertainty": 0.01}, "coverage_factor", "expanded by"),
        (
            {**DIAMETER, "standard_uncertainty": 0.01, "coverage_factor": 2},
            "expanded_uncertainty",
            "belongs to an expanded uncertainty",
        ),
        (
            {**DIAMETER, "standard_uncertainty": 0.01, "measurement_error_limit": 0.01},
            "measurement_error_limit",
            "sent together",
        ),
        (
            {**DIAMETER, "measurement_error_limit": 0.01, "degrees_of_freedom": 3},
            "degrees_of_freedom",
            "belong to a standard or an expanded",
        ),
        ({**DIAMETER, "decision_rule": "guard-band"}, "guard_band", "belong together"),
        ({**ANGLE, "guard_band_arcsec": 2}, "guard_band_arcsec", "belong together"),
        ({**DIAMETER, "smallest_capability_index": 4}, "smallest_capability_index", "simple"),
        (
            {
                **DIAMETER,
                "decision_rule": "simple-acceptance",
                "smallest_capability_index": 4,
            },
            "smallest_capability_index",
            "with one limit",
        ),
    ],
)
def test_fields_that_do_not_go_together(
    call: Call, request_: dict[str, Any], field: str, why: str
) -> None:
    """The refusal names the field that is wrong or wanting, and says why."""
    with pytest.raises(Disagreement, match=why) as refused:
        call("inspection.verdict", units="mm", **request_)
    assert field in refused.value.fields


@pytest.mark.parametrize("request_", [ANGLE, DIAMETER, TIR])
def test_what_goes_together_is_judged(call: Call, request_: dict[str, Any]) -> None:
    """The requests that the refusals above are made from are answered by themselves."""
    answer = call("inspection.verdict", units="mm", **request_)
    assert answer["result"]["verdict"] == "not-provable"

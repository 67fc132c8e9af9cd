"""Other ways to set a taper, against handbooks and derivatives."""

import math
from typing import Any

import pytest

from support import Call

WAYS: dict[str, Any] = {
    "scale_radius": 6,
    "scale_reading_error": 0.005,
    "set_over_error": 0.002,
    "attachment_length": 12,
    "attachment_error": 0.005,
}


@pytest.mark.outside("tapers.set-over", source="Jones, Turning and Boring, and a published course")
@pytest.mark.parametrize(
    ("length", "per_foot", "printed"),
    [(9, 1, 0.375), (8, 1.5, 0.5), (12, 1, 0.5), (6, 1, 0.25), (15, 0.75, 0.46875)],
)
def test_set_over_of_the_handbooks(
    call: Call, length: float, per_foot: float, printed: float
) -> None:
    """The shop rule gives the printed set-over; the exact one is that times cos α."""
    result = call(
        "tapers.set-over",
        units="in",
        taper_per_foot=per_foot,
        work_length=length,
        work_length_error=0.01,
        **WAYS,
    )["result"]
    assert result["set_over_by_rule"] == pytest.approx(printed, rel=1e-12)
    half = math.radians(result["half_angle"]["degrees"])
    assert result["set_over"] == pytest.approx(printed * math.cos(half))
    errors = [way["half_angle_error_arcsec"]["worst_case"] for way in result["ways"]]
    assert errors == sorted(errors)


def test_a_way_whose_error_is_not_wholly_stated_comes_last(call: Call) -> None:
    """Without the error of the work's length the set-over counts what was stated, and says so."""
    request = {"units": "in", "taper_per_foot": 1, "work_length": 9, **WAYS}
    ways = call("tapers.set-over", **request)["result"]["ways"]
    assert [way["way"] for way in ways] == ["taper-attachment", "swivel", "tailstock-set-over"]
    error = ways[2]["half_angle_error_arcsec"]
    assert error["not_stated"] == ["work_length_error"]
    assert [c["name"] for c in error["contributions"]] == ["set_over_error"]
    stated = call("tapers.set-over", work_length_error=0, **request)["result"]["ways"]
    assert [way["way"] for way in stated] == ["tailstock-set-over", "taper-attachment", "swivel"]
    assert stated[0]["half_angle_error_arcsec"]["worst_case"] == error["worst_case"]


def test_errors_of_the_ways_follow_the_derivatives(call: Call) -> None:
    """δα = δS / (L cos α) − tan α δL / L at the tailstock; on the diameter 2 L δα / cos² α."""
    request = {"units": "in", "half_angle": 10, "work_length": 8, "work_length_error": 0.03, **WAYS}
    ways = {w["way"]: w for w in call("tapers.set-over", **request)["result"]["ways"]}
    half = math.radians(10)
    by_set_over, by_length = 0.002 / (8 * math.cos(half)), math.tan(half) * 0.03 / 8
    error = ways["tailstock-set-over"]["half_angle_error_arcsec"]
    worst = math.degrees(by_set_over + by_length) * 3600
    assert error["worst_case"] == pytest.approx(worst, rel=1e-9)
    assert error["contributions"][1]["sensitivity"] < 0
    combined = math.degrees(math.hypot(by_set_over, by_length)) * 3600 / math.sqrt(3)
    assert error["standard_uncertainty"] == pytest.approx(combined, rel=1e-9)
    on_diameter = ways["tailstock-set-over"]["error_on_diameter"]["worst_case"]
    expected = 16 * (by_set_over + by_length) / math.cos(half) ** 2
    assert on_diameter == pytest.approx(expected, rel=1e-9)

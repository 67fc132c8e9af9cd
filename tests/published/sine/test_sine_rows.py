"""Published settings and formulas of sine bars, row by row; each source with its own figure."""

import math
from typing import Any

import pytest

from support import Call, assert_values

_HANDBOOK = "Machinery's Handbook has such a table of 5 sin θ by the minute; figures worked out"
#: Angle, and five times its sine to six figures.
_FIVE_SINES = {
    "0 01": 0.001454,
    "0 30": 0.043633,
    "1 00": 0.087262,
    "2 00": 0.174497,
    "5 00": 0.435779,
    "10 00": 0.868241,
    "15 00": 1.294095,
    "18 00": 1.545085,
    "20 00": 1.710101,
    "22 30": 1.913417,
    "25 00": 2.113091,
    "30 00": 2.5,
    "35 00": 2.867882,
    "40 00": 3.213938,
    "45 00": 3.535534,
    "50 00": 3.830222,
    "55 00": 4.095760,
}
_PROJECTED: dict[str, Any] = {"units": "in", "base_axis": "x", "frame": "part"}


@pytest.mark.outside("sine.setting", source=_HANDBOOK)
@pytest.mark.parametrize(("angle", "height"), _FIVE_SINES.items())
def test_heights_on_five_inches(call: Call, angle: str, height: float) -> None:
    """The stack of a 5 in bar is five times the sine."""
    result = call("sine.setting", units="in", center_distance=5, angle=angle)["result"]
    assert result["height"] == pytest.approx(height, abs=6e-7)


@pytest.mark.outside(
    "sine.setting",
    source="shopdawg.com/sinebar.htm (18° on 5 in: 1.545); johnfsworkshop.org (30°: 2.5); "
    "block.tw question 30122 (30° on 200 mm: 100); scribd 541142906 (30° on 100 mm: 50); GATE ME "
    "2018 (27°32' on 125 mm: question only, 57.783 worked out)",
)
@pytest.mark.parametrize(
    ("units", "distance", "angle", "printed", "within"),
    [
        ("in", 5, "18°", 1.545, 0.0002),
        ("in", 5, "30°", 2.5, 1e-9),
        ("mm", 200, "30°", 100, 1e-9),
        ("mm", 100, "30°", 50, 1e-9),
        ("mm", 125, "27 32", 57.783072, 6e-7),
    ],
)
def test_printed_heights(
    call: Call, units: str, distance: float, angle: str, printed: float, within: float
) -> None:
    """Each printed height, to what a three-figure sine leaves it."""
    sent = {"units": units, "center_distance": distance, "angle": angle}
    assert call("sine.setting", **sent)["result"]["height"] == pytest.approx(printed, abs=within)


@pytest.mark.outside(
    "sine.uncertainty",
    source="Forum thread of 2012 on sine bars: 0.0001 in on 5 in at 30° is 0.00132°; "
    "quizall.hivanix.in 570896: dθ = tan θ (dh/h − dL/L)",
)
def test_the_published_error_formulas(call: Call) -> None:
    """dθ = dh/(L cos θ) of the stack, −tan θ dL/L of the center distance: as printed."""
    limits = {"stack_error_limit": 0.0001, "center_distance_error_limit": 0.0002}
    sent = {"units": "in", "center_distance": 5, "angle": 30, "temperature_celsius": 20}
    result = call("sine.uncertainty", **sent, **limits)["result"]["angle_error_arcsec"]
    parts = {row["name"]: row["worst_case"] for row in result["contributions"]}
    assert parts["stack_error_limit"] / 3600 == pytest.approx(0.00132, abs=5e-6)
    arcsec = 206264.80624709636
    tangent = math.tan(math.radians(30))
    assert parts["stack_error_limit"] == pytest.approx(tangent * 0.0001 / 2.5 * arcsec, rel=1e-9)
    assert parts["center_distance_error_limit"] == pytest.approx(
        tangent * 0.0002 / 5 * arcsec, rel=1e-9
    )
    step = call("sine.setting", units="in", center_distance=5, angle=30)["result"]
    assert_values(step, {"arcsec_per_step": parts["stack_error_limit"]})


@pytest.mark.outside(
    "sine.compound",
    source="tan C = tan B cos A, A on the top section, B the second view's angle, C on the lower "
    "section (an instruction sheet; derived); figures worked out, no printed ones found",
)
@pytest.mark.parametrize(
    ("first", "second", "lower"),
    [
        (30, 20, 17.495241),
        (15, 10, 9.665796),
        (45, 45, 35.264390),
        (25, 12.5, 11.360806),
    ],
)
def test_compound_angles_by_the_published_relation(
    call: Call, first: float, second: float, lower: float
) -> None:
    """The angle set on the lower section, for the upper one's and the other view's."""
    plates = {"base_center_distance": 5, "upper_center_distance": 5}
    angles = {"kind": "projected-angles", "x_angle": first, "y_angle": second}
    result = call("sine.compound", **_PROJECTED, **plates, orientation=angles)["result"]
    found = sorted(abs(result[plate]["angle"]["degrees"]) for plate in ("base", "upper"))
    assert found == pytest.approx(sorted((first, lower)), abs=6e-7)

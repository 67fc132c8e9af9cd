"""The sine relation against published values and against a high-precision library."""

import pytest
from mpmath import mp

from support import Call

# Each: units, center distance, angle in degrees, printed height, half a unit of its last digit.
PRINTED = [
    pytest.param("in", 5, 30, 2.5, 1e-9, id="workshop text on sine bars, 5 in bar at 30°"),
    pytest.param("in", 5, 18, 1.545, 5e-4, id="instruction page, 5 in bar at 18°, 3-figure sine"),
    pytest.param("mm", 200, 30, 100, 1e-9, id="examination solution, 200 mm bar at 30°"),
    pytest.param("mm", 100, 30, 50, 1e-9, id="metrology question bank, 100 mm bar at 30°"),
]


@pytest.mark.outside("sine.setting", source="Published textbook and examination answers, see ids")
@pytest.mark.parametrize(("units", "center_distance", "angle", "height", "half_digit"), PRINTED)
def test_height_is_the_printed_one(
    call: Call, units: str, center_distance: float, angle: float, height: float, half_digit: float
) -> None:
    """The height for an angle is the one printed, to its printed digits."""
    result = call("sine.setting", units=units, center_distance=center_distance, angle=angle)
    assert result["result"]["height"] == pytest.approx(height, abs=half_digit)


@pytest.mark.outside("sine.setting", source="mpmath, sine at 50 digits")
@pytest.mark.parametrize("center_distance", [2.5, 3, 5, 10, 20])
def test_constants_by_the_minute_match_high_precision(call: Call, center_distance: float) -> None:
    """Handbook constants (L sin θ by the minute) hold to 12 digits, for several bars."""
    mp.dps = 50
    for minutes in range(1, 60 * 90, 97):
        dms = f"{minutes // 60} {minutes % 60:02d}"
        answer = call("sine.setting", units="in", center_distance=center_distance, angle=dms)
        exact = center_distance * mp.sin(mp.radians(mp.mpf(minutes) / 60))
        assert answer["result"]["height"] == pytest.approx(float(exact), rel=1e-12)


@pytest.mark.outside("sine.setting", source="Forum thread: 0.0001 in at 30° on 5 in is 0.00132°")
def test_sensitivity_is_the_published_one(call: Call) -> None:
    """0.0001 in of height turns a 5 in bar at 30° by 0.00132°, as printed."""
    result = call("sine.setting", units="in", center_distance=5, angle=30)["result"]
    assert result["arcsec_per_step"] / 3600 == pytest.approx(0.00132, abs=5e-6)
    assert result["arcsec_per_step"] == pytest.approx(result["arcsec_per_unit"] * 0.0001)


@pytest.mark.outside("sine.angle", source="GATE 2012 metrology question: 90 on 250 mm is 21.1°")
def test_angle_is_the_printed_one(call: Call) -> None:
    """A difference of 90 mm on a 250 mm bar is 21.1°, the printed answer."""
    result = call("sine.angle", units="mm", center_distance=250, height=90)["result"]
    assert result["angle"]["degrees"] == pytest.approx(21.1, abs=0.05)


def test_steep_angle_is_advised_against(call: Call) -> None:
    """Past 45° the answer offers the complement, and below it says nothing."""
    steep = call("sine.setting", units="in", center_distance=5, angle=75)["advisories"]
    assert [a["code"] for a in steep] == ["steep-angle"]
    assert "15.0000°" in steep[0]["message"]
    assert call("sine.setting", units="in", center_distance=5, angle=45)["advisories"] == []


def test_decimal_that_may_be_minutes_is_noted(call: Call) -> None:
    """8.18 is read as decimal degrees and said to be; 8°18' in its own form raises no note."""
    notes = call("sine.setting", units="in", center_distance=5, angle=8.18)["advisories"]
    assert [a["code"] for a in notes] == ["decimal-degrees-read"]
    assert "8°10'48.00\"" in notes[0]["message"]
    assert call("sine.setting", units="in", center_distance=5, angle="8°18'")["advisories"] == []

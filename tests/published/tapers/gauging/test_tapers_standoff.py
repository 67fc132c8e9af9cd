"""Stand-off of a gauge against cones slid together, and constants of known slopes."""

import math
from typing import Any

import numpy as np
import pytest
from mpmath import mp

from halfangle_service.errors import Impossible
from support import Call

GAUGE_DIAMETER = 40.0
LENGTH = 30.0


@pytest.mark.outside("tapers.standoff", source="mpmath: 1 / (2 tan α) of 60°, 7/24 and 1:10")
@pytest.mark.parametrize(
    ("slope", "tangent"),
    [
        ({"included_angle": 60}, "tan(pi/6)"),
        ({"taper_per_foot": 3.5}, "7/48"),
        ({"one_in_x": 10}, "1/20"),
    ],
)
def test_gauge_line_shift(call: Call, slope: dict[str, float], tangent: str) -> None:
    """The gauge line moves by the diameter's error over twice the tangent."""
    mp.dps = 30
    value = {"tan(pi/6)": mp.tan(mp.pi / 6), "7/48": mp.mpf(7) / 48, "1/20": mp.mpf(1) / 20}
    result = call(
        "tapers.standoff", units="in", kind="external", contact_length=20, diameter_error=1, **slope
    )["result"]
    assert result["standoff"] == pytest.approx(float(1 / (2 * value[tangent])), rel=1e-12)


class SlidTogether:
    """An inner cone slid into an outer one until they touch: how it stands, and its gaps.

    The inner cone ends at `LENGTH` from its gauge plane and runs on past that; the outer one begins
    at its gauge plane and runs on past the contact.
    """

    def __init__(self, outer: float, inner: float, outer_diameter: float, excess: float) -> None:
        self._outer, self._inner = math.tan(outer), math.tan(inner)
        self._outer_diameter, self._inner_diameter = outer_diameter, outer_diameter + excess
        deep, clear = -10 * LENGTH, LENGTH
        for _ in range(100):
            middle = (deep + clear) / 2
            deep, clear = (deep, middle) if min(self._gaps(middle)) >= 0 else (middle, clear)
        self.standoff = clear
        self.large_gap, *_, self.small_gap = self._gaps(clear)

    def _gaps(self, standoff: float) -> list[float]:
        """Gaps on the diameter from the mouth to the inner cone's small end."""
        depth = np.linspace(0, LENGTH - standoff, 101)
        bore = self._outer_diameter - 2 * depth * self._outer
        plug = self._inner_diameter - 2 * (depth + standoff) * self._inner
        return [float(gap) for gap in bore - plug]


@pytest.mark.outside(
    "tapers.standoff", source="numpy: two sampled cones slid together by bisection"
)
@pytest.mark.parametrize("kind", ["external", "internal"])
@pytest.mark.parametrize("half_degrees", [1.49, 8.297, 30])
@pytest.mark.parametrize("angle_error", [-400.0, -90.0, 90.0, 400.0])
@pytest.mark.parametrize("diameter_error", [-0.05, 0.0, 0.05])
def test_cones_bear_where_slid_together(
    call: Call, kind: str, half_degrees: float, angle_error: float, diameter_error: float
) -> None:
    """Stand-off, bearing end and gap are those of the cones slid together until they touch."""
    gauge = math.radians(half_degrees)
    part = gauge + math.radians(angle_error / 7200)
    if kind == "external":
        slid = SlidTogether(gauge, part, GAUGE_DIAMETER, diameter_error)
    else:
        slid = SlidTogether(part, gauge, GAUGE_DIAMETER + diameter_error, -diameter_error)
    result = call(
        "tapers.standoff",
        units="mm",
        kind=kind,
        half_angle=half_degrees,
        contact_length=LENGTH,
        diameter_error=diameter_error,
        included_angle_error_arcsec=angle_error,
    )["result"]
    assert result["standoff"] == pytest.approx(slid.standoff, rel=1e-7, abs=1e-9)
    shares = result["standoff_from_diameter"] + result["standoff_from_angle"]
    assert shares == pytest.approx(result["standoff"])
    at_large_end = slid.large_gap < slid.small_gap
    assert result["bears_at"] == ("large-end" if at_large_end else "small-end")
    assert result["open_at"] == ("small-end" if at_large_end else "large-end")
    gap = max(slid.large_gap, slid.small_gap)
    assert result["gap_on_diameter"] == pytest.approx(gap, rel=1e-6)
    assert result["gap_normal"] == pytest.approx(gap / 2 * math.cos(gauge), rel=1e-6)


@pytest.mark.parametrize("kind", ["external", "internal"])
def test_a_gauge_that_does_not_enter_is_refused(call: Call, kind: str) -> None:
    """A part too large, or a socket too small, to let the cones into each other is refused."""
    request: dict[str, Any] = {"units": "mm", "one_in_x": 10, "kind": kind, "contact_length": 30}
    out = 1 if kind == "external" else -1
    entered = call("tapers.standoff", diameter_error=2.999 * out, **request)["result"]
    assert entered["standoff"] == pytest.approx(29.99)
    with pytest.raises(Impossible, match="does not enter") as refused:
        call("tapers.standoff", diameter_error=3.001 * out, **request)
    limit = "less than 3 mm" if kind == "external" else "more than -3 mm"
    assert refused.value.fields == {"diameter_error": f"should be {limit}"}


@pytest.mark.parametrize("kind", ["external", "internal"])
def test_a_gauge_that_goes_in_past_its_contact_is_doubted(call: Call, kind: str) -> None:
    """An error of diameter that lets the inner cone in by its whole length is not passed over."""
    request: dict[str, Any] = {"units": "mm", "one_in_x": 10, "kind": kind, "contact_length": 30}
    out = 1 if kind == "external" else -1
    for error, expected in ((-3.001, 1), (-2.999, 0)):
        answer = call("tapers.standoff", diameter_error=error * out, **request)
        codes = [advisory["code"] for advisory in answer["advisories"]]
        assert codes.count("sinks-past-contact") == expected


def test_a_sharp_hole_bears_at_its_mouth(call: Call) -> None:
    """A 59° hole on a 60° plug bears at its mouth; a 61° hole at its small end, the plug out."""
    sharp, blunt = (
        call(
            "tapers.standoff",
            units="mm",
            included_angle=60,
            kind="internal",
            contact_length=5,
            included_angle_error_arcsec=error,
        )["result"]
        for error in (-3600, 3600)
    )
    assert (sharp["bears_at"], sharp["standoff_from_angle"]) == ("large-end", 0)
    assert blunt["bears_at"] == "small-end"
    assert blunt["standoff_from_angle"] > 0
    assert blunt["bluing_marks"] == "at-small-end-only"

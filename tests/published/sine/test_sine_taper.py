"""Tapers on a sine plate against published tapers and rotated cones."""

import math

import mpmath
import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

from halfangle_service.errors import Disagreement, Impossible, Refusal, Unreachable
from halfangle_service.trade.sine.taper_holding import plate_angle
from support import Call


@pytest.mark.outside(
    "sine.taper-setting",
    source="7/24 taper of ISO 7388-1: included angle 16°35′39.4″ (ISO 1119 table, 7:24).",
)
def test_seven_in_twenty_four(call: Call) -> None:
    """A 7/24 taper between centers sets 8°17′49.7″; on its generator 16°35′39.4″."""
    request = {"units": "in", "center_distance": 5, "taper_per_foot": 3.5}
    between = call("sine.taper-setting", holding="between-centers", **request)["result"]
    lying = call("sine.taper-setting", holding="on-its-generator", **request)["result"]
    assert between["included_angle"]["dms"] == "16°35'39.44\""
    assert between["plate_angle"]["dms"] == "8°17'49.72\""
    assert lying["plate_angle"]["dms"] == "16°35'39.44\""
    assert lying["height"] == pytest.approx(5 * math.sin(2 * math.atan(3.5 / 24)))


@pytest.mark.outside(
    "sine.taper-setting",
    source="By hand: asin(3.5/12) = 16.958° where 16.594° is due.",
)
def test_usual_mistakes_are_named(call: Call) -> None:
    """The slip that takes a taper for a sine gives 16.958° on a 7/24 taper, and is listed."""
    result = call(
        "sine.taper-setting", units="in", center_distance=5, taper_per_foot=3.5,
        holding="on-its-generator",
    )["result"]  # fmt: skip
    angles = [round(m["plate_angle"]["degrees"], 3) for m in result["usual_mistakes"]]
    assert angles == [8.297, 16.958, 16.26]


@pytest.mark.outside(
    "sine.taper-setting",
    source="By hand: half of atan(2 tan 2.72°) is 22″ flat; tan for sin at 30° is 5.26° out.",
)
def test_slips_by_hand(call: Call) -> None:
    """Half of atan(taper) is 22″ flat at 2.72°; a tangent set as a sine is 5.26° steep at 30°."""
    for half, expected in ((2.72, -22 / 3600), (30, 5.264)):
        result = call(
            "sine.taper-setting", units="in", center_distance=5, half_angle=half,
            holding="between-centers",
        )["result"]  # fmt: skip
        errors = [m["plate_angle_error_arcsec"] / 3600 for m in result["usual_mistakes"]]
        assert any(error == pytest.approx(expected, abs=5e-4) for error in errors)


def _top_generator_lean(half_rad: float, vee_half_rad: float) -> float:
    """Lean of a cone's highest line when it touches both faces of a vee: by rotating points.

    Independent of the closed form: the tilt is found numerically from the distance of the cone's
    surface points to a face.
    """
    around = np.radians(np.arange(0, 360, 0.05))
    lines = np.stack(
        [
            np.full_like(around, math.cos(half_rad)),
            math.sin(half_rad) * np.cos(around),
            math.sin(half_rad) * np.sin(around),
        ],
        axis=1,
    )
    face = np.array([0.0, math.cos(vee_half_rad), math.sin(vee_half_rad)])

    def clearance(tilt: float) -> float:
        turned = Rotation.from_euler("y", -tilt).apply(lines)
        return float((turned @ face).min())

    tilt = brentq(clearance, 0.0, 1.57)
    turned = Rotation.from_euler("y", -tilt).apply(lines)
    return float(np.arctan2(turned[:, 2], turned[:, 0]).max())


@pytest.mark.outside(
    "sine.taper-setting", source="scipy: a cone of points rotated until it touches both vee faces."
)
@pytest.mark.parametrize(("half", "vee"), [(5, 90), (1.4908, 90), (8.2971, 120), (20, 60.5)])
def test_cone_in_a_vee_by_rotating_points(half: float, vee: float) -> None:
    """A cone in a vee leans as a cloud of its points does when it is laid in."""
    closed = plate_angle(math.radians(half), "in-a-vee", math.radians(vee) / 2)
    cloud = _top_generator_lean(math.radians(half), math.radians(vee) / 2)
    assert closed == pytest.approx(cloud, abs=1e-6)


def test_five_degrees_in_a_right_angled_vee(call: Call) -> None:
    """A cone of 5° half angle in a 90° vee sets 12.080°: asin(sin 5° / sin 45°) + 5°, by hand."""
    result = call(
        "sine.taper-setting", units="mm", center_distance=100, half_angle=5, holding="in-a-vee"
    )["result"]
    assert result["plate_angle"]["degrees"] == pytest.approx(12.080, abs=5e-4)


@pytest.mark.outside(
    "sine.taper-angle",
    source="A textbook question on a taper lying on a 112 mm sine bar, stacks 10 mm apart: the "
    "angle is the whole cone's; 7/24 taper of ISO 7388-1 for the way back.",
)
def test_way_back(call: Call) -> None:
    """On its generator a rise of 10 on 112 mm is the included angle, not the half angle."""
    lying = call(
        "sine.taper-angle", units="mm", center_distance=112, height=10, holding="on-its-generator"
    )["result"]
    assert lying["included_angle"]["degrees"] == pytest.approx(math.degrees(math.asin(10 / 112)))
    back = call(
        "sine.taper-angle", units="in", center_distance=5, height=0.7215344653586429,
        holding="between-centers",
    )["result"]  # fmt: skip
    assert back["taper_per_foot"] == pytest.approx(3.5, rel=1e-12)
    assert back["one_in_x"] == pytest.approx(24 / 7, rel=1e-12)


def test_indicator_reading_joins_the_setting(call: Call) -> None:
    """A top generator that still rises 0.0001 in 2 toward the low roll adds 10.3″ to the lean."""
    request = {"units": "in", "center_distance": 5, "height": 0.5, "holding": "between-centers"}
    still = call("sine.taper-angle", **request)["result"]
    rising = call("sine.taper-angle", indicator_rise=0.0001, indicator_travel=2, **request)[
        "result"
    ]
    added = (rising["half_angle"]["degrees"] - still["half_angle"]["degrees"]) * 3600
    assert added == pytest.approx(math.degrees(0.00005) * 3600, abs=1e-6)


@pytest.mark.parametrize(
    ("request_", "kind", "says"),
    [
        ({}, Disagreement, "slope of the cone is missing"),
        (
            {"included_angle": 60, "half_angle": 31},
            Disagreement,
            "half_angle disagrees with included_angle by 7200″ of included angle",
        ),
        ({"half_angle": 50, "holding": "on-its-generator"}, Impossible, "Hold it between centers"),
        ({"half_angle": 45, "holding": "in-a-vee"}, Impossible, "blunt or blunter"),
    ],
)
def test_taper_refusals(
    call: Call, request_: dict[str, object], kind: type[Refusal], says: str
) -> None:
    """Tapers missing, contradicting themselves, or too blunt for their hold are refused."""
    request = {"units": "in", "center_distance": 5, "holding": "between-centers"} | request_
    with pytest.raises(kind, match=says):
        call("sine.taper-setting", **request)


def test_agreeing_statements_are_taken(call: Call) -> None:
    """Included and half angle that agree to a second are one taper."""
    result = call(
        "sine.taper-setting", units="in", center_distance=5, included_angle=60, half_angle=30,
        holding="between-centers",
    )["result"]  # fmt: skip
    assert result["height"] == pytest.approx(2.5)


@pytest.mark.outside(
    "sine.taper-setting",
    source="ISO 296, Morse taper 2 of 1:20.020, ISO 1119, cone of 60°; heights by mpmath.",
)
@pytest.mark.parametrize(
    ("designation", "half_degrees"),
    [
        ("morse-2-iso", mpmath.degrees(mpmath.atan(1 / mpmath.mpf("40.04")))),
        ("iso-1:20", mpmath.degrees(mpmath.atan(1 / mpmath.mpf(40)))),
        ("cone-60", 30),
    ],
)
def test_a_designation_is_a_slope(call: Call, designation: str, half_degrees: float) -> None:
    """A standard taper is set by its designation alone, as by its half angle."""
    result = call(
        "sine.taper-setting", units="mm", center_distance=100, holding="between-centers",
        designation=designation,
    )["result"]  # fmt: skip
    exact = 100 * mpmath.sin(mpmath.radians(half_degrees))
    assert result["half_angle"]["degrees"] == pytest.approx(float(half_degrees), rel=1e-12)
    assert result["height"] == pytest.approx(float(exact), rel=1e-12)


def test_a_designation_must_agree_with_what_else_is_sent(call: Call) -> None:
    """A designation beside an angle that is not its own is refused, and so is one unknown."""
    request = {"units": "mm", "center_distance": 100, "holding": "between-centers"}
    with pytest.raises(Disagreement, match="designation disagrees with half_angle"):
        call("sine.taper-setting", designation="morse-2", half_angle=2, **request)
    with pytest.raises(Unreachable, match="no standard taper or rate 'morse-22'"):
        call("sine.taper-setting", designation="morse-22", **request)


def test_rise_without_travel_is_refused(call: Call) -> None:
    """A rise whose travel is not said has no angle."""
    with pytest.raises(Disagreement, match="without its travel"):
        call(
            "sine.taper-angle", units="in", center_distance=5, height=1, holding="between-centers",
            indicator_rise=0.001,
        )  # fmt: skip

"""Errors of dressing against brute force: rotate the real shapes, intersect, fit."""

import math
from typing import Any

import mpmath
import numpy as np
import pytest
from scipy.optimize import linprog
from scipy.spatial.transform import Rotation

from halfangle_service.errors import Disagreement, Impossible
from support import Call

ARCSEC = math.pi / 648_000
CONE: dict[str, Any] = {
    "units": "in",
    "included_angle": 60,
    "large_diameter": 0.75,
    "small_diameter": 0.05,
    "wheel_diameter": 7,
}
HALF = math.radians(30)


def _wheel_radius_by_rotation(height: float, station: float) -> float:
    """Radius at an axial station of the solid that the diamond's straight path sweeps.

    A point of the path is rotated about the wheel's axis into the axial plane.
    """
    start = math.sqrt(3.5**2 - height**2)
    point = np.array([station, start - station * math.tan(HALF), height])
    turn = Rotation.from_rotvec([math.atan2(-point[2], point[1]), 0, 0])
    turned = turn.apply(point)
    assert turned[2] == pytest.approx(0, abs=1e-12)
    return float(turned[1])


@pytest.mark.outside(
    "wheels.dressing-errors", source="Brute force: diamond path rotated, mpmath derivative"
)
@pytest.mark.parametrize(
    ("height", "arcsec"), [(0.05, -9), (0.10, -36), (-0.10, -36), (0.25, -228)]
)
def test_angle_at_each_radius(call: Call, height: float, arcsec: float) -> None:
    """The local half angle is the slope of the rotated path, worst where the wheel is smallest."""
    stations = call("wheels.dressing-errors", **CONE, diamond_height=height)["result"][
        "at_stations"
    ]
    assert stations[0]["half_angle_error_arcsec"] == pytest.approx(arcsec, abs=0.6)
    start = mpmath.sqrt(mpmath.mpf(3.5) ** 2 - mpmath.mpf(height) ** 2)

    def radius(at: Any) -> Any:
        return mpmath.sqrt((start - at * mpmath.tan(HALF)) ** 2 + mpmath.mpf(height) ** 2)

    for index, row in enumerate(stations):
        at = index / 10 * 0.35 / math.tan(HALF)
        assert row["wheel_radius"] == pytest.approx(_wheel_radius_by_rotation(height, at))
        slope = -mpmath.diff(radius, at)
        assert row["half_angle"]["degrees"] == pytest.approx(
            float(mpmath.degrees(mpmath.atan(slope))), abs=1e-9
        )
    errors = [abs(row["half_angle_error_arcsec"]) for row in stations]
    assert errors == sorted(errors)


@pytest.mark.outside("wheels.dressing-errors", source="scipy linprog: minimum zone of the profile")
@pytest.mark.parametrize("height", [0.05, 0.25, 1.0])
def test_straightness_is_the_minimum_zone(call: Call, height: float) -> None:
    """Mean angle and straightness are those of the closest two parallel lines about the profile."""
    error = call("wheels.dressing-errors", **CONE, diamond_height=height)["result"]["errors"][0]
    x = np.linspace(0, 0.35 / math.tan(HALF), 2001)
    y = np.array([_wheel_radius_by_rotation(height, float(at)) for at in x])
    # Least w with |y - (a + b x)| <= w, over (a, b, w).
    one = np.ones_like(x)
    above = np.column_stack([-one, -x, -one])
    below = np.column_stack([one, x, -one])
    zone = linprog(
        [0, 0, 1],
        A_ub=np.vstack([above, below]),
        b_ub=np.concatenate([-y, y]),
        bounds=[(None, None), (None, None), (0, None)],
        method="highs-ds",
        options={"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10},
    )
    assert zone.x is not None
    angle = math.atan(-zone.x[1])
    assert error["half_angle_error_arcsec"] == pytest.approx((angle - HALF) / ARCSEC, abs=0.05)
    assert error["straightness"] == pytest.approx(
        2 * zone.x[2] * math.cos(angle), rel=2e-3, abs=1e-9
    )


@pytest.mark.outside("wheels.dressing-errors", source="Distance of a circle from a line, by hand")
def test_round_nose_displaces_without_turning(call: Call) -> None:
    """A nose set by touch and led along the angle cuts ρ(1 − cos β) deeper, everywhere alike.

    Its center starts ρ above the periphery and runs parallel to the sharp point's line.
    """
    result = call("wheels.dressing-errors", **CONE, nose_radius=0.01)["result"]
    nose = result["errors"][1]
    assert nose["half_angle_error_arcsec"] == 0
    line = np.array([math.cos(HALF), -math.sin(HALF)])
    normal = np.array([math.sin(HALF), math.cos(HALF)])
    centers = np.array([0.0, 0.01]) + np.linspace(0, 1, 50)[:, None] * line
    depths = -(centers @ normal - 0.01)
    assert np.ptp(depths) == pytest.approx(0, abs=1e-15)
    # Left on the cone square to its surface: at a station the radius gains it over cos α.
    assert nose["diameter_change"] == pytest.approx(2 * depths[0] / math.cos(HALF))


def test_wear_turns_the_flank(call: Call) -> None:
    """0.0001 in of breakdown over 0.5 in of slant is 41″ of half angle (formula page: 41″)."""
    cone = {**CONE, "large_diameter": 0.55}
    ends = {"wheel_wear_small_end": 0.0001, "wheel_wear_large_end": 0}
    result = call("wheels.dressing-errors", **cone, **ends)["result"]
    wear = result["errors"][3]
    assert wear["half_angle_error_arcsec"] == pytest.approx(-41.25, abs=0.01)
    assert wear["included_angle_error_arcsec"] == pytest.approx(-82.5, abs=0.02)
    assert wear["end_to_end"] == pytest.approx(-0.0001, abs=4e-9)
    toward = call(
        "wheels.dressing-errors", **cone, diamond_wear=0.0001, dressed_toward="small-end"
    )["result"]["errors"][4]
    assert toward["half_angle_error_arcsec"] == pytest.approx(41.25, abs=0.01)


def test_inspections_see_what_they_resolve(call: Call) -> None:
    """An error is seen by the inspections whose least error it reaches, and the rest is told."""
    sharp = {"name": "sine bar", "smallest_half_angle_error_arcsec": 10}
    knife = {"name": "straight edge", "smallest_straightness": 0.00001}
    answer = call(
        "wheels.dressing-errors",
        **CONE,
        diamond_height=0.05,
        dresser_angle_error_arcsec=15,
        included_angle_tolerance_arcsec=5,
        inspections=[sharp, knife],
    )
    height, nose, angle = answer["result"]["errors"][:3]
    assert (height["seen_by"], nose["seen_by"], angle["seen_by"]) == (
        ["sine bar"],
        [],
        ["sine bar"],
    )
    assert (height["seen_by_stack"], angle["seen_by_stack"]) == (False, True)
    assert answer["result"]["forecast"] == "does-not-hold"
    usual = call("wheels.dressing-errors", **CONE, diamond_height=0.02)["result"]
    assert usual["unseen"] == ["diamond-height"]


def test_an_error_not_stated_is_null_and_named(call: Call) -> None:
    """An error that was left out is null and named, and the tolerance is never said to hold."""
    result = call(
        "wheels.dressing-errors", **CONE, nose_radius=0.01, included_angle_tolerance_arcsec=60
    )["result"]
    rows = {row["name"]: row for row in result["errors"]}
    assert rows["diamond-height"]["half_angle_error_arcsec"] is None
    assert rows["all-together"]["included_angle_error_arcsec"] == 0
    assert result["not_stated"] == [
        "diamond_height",
        "dresser_angle_error_arcsec",
        "wheel_wear_small_end",
        "wheel_wear_large_end",
        "diamond_wear",
    ]
    assert (result["at_stations"], result["forecast"]) == (None, "may-not-hold")
    none = dict.fromkeys(result["not_stated"], 0)
    stated = call(
        "wheels.dressing-errors", **CONE, nose_radius=0, **none, included_angle_tolerance_arcsec=60
    )
    assert (stated["result"]["not_stated"], stated["result"]["forecast"]) == ([], "holds")
    nothing = call(
        "wheels.dressing-errors", **CONE, worn_diameter=5, included_angle_tolerance_arcsec=60
    )["result"]
    assert all(row["diameter_change"] is None for row in nothing["errors"])
    assert (nothing["forecast"], nothing["worn"], nothing["unseen"]) == ("not-stated", None, [])


@pytest.mark.parametrize("end", ["wheel_wear_small_end", "wheel_wear_large_end"])
def test_wear_at_one_end_is_half_a_statement(call: Call, end: str) -> None:
    """Wear stated at one end alone is not taken for none at the other: the other is asked for."""
    with pytest.raises(Disagreement, match="an end without is 0") as refused:
        call("wheels.dressing-errors", **CONE, **{end: 0.0001})
    other = {"wheel_wear_small_end", "wheel_wear_large_end"} - {end}
    assert set(refused.value.fields) == other
    both = {end: 0.0001, other.pop(): 0}
    wear = call("wheels.dressing-errors", **CONE, **both)["result"]["errors"][3]
    assert abs(wear["half_angle_error_arcsec"]) == pytest.approx(29.47, abs=0.01)


def test_a_flank_beyond_the_tolerance_is_a_stop(call: Call) -> None:
    """Where the forecast is that it does not hold, a stop says so, and only there."""
    for tolerance, stops in ((5, True), (600, False)):
        answer = call(
            "wheels.dressing-errors",
            **CONE,
            diamond_height=0.1,
            included_angle_tolerance_arcsec=tolerance,
        )
        found = "stop" in [a["severity"] for a in answer["advisories"]]
        assert found == (answer["result"]["forecast"] == "does-not-hold") == stops


@pytest.mark.parametrize("name", ["wheels.dressing-errors", "wheels.setup-errors"])
def test_a_designation_is_a_slope(call: Call, name: str) -> None:
    """A Morse taper's designation serves as the cone's slope: No. 2 is 0.59941 in/ft."""
    cone = {**CONE, "included_angle": None, "designation": "morse-2", "small_diameter": 0.7}
    more = {"grinder": "surface", "way": "dressed-wheel", "feed": "plunge"}
    more = more if name == "wheels.setup-errors" else {}
    half = call(name, **cone, **more)["result"]["half_angle"]["degrees"]
    assert half == pytest.approx(math.degrees(math.atan(0.59941 / 24)), abs=1e-6)


def test_worn_wheel_is_worse(call: Call) -> None:
    """The same diamond height turns the flank of a worn wheel further."""
    result = call("wheels.dressing-errors", **CONE, diamond_height=0.1, worn_diameter=5)["result"]
    new, worn = result["errors"][0], result["worn"]
    assert abs(worn["half_angle_error_arcsec"]) > 1.9 * abs(new["half_angle_error_arcsec"])
    assert worn["straightness"] > new["straightness"]


@pytest.mark.parametrize(
    ("change", "error", "match"),
    [
        ({"diamond_height": 3.2}, Impossible, r"never reaches the flank's root"),
        (
            {"wheel_diameter": 2, "large_diameter": 2.45},
            Impossible,
            r"1\.2 in deep and the wheel's radius 1 in\.",
        ),
        ({"worn_diameter": 8}, Impossible, r"does not wear to 8"),
        ({"small_diameter": 0.75}, Impossible, r"not below the larger one"),
        (
            {"included_angle": 0.02, "large_diameter": 20, "wheel_diameter": 40},
            Impossible,
            r"at most 10000 in is taken",
        ),
        ({"wheel_diameter": 127}, Disagreement, r"No flat .* of 127 in: .* would be 5 in"),
        ({"included_angle": None}, Disagreement, r"slope of the cone is missing"),
        ({"one_in_x": 20}, Disagreement, r"one_in_x disagrees with included_angle"),
    ],
)
def test_bad_dressing_errors_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], match: str
) -> None:
    """Shapes that cannot be are refused with the reason."""
    with pytest.raises(error, match=match):
        call("wheels.dressing-errors", **{**CONE, **change})

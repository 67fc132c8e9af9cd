"""Errors of dressing and set-up against brute force: rotate the real shapes, intersect, fit."""

import math
from typing import Any

import mpmath
import numpy as np
import pytest
from scipy.optimize import brentq, linprog, minimize_scalar
from scipy.spatial.transform import Rotation

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.wheel.setup_errors import (
    Errors,
    Setup,
    ground_by_plunge,
    ground_by_traverse,
    ground_radii,
)
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
    stations = call("wheels.dressing-errors", **CONE, diamond_height=height)["result"]["stations"]
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
    result = call("wheels.dressing-errors", **cone, wheel_wear_small_end=0.0001)["result"]
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
    sharp = {"name": "sine bar", "least_half_angle_error_arcsec": 10}
    knife = {"name": "straight edge", "least_straightness": 0.00001}
    answer = call(
        "wheels.dressing-errors",
        **CONE,
        diamond_height=0.05,
        dresser_angle_error_arcsec=15,
        tolerance_arcsec=5,
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
    result = call("wheels.dressing-errors", **CONE, nose_radius=0.01, tolerance_arcsec=60)["result"]
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
    assert (result["stations"], result["forecast"]) == (None, "may-not-hold")
    none = dict.fromkeys(result["not_stated"], 0)
    stated = call("wheels.dressing-errors", **CONE, nose_radius=0, **none, tolerance_arcsec=60)
    assert (stated["result"]["not_stated"], stated["result"]["forecast"]) == ([], "holds")
    nothing = call("wheels.dressing-errors", **CONE, worn_diameter=5, tolerance_arcsec=60)["result"]
    assert all(row["diameter_change"] is None for row in nothing["errors"])
    assert (nothing["forecast"], nothing["worn"], nothing["unseen"]) == ("not-stated", None, [])


@pytest.mark.parametrize("name", ["wheels.dressing-errors", "wheels.setup-errors"])
def test_a_designation_is_a_slope(call: Call, name: str) -> None:
    """A Morse taper's designation serves as the cone's slope: No. 2 is 0.59941 in/ft."""
    cone = {**CONE, "included_angle": None, "designation": "morse-2", "small_diameter": 0.7}
    more = {"way": "dressed-wheel", "feed": "plunge"} if name == "wheels.setup-errors" else {}
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
        ({"wheel_diameter": 0.6}, Impossible, r"0\.35 deep and the wheel's radius 0\.3"),
        ({"worn_diameter": 8}, Impossible, r"does not wear to 8"),
        ({"small_diameter": 0.75}, Impossible, r"not below the larger one"),
        (
            {"included_angle": 0.02, "large_diameter": 20, "wheel_diameter": 90},
            Impossible,
            r"at most 10000 is taken",
        ),
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


SETUPS = {
    "flat": Setup(HALF, 0.0, 0.25, 0.2, 6.0),
    "dressed": Setup(HALF, HALF, 0.25, 0.2, 6.0),
    "side": Setup(HALF, math.pi / 2, 0.25, 0.2, 3.0),
    "slow taper": Setup(math.radians(1.5), 0.0, 0.3, 2.0, 6.0),
}
EVERY = Errors(0.1, 40 * ARCSEC, math.radians(0.4))


def _world(setup: Setup, errors: Errors) -> tuple[Any, Any]:
    """Wheel points by (slant, turn) and the work's axis, in a world where the wheel's axis is Z.

    Written apart from the code under test: matrices instead of a frame along the contact.
    """
    beta, angle = setup.wheel_angle, setup.half_angle + errors.pitch_rad
    contact = np.array([setup.wheel_radius, 0.0, 0.0])

    def wheel(slant: float, turn: float) -> Any:
        meridian = contact + slant * np.array([-math.sin(beta), 0.0, math.cos(beta)])
        return Rotation.from_euler("z", turn).apply(meridian)

    # Turned about Y by (angle − β), the axis stands off the wheel; x of the world is the normal.
    lean = Rotation.from_euler("y", angle - beta)
    across = lean.apply([1.0, 0.0, 0.0])
    direction = lean.apply([0.0, 0.0, 1.0])
    yawed = Rotation.from_rotvec(-errors.yaw_rad * across).apply(direction)
    origin = contact + setup.small_radius * across + np.array([0.0, errors.axis_offset, 0.0])
    return wheel, (origin, yawed)


def _radius_by_search(setup: Setup, errors: Errors, station: float) -> float:
    """Least distance from the axis of the wheel's points at one station, by scipy."""
    wheel, (origin, direction) = _world(setup, errors)

    def distance(turn: float) -> float:
        slant = brentq(
            lambda t: (wheel(t, turn) - origin) @ direction - station, -2, 2.9, xtol=1e-14
        )
        return float(np.linalg.norm(wheel(slant, turn) - origin - station * direction))

    return float(minimize_scalar(distance, bounds=(-0.5, 0.5), options={"xatol": 1e-10}).fun)


@pytest.mark.outside("wheels.setup-errors", source="scipy: least distance of rotated wheel points")
@pytest.mark.parametrize("name", SETUPS)
@pytest.mark.parametrize("errors", [Errors(axis_offset=0.1), Errors(yaw_rad=0.01), EVERY])
def test_ground_surface_is_the_nearest_wheel(name: str, errors: Errors) -> None:
    """The radius ground at a station is the least distance of the wheel's points there."""
    setup = SETUPS[name]
    stations = np.linspace(0, setup.length, 4)
    radii = ground_radii(setup, errors, stations)
    expected = [_radius_by_search(setup, errors, float(z)) for z in stations]
    assert radii == pytest.approx(expected, abs=1e-9)


@pytest.mark.outside("wheels.setup-errors", source="Brute force: 200,000 points of the wheel")
def test_no_point_of_the_wheel_is_inside_the_work() -> None:
    """Of points all over the wheel none is nearer to the axis than the surface, and some touch."""
    setup = SETUPS["flat"]
    wheel, (origin, direction) = _world(setup, EVERY)
    random = np.random.default_rng(6)
    slants, turns = random.uniform(-0.2, 0.5, 200_000), random.uniform(-0.06, 0.06, 200_000)
    meridian = np.column_stack([np.full_like(slants, 6.0), np.zeros_like(slants), slants])
    points = Rotation.from_euler("z", turns[:, None]).apply(meridian) - origin
    assert points[0] + origin == pytest.approx(wheel(slants[0], turns[0]))
    along = points @ direction
    inside = (along > 0) & (along < setup.length)
    stations = np.linspace(0, setup.length, 401)
    surface = np.interp(along[inside], stations, ground_radii(setup, EVERY, stations))
    away = np.linalg.norm(points - along[:, None] * direction, axis=1)[inside] - surface
    assert -1e-8 < np.min(away) < 1e-7


@pytest.mark.outside("wheels.setup-errors", source="Second-order formula, derived apart")
def test_offset_of_a_plunged_flat_wheel(call: Call) -> None:
    """0.1 in off a 12 in wheel at radius 0.25: about −15″, −½ sin α cos α (h/(r + R cos α))²."""
    errors = call(
        "wheels.setup-errors",
        **{**CONE, "wheel_diameter": 12, "small_diameter": 0.49, "large_diameter": 0.51},
        way="sine-plate",
        feed="plunge",
        axis_offset=0.1,
    )["result"]["errors"]
    reach = 0.25 + 6 * math.cos(HALF)
    formula = -0.5 * math.sin(HALF) * math.cos(HALF) * (0.1 / reach) ** 2 / ARCSEC
    assert errors[0]["half_angle_error_arcsec"] == pytest.approx(formula, rel=0.01)
    assert errors[0]["half_angle_error_arcsec"] == pytest.approx(-15, abs=0.4)
    # The radius grows by h²/(2(r + R cos α)), the diameter by twice as much.
    assert errors[0]["diameter_change"] == pytest.approx(0.01 / reach, rel=0.02)


@pytest.mark.outside("wheels.setup-errors", source="Angle between a line and a plane, by vectors")
@pytest.mark.parametrize(("yaw", "arcsec"), [(0.5, -4.5), (1.0, -18.1)])
def test_yaw_of_a_traversed_wheel(call: Call, yaw: float, arcsec: float) -> None:
    """Under a swept plane the half angle is that between axis and plane: 1° of yaw, −18″."""
    errors = call(
        "wheels.setup-errors",
        **CONE,
        way="sine-plate",
        feed="traversed",
        axis_yaw_arcsec=yaw * 3600,
    )["result"]["errors"]
    axis = Rotation.from_rotvec(np.array([0, math.sin(-HALF), math.cos(-HALF)]) * math.radians(yaw))
    tilted = axis.apply([0, math.cos(HALF), math.sin(HALF)])
    expected = (math.asin(tilted[2]) - HALF) / ARCSEC
    assert errors[2]["half_angle_error_arcsec"] == pytest.approx(expected, abs=1e-6)
    assert errors[2]["half_angle_error_arcsec"] == pytest.approx(arcsec, abs=0.1)


@pytest.mark.outside("wheels.setup-errors", source="Two circles about parallel axes touch")
def test_parallel_axes_keep_the_angle(call: Call) -> None:
    """A dressed wheel with parallel axes changes the size with the offset, not the angle."""
    result = call(
        "wheels.setup-errors",
        **CONE,
        way="dressed-wheel",
        feed="plunge",
        axis_offset=0.1,
    )["result"]
    assert result["shape"] == "cone"
    assert result["errors"][0]["half_angle_error_arcsec"] == pytest.approx(0, abs=1e-6)
    between = math.hypot(3.5 + 0.025, 0.1) - 3.5
    assert result["stations"][0]["diameter"] == pytest.approx(2 * between, abs=1e-12)


def test_side_grinds_a_true_cone_like_a_plane() -> None:
    """The wheel's side is a plane: plunged it grinds what a traversed wheel grinds."""
    setup = SETUPS["side"]
    stations = np.linspace(0, setup.length, 21)
    plunged = ground_by_plunge(setup, EVERY, stations)
    swept = ground_by_traverse(setup, EVERY, stations)
    assert plunged.radii == pytest.approx(swept.radii, abs=1e-10)
    assert plunged.straightness == pytest.approx(0, abs=1e-10)


def test_yaw_of_a_plunged_wheel_makes_a_hyperboloid(call: Call) -> None:
    """A slow taper plunged with yaw is bent, and an indicator along it is what shows it."""
    answer = call(
        "wheels.setup-errors",
        units="in",
        half_angle=1.5,
        small_diameter=0.5,
        large_diameter=0.6,
        wheel_diameter=7,
        way="sine-plate",
        feed="plunge",
        axis_yaw_arcsec=1800,
    )
    assert answer["result"]["shape"] == "hyperboloid"
    assert "surface-not-straight" in [a["code"] for a in answer["advisories"]]


@pytest.mark.outside("wheels.setup-errors", source="Sine of a sum: a turn in the plane adds")
@pytest.mark.parametrize("way", ["sine-plate", "swivelled-workhead", "dressed-wheel", "wheel-side"])
def test_pitch_acts_one_to_one_and_yaw_by_its_square(call: Call, way: str) -> None:
    """In every way pitch turns the half angle by itself; twice the yaw turns it four times."""

    def row(name: str, **errors: float) -> float:
        request = {**CONE, "way": way, "feed": "traversed", **errors}
        rows = call("wheels.setup-errors", **request)["result"]["errors"]
        return float({r["name"]: r for r in rows}[name]["half_angle_error_arcsec"])

    assert row("axis-pitch", axis_pitch_arcsec=20) == pytest.approx(20, abs=1e-6)
    once, twice = (row("axis-yaw", axis_yaw_arcsec=yaw) for yaw in (900, 1800))
    assert once < 0
    assert twice == pytest.approx(4 * once, rel=1e-4)


def test_a_set_up_of_which_nothing_is_stated_is_not_ground(call: Call) -> None:
    """Without any error there is no surface to tell of, and each error is named."""
    request = {**CONE, "way": "dressed-wheel", "feed": "plunge"}
    result = call("wheels.setup-errors", **request)["result"]
    assert (result["as_ground"], result["stations"], result["shape"]) == (None,) * 3
    assert result["not_stated"] == ["axis_offset", "axis_pitch_arcsec", "axis_yaw_arcsec"]
    one = call("wheels.setup-errors", **request, axis_offset=0)["result"]
    assert (one["shape"], one["not_stated"]) == ("cone", ["axis_pitch_arcsec", "axis_yaw_arcsec"])
    assert [row["straightness"] is None for row in one["errors"]] == [False, True, True, False]


@pytest.mark.parametrize(("rated", "stops"), [(None, True), (False, True), (True, False)])
def test_side_needs_its_rating(call: Call, rated: bool | None, stops: bool) -> None:
    """Grinding with the side is a stop unless the wheel is stated to be rated for it."""
    answer = call(
        "wheels.setup-errors", **CONE, way="wheel-side", feed="plunge", rated_for_side=rated
    )
    assert ("stop" in [a["severity"] for a in answer["advisories"]]) == stops
    assert [a["code"] for a in answer["advisories"]].count("wheel-safety") == 1


@pytest.mark.parametrize(
    ("change", "match"),
    [
        ({"axis_offset": 3.6}, r"misses the wheel, whose radius there is 3\.5"),
        ({"axis_pitch_arcsec": -120000}, r"at no angle, or upright"),
        ({"axis_yaw_arcsec": 40000}, r"is no set-up error"),
        ({"contact_radius": 2}, r"place on the wheel's side"),
        ({"way": "wheel-side", "contact_radius": 0.5}, r"takes 0\.7 of the wheel's radius"),
    ],
)
def test_bad_setups_are_refused(call: Call, change: dict[str, Any], match: str) -> None:
    """Set-ups that no longer touch the work are refused with the reason."""
    request = {**CONE, "way": "sine-plate", "feed": "plunge", **change}
    with pytest.raises(Impossible, match=match):
        call("wheels.setup-errors", **request)

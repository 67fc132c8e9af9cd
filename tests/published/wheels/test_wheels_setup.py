"""Errors of the set-up against brute force: the wheel's points in a world of the machine's own."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq, minimize, minimize_scalar
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
        grinder="surface",
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
        grinder="surface",
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
        grinder="surface",
        way="dressed-wheel",
        feed="plunge",
        axis_offset=0.1,
    )["result"]
    assert result["shape"] == "cone"
    assert result["errors"][0]["half_angle_error_arcsec"] == pytest.approx(0, abs=1e-6)
    between = math.hypot(3.5 + 0.025, 0.1) - 3.5
    assert result["at_stations"][0]["diameter"] == pytest.approx(2 * between, abs=1e-12)


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
        grinder="surface",
        way="sine-plate",
        feed="plunge",
        axis_yaw_arcsec=1800,
    )
    assert answer["result"]["shape"] == "hyperboloid"
    assert "surface-not-straight" in [a["code"] for a in answer["advisories"]]


@pytest.mark.outside("wheels.setup-errors", source="Sine of a sum: a turn in the plane adds")
@pytest.mark.parametrize(
    ("grinder", "way"),
    [
        ("surface", "sine-plate"),
        ("surface", "dressed-wheel"),
        ("surface", "wheel-side"),
        ("cylindrical", "wheel-side"),
    ],
)
def test_pitch_acts_one_to_one_and_yaw_by_its_square(call: Call, grinder: str, way: str) -> None:
    """In every way pitch turns the half angle by itself; twice the yaw turns it four times."""

    def row(name: str, **errors: float) -> float:
        request = {**CONE, "grinder": grinder, "way": way, "feed": "traversed", **errors}
        rows = call("wheels.setup-errors", **request)["result"]["errors"]
        return float({r["name"]: r for r in rows}[name]["half_angle_error_arcsec"])

    assert row("axis-pitch", axis_pitch_arcsec=20) == pytest.approx(20, abs=1e-6)
    once, twice = (row("axis-yaw", axis_yaw_arcsec=yaw) for yaw in (900, 1800))
    assert once < 0
    assert twice == pytest.approx(4 * once, rel=1e-4)


def test_a_set_up_of_which_nothing_is_stated_is_not_ground(call: Call) -> None:
    """Without any error there is no surface to tell of, and each error is named."""
    request = {**CONE, "grinder": "surface", "way": "dressed-wheel", "feed": "plunge"}
    result = call("wheels.setup-errors", **request)["result"]
    assert (result["as_ground"], result["at_stations"], result["shape"]) == (None,) * 3
    assert result["not_stated"] == ["axis_offset", "axis_pitch_arcsec", "axis_yaw_arcsec"]
    one = call("wheels.setup-errors", **request, axis_offset=0)["result"]
    assert (one["shape"], one["not_stated"]) == ("cone", ["axis_pitch_arcsec", "axis_yaw_arcsec"])
    assert [row["straightness"] is None for row in one["errors"]] == [False, True, True, False]


@pytest.mark.parametrize(("rated", "stops"), [(None, True), (False, True), (True, False)])
def test_side_needs_its_rating(call: Call, rated: bool | None, stops: bool) -> None:
    """Grinding with the side is a stop unless the wheel is stated to be rated for it."""
    answer = call(
        "wheels.setup-errors",
        **CONE,
        grinder="surface",
        way="wheel-side",
        feed="plunge",
        rated_for_side=rated,
    )
    assert ("stop" in [a["severity"] for a in answer["advisories"]]) == stops
    assert [a["code"] for a in answer["advisories"]].count("wheel-safety") == 1


@pytest.mark.parametrize(
    ("change", "match"),
    [
        ({"axis_offset": 3.6}, r"misses the wheel, whose radius there is 3\.5"),
        ({"axis_pitch_arcsec": -120000}, r"at no angle, or upright"),
        ({"grinder": "cylindrical"}, r"a wheel that stands beside it grinds no cone so"),
        ({"way": "swivelled-workhead"}, r"under a wheel that stands above it, work stays level"),
        (
            {"grinder": "cylindrical", "way": "dressed-wheel", "feed": "traversed"},
            r"along the wheel's axis, not past the wheel",
        ),
        ({"axis_yaw_arcsec": 40000}, r"is no set-up error"),
        ({"wheel_diameter": 127}, r"127 mm would be 5 in"),
        ({"contact_radius": 2}, r"place on the wheel's side"),
        ({"way": "wheel-side", "contact_radius": 0.5}, r"takes 0\.7 in of the wheel's radius"),
    ],
)
def test_bad_setups_are_refused(call: Call, change: dict[str, Any], match: str) -> None:
    """Set-ups that no longer touch the work are refused with the reason."""
    request = {**CONE, "grinder": "surface", "way": "sine-plate", "feed": "plunge", **change}
    with pytest.raises((Impossible, Disagreement), match=match):
        call("wheels.setup-errors", **request)


# A world of the machine's own: x the table's travel, y the wheel's axis, z up; the wheel is above
# the work, beside it (toward +x) or meets it with its side, the plane y = 0. The contact at the
# small end is the origin.
Wheel = Callable[[float, float], Any]
#: Small radius and length of CONE, radius of its wheel.
SMALL, LENGTH, R = 0.025, 0.35 / math.tan(HALF), 3.5


def _above(flank: float) -> Wheel:
    """A wheel above, its generator at `flank` to its axis: by slant and turn."""

    def point(slant: float, turn: float) -> Any:
        radius = R - slant * math.sin(flank)
        return np.array(
            [radius * math.sin(turn), slant * math.cos(flank), R - radius * math.cos(turn)]
        )

    return point


def _beside(slant: float, turn: float) -> Any:
    """A flat wheel beside the work: by way along its axis and turn."""
    return np.array([R - R * math.cos(turn), slant, R * math.sin(turn)])


def _side(slant: float, height: float) -> Any:
    """The wheel's side: by way along the table and height."""
    return np.array([slant, 0.0, height])


def _half_angle_by_search(
    wheel: Wheel, direction: Any, outward: Any, *, traversed: bool = False
) -> float:
    """Half angle of what the wheel leaves of work that turns about an axis, by scipy.

    `outward` leads from the axis to the contact at the small end. Where the work is carried past
    the wheel, every place of the table along x counts.
    """
    origin = -SMALL * np.asarray(outward)
    closely: Any = {"xatol": 1e-10, "fatol": 1e-15}
    stations = np.linspace(0.0, LENGTH, 9)

    def distance(station: float, turn: float, table: float) -> float:
        carried = np.array([table, 0.0, 0.0])
        start, end = wheel(0.0, turn) + carried, wheel(1.0, turn) + carried
        at = (station - (start - origin) @ direction) / ((end - start) @ direction)
        foot = origin + station * np.asarray(direction)
        return float(np.linalg.norm(start + at * (end - start) - foot))

    def radius(station: float) -> float:
        best: Any
        if traversed:
            best = minimize(
                lambda v, *_, **__: distance(station, float(v[0]), float(v[1])),
                np.zeros(2),
                method="Nelder-Mead",
                options=closely,
            )
        else:
            best = minimize_scalar(
                lambda turn: distance(station, turn, 0.0),
                bounds=(-0.5, 0.5),
                method="bounded",
                options={"xatol": 1e-11},
            )
        return float(best.fun)

    return math.atan(np.polyfit(stations, [radius(float(z)) for z in stations], 1)[0])


def _level(swivel: float, high: float = 0.0) -> Any:
    """Direction of an axis swivelled from the wheel's by so much, its far end so much high."""
    return np.array(
        [math.sin(swivel) * math.cos(high), math.cos(swivel) * math.cos(high), math.sin(high)]
    )


def _error(call: Call, grinder: str, way: str, **error: float) -> dict[str, Any]:
    request = {**CONE, "grinder": grinder, "way": way, "feed": "plunge", **error}
    rows = call("wheels.setup-errors", **request)["result"]["errors"]
    found: dict[str, Any] = next(row for row in rows if row["half_angle_error_arcsec"] is not None)
    return found


@pytest.mark.outside(
    "wheels.setup-errors", source="scipy: points of a wheel above work swivelled about the vertical"
)
@pytest.mark.parametrize("swivel", [10, 30])
def test_no_cone_by_a_swivel_under_a_wheel_above(call: Call, swivel: float) -> None:
    """A head swivelled about the vertical under a surface grinder's wheel leaves a cylinder.

    So the way is refused there, and the ways that do set an angle are named.
    """
    ground = _half_angle_by_search(
        _above(0.0), _level(math.radians(swivel)), [0.0, 0.0, 1.0], traversed=True
    )
    assert ground == pytest.approx(0, abs=1e-6)
    with pytest.raises(Impossible, match="grinds a cylinder") as refused:
        _error(call, "surface", "swivelled-workhead", axis_yaw_arcsec=0)
    assert "wheel-side" in refused.value.fields["way"]
    assert "sine-plate" in refused.value.fields["way"]


@pytest.mark.outside("wheels.setup-errors", source="scipy: the wheel's points in a machine's world")
@pytest.mark.parametrize(
    ("grinder", "way", "by_swivel", "by_high"),
    [
        ("surface", "wheel-side", "axis_pitch_arcsec", "axis_yaw_arcsec"),
        ("surface", "dressed-wheel", "axis_yaw_arcsec", "axis_pitch_arcsec"),
        ("cylindrical", "swivelled-workhead", "axis_pitch_arcsec", "axis_yaw_arcsec"),
    ],
)
def test_the_turn_of_a_workhead_is_pitch_or_yaw_by_its_wheel(
    call: Call, grinder: str, way: str, by_swivel: str, by_high: str
) -> None:
    """Half a degree of swivel about the vertical is 1800″ beside a wheel, 2.67″ under a dressed.

    With one end of the axis high it is the other way round; the answer says which is which.
    """
    wheel, swivel, outward = {
        "wheel-side": (_side, math.pi / 2 + HALF, [math.sin(HALF), math.cos(HALF), 0.0]),
        "dressed-wheel": (_above(HALF), 0.0, [0.0, 0.0, 1.0]),
        "swivelled-workhead": (_beside, -HALF, [math.cos(HALF), math.sin(HALF), 0.0]),
    }[way]
    turn = 1800 * ARCSEC
    for field, direction, words in (
        (by_swivel, _level(swivel - turn), "swivelled"),
        (by_high, _level(swivel, turn), "high"),
    ):
        ground = (_half_angle_by_search(wheel, direction, outward) - HALF) / ARCSEC
        found = _error(call, grinder, way, **{field: 1800})
        assert abs(found["half_angle_error_arcsec"]) == pytest.approx(abs(ground), abs=0.05)
        assert words in found["on_the_grinder"]
        one_to_one = field == "axis_pitch_arcsec"
        assert abs(ground) == pytest.approx(1800, abs=5) if one_to_one else abs(ground) < 5
    if way == "dressed-wheel":
        found = _error(call, grinder, way, axis_yaw_arcsec=1800)
        assert found["half_angle_error_arcsec"] == pytest.approx(-2.67, abs=0.005)

"""Sockets and faces in two views made by dice, inspected by dice, held to what the plan says.

A socket is what a wheel on a quill leaves of it, point by point of the wheel's surface; balls and
edges are laid into it in section; a face's lines are turned on a plate in space. Each error is
drawn within its stated limits. Nothing here is a sensitivity.
"""

import math
from typing import Any

import numpy as np
import pytest

from dice_support import (
    ARCSEC,
    COMPOUND_PLATE,
    ERRORS,
    PIECES,
    WHEEL_FACE,
    Made,
    Values,
    lot,
    turned_about,
)
from inspection_plan_support import BALLS, PLATE, by, reading, setting
from support import Call

Json = dict[str, Any]
#: Deviations of a share of so many pieces that a test lets pass: one in 15,000 does so by chance.
SURE = 4.0
#: Named by what the drawing and the shop state; the quill lies far off so that it counts.
TOLERANCE = 60.0
OFFSET = 0.012
WHEEL = 0.25
SPINDLE: Json = {
    "wheel_diameter": 2 * WHEEL,
    "reach": 4,
    "axis_offset_error_limit": OFFSET,
}
GAUGES: Json = {
    "gauge_diameter": 0.93,
    "second_gauge_diameter": 0.79,
    "depth_error_limit": 0.0005,
    "gauge_error_limit": 0.00003,
}
ON_PLATE: Json = {
    **PLATE,
    "stack_error_limit": 0.00003,
    "axis_pitch_error_limit_arcsec": 3,
    "axis_yaw_error_limit_arcsec": 30,
}
SOCKET: Json = {
    "kind": "taper-socket",
    "designation": "morse-3",
    "included_angle_tolerance_arcsec": TOLERANCE,
}


def agrees(share: float, expected: float) -> bool:
    """Whether a share of the pieces is what was expected, as far as so many can tell."""
    return abs(share - expected) <= SURE * math.sqrt(expected * (1 - expected) / PIECES)


def planned(call: Call, feature: Json, **measuring: Any) -> Json:
    """The plan of a feature in a shop of which everything is stated."""
    errors = {**ERRORS, "wheel_face_error_limit_arcsec": WHEEL_FACE}
    plate = {"name": "plate", "center_distance": 5, "largest_angle": 60, "angle_errors": errors}
    shop = {
        "sine_plates": [plate],
        "block_sets": [{"name": "set", "set": "inch-81", "grade": "asme-0"}],
        "internal_spindle": SPINDLE,
        "compound_plates": [COMPOUND_PLATE],
        "measuring": measuring,
    }
    request = {"units": "in", "job": "HL-0705", "feature": feature, "equipment": shop}
    result: Json = call("jobs.plan", **request, max_blocks=4)["result"]
    return result


def bored(rng: np.random.Generator, way: Json, feature: Json) -> Values:
    """Included angles of sockets, through both ends of what the wheel's surface reaches.

    x along the wheel's lowest line from the mouth, the bore toward −x, z upward; the bore's axis
    rises toward the mouth as the plate stands.
    """
    stacks = {stack["role"]: stack for stack in way["stacks"]}
    made = Made(rng, ERRORS, 5.0, stacks["high"], stacks.get("low"))
    lean = made.plates() + lot(rng, ERRORS["axis_pitch_error_limit_arcsec"]) / ARCSEC
    lean = lean + lot(rng, WHEEL_FACE) / ARCSEC
    large, length = feature["large_diameter"] / 2, feature["length"]
    half = math.radians(feature["half_angle"]["degrees"])
    axis = np.column_stack([np.cos(lean), np.zeros(PIECES), np.sin(lean)])
    # The bore's axis over the mouth, where a nominal lower wall lies on the wheel's line.
    center = np.array([-large * math.sin(half), 0.0, large * math.cos(half)])
    at_mouth, at_end = lot(rng, OFFSET), lot(rng, OFFSET)
    radii = []
    for station, sideways in ((0.0, at_mouth), (-length, at_end)):
        reached = np.zeros(PIECES)
        for turn in np.linspace(-0.12, 0.12, 33):
            # A line of the wheel's surface along x: where it is as far along the bore's axis.
            y = sideways + WHEEL * math.sin(turn)
            z = WHEEL * (1.0 - math.cos(turn))
            x = (station - (z - center[2]) * axis[:, 2]) / axis[:, 0] + center[0]
            away = np.column_stack([x, y, np.full(PIECES, z)]) - center
            along = np.sum(away * axis, axis=1)
            reached = np.maximum(reached, np.sqrt(np.sum(away**2, axis=1) - along**2))
        radii.append(reached)
    return np.asarray(2.0 * np.arctan2(radii[0] - radii[1], length))


@pytest.fixture(scope="module")
def socket_plan(request: pytest.FixtureRequest) -> Json:
    """The plan of the socket with every means of measuring at hand."""
    call: Call = request.getfixturevalue("call")
    return planned(call, SOCKET, balls=BALLS, gauges=GAUGES, plate=ON_PLATE)


@pytest.fixture(scope="module")
def sockets(socket_plan: Json) -> Values:
    """Included angles of sockets that its first way makes."""
    rng = np.random.default_rng(31)
    return bored(rng, socket_plan["ways"][0], socket_plan["feature"])


@pytest.mark.outside("jobs.plan", source="Monte Carlo: a wheel's surface in a bore, in 3-D")
def test_sockets_made_by_dice_are_as_forecast(socket_plan: Json, sockets: Values) -> None:
    """Mean, spread, coverage and share kept of the sockets are those of the way's forecast."""
    way = socket_plan["ways"][0]
    error = way["angles"][0]["error_arcsec"]
    assert error["not_stated"] == []
    off = (sockets - math.radians(socket_plan["feature"]["included_angle"]["degrees"])) * ARCSEC
    spread = error["standard_uncertainty"]
    assert np.mean(off) == pytest.approx(error["value"], abs=SURE * spread / math.sqrt(PIECES))
    assert np.std(off) == pytest.approx(spread, rel=0.03)
    covered = np.abs(off - error["value"]) <= error["expanded_uncertainty"]
    assert agrees(float(np.mean(covered)), error["coverage_probability"])
    assert float(np.max(np.abs(off))) <= error["worst_case"] * 1.001
    kept = float(np.mean(np.abs(off) <= TOLERANCE))
    low, high = {"holds": (0.94, 1), "may-not-hold": (0.04, 0.96), "does-not-hold": (0, 0.06)}[
        way["forecast"]
    ]
    assert low <= kept <= high


def assert_told(found: Values, true: Values, means: Json) -> None:
    """What is found less what was made is as the means says of itself."""
    proof = means["angle_proof"]["angle_error_arcsec"]
    off = (found - true) * ARCSEC
    assert np.std(off) == pytest.approx(proof["standard_uncertainty"], rel=0.03)
    told = np.abs(off - np.mean(off)) <= proof["expanded_uncertainty"]
    assert agrees(float(np.mean(told)), proof["coverage_probability"])


def assert_accepted_rightly(read: Values, row: Json, errors: Values) -> None:
    """Of parts that read within the limits of acceptance 95 of 100 keep the tolerance."""
    low, high = row["smallest_accepted_reading"], row["largest_accepted_reading"]
    accepted = (read >= low) & (read <= high)
    assert np.mean(accepted) > 0.1
    assert float(np.mean(np.abs(errors[accepted]) > TOLERANCE)) <= 0.05


@pytest.mark.outside("jobs.plan", source="Monte Carlo: balls laid into a socket, seen in section")
def test_sockets_measured_over_balls_by_dice(socket_plan: Json, sockets: Values) -> None:
    """Depths of two balls by geometry and dice tell the angle as surely as the plan says."""
    rng, means = np.random.default_rng(7), by(socket_plan["checks"], "over-balls")
    half, mouth = sockets / 2.0, socket_plan["feature"]["large_diameter"] / 2.0

    def top(diameter: Values | float) -> Values:
        """Depth of a ball's top: it touches where its center is its radius off the wall."""
        radius = diameter / 2.0
        return np.asarray((mouth - radius / np.cos(half)) / np.tan(half) - radius)

    sizes = {name: setting(means, f"{name}_ball_diameter") for name in ("large", "small")}
    real = {n: size + lot(rng, BALLS["roll_error_limit"]) for n, size in sizes.items()}
    read = {n: top(ball) + lot(rng, BALLS["measure_error_limit"]) for n, ball in real.items()}
    apart = read["small"] - read["large"]
    excess = (sizes["large"] - sizes["small"]) / 2.0
    found = 2.0 * np.arcsin(excess / (apart - excess))
    assert_told(found, sockets, means)
    errors = (sockets - math.radians(socket_plan["feature"]["included_angle"]["degrees"])) * ARCSEC
    row = reading(means, "ball_depth_difference")
    assert_accepted_rightly(apart, row, errors)


@pytest.mark.outside("jobs.plan", source="Monte Carlo: sharp edges laid into a socket, in section")
def test_sockets_measured_by_two_edges_by_dice(socket_plan: Json, sockets: Values) -> None:
    """Depths of two sharp edges by geometry and dice tell the angle as surely as the plan says."""
    rng, means = np.random.default_rng(8), by(socket_plan["checks"], "two-gauges")
    mouth = socket_plan["feature"]["large_diameter"]
    edges = (GAUGES["gauge_diameter"], GAUGES["second_gauge_diameter"])
    read = [
        (mouth - edge - lot(rng, GAUGES["gauge_error_limit"])) / 2.0 / np.tan(sockets / 2.0)
        + lot(rng, GAUGES["depth_error_limit"])
        for edge in edges
    ]
    apart = read[1] - read[0]
    found = 2.0 * np.arctan((edges[0] - edges[1]) / 2.0 / apart)
    assert_told(found, sockets, means)
    errors = (sockets - math.radians(socket_plan["feature"]["included_angle"]["degrees"])) * ARCSEC
    assert_accepted_rightly(apart, reading(means, "gauge_depth_difference"), errors)


def plates_by_dice(rng: np.random.Generator, means: Json) -> Values:
    """Angles of the inspection's plate on a stack as high as the plan says."""
    stated = ON_PLATE
    warm = 1.0
    length = (5 + lot(rng, stated["center_distance_error_limit"])) * warm
    height = setting(means, "height") + lot(rng, stated["stack_error_limit"])
    height = height + lot(rng, stated["table_flatness"]) + lot(rng, stated["roll_difference"]) / 2
    return np.asarray(np.arcsin(height / length) + lot(rng, stated["face_parallelism"]) / 5)


@pytest.mark.outside("jobs.plan", source="Monte Carlo: a bore's wall turned on a plate by dice")
def test_sockets_indicated_in_their_bore_by_dice(socket_plan: Json, sockets: Values) -> None:
    """An indicator along the lower wall, plate and axis off by dice, tells as surely as said."""
    rng, means = np.random.default_rng(9), by(socket_plan["checks"], "sine-plate")
    travel = setting(means, "indicator_travel")
    axis = plates_by_dice(rng, means) + lot(rng, 3) / ARCSEC
    # The wall falls from the mouth in by the axis less the half angle.
    rise = travel * np.tan(sockets / 2.0 - axis) + lot(rng, ON_PLATE["indicating_error_limit"])
    nominal = math.asin(setting(means, "height") / 5)
    found = 2.0 * (nominal + np.arctan(rise / travel))
    assert_told(found, sockets, means)


COMPOUND: Json = {
    "kind": "compound-face",
    "orientation": {"kind": "projected-angles", "x_angle": 12.0, "y_angle": 20.0},
    "rise": 0.4,
    "tolerance_arcsec": 120,
    "work_body": {"base_length": 1.5, "base_width": 1, "face_height": 1},
}


@pytest.mark.outside("jobs.plan", source="Monte Carlo: a face turned on a plate, in 3-D")
@pytest.mark.parametrize("hand", ["as-drawn", "opposite"])
def test_compound_faces_measured_by_dice_view_by_view(call: Call, hand: str) -> None:
    """Faces of both hands on a plate off by dice: each view is told as surely as the plan says.

    The work lies with the view's axis down the slope, turned out of it by a yaw; the indicator runs
    along the machine's x over the face's plane. On a screen the edge is read with its own error.
    """
    checks = planned(
        call,
        {**COMPOUND, "hand": hand},
        plate=ON_PLATE,
        comparator={"instrument_angle_error_limit_arcsec": 40},
    )["checks"]
    rng = np.random.default_rng(len(hand))
    wanted = np.radians([-12.0 if hand == "opposite" else 12.0, 20.0])
    shown = [angle + lot(rng, 100) / ARCSEC for angle in wanted]
    normals = np.column_stack([-np.tan(shown[0]), -np.tan(shown[1]), np.ones(PIECES)])
    for view, own, place in (("x-angle", shown[0], 0), ("y-angle", shown[1], 1)):
        means = next(
            one
            for one in checks["inspections"]
            if one["of"] == view and one["means"] == "sine-plate"
        )
        # Turned in plan so that the view's axis lies along x and the face falls toward +x, which
        # the plate raises.
        sign = -1.0 if wanted[place] < 0 else 1.0
        turn = {(0, 1.0): 180.0, (0, -1.0): 0.0, (1, 1.0): 90.0, (1, -1.0): -90.0}[place, sign]
        laid = turned_about("z", math.radians(turn))
        yaw = turned_about("z", lot(rng, ON_PLATE["axis_yaw_error_limit_arcsec"]) / ARCSEC)
        tilt = plates_by_dice(rng, means) + lot(rng, 3) / ARCSEC
        machine = turned_about("y", -tilt) @ yaw @ laid
        x, _, z = np.einsum("nij,nj->in", machine, normals)
        travel = setting(means, "indicator_travel")
        rise = travel * x / z + lot(rng, ON_PLATE["indicating_error_limit"])
        nominal = math.asin(setting(means, "height") / 5)
        found = sign * (nominal + np.arctan(rise / travel))
        assert_told(found, own, means)
    screens = [one for one in checks["inspections"] if one["means"] == "comparator"]
    for screen, own in zip(screens, shown, strict=True):
        read = own + lot(rng, 40) / ARCSEC
        assert_told(read, own, screen)
        row, errors = reading(screen, "measured_angle"), (own - wanted[screens.index(screen)])
        low, high = row["smallest_accepted_reading"], row["largest_accepted_reading"]
        accepted = (np.degrees(read) >= low) & (np.degrees(read) <= high)
        assert float(np.mean(np.abs(errors[accepted]) * ARCSEC > 120)) <= 0.05

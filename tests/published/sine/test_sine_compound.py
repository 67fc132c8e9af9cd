"""Compound plates against an independent rotation library and hand-derived cases."""

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from pydantic import ValidationError
from scipy.spatial.transform import Rotation

from halfangle_service.errors import Impossible, Refusal, Unreachable
from halfangle_service.trade.sine import compound_drawing
from support import Call

PLATE = {"units": "in", "base_center_distance": 5, "upper_center_distance": 5}


def _projected(x: float, y: float) -> dict[str, Any]:
    return {"kind": "projected-angles", "x_angle": x, "y_angle": y}


def _rotation(base: float, top: float, base_axis: str) -> Any:
    """Rotation of the part by scipy: intrinsic, base first; a raised right end turns about −Y."""
    if base_axis == "x":
        return Rotation.from_euler("XY", [base, -top], degrees=True)
    return Rotation.from_euler("YX", [-base, top], degrees=True)


@pytest.mark.outside(
    "sine.compound",
    source="Published relation tan C = tan B cos A for compound sine plates (shop instruction "
    "sheet): 30/30 gives 26.565° on the base plate; figures by hand, √5 and 2.5 in on 5 in.",
)
def test_thirty_thirty(call: Call) -> None:
    """30/30 in the part's views: base 26.565° (√5 in), upper 30° (2.5 in), front and left."""
    result = call(
        "sine.compound", base_axis="x", frame="part", orientation=_projected(30, 30), **PLATE
    )["result"]
    base, upper = result["base"], result["upper"]
    assert base["angle"]["degrees"] == pytest.approx(-math.degrees(math.atan(0.5)))
    assert base["height"] == pytest.approx(math.sqrt(5), abs=1e-9)
    assert upper["height"] == pytest.approx(2.5, abs=1e-9)
    assert (base["raised_side"], upper["raised_side"]) == ("front", "left")
    assert upper["action"].startswith("Raise the left roll of the upper plate")
    assert result["rotation_check"]["residual_arcsec"] < 1e-6
    assert result["edge_turns"]["x_edge"]["degrees"] == pytest.approx(-14.4775, abs=1e-4)
    assert result["edge_turns"]["y_edge"]["degrees"] == 0


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation, intrinsic Euler.")
@pytest.mark.parametrize(("x", "y"), [(30, 30), (-20, 12.5), (5, -40), (0, 25), (-8, 8.0007)])
def test_both_stacks_from_one_set(call: Call, x: float, y: float) -> None:
    """Both stacks stand at once, and are as far out as an independent library says."""
    result = call(
        "sine.compound",
        base_axis="x",
        frame="part",
        orientation=_projected(x, y),
        set="inch-81",
        **PLATE,
    )["result"]
    stacks = result["stacks"]
    assert not set(stacks["base_blocks"]) & set(stacks["upper_blocks"])
    assert len({*stacks["base_blocks"], *stacks["upper_blocks"]}) == stacks["count"]
    assert stacks["proved"]
    angles = []
    for plate in ("base", "upper"):
        height = sum(stacks[f"{plate}_blocks"])
        assert height == pytest.approx(stacks[f"{plate}_height"])
        assert height == pytest.approx(result[plate]["height"], abs=5.1e-5)
        built = math.degrees(math.asin(height / 5))
        angles.append(math.copysign(built, result[plate]["angle"]["degrees"]))
    slopes = np.tan(np.radians([x, y]))
    normal = np.array([-slopes[0], -slopes[1], 1.0]) / math.hypot(*slopes, 1.0)
    turned = _rotation(angles[0], angles[1], "x").apply(normal)
    off_arcsec = math.degrees(math.hypot(turned[0], turned[1])) * 3600
    assert stacks["as_built_arcsec"] == pytest.approx(off_arcsec, abs=1e-4)


def test_a_level_surface_has_two_empty_stacks(call: Call) -> None:
    """Where neither plate is raised there is nothing to build, and that is no error."""
    asked = {"base_axis": "x", "frame": "part", "orientation": _projected(0, 0)}
    stacks = call("sine.compound", **asked, set="inch-81", **PLATE)["result"]["stacks"]
    assert (stacks["base_blocks"], stacks["upper_blocks"], stacks["count"]) == ([], [], 0)
    assert stacks["as_built_arcsec"] == 0


def test_two_stacks_that_a_small_set_has_not(call: Call) -> None:
    """Where one set cannot build both stacks at once that is refused, with the heights."""
    with pytest.raises(Unreachable, match=r"at once within 10 steps of 2\.23607 in and 2\.5 in"):
        call(
            "sine.compound",
            base_axis="x",
            frame="part",
            orientation=_projected(30, 30),
            sizes=[2.0, 0.5, 0.1001, 0.136],
            **PLATE,
        )


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation, intrinsic Euler.")
@pytest.mark.parametrize(
    ("x", "y", "wrong", "uncorrected"), [(30, 30, 4.58, 3.43), (20, -35, None, None)]
)
def test_mistakes_of_frame_and_correction(
    call: Call, x: float, y: float, wrong: float | None, uncorrected: float | None
) -> None:
    """What the surface is off level, turned by the other frame's angles or by the view's own.

    Said at 30/30: the other frame is 4.58° out, no correction at all 3.43°.
    """
    asked = {"base_axis": "x", "orientation": _projected(x, y), **PLATE}
    right = call("sine.compound", frame="part", **asked)["result"]
    other = call("sine.compound", frame="machine", **asked)["result"]
    check = right["rotation_check"]
    normal = np.array([-math.tan(math.radians(x)), -math.tan(math.radians(y)), 1.0])

    def off_level(base: float, upper: float) -> float:
        raised = (math.copysign(1, right[plate]["angle"]["degrees"]) for plate in ("base", "upper"))
        base, upper = next(raised) * abs(base), next(raised) * abs(upper)
        turned = _rotation(base, upper, "x").apply(normal / np.linalg.norm(normal))
        return math.degrees(math.atan2(math.hypot(turned[0], turned[1]), turned[2]))

    set_wrong = off_level(other["base"]["angle"]["degrees"], other["upper"]["angle"]["degrees"])
    assert check["wrong_frame"]["degrees"] == pytest.approx(set_wrong, rel=1e-9)
    assert check["uncorrected"]["degrees"] == pytest.approx(off_level(y, x), rel=1e-9)
    if wrong is not None:
        assert set_wrong == pytest.approx(wrong, abs=5e-3)
        assert off_level(y, x) == pytest.approx(uncorrected, abs=5e-3)


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation, intrinsic Euler.")
@pytest.mark.parametrize("base_axis", ["x", "y"])
@pytest.mark.parametrize("frame", ["part", "machine"])
@pytest.mark.parametrize(("x", "y"), [(30, 30), (-20, 12.5), (5, -40), (0, 25), (-61, -3)])
def test_rotating_by_an_independent_library(
    call: Call, base_axis: str, frame: str, x: float, y: float
) -> None:
    """Rotated by an independent library, the surface comes level, or the plate stands as asked."""
    result = call(
        "sine.compound", base_axis=base_axis, frame=frame, orientation=_projected(x, y), **PLATE
    )["result"]
    rotation = _rotation(
        result["base"]["angle"]["degrees"], result["upper"]["angle"]["degrees"], base_axis
    )
    slopes = np.tan(np.radians([x, y]))
    normal = np.array([-slopes[0], -slopes[1], 1.0])
    normal /= np.linalg.norm(normal)
    turned = rotation.apply(normal) if frame == "part" else rotation.inv().apply(normal)
    np.testing.assert_allclose(turned, [0, 0, 1], atol=1e-12)
    edge = rotation.apply([1, 0, 0])
    assert result["edge_turns"]["x_edge"]["degrees"] == pytest.approx(
        math.degrees(math.atan2(edge[1], edge[0])), abs=1e-9
    )


@pytest.mark.outside(
    "sine.compound", source="Derived by hand: sin A = sin τ sin φ, tan B = tan τ cos φ."
)
def test_true_tilt_and_normal_are_the_same_surface(call: Call) -> None:
    """25° toward 37° sets 14.7344° and 20.4258°, whether by tilt or by its normal."""
    tilt, direction = math.radians(25), math.radians(37)
    normal = {
        "kind": "normal",
        "normal_x": -3 * math.sin(tilt) * math.cos(direction),
        "normal_y": -3 * math.sin(tilt) * math.sin(direction),
        "normal_z": 3 * math.cos(tilt),
    }
    for orientation in ({"kind": "true-tilt", "tilt": 25, "rise_direction": 37}, normal):
        result = call(
            "sine.compound", base_axis="x", frame="part", orientation=orientation, **PLATE
        )["result"]
        assert result["base"]["angle"]["degrees"] == pytest.approx(-14.7344, abs=5e-5)
        assert result["upper"]["angle"]["degrees"] == pytest.approx(-20.4258, abs=5e-5)
        assert result["surface_orientation"]["rise_direction"]["degrees"] == pytest.approx(37)


@pytest.mark.outside(
    "sine.compound-angles", source="scipy.spatial.transform.Rotation, intrinsic Euler."
)
@pytest.mark.parametrize("base_axis", ["x", "y"])
def test_way_back_by_an_independent_library(call: Call, base_axis: str) -> None:
    """Two stacks give the level surface and the plate's face as an independent rotation does."""
    result = call(
        "sine.compound-angles", base_axis=base_axis, base_height=1.2, upper_height=-2.1, **PLATE
    )["result"]
    base, top = math.degrees(math.asin(1.2 / 5)), -math.degrees(math.asin(2.1 / 5))
    rotation = _rotation(base, top, base_axis)
    part, machine = rotation.inv().apply([0, 0, 1]), rotation.apply([0, 0, 1])
    for name, normal in (("part_surface", part), ("upper_face", machine)):
        given = result[name]["unit_normal"]
        np.testing.assert_allclose([given[f"normal_{axis}"] for axis in "xyz"], normal, atol=1e-12)


def test_base_steps_count_once(call: Call) -> None:
    """Stacks with base steps go there and back to the same surface."""
    plate = PLATE | {"base_step": 0.1, "upper_step": 0.2}
    there = call(
        "sine.compound", base_axis="y", frame="part", orientation=_projected(-10, 20), **plate
    )["result"]
    back = call(
        "sine.compound-angles",
        base_axis="y",
        base_height=there["base"]["height"],
        upper_height=-there["upper"]["height"],
        **plate,
    )["result"]
    assert there["base"]["raised_side"] == "right"
    assert there["upper"]["raised_side"] == "front"
    assert back["part_surface"]["x_angle"]["degrees"] == pytest.approx(-10)
    assert back["part_surface"]["y_angle"]["degrees"] == pytest.approx(20)


@pytest.mark.parametrize(
    ("change", "kind", "says"),
    [
        (
            {"orientation": {"kind": "normal", "normal_x": 1, "normal_y": 0, "normal_z": 0}},
            Impossible,
            "point up",
        ),
        (
            {"orientation": {"kind": "normal", "normal_x": 0, "normal_y": 0, "normal_z": 0}},
            Impossible,
            "point up",
        ),
        (
            {"orientation": {"kind": "normal", "normal_x": 0, "normal_y": 1, "normal_z": -1}},
            Impossible,
            "point up",
        ),
        (
            {
                "orientation": {
                    "kind": "projected-angles",
                    "x_angle": 5,
                    "y_angle": 89.99999999999999,
                }
            },
            Impossible,
            "point up",
        ),
        (
            {"orientation": {"kind": "true-tilt", "tilt": 89.99999999999999, "rise_direction": 0}},
            Impossible,
            "point up",
        ),
        ({"base_largest_angle": 20}, Unreachable, "reaches 20°"),
        ({"upper_largest_angle": 29}, Unreachable, "reaches 29°"),
    ],
)
def test_compound_refusals(
    call: Call, change: dict[str, Any], kind: type[Refusal], says: str
) -> None:
    """Impossible normals and angles past a plate's reach are refused with reason and field."""
    request = PLATE | {"base_axis": "x", "frame": "part", "orientation": _projected(30, 30)}
    with pytest.raises(kind, match=says) as refusal:
        call("sine.compound", **(request | change))
    assert refusal.value.fields


@pytest.mark.parametrize("missing", ["base_axis", "frame"])
def test_frame_and_order_are_never_guessed(call: Call, missing: str) -> None:
    """Without the axis order, or the frame, the request is refused."""
    request: dict[str, Any] = PLATE | {
        "base_axis": "x",
        "frame": "part",
        "orientation": _projected(30, 30),
    }
    del request[missing]
    with pytest.raises(ValidationError, match=missing):
        call("sine.compound", **request)


def test_a_level_surface_needs_no_stack(call: Call) -> None:
    """A surface that is level already leaves both plates at zero, and says so."""
    answer = call(
        "sine.compound", base_axis="x", frame="machine", orientation=_projected(0, 0), **PLATE
    )
    assert answer["result"]["base"]["raised_side"] == "neither"
    assert [a["code"] for a in answer["advisories"]] == ["already-level"]


def test_the_drawing_is_what_the_function_draws() -> None:
    """The drawing kept beside the module is the function's own output."""
    kept = Path(compound_drawing.__file__).with_name("compound_drawing.svg")
    assert kept.read_text("utf-8") == compound_drawing.conventions_svg()

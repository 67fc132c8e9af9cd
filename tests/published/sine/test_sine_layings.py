"""Work turned and tipped on a compound plate, by an independent rotation library."""

import math
from itertools import product
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial.transform import Rotation

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.trade.sine.compound import BaseAxis, Frame, normal_from_slopes
from halfangle_service.trade.sine.compound_layings import (
    Laying,
    RaisedSides,
    as_drawn,
    laid,
    other_layings,
)
from support import Call

PLATE: dict[str, Any] = {"units": "in", "base_center_distance": 5, "upper_center_distance": 5}
#: Extrinsic rotations that bring each side of the work up, in degrees.
TIPS = {"top": [0, 0], "left": [0, 90], "right": [0, -90], "back": [90, 0], "front": [-90, 0]}
SIDES = {"x": ("back", "front"), "y": ("right", "left")}


def _projected(x: float, y: float) -> dict[str, Any]:
    return {"kind": "projected-angles", "x_angle": x, "y_angle": y}


def _plates(base: float, upper: float, base_axis: str) -> Any:
    """Rotation of both plates: intrinsic, base first; a raised right end turns about −Y."""
    if base_axis == "x":
        return Rotation.from_euler("XY", [base, -upper], degrees=True)
    return Rotation.from_euler("YX", [-base, upper], degrees=True)


def _lay(side_up: str, plan_turn: float) -> Any:
    """Rotation of the work: tipped about X or Y, then turned about Z, all fixed axes."""
    return Rotation.from_euler("xyz", [*TIPS[side_up], plan_turn], degrees=True)


def _normal(x: float, y: float) -> Any:
    normal = np.array([-math.tan(math.radians(x)), -math.tan(math.radians(y)), 1.0])
    return normal / np.linalg.norm(normal)


def _reached(setting: dict[str, Any], frame: str, base_axis: str, x: float, y: float) -> Any:
    """What a whole setting makes of the surface, and what it should be."""
    plates = _plates(
        setting["base"]["angle"]["degrees"], setting["upper"]["angle"]["degrees"], base_axis
    )
    laying = setting["laying"]
    work = _lay(laying["side_up"], laying["plan_turn"]["degrees"])
    if frame == "part":
        return (plates * work).apply(_normal(x, y)), np.array([0.0, 0.0, 1.0])
    return (plates * work).apply([0, 0, 1]), _normal(x, y)


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation.")
@pytest.mark.parametrize("base_axis", ["x", "y"])
@pytest.mark.parametrize("frame", ["part", "machine"])
@pytest.mark.parametrize(
    ("x", "y"), [(60, 30), (-60, 30), (60, -30), (-50, -70), (0, 80), (75, 0), (-65, 0.5)]
)
def test_every_setting_offered_sets_the_surface(
    call: Call, base_axis: str, frame: str, x: float, y: float
) -> None:
    """Each setting offered for a steep one is less steep, and does what was asked, turned so."""
    result = call(
        "sine.compound", base_axis=base_axis, frame=frame, orientation=_projected(x, y), **PLATE
    )["result"]
    offered = result["turned_settings"]
    steepest = [
        max(abs(s[plate]["angle"]["degrees"]) for plate in ("base", "upper"))
        for s in (*offered, result)
    ]
    assert steepest == sorted(steepest)
    for setting in (result, *offered):
        reached, wanted = _reached(setting, frame, base_axis, x, y)
        np.testing.assert_allclose(reached, wanted, atol=1e-9)
        for plate in ("base", "upper"):
            angle = setting[plate]["angle"]["degrees"]
            height = 5 * math.sin(math.radians(abs(angle)))
            assert setting[plate]["height"] == pytest.approx(height, abs=1e-12)


@pytest.mark.outside(
    "sine.compound",
    source="scipy.spatial.transform.Rotation; a quarter turn about Y by hand: sin A = n_z, "
    "tan B = n_y / −n_x.",
)
def test_sixty_thirty_tipped(call: Call) -> None:
    """60/30 about Y tipped left side up asks for 28.7105° and 18.4349°, and the advice says so."""
    answer = call(
        "sine.compound", base_axis="y", frame="part", orientation=_projected(60, 30), **PLATE
    )
    first = answer["result"]["turned_settings"][0]
    assert first["laying"]["side_up"] == "left"
    assert first["base"]["angle"]["degrees"] == pytest.approx(28.7105, abs=5e-5)
    assert first["upper"]["angle"]["degrees"] == pytest.approx(-18.4349, abs=5e-5)
    (advice,) = [a["message"] for a in answer["advisories"] if a["code"] == "steep-angle"]
    assert "its left side up: the base plate 28.71051° on 2.40192 in" in advice
    assert "the upper plate 18.43495° on 1.58114 in under its front roll" in advice
    assert "complement" not in advice


def test_nothing_is_offered_that_is_no_better(call: Call) -> None:
    """Where no quarter turn is less steep nothing is offered, in data or in words."""
    answer = call(
        "sine.compound", base_axis="y", frame="machine", orientation=_projected(60, 30), **PLATE
    )
    assert answer["result"]["turned_settings"] == []
    (advice,) = [a["message"] for a in answer["advisories"] if a["code"] == "steep-angle"]
    assert advice.endswith("turns the plate 8.3″.")


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation.")
@pytest.mark.parametrize("base_axis", ["x", "y"])
@pytest.mark.parametrize(("x", "y"), [(30, 20), (-30, 20), (30, -20), (-30, -20)])
def test_no_hinged_side_is_ever_raised(call: Call, base_axis: str, x: float, y: float) -> None:
    """Whatever the signs, the work is turned so that only the sides stated are raised."""
    upper_axis = "y" if base_axis == "x" else "x"
    turns = set()
    for base_side, upper_side in product(SIDES[base_axis], SIDES[upper_axis]):
        result = call(
            "sine.compound", base_axis=base_axis, frame="part", orientation=_projected(x, y),
            base_raised_side=base_side, upper_raised_side=upper_side, **PLATE,
        )["result"]  # fmt: skip
        raised = result["base"]["raised_side"], result["upper"]["raised_side"]
        assert raised == (base_side, upper_side)
        reached, wanted = _reached(result, "part", base_axis, x, y)
        np.testing.assert_allclose(reached, wanted, atol=1e-12)
        turns.add(result["laying"]["plan_turn"]["degrees"])
        assert result["rotation_check"]["residual_arcsec"] < 1e-6
        # The side of the work that is raised, carried along by the library, lies there.
        work = _lay("top", result["laying"]["plan_turn"]["degrees"])
        named = {"right": [1, 0, 0], "left": [-1, 0, 0], "back": [0, 1, 0], "front": [0, -1, 0]}
        side = result["base"]["raised_work_side"]
        np.testing.assert_allclose(work.apply(named[side]), named[base_side], atol=1e-12)
    assert turns == {0.0, 90.0, 180.0, 270.0}


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation.")
@given(
    st.floats(math.radians(-80), math.radians(80)),
    st.floats(math.radians(-80), math.radians(80)),
    st.sampled_from(["part", "machine"]),
    st.sampled_from(["x", "y"]),
)
def test_every_laying_by_the_library(x: float, y: float, frame: Frame, axis: BaseAxis) -> None:
    """Every way to lay the work sets the surface, for all frames, axes and signs."""
    normal = normal_from_slopes(x, y)
    first = as_drawn(normal, frame, axis, RaisedSides())
    assert first is not None
    for way in (first, *other_layings(normal, frame, axis, RaisedSides(), first.laying)):
        base, upper = (math.degrees(hinge) for hinge in way.hinges)
        plates = _plates(base, upper, axis)
        work = _lay(way.laying.side_up, 90 * way.laying.turns)
        given_, wanted = (normal, [0, 0, 1]) if frame == "part" else ([0, 0, 1], normal)
        np.testing.assert_allclose((plates * work).apply(given_), wanted, atol=1e-8)


def test_a_surface_that_faces_down_when_tipped_is_not_offered() -> None:
    """Tipped the wrong way a surface looks down, and no hinge sets that."""
    normal = normal_from_slopes(math.radians(60), math.radians(30))
    assert laid(normal, "part", "x", Laying("right")) is None
    assert laid(normal, "part", "x", Laying("left")) is not None


@pytest.mark.outside("sine.compound", source="scipy.spatial.transform.Rotation.")
@pytest.mark.parametrize(("x", "y"), [(20, 30), (-20, 30), (20, -30), (-20, -30)])
@pytest.mark.parametrize("base_axis", ["x", "y"])
def test_the_plate_itself_is_turned_in_the_machines_frame(
    call: Call, base_axis: str, x: float, y: float
) -> None:
    """In the machine's frame the refusal says how to turn the plate, and that then does it."""
    sides = {"base_raised_side": SIDES[base_axis][0]}
    sides["upper_raised_side"] = SIDES["y" if base_axis == "x" else "x"][0]
    request = {"frame": "machine", "orientation": _projected(x, y), **PLATE}
    plate: dict[str, Any] = {"base_axis": base_axis, **sides}
    if x < 0 or y < 0:
        with pytest.raises(Unreachable, match="Turn the whole plate by") as refused:
            call("sine.compound", **request, **plate)
        turned = refused.value.more["plate_turned"]
        assert isinstance(turned, dict)
        plate = turned
    result = call("sine.compound", **request, **plate)["result"]
    assert result["base"]["raised_side"] == plate["base_raised_side"]
    assert result["upper"]["raised_side"] == plate["upper_raised_side"]
    reached, wanted = _reached(result, "machine", plate["base_axis"], x, y)
    np.testing.assert_allclose(reached, wanted, atol=1e-12)


def test_a_side_that_a_hinge_cannot_raise(call: Call) -> None:
    """A plate hinged along X raises the back or the front, and no other side is taken."""
    with pytest.raises(Disagreement, match="raises the back or the front, not the left"):
        call(
            "sine.compound", base_axis="x", frame="part", orientation=_projected(5, 5),
            base_raised_side="left", **PLATE,
        )  # fmt: skip


def test_past_the_reach_the_ways_within_it_are_given(call: Call) -> None:
    """A steep surface on plates to 45° is refused with the settings that they do reach."""
    with pytest.raises(Unreachable, match="its left side up") as refused:
        call(
            "sine.compound", base_axis="y", frame="part", orientation=_projected(60, 30),
            base_largest_angle=45, upper_largest_angle=45, **PLATE,
        )  # fmt: skip
    settings = refused.value.more["turned_settings"]
    assert isinstance(settings, list)
    for setting in settings:
        reached, wanted = _reached(setting, "part", "y", 60, 30)
        np.testing.assert_allclose(reached, wanted, atol=1e-12)
        assert all(abs(setting[p]["angle"]["degrees"]) <= 45 for p in ("base", "upper"))


def test_a_plate_never_gets_a_negative_stack(call: Call) -> None:
    """A plate that rests above the angle asked of it is refused; at zero its step is built."""
    request = {"base_axis": "x", "frame": "part", "orientation": _projected(15, 0), **PLATE}
    with pytest.raises(Unreachable, match=r"the base plate stands at 1\.14599°"):
        call("sine.compound", base_step=-0.1, **request)
    built = call("sine.compound", base_step=0.1, set="inch-81", **request)["result"]
    assert built["base"]["raised_side"] == "neither"
    assert built["stacks"]["base_blocks"] == [0.1]
    assert built["base"]["action"].startswith("Put 0.1 in under the base plate's roll")


@pytest.mark.parametrize("most", [5, 8])
def test_a_stack_that_no_number_of_blocks_builds(call: Call, most: int) -> None:
    """15° and 0°20' need stacks under both rolls: the refusal gives them, and no more blocks."""
    with pytest.raises(Unreachable, match="build no single stack") as refused:
        call(
            "sine.compound", base_axis="x", frame="part", orientation=_projected(15, 1 / 3),
            set="inch-81", max_blocks=most, **PLATE,
        )  # fmt: skip
    assert refused.value.fields["max_blocks"].startswith("does not help")
    stacks = refused.value.more["stacks_under_both_rolls"]
    assert isinstance(stacks, dict)
    # tan A = tan 0°20′ cos 15°, by hand; the set's step is 0.0001 in.
    hinge = math.atan(math.tan(math.radians(1 / 3)) * math.cos(math.radians(15)))
    built = sum(stacks["high_blocks"]) - sum(stacks["low_blocks"])
    assert built == pytest.approx(5 * math.sin(hinge), abs=0.00005)
    assert stacks["plate"] == "base"


def test_more_blocks_are_asked_for_only_where_they_do_it(call: Call) -> None:
    """Where more blocks make it, how many is said, and with so many it is answered."""
    request = {
        "base_axis": "x", "frame": "part", "orientation": _projected(31.7, 22.3), "set": "inch-81",
        **PLATE,
    }  # fmt: skip
    with pytest.raises(Unreachable, match="blocks in one of them they do") as refused:
        call("sine.compound", max_blocks=2, **request)
    needed = refused.value.more["blocks_needed"]
    stacks = call("sine.compound", max_blocks=needed, **request)["result"]["stacks"]
    assert max(len(stacks["base_blocks"]), len(stacks["upper_blocks"])) <= int(str(needed))


def test_a_set_of_the_other_units_is_called_out(call: Call) -> None:
    """A metric set for a plate in inches is said to be one, as everywhere."""
    answer = call(
        "sine.compound", base_axis="x", frame="part", orientation=_projected(30, 30),
        set="metric-88", **PLATE,
    )  # fmt: skip
    assert "set-of-other-units" in [a["code"] for a in answer["advisories"]]

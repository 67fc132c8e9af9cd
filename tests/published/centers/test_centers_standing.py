"""Untrue seats, centers off their line, and grinding a center again."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq, linprog

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.registry import load_registry
from support import Call

LOBES: dict[str, Any] = {
    "units": "mm",
    "out_of_round": "hole",
    "center_turns": False,
    "lobes": 3,
    "out_of_roundness": 0.01,
    "axial_force": 100,
}


def seat(lobes: int, half_form: float, share: float, turned: float) -> np.ndarray[Any, Any]:
    """Where a lobed hole settles on a round center, by a linear program over its wall.

    Least of s − p·δ with δ·u(φ) − clearance(φ) ≤ s all round: the force at angle 0.
    """
    around = np.linspace(0, 2 * np.pi, 721)[:-1]
    clearance = half_form * (1 + np.cos(lobes * (around - turned)))
    rows = np.column_stack([np.cos(around), np.sin(around), -np.ones_like(around)])
    found = linprog([-share, 0, 1], A_ub=rows, b_ub=clearance, bounds=[(None, None)] * 3)
    assert found.x is not None
    return np.array(found.x[:2])


@pytest.mark.outside(
    "centers.out-of-round", source="scipy's linear programming: a lobed hole seated all round"
)
@pytest.mark.parametrize(
    ("lobes", "force", "wheel"), [(2, 40, 0), (2, 120, 90), (3, 120, 0), (3, 150, 60), (5, 160, 0)]
)
def test_what_reaches_the_work_is_what_a_seat_gives(
    call: Call, lobes: int, force: float, wheel: float
) -> None:
    """The work's form is the range of the seat's movement to the wheel as the hole turns."""
    result = call(
        "centers.out-of-round",
        **{**LOBES, "lobes": lobes, "side_force": force, "wheel_from_force": wheel},
    )["result"]
    share = force / 100 * math.tan(math.pi / 6)
    towards = np.array([math.cos(math.radians(wheel)), math.sin(math.radians(wheel))])
    turns = np.linspace(0, 2 * np.pi / lobes, 25)
    moved = [float(seat(lobes, 0.005, share, turn) @ towards) for turn in turns]
    assert result["work_out_of_roundness"] == pytest.approx(np.ptp(moved), rel=0.02)
    middle = abs(max(moved) + min(moved)) / 2
    assert result["axis_offset_standing"] == pytest.approx(middle, rel=0.02, abs=2e-5)
    assert result["reaches_percent"] == pytest.approx(result["work_out_of_roundness"] * 1e4)
    assert result["work_lobes"] == lobes


def test_three_lobes_hold_the_work_still_up_to_a_force(call: Call) -> None:
    """Side force up to cos 60° / tan 30° = 0.866 of the axial force moves nothing; then it does."""
    steady = call("centers.out-of-round", **{**LOBES, "side_force": 86.6})["result"]
    assert steady["steady_side_force_ratio"] == pytest.approx(0.5 / math.tan(math.pi / 6))
    assert steady["lifts_side_force_ratio"] == pytest.approx(math.sqrt(3))
    assert steady["work_out_of_roundness"] == 0.0
    assert steady["axis_offset_standing"] == 0.0
    moved = call("centers.out-of-round", **{**LOBES, "side_force": 90})["result"]
    assert moved["work_out_of_roundness"] > 0.0


def test_an_oval_passes_twice_the_share_on(call: Call) -> None:
    """Of an oval 2 p reaches the work: at a tenth of the axial force 2 × 0.1 tan 30°."""
    result = call("centers.out-of-round", **{**LOBES, "lobes": 2, "side_force": 10})["result"]
    share = 0.1 * math.tan(math.pi / 6)
    assert result["work_out_of_roundness"] == pytest.approx(2 * share * 0.01, rel=1e-6)
    assert result["steady_side_force_ratio"] == 0.0


def test_a_dead_center_out_of_round_stands(call: Call) -> None:
    """None of its lobes reaches a round hole: the axis stands off by at most what a seat gives."""
    request = {**LOBES, "out_of_round": "center", "lobes": 2, "side_force": 40}
    result = call("centers.out-of-round", **request)["result"]
    assert result["work_out_of_roundness"] == 0.0
    assert result["work_lobes"] == 0
    share = 0.4 * math.tan(math.pi / 6)
    farthest = max(np.linalg.norm(seat(2, 0.005, share, t)) for t in np.linspace(0, np.pi, 17))
    assert result["axis_offset_standing"] == pytest.approx(farthest, rel=0.01)
    live = call("centers.out-of-round", **{**request, "center_turns": True})["result"]
    assert live["work_out_of_roundness"] == pytest.approx(2 * share * 0.01)


def test_without_forces_nothing_is_said(call: Call) -> None:
    """Where forces were not stated the work's form is null, and they are named."""
    result = call("centers.out-of-round", **{**LOBES, "axial_force": None})["result"]
    assert result["work_out_of_roundness"] is result["axis_offset_standing"] is None
    assert result["reaches_percent"] is None
    assert result["not_stated"] == ["axial_force", "side_force"]


def test_a_force_that_lifts_the_work_is_refused(call: Call) -> None:
    """Past 1 / tan 30° of the axial force there is no seat."""
    with pytest.raises(Impossible, match=r"it takes 173\.2 N at most"):
        call("centers.out-of-round", **{**LOBES, "side_force": 174})


# Off the line ---------------------------------------------------------------------------------
OFFSET: dict[str, Any] = dict(load_registry().operations["centers.standing-offset"].example)


def ground(wheel: float, work: float, towards: float, across: float) -> float:
    """Diameter left by a round wheel, by touching its sampled rim with a circle about the work."""

    def gap(radius: float) -> float:
        turn = np.linspace(-0.2, 0.2, 40_001)
        # Wheel about the origin, work's axis beside it.
        x, y = wheel / 2 + work / 2 - towards, across
        rim = np.hypot(wheel / 2 * np.cos(turn) - x, wheel / 2 * np.sin(turn) - y)
        return float(rim.min()) - radius

    return 2.0 * float(brentq(gap, work / 8, work))


@pytest.mark.outside(
    "centers.standing-offset", source="Brute force: a sampled wheel's rim about the work's axis"
)
def test_the_diameter_ground_is_what_the_rim_leaves(call: Call) -> None:
    """At each station, off by both offsets, the work is what the wheel's rim leaves of it."""
    request = {**OFFSET, "offset_toward_wheel": 0.4, "offset_across": -3.0}
    result = call("centers.standing-offset", **request)["result"]
    for row in result["at_stations"]:
        part = row["station_from_first"] / 150
        assert row["diameter"] == pytest.approx(ground(300, 20, 0.4 * part, -3 * part), abs=1e-6)
        assert row["diameter_error"] == pytest.approx(row["diameter"] - 20, abs=1e-12)
        towards = ground(300, 20, 0.4 * part, 0) - 20
        across = ground(300, 20, 0, -3 * part) - 20
        assert row["by_offset_toward_wheel"] == pytest.approx(towards, abs=1e-6)
        assert row["by_offset_across"] == pytest.approx(across, abs=1e-6)
    last = result["at_stations"][-1]
    assert result["taper_on_diameter"] == pytest.approx(last["diameter_error"])
    assert result["taper_by_offset_toward_wheel"] == pytest.approx(-0.8)
    assert result["taper_by_offset_across"] == pytest.approx(last["by_offset_across"])
    assert result["half_taper_arcsec"] == pytest.approx(
        math.degrees(math.atan(last["diameter_error"] / 2 / 150)) * 3600
    )
    assert result["across_like_toward_wheel"] == pytest.approx(-last["by_offset_across"] / 2)


@pytest.mark.outside("centers.standing-offset", source="h²/2r, the textbook's first term; by hand")
def test_upward_hardly_makes_a_taper(call: Call) -> None:
    """0.1 up at a point on a radius of 10: h²/2r = 0.0005 on the radius, exactly 0.00049999."""
    request = {
        **OFFSET,
        "ground_by": "point",
        "wheel_diameter": None,
        "offset_toward_wheel": 0,
        "stations_from_first": [0, 150],
    }
    result = call("centers.standing-offset", **request)["result"]
    assert result["taper_on_diameter"] / 2 == pytest.approx(0.1**2 / 20, rel=1e-4)
    assert result["taper_on_diameter"] / 2 == pytest.approx(math.sqrt(100.01) - 10, rel=1e-9)
    towards = call(
        "centers.standing-offset", **{**request, "offset_toward_wheel": 0.1, "offset_across": 0}
    )["result"]
    assert towards["taper_on_diameter"] == pytest.approx(-0.2)


def test_a_plane_knows_no_offset_across(call: Call) -> None:
    """A wheel traversed flat over the work leaves what its axis is off towards it, no more."""
    request = {**OFFSET, "ground_by": "plane", "wheel_diameter": None}
    result = call("centers.standing-offset", **request)["result"]
    assert result["taper_on_diameter"] == pytest.approx(-0.02)
    assert result["taper_by_offset_across"] == result["across_like_toward_wheel"] == 0.0


@pytest.mark.parametrize(
    ("change", "error", "words"),
    [
        ({"wheel_diameter": None}, Disagreement, "A round wheel has a diameter here"),
        ({"ground_by": "point"}, Disagreement, "A round wheel has a diameter here"),
        ({"stations_from_first": [0, 151]}, Impossible, "lies past the second center"),
        ({"stations_from_first": [70, 70]}, Disagreement, "no length for a taper"),
        ({"offset_toward_wheel": 10}, Impossible, "more than the work's radius"),
        (
            {"offset_across": 160, "distance_between_centers": 1600},
            Impossible,
            "wheel and work pass one another by",
        ),
        ({"offset_across": -15.1}, Impossible, "is set over on purpose"),
        ({"offset_toward_wheel": 15.1, "work_diameter": 40}, Impossible, "set over on purpose"),
    ],
)
def test_offsets_that_cannot_be_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], words: str
) -> None:
    """No wheel, no length, or nothing that is ground."""
    with pytest.raises(error, match=words):
        call("centers.standing-offset", **{**OFFSET, **change})


@pytest.mark.parametrize(("offset", "way"), [(0.01, "away from it"), (-0.01, "towards it")])
def test_the_center_is_moved_back(call: Call, offset: float, way: str) -> None:
    """A center too near to the wheel is moved away from it, one too far off towards it."""
    advisories = call("centers.standing-offset", **{**OFFSET, "offset_toward_wheel": offset})[
        "advisories"
    ]
    (said,) = [a["message"] for a in advisories if a["code"] == "set-the-offset-out"]
    assert said.endswith(f"move the second center 0.0100 mm {way}.")


# Ground again ---------------------------------------------------------------------------------
REGRIND: dict[str, Any] = dict(load_registry().operations["centers.regrind"].example)


@pytest.mark.outside(
    "centers.regrind", source="60° center: a layer h takes 2.309 h off the diameter, 2 h off length"
)
def test_a_60_degree_center_loses_twice_the_layer(call: Call) -> None:
    """0.0039 in below the mean surface: 0.0078 in shorter, 0.0090 in smaller; six such are left."""
    result = call("centers.regrind", **REGRIND)["result"]
    layer = 0.0008 / 2 + 0.003 + 0.0005
    assert result["needed_normal"] == pytest.approx(layer)
    assert result["downfeed_from_first_touch"] == pytest.approx(0.0008 + 0.0035)
    assert result["off_diameter"] == pytest.approx(2.3094 * layer, rel=1e-4)
    assert result["point_loss"] == pytest.approx(2 * layer)
    assert result["point_stick_out_after"] == pytest.approx(2.5 - 2 * layer)
    assert result["regrinds_left"] == math.floor(0.05 / (2 * layer)) == 6


@pytest.mark.outside(
    "centers.regrind", source="tapers.clean-up of the same cone, and where a hole seats on it"
)
@pytest.mark.parametrize("mouth", [0.1, 0.3, 0.5])
def test_work_of_any_hole_follows_the_point(call: Call, mouth: float) -> None:
    """A hole seats D / (2 tan α) from the point, before and after: it moves as the point does."""
    result = call("centers.regrind", **{**REGRIND, "included_angle": 60})["result"]
    cleaned = call(
        "tapers.clean-up",
        units="in",
        included_angle=60,
        large_diameter=0.7,
        length=0.6,
        tir_large_end=0.0008,
        tir_small_end=0.0008,
        half_angle_error_arcsec=0,
        wear=0.003,
        allowance=0.0005,
    )["result"]
    assert result["point_loss"] == pytest.approx(cleaned["point_loss"])
    slope = math.tan(math.pi / 6)
    # Diameter at a fixed station of the center, before and after: where it equals the mouth moves.
    before = (0.7 - mouth) / (2 * slope)
    after = (0.7 - result["off_diameter"] - mouth) / (2 * slope)
    assert before - after == pytest.approx(result["point_loss"])


def test_nothing_stated_of_the_wear_gives_nothing(call: Call) -> None:
    """Without wear and runout there is no layer to give, and both are named."""
    result = call("centers.regrind", **{**REGRIND, "wear": None, "tir": None})["result"]
    assert result["needed_normal"] is result["point_loss"] is result["regrinds_left"] is None
    assert result["not_stated"] == ["wear", "tir"]


def test_a_center_is_not_ground_away(call: Call) -> None:
    """Where the point would come back by more than it stands out nothing is answered."""
    with pytest.raises(Impossible, match=r"no center would be left"):
        call("centers.regrind", units="in", large_diameter=0.7, length=0.6, wear=0.05,
             point_stick_out=0.1)  # fmt: skip


def test_a_center_shorter_than_the_least_is_refused(call: Call) -> None:
    """One that stands out no more than the least has nothing to give."""
    with pytest.raises(Disagreement, match="no more than the least"):
        call("centers.regrind", **{**REGRIND, "smallest_point_stick_out": 2.5})

"""The dressed flank against brute-force geometry, a geometry library and numeric integration."""

import csv
import io
import math
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import minimize_scalar
from shapely.geometry import LineString, Point, Polygon

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.topics.wheels.flank import flank as operation
from support import Call

SINE_BASE = {"kind": "sine-base", "center_distance": 2}
CONE = {"kind": "cone", "included_angle": 60, "large_diameter": 0.4, "small_diameter": 0.0}
EXAMPLE: dict[str, Any] = dict(operation.example)
#: A wheel dressed on both sides, with lands, a flat and radii everywhere.
BOTH_SIDES: dict[str, Any] = {
    "units": "in",
    "work": CONE,
    "other_side": {"kind": "face", "face_angle": 45, "rise": 0.08},
    "wheel_width": 0.75,
    "wheel_diameter": 7,
    "overrun": 0.02,
    "edge_flat": 0.1,
    "spare_width": "land-below-flank",
    "edge_radius": 0.03,
    "root_radius": 0.02,
    "dresser": SINE_BASE,
    "depth_per_pass": 0.0005,
}


def _xy(point: dict[str, float]) -> tuple[float, float]:
    return point["x"], -point["radial_depth"]


@pytest.mark.outside(
    "wheels.flank", source="Brute force: nearest approach of wheel and cone, scipy"
)
@pytest.mark.parametrize("included_angle", [20.0, 60.0, 118.0])
def test_the_dressed_flank_touches_the_cone_all_along(call: Call, included_angle: float) -> None:
    """A wheel turned to the flank angle touches the wanted cone in a line, at every station.

    Wheel and work are solids of revolution about parallel axes; at each station along the axes the
    gap is the distance of axes less both radii, the wheel's being a straight line of the slope
    that the answer gives.
    """
    result = call(
        "wheels.flank",
        units="mm",
        work={
            "kind": "cone",
            "included_angle": included_angle,
            "large_diameter": 20,
            "small_diameter": 2,
        },
        wheel_width=60,
        dresser={"kind": "sine-base", "center_distance": 50},
        depth_per_pass=0.01,
    )["result"]
    flank = result["flanks"][0]
    slope = math.tan(math.radians(flank["angle_from_axis"]["degrees"]))
    station = np.linspace(0, flank["width"], 101)
    wheel_radius = 100 - slope * station
    cone_radius = 1 + math.tan(math.radians(included_angle / 2)) * station

    def greatest_gap(distance: float) -> float:
        return float(np.max(np.abs(distance - wheel_radius - cone_radius)))

    best = minimize_scalar(
        greatest_gap, bounds=(90, 120), method="bounded", options={"xatol": 1e-9}
    )
    assert best.fun == pytest.approx(0, abs=1e-6)
    assert cone_radius[-1] == pytest.approx(10)
    assert result["depth_to_dress"] == pytest.approx(9)


@pytest.mark.outside("wheels.flank", source="Common practice: 30° on a 5 in sine plate is 2.5 in")
def test_dresser_is_set_like_any_sine_plate(call: Call) -> None:
    """From either zero the dresser's stack is its center distance times the sine of its angle."""
    request: dict[str, Any] = {
        "units": "in",
        "work": {"kind": "face", "face_angle": 30, "rise": 0.1},
        "wheel_width": 0.5,
        "depth_per_pass": 0.001,
    }
    dresser = {"kind": "sine-base", "center_distance": 5}
    request["set"] = "inch-81"
    flank = call("wheels.flank", **request, dresser=dresser)["result"]["flanks"][0]
    assert flank["dresser_setting"]["height"] == pytest.approx(2.5)
    assert sum(flank["dresser_setting"]["stack"]["high_blocks"]) == pytest.approx(2.5)
    dresser["zero"] = "wheel-side"
    from_side = call("wheels.flank", **request, dresser=dresser)["result"]["flanks"][0]
    assert from_side["dresser_setting"]["dresser_angle"]["degrees"] == pytest.approx(60)
    assert from_side["passes"] == 100


@pytest.mark.outside("wheels.flank", source="shapely: distance of centers from the flank's lines")
def test_radii_touch_both_sides_of_their_corner(call: Call) -> None:
    """Each arc's center is one radius from both straights, nearest at its tangent points."""
    result = call("wheels.flank", **BOTH_SIDES)["result"]
    flanks, width = result["flanks"], BOTH_SIDES["wheel_width"]
    land = (width - sum(f["width"] for f in flanks) - 0.1) / 2
    chain = [
        (0.0, -flanks[0]["depth_to_dress"]),
        (land, -flanks[0]["depth_to_dress"]),
        (land + flanks[0]["width"], 0.0),
        (land + flanks[0]["width"] + 0.1, 0.0),
        (width - land, -flanks[1]["depth_to_dress"]),
        (width, -flanks[1]["depth_to_dress"]),
    ]
    assert [blend["corner"] for blend in result["blends"]] == [
        "root",
        "edge",
        "other-edge",
        "other-root",
    ]
    for index, blend in enumerate(result["blends"]):
        center = Point(_xy(blend["center"]))
        for part, tangent in ((index, "first_tangent"), (index + 1, "second_tangent")):
            line = LineString(chain[part : part + 2])
            assert line.distance(center) == pytest.approx(blend["radius"], abs=1e-12)
            nearest = line.interpolate(line.project(center))
            assert nearest.distance(Point(_xy(blend[tangent]))) == pytest.approx(0, abs=1e-9)


@pytest.mark.outside("wheels.flank", source="scipy quad and shapely over the coordinates given")
def test_volume_is_the_integral_over_the_profile(call: Call) -> None:
    """The volume dressed away is the integral of the rings between profile and periphery.

    The coordinates given follow the arcs in steps of 3°, which cuts less than 0.1 % off here;
    shapely's area times the way of its centroid (Pappus) is the second check on the same points.
    """
    result = call("wheels.flank", **BOTH_SIDES)["result"]
    x = [point["x"] for point in result["profile"]]
    depth = [point["radial_depth"] for point in result["profile"]]

    def ring(at: float) -> float:
        return math.pi * (3.5**2 - (3.5 - float(np.interp(at, x, depth))) ** 2)

    whole = sum(quad(ring, a, b)[0] for a, b in pairwise(x))
    assert result["volume_to_dress"] == pytest.approx(whole, rel=1e-3)
    removed = Polygon(
        [(0, 3.5), *((a, 3.5 - d) for a, d in zip(x, depth, strict=True)), (x[-1], 3.5)]
    )
    assert whole == pytest.approx(2 * math.pi * removed.centroid.y * removed.area, rel=1e-9)


def test_coordinates_come_as_csv_too(call: Call) -> None:
    """The CSV holds the coordinates of the profile, with a header that names the unit."""
    result = call("wheels.flank", **BOTH_SIDES)["result"]
    rows = list(csv.DictReader(io.StringIO(result["profile_csv"])))
    assert len(rows) == len(result["profile"])
    assert float(rows[1]["x_in"]) == pytest.approx(result["profile"][1]["x"])
    assert result["svg"].startswith("<svg ")


def test_flank_may_run_on_to_the_wheels_sides(call: Call) -> None:
    """Two equal flanks that run on meet over the middle: depth is half the width times tan."""
    request = {
        **BOTH_SIDES,
        "other_side": CONE,
        "edge_flat": 0,
        "root_radius": 0,
        "wheel_width": 1,
        "spare_width": "flank-runs-on",
    }
    result = call("wheels.flank", **request)["result"]
    assert result["depth_to_dress"] == pytest.approx(0.5 * math.tan(math.radians(30)))
    assert result["flat_left"] == 0
    assert result["blends"][0]["corner"] == "apex"


@pytest.mark.outside("wheels.flank", source="Right triangle by hand: the flank over all the width")
@pytest.mark.parametrize(
    ("spare_width", "depth", "corners"),
    [("flank-runs-on", 0.75 * math.tan(math.radians(30)), 2), ("land-below-flank", 0.37, 3)],
)
def test_one_flank_may_take_all_the_periphery(
    call: Call, spare_width: str, depth: float, corners: int
) -> None:
    """A single flank that runs on, or has a land below it, ends at the wheel's other side."""
    request = {**EXAMPLE, "spare_width": spare_width}
    result = call("wheels.flank", **request)["result"]
    assert result["depth_to_dress"] == pytest.approx(depth)
    assert result["flat_left"] == 0
    assert len(result["profile"]) == corners
    assert result["profile"][-1] == {"x": pytest.approx(0.75), "radial_depth": 0}
    with pytest.raises(Impossible, match="no periphery is left") as refused:
        call("wheels.flank", **request, edge_radius=0.01)
    assert refused.value.fields == {"edge_radius": "should be 0, or some edge_flat be left"}


@pytest.mark.parametrize(
    ("work", "field", "match"),
    [
        (
            {"kind": "face", "face_angle": 89.999999, "rise": 1e-6},
            "face_angle",
            r"take less than 0\.000001 in of the axis",
        ),
        (
            {"kind": "cone", "half_angle": 89.4, "large_diameter": 0.5, "small_diameter": 0.49999},
            "half_angle",
            r"take less than 0\.000001 in of the axis",
        ),
        (
            {"kind": "cone", "half_angle": 30, "large_diameter": 0.5, "small_diameter": 0.499999},
            "large_diameter",
            r"rise by 0\.0000005 in only",
        ),
    ],
)
@pytest.mark.parametrize("side", ["work", "other_side"])
def test_a_flank_too_small_to_be_one_is_refused(
    call: Call, side: str, work: dict[str, Any], field: str, match: str
) -> None:
    """A surface within a millionth of upright, or of nothing, is refused at the field to mend."""
    request = {**BOTH_SIDES, "edge_radius": 0, "root_radius": 0, side: work}
    with pytest.raises(Impossible, match=match) as refused:
        call("wheels.flank", **request)
    assert f"{side}/{field}" in refused.value.fields


def test_a_radius_that_just_fits_is_taken(call: Call) -> None:
    """The refusal of a radius names the largest that fits; that one is taken, and no longer one.

    The straight between two edges with 45° and 30° flanks and 0.1 in of flat holds
    0.1 / (tan 22.5° + tan 15°) = 0.1466 in.
    """
    with pytest.raises(Impossible, match="edge and other edge") as refused:
        call("wheels.flank", **{**BOTH_SIDES, "edge_radius": 0.25, "root_radius": 0})
    largest = float(refused.value.fields["edge_radius"].removeprefix("should be at most "))
    by_hand = 0.1 / (math.tan(math.radians(22.5)) + math.tan(math.radians(15)))
    assert by_hand * (1 - 2e-3) <= largest <= by_hand
    fits = {**BOTH_SIDES, "edge_radius": largest, "root_radius": 0}
    assert call("wheels.flank", **fits)["result"]["blends"][0]["radius"] == largest
    with pytest.raises(Impossible, match="edge and other edge"):
        call("wheels.flank", **{**fits, "edge_radius": largest * 1.002})


def test_a_radius_may_take_all_of_a_flank(call: Call) -> None:
    """Where radii leave no straight at all, the flank is still one, and none of it is straight."""
    work = {"kind": "face", "face_angle": 45, "rise": 0.1}
    request = {**EXAMPLE, "work": work, "overrun": 0, "edge_flat": 0.1}
    slant = 0.1 * math.sqrt(2)
    radius = slant / math.tan(math.radians(22.5)) * (1 - 1e-15)
    answer = call("wheels.flank", **{**request, "wheel_width": 2, "edge_radius": radius})
    straight = answer["result"]["flanks"][0]["straight_slant_length"]
    assert straight == pytest.approx(0, abs=1e-12)
    assert "radius-on-the-surface" in [a["code"] for a in answer["advisories"]]


def test_passes_too_many_for_one_diamond_are_told(call: Call) -> None:
    """0.37 in by 740 passes is told; a shallow flank in few passes is not."""
    answer = call("wheels.flank", **EXAMPLE)
    words = {a["code"]: a["message"] for a in answer["advisories"]}
    assert words["long-dress"].startswith("740 passes take 0.37 in off the wheel.")
    work = {"kind": "face", "face_angle": 15, "rise": 0.02}
    shallow = call("wheels.flank", **{**EXAMPLE, "work": work})
    assert not {"long-dress", "deep-pass"} & {a["code"] for a in shallow["advisories"]}


def test_the_last_pass_is_a_whole_one_where_passes_come_out_even(call: Call) -> None:
    """0.08 in by 0.0005 in is 160 passes, the last of 0.0005 in and not 0.0005000000000000004."""
    work = {"kind": "face", "face_angle": 40, "rise": 0.08}
    request = {**EXAMPLE, "work": work, "overrun": 0}
    found = call("wheels.flank", **request)["result"]["flanks"][0]
    assert (found["passes"], found["last_pass_depth"]) == (160, 0.0005)
    coarse = call("wheels.flank", **{**request, "depth_per_pass": 500})["result"]["flanks"][0]
    assert (coarse["passes"], coarse["last_pass_depth"]) == (1, 0.08)


def test_flanges_that_were_not_stated_are_asked_for(call: Call) -> None:
    """A depth that would meet flanges of a third of the wheel is told until they are stated."""
    request = {**EXAMPLE, "wheel_diameter": 1.1}
    assert "flange-not-stated" in [a["code"] for a in call("wheels.flank", **request)["advisories"]]
    stated = call("wheels.flank", **request, flange_diameter=0.3)
    assert "flange-not-stated" not in [a["code"] for a in stated["advisories"]]


def test_scale_is_read_to_its_graduation(call: Call) -> None:
    """A dresser with a vernier of 5′ is set to the nearest 5′, and the rest is told."""
    dresser = {"kind": "scale", "graduation": "0 05"}
    work = {"kind": "face", "face_angle": "8 18", "rise": 0.05}
    answer = call("wheels.flank", **{**BOTH_SIDES, "work": work, "dresser": dresser})
    setting = answer["result"]["flanks"][0]["dresser_setting"]
    assert setting["scale_reading"]["dms"] == "8°20'00.00\""
    assert setting["deviation_arcsec"] == pytest.approx(120)


@pytest.mark.outside("wheels.flank", source="Sine and cosine of 72.25°: dθ/dh = 1 / (L cos θ)")
def test_a_steep_dresser_names_the_other_zero(call: Call) -> None:
    """A flank of 72°15′ is dressed from the wheel's side at 17°45′, three times as surely."""
    work = {"kind": "face", "face_angle": "72 15", "rise": 0.1}
    request = {**EXAMPLE, "work": work}
    words = {a["code"]: a["message"] for a in call("wheels.flank", **request)["advisories"]}
    assert "zero at the wheel side the same flank takes 17.75°" in words["other-zero"]
    steps = [1e-4 / (2 * c) * 648_000 / math.pi for c in (math.cos(1.261), math.sin(1.261))]
    assert f"turns the flank {steps[0]:.1f}″" in words["other-zero"]
    assert f"turns it {steps[1]:.1f}″" in words["other-zero"]
    side = {**request, "dresser": {**EXAMPLE["dresser"], "zero": "wheel-side"}}
    assert "other-zero" not in [a["code"] for a in call("wheels.flank", **side)["advisories"]]


@pytest.mark.outside("wheels.flank", source="Sine of 1° on 2 in: 0.0349, the difference by hand")
def test_small_dresser_angles_get_two_stacks(call: Call) -> None:
    """A height below every block of the set is built as the difference of two stacks."""
    work = {"kind": "face", "face_angle": 1, "rise": 0.002}
    result = call(
        "wheels.flank",
        **{**BOTH_SIDES, "work": work, "set": "inch-81", "edge_radius": 0, "root_radius": 0},
    )["result"]
    stack = result["flanks"][0]["dresser_setting"]["stack"]
    assert stack["low_blocks"]
    assert sum(stack["high_blocks"]) - sum(stack["low_blocks"]) == pytest.approx(0.0349)


def test_a_box_serves_the_dresser_too(call: Call) -> None:
    """The shop's own box sets the dresser, less the blocks that are away."""
    request = {**BOTH_SIDES, "work": {"kind": "face", "face_angle": 30, "rise": 0.1}}
    blocks = [{"size": 1.0}, {"size": 0.5, "count": 2}, {"size": 0.4}, {"size": 0.1}]

    def high(**more: Any) -> Any:
        flanks = call("wheels.flank", **request, box=blocks, **more)["result"]["flanks"]
        return flanks[0]["dresser_setting"]["stack"]["high_blocks"]

    assert high() == [1.0]
    assert high(missing=[1.0]) == [0.5, 0.5]
    assert high(missing=[1.0], in_use=[0.5]) == [0.5, 0.4, 0.1]


def test_a_designation_is_a_slope(call: Call) -> None:
    """A Morse taper's designation is its slope, in the nested work too: No. 2 is 0.59941 in/ft."""
    work = {"kind": "cone", "designation": "morse-2", "large_diameter": 0.7, "small_diameter": 0.68}
    request = {**BOTH_SIDES, "work": work, "spare_width": "stays-flat", "root_radius": 0}
    flank = call("wheels.flank", **{**request, "edge_radius": 0})["result"]["flanks"][0]
    half = math.degrees(math.atan(0.59941 / 24))
    assert flank["angle_from_axis"]["degrees"] == pytest.approx(half, abs=1e-6)


@pytest.mark.parametrize(
    ("change", "error", "match"),
    [
        (
            {"dresser": {"kind": "scale", "graduation": "0 05"}, "set": "inch-81"},
            Disagreement,
            r"set without blocks",
        ),
        ({"missing": [1]}, Disagreement, r"`set`, `sizes` and `box`"),
        ({"work": {**CONE, "included_angle": None}}, Disagreement, r"slope .* is missing"),
        (
            {"wheel_width": 0.5},
            Impossible,
            r"together are 0\.48934 in wide .* is 0\.5 in wide",
        ),
        ({"edge_radius": 0.25}, Impossible, r"straight between edge and other edge"),
        ({"root_radius": 0.5}, Impossible, r"radius at the root"),
        ({"spare_width": "stays-flat"}, Impossible, r"no root to blend"),
        (
            {"work": {**CONE, "included_angle": 0.02, "large_diameter": 20}},
            Impossible,
            r"57295\.78 in long",
        ),
        ({"wheel_diameter": 127}, Disagreement, r"No flat grinding wheel has .* 127 in"),
        (
            {"dresser": {"kind": "sine-base", "center_distance": 50.8}},
            Disagreement,
            r"center distance of 50\.8 in: .* would be 2 in",
        ),
        (
            {"work": {**CONE, "large_diameter": 1.2}, "wheel_width": 2, "wheel_diameter": 1.2},
            Impossible,
            r"0\.62 in below the periphery; the wheel's own axis",
        ),
        ({"flange_diameter": 6.7}, Impossible, r"flange is 0\.15 in below it"),
        ({"work": {**CONE, "small_diameter": 0.4}}, Impossible, r"not below the larger one"),
        (
            {"work": {**CONE, "half_angle": 31}},
            Disagreement,
            r"half_angle disagrees with included_angle by 7200″",
        ),
        ({"set": "none"}, Unreachable, r"no built-in set 'none'"),
        ({"set": "inch-81", "sizes": [1]}, Disagreement, r"were sent together"),
    ],
)
def test_impossible_profiles_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], match: str
) -> None:
    """What the wheel has no room for, or contradicts itself, is refused with the reason."""
    with pytest.raises(error, match=match):
        call("wheels.flank", **{**BOTH_SIDES, **change})

"""Radius-dressed wheels, the diamond's stand, roughness by a known dress, when to dress again."""

import math
from typing import Any

import numpy as np
import pytest
from scipy import stats
from shapely.geometry import LineString, Point

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Disagreement, Impossible
from support import Call, assert_values

_ARC: dict[str, Any] = {"units": "in", "arc_form": "convex", "radius": 0.5, "arc_width": 0.6}
_DIAMOND: dict[str, Any] = {
    "units": "in",
    "wheel_diameter": 7,
    "diamond_height": 0.25,
    "nib_lean": 8,
}
_DRESS: dict[str, Any] = {
    "units": "mm",
    "rpm": 1410,
    "nose_radius": 0.38,
    "depth_per_pass": 0.025,
    "width_to_dress": 25,
}


# Radius -----------------------------------------------------------------------------------------
@pytest.mark.outside(
    "wheels.radius",
    source="Sagitta = R − √(R² − c²/4), dressing formulas (from memory): 3-4-5 triangle",
)
def test_an_arc_of_whole_numbers(call: Call) -> None:
    """Radius 0.5 and width 0.6 stand 0.1 high; any two give the third."""
    whole = {"radius": 0.5, "arc_width": 0.6, "sagitta": 0.1}
    for left_out in whole:
        sent = {name: value for name, value in whole.items() if name != left_out}
        result = call("wheels.radius", units="in", arc_form="convex", **sent)["result"]
        assert {name: result[name]["value"] for name in whole} == pytest.approx(whole)


@pytest.mark.outside("wheels.radius", source="shapely: pins and gauges laid against the arc")
def test_pins_and_gauges_touch_the_arc(call: Call) -> None:
    """A pin of 0.75 rests on the bottom, one of 1.2 on the edges; a gauge leaves light."""
    angles = np.linspace(-math.asin(0.6), math.asin(0.6), 20001)
    groove = LineString(np.column_stack([0.5 * np.sin(angles), 0.4 - 0.5 * np.cos(angles)]))
    for pin, rests in ((0.75, "bottom"), (1.2, "edges")):
        result = call("wheels.radius", **_ARC, pin_diameter=pin)["result"]
        assert result["pin_rests_on"] == rests
        center = Point(0, result["pin_over_face"] - pin / 2)
        assert groove.distance(center) == pytest.approx(pin / 2, abs=1e-7)
    for gauge in (0.45, 0.55):
        sagitta = gauge - math.sqrt(gauge**2 - 0.09)
        hollow = call("wheels.radius", **_ARC, gauge_radius=gauge)["result"]
        assert hollow["gap_at_edges"] == pytest.approx(sagitta - 0.1)
        ridge = _ARC | {"arc_form": "concave"}
        crest = call("wheels.radius", **ridge, gauge_radius=gauge)["result"]
        assert crest["gap_at_edges"] == pytest.approx(0.1 - sagitta)


@pytest.mark.outside("wheels.radius", source="numpy: the diamond's arc turned round the axis")
@pytest.mark.parametrize("form", ["convex", "concave"])
def test_a_diamond_beside_the_center_flattens_the_arc(call: Call, form: str) -> None:
    """The circle through middle and ends of the turned arc has the answered radius."""
    wheel, height, arc, width = 3.5, 0.6, 0.5, 0.6
    along = np.array([-width / 2, 0.0, width / 2])
    drop = arc - np.sqrt(arc**2 - along**2)
    in_plane = math.sqrt(wheel**2 - height**2) + (-drop if form == "convex" else drop)
    radii = np.hypot(in_plane, height)
    rise = abs(radii[1] - radii[0])
    expected = (width / 2) ** 2 / (2 * rise) + rise / 2
    place = {"wheel_diameter": 7, "diamond_height": height}
    result = call("wheels.radius", **(_ARC | {"arc_form": form}), **place)["result"]
    assert result["radius_as_dressed"] == pytest.approx(expected, rel=1e-9)
    assert result["radius_ratio"] == pytest.approx(expected / arc, rel=1e-9)
    assert result["radius_ratio"] > 1
    # Of a narrow arc it is r / √(1 − (e/R)²).
    narrow = _ARC | {"arc_form": form, "arc_width": 1e-3}
    ratio = call("wheels.radius", **narrow, **place)["result"]["radius_ratio"]
    assert ratio == pytest.approx(1 / math.sqrt(1 - (height / wheel) ** 2), rel=1e-6)


def test_a_measured_arc_by_hand(call: Call) -> None:
    """Dr = c/(4 s) dc + (½ − c²/(8 s²)) ds: at 0.6 and 0.1 that is 1.5 and −4."""
    sent = {"units": "in", "arc_form": "convex", "arc_width": 0.6, "sagitta": 0.1}
    limits = {"arc_width_error_limit": 0.0002, "sagitta_error_limit": 0.0001}
    result = call("wheels.radius", **sent, **limits)["result"]
    parts = [1.5 * 0.0002, 4 * 0.0001]
    assert result["radius"]["worst_case"] == pytest.approx(sum(parts), rel=1e-4)
    covered = half_width_of_rectangles(*parts)
    assert result["radius"]["expanded_uncertainty"] == pytest.approx(covered, rel=1e-3)
    assert_values(result, {"arc_width.worst_case": 0.0002, "sagitta.worst_case": 0.0001})
    set_so = call("wheels.radius", **_ARC, radius_error_limit=0.001)["result"]
    # ds/dr = 1 − r/√(r² − c²/4) = −0.25 there; the width's error was not stated.
    assert set_so["sagitta"]["worst_case"] == pytest.approx(0.00025, rel=1e-4)
    assert set_so["sagitta"]["not_stated"] == ["arc_width_error_limit"]


@pytest.mark.parametrize(
    ("change", "refusal", "words"),
    [
        ({"sagitta": 0.1}, Disagreement, "two are needed"),
        ({"arc_width": None}, Disagreement, "two are needed"),
        ({"arc_width": 1.01}, Impossible, "is not 1.01 in wide"),
        ({"arc_width": None, "sagitta": 0.51}, Impossible, "more than half a circle"),
        ({"radius": None, "sagitta": 0.31}, Impossible, "more than half a circle"),
        ({"pin_diameter": 0.5, "arc_form": "concave"}, Disagreement, "lies in a groove"),
        ({"gauge_radius": 0.29}, Disagreement, "narrower than the arc"),
        ({"wheel_diameter": 7}, Disagreement, "together, or none"),
        ({"wheel_diameter": 7, "diamond_height": 3.45}, Impossible, "never reaches"),
    ],
)
def test_arcs_that_no_dresser_swings_are_refused(
    call: Call, change: dict[str, Any], refusal: type[Exception], words: str
) -> None:
    """Too many or too few figures, past half a circle, a pin on a ridge, a diamond beside."""
    sent = {name: value for name, value in (_ARC | change).items() if value is not None}
    with pytest.raises(refusal, match=words):
        call("wheels.radius", **sent)


# Diamond ----------------------------------------------------------------------------------------
@pytest.mark.outside("wheels.diamond", source="numpy: nib and wheel's radius as vectors, turned")
@pytest.mark.parametrize(("height", "lean"), [(0.25, 8.0), (-0.4, 3.0), (0.0, 12.0), (0.9, -5.0)])
def test_the_nib_to_the_wheels_radius(call: Call, height: float, lean: float) -> None:
    """The drag is the turn from the wheel's radius to the nib, toward the surface's motion."""
    sent = _DIAMOND | {"diamond_height": height, "nib_lean": lean}
    result = call("wheels.diamond", **sent, worn_diameter=5, feed_per_pass=0.01)["result"]
    for name, wheel in (("drag_angle", 3.5), ("drag_angle_worn", 2.5)):
        # Fed along +y toward the axis; below it the surface moves along +x.
        inward = np.array([-height, math.sqrt(wheel**2 - height**2)]) / wheel
        nib = np.array([math.sin(math.radians(lean)), math.cos(math.radians(lean))])
        turned = math.degrees(math.atan2(nib[0] * inward[1] - nib[1] * inward[0], nib @ inward))
        assert result[name]["degrees"] == pytest.approx(turned, abs=1e-12)
    lower = math.sqrt(3.5**2 - height**2)
    assert result["behind_crest"] == pytest.approx(3.5 - lower, abs=1e-12)
    depth = 3.5 - math.hypot(lower - 0.01, height)
    assert result["depth_per_pass"] == pytest.approx(depth, rel=1e-9)
    assert result["slope_ratio"] == pytest.approx(lower / 3.5, rel=1e-12)


def test_the_slope_ratio_is_that_of_a_dressed_flank(call: Call) -> None:
    """The half angle dressed so is the one that `wheels.dressing-errors` gives at that radius."""
    ratio = call("wheels.diamond", **_DIAMOND)["result"]["slope_ratio"]
    cone = {"included_angle": 60, "large_diameter": 0.02, "small_diameter": 0.0199}
    dressed = call(
        "wheels.dressing-errors", units="in", wheel_diameter=7, diamond_height=0.25, **cone
    )["result"]
    effect = next(e for e in dressed["errors"] if e["name"] == "diamond-height")
    off = math.degrees(math.atan(math.tan(math.radians(30)) * ratio)) - 30
    assert effect["half_angle_error_arcsec"] == pytest.approx(off * 3600, rel=1e-3)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"diamond_height": 3.5}, "does not reach a wheel of 7 in"),
        ({"worn_diameter": 0.5}, "does not reach a wheel of 0.5 in"),
        ({"feed_per_pass": 3.5}, "past the wheel's axis"),
        ({"nib_lean": 60, "diamond_height": 2.4}, "to the radius: it would lie along"),
        ({"nib_lean": -60, "diamond_height": -1, "worn_diameter": 5}, "On a wheel of 5 in"),
    ],
)
def test_a_diamond_beside_the_wheel_is_refused(
    call: Call, change: dict[str, Any], words: str
) -> None:
    """Beside the wheel, beside the worn wheel, fed through it, lying along it."""
    with pytest.raises(Impossible, match=words):
        call("wheels.diamond", **(_DIAMOND | change))


# Roughness --------------------------------------------------------------------------------------
@pytest.mark.outside(
    "wheels.dressing",
    source="moderngrindingtechnology.com, Dresser Overlays: roughness follows the cusps at 1 to 6 "
    "overlays; cusp height f²/(8 r) while the overlap ratio is 1 or more (from memory)",
)
def test_roughness_follows_the_cusps(call: Call) -> None:
    """From 4 to 2 overlays the cusps, and Ra by them, grow four times; by the other rule √2."""
    width = 2 * math.sqrt(2 * 0.38 * 0.025 - 0.025**2)
    known = {"known_lead": width / 4, "known_depth_per_pass": 0.025}
    ra = {"known_roughness_micrometre": 0.3}
    result = call("wheels.dressing", **_DRESS, overlap_ratio=2, **known, **ra)["result"]
    assert result["cusp_height"] == pytest.approx((width / 2) ** 2 / (8 * 0.38), rel=0.01)
    assert result["roughness_by_cusps_micrometre"] == pytest.approx(1.2, rel=0.02)
    exact = [0.38 - math.sqrt(0.38**2 - (width / n / 2) ** 2) for n in (2, 4)]
    expected = {
        "roughness_by_cusps_micrometre": 0.3 * exact[0] / exact[1],
        "roughness_by_power_rule_micrometre": 0.3 * math.sqrt(2),
    }
    assert_values(result, expected)
    deeper = known | {"known_depth_per_pass": 0.025 / 16}
    deeper["known_lead"] = width / 16
    result = call("wheels.dressing", **_DRESS, overlap_ratio=4, **deeper, **ra)["result"]
    assert result["roughness_by_power_rule_micrometre"] == pytest.approx(0.3 * 2 * 2, rel=1e-9)


@pytest.mark.parametrize(("overlap", "known"), [(0.99, 4.0), (6.1, 4.0), (2.0, 0.9), (2.0, 6.2)])
def test_outside_the_rule_no_roughness_is_told(call: Call, overlap: float, known: float) -> None:
    """Below 1 and above 6 overlays, of either dress, both rules are silent."""
    width = 2 * math.sqrt(2 * 0.38 * 0.025 - 0.025**2)
    before = {"known_lead": width / known, "known_depth_per_pass": 0.025}
    answer = call(
        "wheels.dressing",
        **_DRESS,
        overlap_ratio=overlap,
        **before,
        known_roughness_micrometre=0.4,
    )
    result = answer["result"]
    assert result["roughness_by_cusps_micrometre"] is None
    assert result["roughness_by_power_rule_micrometre"] is None
    assert "outside-the-rule" in [a["code"] for a in answer["advisories"]]
    assert (result["cusp_height"] is None) is (overlap < 1)


def test_a_known_dress_is_whole(call: Call) -> None:
    """Lead, depth and roughness go together; a depth past the nose is refused by its own field."""
    with pytest.raises(Disagreement, match="together, or none"):
        call("wheels.dressing", **_DRESS, overlap_ratio=2, known_lead=0.1)
    known = {"known_lead": 0.1, "known_roughness_micrometre": 0.4}
    with pytest.raises(Impossible, match="shank would touch") as refused:
        call("wheels.dressing", **_DRESS, overlap_ratio=2, **known, known_depth_per_pass=0.39)
    assert list(refused.value.fields) == ["known_depth_per_pass"]


# Redress ----------------------------------------------------------------------------------------
_PIECES = (1, 4, 6, 9, 13)
_ANGLES = (-2.5, 0.4, 1.1, 4.8, 6.9)
_SIZES = (0.0, 0.0004, 0.0009, 0.0012, 0.0021)


def _observed() -> list[dict[str, float]]:
    return [
        {"piece_since_dress": p, "measured_error_arcsec": a, "measured_size_error": s}
        for p, a, s in zip(_PIECES, _ANGLES, _SIZES, strict=True)
    ]


@pytest.mark.outside("wheels.redress", source="scipy.stats: linregress, and Student's prediction")
def test_pieces_by_the_prediction_of_a_further_one(call: Call) -> None:
    """The last piece whose predicted angle keeps ± 20″ with 95 %, and size ± 0.006, by scipy."""
    tolerances = {"tolerance_arcsec": 20, "size_tolerance": 0.006}
    result = call(
        "wheels.redress", units="mm", observed_pieces=_observed(), pieces=200, **tolerances
    )["result"]
    most = {}
    names = (
        ("angle", "growth_per_piece_arcsec", "first_piece_error_arcsec", _ANGLES, 20),
        ("size", "growth_per_piece", "first_piece_size_error", _SIZES, 0.006),
    )
    for what, growth, first, values, tolerance in names:
        line = stats.linregress(_PIECES, values)
        assert result[growth]["value"] == pytest.approx(line.slope, rel=1e-9)
        assert result[growth]["standard_uncertainty"] == pytest.approx(line.stderr, rel=1e-9)
        assert result[growth]["degrees_of_freedom"] == 3
        width = stats.t.ppf(0.975, 3) * line.stderr
        assert result[growth]["expanded_uncertainty"] == pytest.approx(width, rel=1e-9)
        assert result[growth]["coverage_probability"] == 0.95
        assert_values(result[growth], {"coverage_factor": stats.t.ppf(0.975, 3)})
        (row,) = result[growth]["contributions"]
        rows = {"input_value": line.stderr, "standard_uncertainty": line.stderr}
        assert_values(row, rows | {"sensitivity": 1.0, "share_percent": 100.0})
        assert (row["name"], row["worst_case"], result[growth]["worst_case"]) == (
            "scatter",
            None,
            None,
        )
        assert result[first] == pytest.approx(line.intercept + line.slope, rel=1e-9)
        left = np.array(values) - line.intercept - line.slope * np.array(_PIECES)
        scatter = math.sqrt(left @ left / 3)
        mean, square = np.mean(_PIECES), np.var(_PIECES) * len(_PIECES)
        kept = 0
        for piece in range(1, 201):
            u = scatter * math.sqrt(1 + 1 / 5 + (piece - mean) ** 2 / square)
            error = line.intercept + line.slope * piece
            inside = stats.t.cdf((tolerance - error) / u, 3) - stats.t.cdf(
                (-tolerance - error) / u, 3
            )
            if inside < 0.95:
                break
            kept = piece
        most[what] = kept
    assert result["pieces_per_dress"] == min(most.values())
    assert result["limited_by"] == min(most, key=lambda what: most[what])
    assert result["not_stated"] == ["measurement_error_limit_arcsec", "measurement_error_limit"]
    per = result["pieces_per_dress"]
    dresses = math.ceil(200 / per) - 1
    assert result["dressings"] == dresses
    shown = result["pieces_to_measure"]
    assert shown[:4] == [1, per, per + 1, 2 * per]
    assert result["pieces_inspected"] == 2 * (dresses + 1) - (200 % per == 1)


def test_a_line_without_scatter_is_said_to_be_one(call: Call) -> None:
    """Rounded errors of 0.1, 0.2 and 0.3 lie on a line, whose growth no doubt is known of."""
    pieces = [{"piece_since_dress": k, "measured_error_arcsec": k / 10} for k in (1, 2, 3)]
    sent = {"units": "mm", "observed_pieces": pieces, "pieces": 20, "tolerance_arcsec": 1.05}
    answer = call("wheels.redress", **sent)
    assert answer["result"]["pieces_per_dress"] == 10
    assert "no-scatter" in [advisory["code"] for advisory in answer["advisories"]]


def test_what_all_measures_share_makes_a_dress_sooner(call: Call) -> None:
    """A common error of the measures leaves fewer pieces; a wide tolerance leaves them all."""
    sent = {"units": "mm", "observed_pieces": _observed(), "pieces": 60}
    plain = call("wheels.redress", **sent, tolerance_arcsec=20)["result"]
    less = call("wheels.redress", **sent, tolerance_arcsec=20, measurement_error_limit_arcsec=6)[
        "result"
    ]
    assert less["pieces_per_dress"] < plain["pieces_per_dress"]
    assert less["growth_per_piece"] is None
    every = call("wheels.redress", **sent, size_tolerance=1)["result"]
    assert every["pieces_per_dress"] == 60
    assert every["limited_by"] is None
    assert every["pieces_to_measure"] == [1, 60]
    none = call("wheels.redress", **sent, tolerance_arcsec=3)["result"]
    assert none["pieces_per_dress"] == 0
    assert none["dressings"] is None


@pytest.mark.parametrize(
    ("pieces", "words"),
    [([], "No growth"), ([1, 2], "No growth"), ([4, 4, 4], "No growth")],
)
def test_too_few_pieces_are_refused(call: Call, pieces: list[int], words: str) -> None:
    """No pieces, two of them, or three of one place tell no growth."""
    observed = [{"piece_since_dress": p, "measured_error_arcsec": 1.0 * p} for p in pieces]
    with pytest.raises(Disagreement, match=words):
        call("wheels.redress", units="mm", observed_pieces=observed, pieces=9, tolerance_arcsec=9)

"""A sine bar used to measure, calibrated from angle blocks, and heights over a pin on it."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.optimize import least_squares
from shapely.affinity import rotate
from shapely.geometry import Point

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.registry import load_registry
from support import Call, assert_values

ARCSEC = 206264.80624709636
_BAR: dict[str, Any] = {
    "units": "in",
    "center_distance": 5,
    "blocks": [2.5],
    "indicator_rise": 0.0,
    "indicator_travel": 2,
}


# Measured angle ---------------------------------------------------------------------------------
@pytest.mark.outside(
    "sine.measured-angle",
    source="askfilo.com, taper on a sine bar of 112 mm, rolls 47.667 and 37.667 up (inputs read; "
    "asin(10/112) is the full cone angle of a taper lying on the bar); GATE PI 2012, bar of 250 mm "
    "with its upper roll's center 100 up: 21.1° (key from memory)",
)
def test_published_problems(call: Call) -> None:
    """A taper on its generator: 5.1225° included; a part on the bar: 21.1°."""
    taper = {"units": "mm", "center_distance": 112, "blocks": [47.667], "base_step": 37.667}
    lying = call(
        "sine.measured-angle",
        **taper,
        holding="on-its-generator",
        indicator_rise=0,
        indicator_travel=50,
    )["result"]
    assert lying["quantity"] == "included-angle"
    assert lying["measured_angle"]["value"]["degrees"] == pytest.approx(5.12251610, abs=5e-9)
    face = {"units": "mm", "center_distance": 250, "blocks": [90.0]}
    part = call("sine.measured-angle", **face, indicator_rise=0, indicator_travel=50)["result"]
    assert part["measured_angle"]["value"]["degrees"] == pytest.approx(21.1, abs=5e-4)
    assert_values(part, {"plate_angle.degrees": 21.10019602, "stack_height": 90.0}, rel=1e-8)


@pytest.mark.outside("sine.measured-angle", source="numpy: a face's points turned with the plate")
@pytest.mark.parametrize("part", [29.9, 30.0, 30.02])
def test_a_residual_rise_is_taken_off(call: Call, part: float) -> None:
    """A face of that angle, tilted by 30°, read at two points 2 in apart, is measured as it is."""
    tilt, lean = math.radians(30), math.radians(part)
    turn = np.array([[math.cos(tilt), -math.sin(tilt)], [math.sin(tilt), math.cos(tilt)]])
    # On the plate the face falls toward the high roll, at x, by its own angle.
    face = np.array([[x, 4 - x * math.tan(lean)] for x in (0.0, 5.0)]) @ turn.T
    heights = np.interp([1.0, 3.0], face[:, 0] - face[0, 0], face[:, 1])
    rise = float(heights[0] - heights[1])
    result = call("sine.measured-angle", **(_BAR | {"indicator_rise": rise}))["result"]
    assert result["measured_angle"]["value"]["degrees"] == pytest.approx(part, abs=1e-9)
    assert result["residual_arcsec"] == pytest.approx((part - 30) * 3600, abs=1e-5)
    assert result["quantity"] == "face-angle"


@pytest.mark.parametrize("holding", ["between-centers", "on-its-generator", "in-a-vee"])
def test_a_cone_held_as_a_setting_holds_it(call: Call, holding: str) -> None:
    """On the stack of `sine.taper-setting` a level generator is the cone's own angle."""
    cone = {"included_angle": 16.0, "holding": holding, "vee_angle": 90}
    plate = {"units": "in", "center_distance": 5}
    height = call("sine.taper-setting", **plate, **cone)["result"]["height_to_set"]
    found = call(
        "sine.measured-angle",
        **(_BAR | {"blocks": [height], "holding": holding}),
    )["result"]
    assert found["measured_angle"]["value"]["degrees"] == pytest.approx(16, abs=0.002)


def test_it_reads_as_a_plan_of_inspection_expects(call: Call) -> None:
    """The rise that `inspection.plan` expects of a part at its limit measures that limit."""
    request = dict(load_registry().operations["inspection.plan"].example)
    planned = call("inspection.plan", **request)["result"]
    found = next(one for one in planned["inspections"] if one["means"] == "sine-plate")
    setting = {one["name"]: one["set_to"] for one in found["settings"]}
    reading = next(one for one in found["readings"] if one["name"] == "indicator_rise")
    known = ("indicating_error_limit", "temperature_celsius", "axis_yaw_error_limit_arcsec")
    sent = _BAR | {
        "blocks": [setting["height"]],
        "holding": "between-centers",
        "indicator_travel": setting["indicator_travel"],
        **{name: request["plate"][name] for name in known},
    }
    nominal = 2 * math.degrees(math.atan(0.60235 / 24))
    for name, off in (("expected", 0), ("smallest", -40), ("largest", 40)):
        rise = {"indicator_rise": reading[f"{name}_reading"]}
        measured = call("sine.measured-angle", **(sent | rise))["result"]["measured_angle"]
        error = (measured["value"]["degrees"] - nominal) * 3600
        assert error == pytest.approx(off, abs=0.02)


def test_its_budget_is_of_plate_blocks_and_indicator(call: Call) -> None:
    """Each limit by its own derivative; blocks by their grade; a cone on centers counts twice."""
    limits = {
        "center_distance_error_limit": 0.0002,
        "face_parallelism": 0.0001,
        "indicating_error_limit": 0.00005,
        "temperature_celsius": 20,
    }
    blocks = [{"size": 2.5, "deviation": 0.00002, "expanded_uncertainty": 0.000004}]
    sent = _BAR | limits | {"blocks": None, "calibrated_blocks": blocks}
    sent = {name: value for name, value in sent.items() if value is not None}
    face = call("sine.measured-angle", **sent)["result"]
    across = 5 * math.cos(math.asin(2.50002 / 5))
    normal = 0.000002 / across * ARCSEC
    tangent = math.tan(math.asin(2.50002 / 5))
    parts = [0.0002 * tangent / 5, 0.0001 / 5, 0.00005 / 2]
    parts = [part * ARCSEC for part in parts]
    spread = math.hypot(normal, *(part / math.sqrt(3) for part in parts))
    assert face["measured_angle"]["standard_uncertainty"] == pytest.approx(spread, rel=1e-6)
    assert face["measured_angle"]["worst_case"] == pytest.approx(3 * normal + sum(parts), rel=1e-6)
    assert face["stack_height"] == pytest.approx(2.50002, abs=1e-9)
    assert face["plate_angle"]["degrees"] == pytest.approx(
        math.degrees(math.asin(2.50002 / 5)), rel=1e-9
    )
    cone = call("sine.measured-angle", **sent, holding="between-centers")["result"]
    assert cone["measured_angle"]["standard_uncertainty"] == pytest.approx(2 * spread, rel=1e-6)
    assert "roll_difference" in face["measured_angle"]["not_stated"]
    without = call("sine.measured-angle", **_BAR)["result"]["measured_angle"]
    assert {"grade", "indicating_error_limit"} <= set(without["not_stated"])


@pytest.mark.parametrize(
    ("change", "refusal", "words"),
    [
        ({"blocks": [5.0]}, Impossible, "center distance"),
        ({"base_step": 3.0}, Impossible, "below level"),
        ({"blocks": [0.1], "indicator_rise": -0.1}, Impossible, "would lean"),
        ({"calibrated_blocks": [{"size": 2.5}]}, Disagreement, "were sent together"),
    ],
)
def test_bars_that_measure_nothing_are_refused(
    call: Call, change: dict[str, Any], refusal: type[Exception], words: str
) -> None:
    """A stack as long as the bar, below level, a surface that leans away, two stacks."""
    with pytest.raises(refusal, match=words):
        call("sine.measured-angle", **(_BAR | change))


# Center distance --------------------------------------------------------------------------------
def _settings(distance: float, lean_arcsec: float, noise: float = 0.0) -> list[dict[str, float]]:
    """Settings of a bar: stack of a bar of 5 in, blocks' angle, and the rise left over 2 in."""
    found = []
    for place, angle in enumerate((10.0, 30.0, 45.0)):
        height = round(5 * math.sin(math.radians(angle)), 4)
        stands = math.asin(height / distance) + (lean_arcsec + noise * (-1) ** place) / ARCSEC
        rise = 2 * math.tan(math.radians(angle) - stands)
        found.append({"angle": angle, "height": height, "indicator_rise": rise})
    return found


@pytest.mark.outside(
    "sine.center-distance", source="A bar made up, its settings worked out by the sine"
)
def test_a_bar_is_found_again(call: Call) -> None:
    """Three settings of a bar of 5.0004 in whose face leans 4″ give back both; one without lean."""
    sent = {"units": "in", "indicator_travel": 2, "nominal_center_distance": 5}
    result = call("sine.center-distance", **sent, settings=_settings(5.0004, 4.0))["result"]
    assert result["center_distance"]["value"] == pytest.approx(5.0004, abs=1e-10)
    assert result["center_distance_error"] == pytest.approx(0.0004, abs=1e-10)
    assert result["face_lean_arcsec"]["value"] == pytest.approx(4.0, abs=1e-5)
    assert result["largest_residual_arcsec"] == pytest.approx(0, abs=1e-5)
    one = call("sine.center-distance", **sent, settings=_settings(4.9997, 0.0)[1:2])["result"]
    assert one["center_distance"]["value"] == pytest.approx(4.9997, abs=1e-11)
    assert one["face_lean_arcsec"] is None
    assert one["largest_residual_arcsec"] is None


@pytest.mark.outside(
    "sine.center-distance", source="scipy.optimize.least_squares, and its Jacobian"
)
def test_the_fit_is_that_of_least_squares(call: Call) -> None:
    """Center distance, lean, residual and their worst cases are those of scipy's fit."""
    settings, limit = _settings(5.0004, 4.0, noise=1.5), 1.0
    heights = np.array([one["height"] for one in settings])
    angles = np.radians([one["angle"] for one in settings])
    angles -= np.arctan([one["indicator_rise"] / 2 for one in settings])

    def off_by(x: Any) -> Any:
        return angles - np.arcsin(heights / x[0]) - x[1] / 1e4

    fit = least_squares(
        off_by,
        [5.0, 0.0],
        xtol=1e-15,
        ftol=1e-15,
        gtol=1e-15,
    )
    sent = {"units": "in", "indicator_travel": 2, "angle_error_limit_arcsec": limit}
    limits = {"stack_error_limit": 0.0, "indicating_error_limit": 0.0}
    result = call("sine.center-distance", **sent, **limits, settings=settings)["result"]
    assert result["center_distance"]["value"] == pytest.approx(fit.x[0], abs=2e-9)
    assert result["face_lean_arcsec"]["value"] == pytest.approx(fit.x[1] / 1e4 * ARCSEC, abs=2e-3)
    off = np.max(np.abs(fit.fun)) * ARCSEC
    assert result["largest_residual_arcsec"] == pytest.approx(off, rel=1e-3)
    by_angle = -np.linalg.pinv(np.asarray(fit.jac)) * limit / ARCSEC
    worst = np.sum(np.abs(by_angle), axis=1)
    assert result["center_distance"]["worst_case"] == pytest.approx(worst[0], rel=1e-3)
    lean = result["face_lean_arcsec"]
    assert lean["worst_case"] == pytest.approx(worst[1] / 1e4 * ARCSEC, rel=1e-3)
    spread = np.linalg.norm(by_angle[1]) / 1e4 * ARCSEC / math.sqrt(3)
    assert lean["standard_uncertainty"] == pytest.approx(spread, rel=1e-3)


def test_one_setting_by_hand(call: Call) -> None:
    """DL = dH / sin θ − L cot θ dθ, of blocks, stack, indicator and the face's lean."""
    sent = {
        "units": "in",
        "settings": [{"angle": 30, "height": 2.5}],
        "indicator_travel": 2,
        "angle_error_limit_arcsec": 1,
        "stack_error_limit": 0.00001,
        "indicating_error_limit": 0.00002,
        "face_lean_error_limit_arcsec": 2,
    }
    result = call("sine.center-distance", **sent)["result"]["center_distance"]
    per_radian = 5 / math.tan(math.radians(30))
    parts = [0.00001 / 0.5, per_radian / ARCSEC, 0.00001 * per_radian, 2 * per_radian / ARCSEC]
    assert result["value"] == pytest.approx(5.0)
    assert result["worst_case"] == pytest.approx(sum(parts), rel=1e-5)
    covered = half_width_of_rectangles(*parts)
    assert result["expanded_uncertainty"] == pytest.approx(covered, rel=1e-3)


@pytest.mark.parametrize(
    ("settings", "refusal", "words"),
    [
        ([{"angle": 30, "height": 2.5}] * 2, Impossible, "No center distance explains"),
        ([{"angle": 30, "height": 2.5, "indicator_rise": 0.041}], Impossible, "set level"),
        ([{"angle": 1, "height": 0.19, "indicator_rise": 0.039}], Impossible, "blocks' own"),
        (
            [{"angle": 30, "height": 1.294}, {"angle": 15, "height": 2.5}],
            Impossible,
            "explains these settings: heights",
        ),
        ([{"angle": 1, "height": 9.0}], Disagreement, "center distance of 5"),
        ([{"angle": 30, "height": 0.05}], Impossible, "leaves the plate level"),
    ],
)
def test_settings_of_no_bar_are_refused(
    call: Call, settings: list[dict[str, float]], refusal: type[Exception], words: str
) -> None:
    """Twice the same, a rise past the blocks, a bar that there is not, no lift at all."""
    with pytest.raises(refusal, match=words):
        call(
            "sine.center-distance",
            units="in",
            indicator_travel=2,
            base_step=0.1,
            settings=settings,
        )


# Over a pin -------------------------------------------------------------------------------------
@pytest.mark.outside(
    "sine.over-pin",
    source="dimcax.com/gdt_web/september-04.htm: a profile tip 70 from the stop over a pin of "
    "10 mm at 42, bar at 45°: 11.2635",
)
def test_the_published_height(call: Call) -> None:
    """Sin 45° (70 − 42) − 5 (1 + cos 45°) = 11.2635 mm."""
    sent = {"angle": 45, "pin_diameter": 10, "pin_from_stop": 42, "point_from_stop": 70}
    result = call("sine.over-pin", units="mm", **sent)["result"]
    assert result["height_over_pin"]["value"] == pytest.approx(11.2635, abs=5e-5)


@pytest.mark.outside("sine.over-pin", source="shapely: pin and point turned with the plate")
@pytest.mark.parametrize("stop", ["low-end", "high-end"])
@pytest.mark.parametrize("nested", [True, False])
def test_a_pin_turned_with_the_plate(call: Call, stop: str, nested: bool) -> None:
    """Heights over the corner are those of shapes turned by 37.5°, to either side."""
    up, place = (1 if stop == "low-end" else -1), (4.0 if nested else 11.0)
    pin, point = Point(up * place, 4.0), Point(up * 30.0, 12.0)
    pin, point = (rotate(one, 37.5, origin=(0, 0)) for one in (pin, point))
    where = {} if nested else {"pin_from_stop": place}
    sent = {"angle": 37.5, "pin_diameter": 8, "point_from_stop": 30, "point_over_face": 12}
    result = call("sine.over-pin", units="mm", **sent, **where, stop_at=stop)["result"]
    expected = {"pin_top_height": pin.y + 4, "point_height": point.y}
    assert_values(result, expected | {"height_over_pin.value": point.y - pin.y - 4})


def test_a_pins_errors_by_hand(call: Call) -> None:
    """A pin's diameter counts (sin θ + 1 + cos θ)/2 in a corner; its place sin θ, if it has one."""
    sent = {"angle": 30, "pin_diameter": 10, "point_from_stop": 70, "roll_error_limit": 0.002}
    limits = {"angle_error_limit_arcsec": 20, "measure_error_limit": 0.01}
    corner = call("sine.over-pin", units="mm", **sent, **limits)["result"]["height_over_pin"]
    sine, cosine = 0.5, math.sqrt(0.75)
    turned = 20 / ARCSEC * ((70 - 5) * cosine + 5 * sine)
    parts = [turned, 0.001 * (sine + 1 + cosine)]
    assert corner["worst_case"] == pytest.approx(sum(parts), rel=1e-6)
    apart = call("sine.over-pin", units="mm", **sent, **limits, pin_from_stop=42)["result"]
    turned = 20 / ARCSEC * ((70 - 42) * cosine + 5 * sine)
    parts = [turned, 0.001 * (1 + cosine), 0.01 * sine]
    assert apart["height_over_pin"]["worst_case"] == pytest.approx(sum(parts), rel=1e-6)
    covered = half_width_of_rectangles(*parts)
    found = apart["height_over_pin"]["expanded_uncertainty"]
    assert found == pytest.approx(covered, rel=1e-3)


def test_a_pin_in_the_stop_is_refused(call: Call) -> None:
    """A pin cannot touch the face nearer to the stop than its radius."""
    with pytest.raises(Impossible, match="stop is in its way"):
        call(
            "sine.over-pin",
            units="mm",
            angle=30,
            pin_diameter=10,
            pin_from_stop=4.9,
            point_from_stop=20,
        )

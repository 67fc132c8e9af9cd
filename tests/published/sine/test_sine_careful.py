"""What a careful hand would not pass over in silence: plates, stacks, angles as measured."""

import math
from collections.abc import Iterator
from typing import Any

import mpmath
import pytest
from litestar.testing import TestClient
from pydantic import ValidationError

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.registry import load_registry
from support import Call

PLATE: dict[str, Any] = {"units": "in", "center_distance": 5}
COMPOUND: dict[str, Any] = {
    "units": "in",
    "base_center_distance": 5,
    "upper_center_distance": 5,
    "base_axis": "x",
    "frame": "part",
    "orientation": {"kind": "projected-angles", "x_angle": 30, "y_angle": 20},
}
#: The sine operations that are told a plate's size; `sine.over-pin` is told its angle alone.
SINE = sorted(
    name
    for name in load_registry().operations
    if name.startswith("sine.") and name != "sine.over-pin"
)


def _codes(answer: dict[str, Any]) -> list[str]:
    return [advisory["code"] for advisory in answer["advisories"]]


# Plates ---------------------------------------------------------------------------------------
@pytest.mark.parametrize("name", SINE)
def test_a_plate_of_no_size_is_a_slip_of_the_unit(call: Call, name: str) -> None:
    """127 in and 5 mm are refused everywhere, and the other unit is named: 127 mm is 5 in."""
    example = dict(load_registry().operations[name].example)
    fields = [field for field in example if field.endswith("center_distance")]
    assert fields
    for units, right, length, meant in (
        ("in", 5, 127, "127 mm would be 5 in"),
        ("mm", 127, 5, "5 in would be 127 mm"),
    ):
        for field in fields:
            plates = dict.fromkeys(fields, right) | {field: length}
            with pytest.raises(Disagreement, match=meant) as refused:
                call(name, **{**example, "units": units, **plates})
            assert field in refused.value.fields


def test_no_other_unit_is_named_where_it_would_not_help(call: Call) -> None:
    """0.5 in is no plate, and 0.5 mm is none either: nothing is offered that is refused too."""
    with pytest.raises(Disagreement, match=r"as are all lengths\.$"):
        call("sine.setting", units="in", center_distance=0.5, angle=30)


@pytest.mark.outside(
    "sine.setting", source="By hand: 90° − 72°15′ is 17°45′; 5 sin 17.75° in by mpmath 1.3."
)
@pytest.mark.parametrize("name", ["sine.setting", "sine.low-stack"])
def test_past_the_reach_the_complement_is_given(call: Call, name: str) -> None:
    """72°15' on a plate to 60° is refused with the complement's setting, in words and as data."""
    blocks = {"set": "inch-81"} if name == "sine.low-stack" else {}
    with pytest.raises(Unreachable, match=r"set the complement, 17\.75°") as refused:
        call(name, angle="72°15'", largest_angle=60, **PLATE, **blocks)
    complement = refused.value.more["complement_setting"]
    assert isinstance(complement, dict)
    exact = 5 * mpmath.sin(mpmath.radians(mpmath.mpf("17.75")))
    assert complement["height"] == pytest.approx(float(exact), abs=1e-12)
    within = call("sine.setting", angle=complement["angle"]["degrees"], largest_angle=60, **PLATE)
    assert within["result"]["height"] == complement["height"]


def test_past_the_reach_of_both_nothing_is_promised(call: Call) -> None:
    """Where the plate reaches the complement neither, none is given."""
    with pytest.raises(Unreachable, match=r"is asked of it\.$") as refused:
        call("sine.setting", angle=50, largest_angle=30, **PLATE)
    assert refused.value.more == {}


def test_a_taper_past_the_reach_may_be_held_otherwise(call: Call) -> None:
    """On its generator a cone asks for twice the angle that it asks for between centers."""
    request = {"half_angle": 20, "largest_angle": 30, **PLATE}
    with pytest.raises(Unreachable, match="between centers the same cone asks for 20°") as refused:
        call("sine.taper-setting", holding="on-its-generator", **request)
    more = refused.value.more
    held = call("sine.taper-setting", holding=more["holding"], **request)["result"]
    assert held["plate_angle"]["degrees"] == pytest.approx(20)
    with pytest.raises(Unreachable, match=r"is asked of it\.$"):
        call("sine.taper-setting", holding="between-centers", **(request | {"half_angle": 40}))


# Stacks ---------------------------------------------------------------------------------------
@pytest.mark.outside(
    "sine.low-stack", source="By hand: 5 in × sin 0.5° is 0.0436 in, below the set's 0.05 in."
)
def test_a_small_stack_points_to_two(call: Call) -> None:
    """0°30' on 5 in is said to want stacks under both rolls, and these are then built."""
    small = {"angle": "0°30'", **PLATE}
    answer = call("sine.setting", **small)
    assert _codes(answer) == ["small-stack"]
    assert "sine.low-stack" in answer["advisories"][0]["message"]
    pair = call("sine.low-stack", set="inch-81", **small)["result"]
    assert pair["low"]["blocks"]
    assert pair["height_as_set"] == pytest.approx(0.0436, abs=1e-12)
    assert _codes(call("sine.setting", angle=2, **PLATE)) == []


@pytest.mark.parametrize(
    ("name", "request_"),
    [
        ("sine.setting", {"angle": 0.0001}),
        ("sine.table", {"first_angle": 0, "last_angle": 0.001, "angle_step": 0.0005}),
        ("sine.taper-setting", {"half_angle": 0.006, "center_distance": 1, "holding": "in-a-vee",
                                "base_step": -0.00025}),
    ],
)  # fmt: skip
def test_an_angle_that_rounds_to_no_stack(call: Call, name: str, request_: dict[str, Any]) -> None:
    """An angle so small that its stack rounds to nothing is said to do so."""
    assert "rounds-to-nothing" in _codes(call(name, **(PLATE | request_)))


@pytest.mark.parametrize(
    ("name", "request_"),
    [
        ("sine.setting", {"angle": 1}),
        ("sine.table", {"first_angle": 0, "last_angle": 30, "angle_step": 5}),
        ("sine.taper-setting", {"half_angle": 1, "holding": "between-centers"}),
        ("sine.uncertainty", {"angle": 1}),
        ("sine.requirements", {"angle": 1, "tolerance_arcsec": 20}),
        ("sine.correction", {"angle": 1, "measured_error_arcsec": 5}),
    ],
)
def test_a_stack_below_zero_is_said_everywhere(
    call: Call, name: str, request_: dict[str, Any]
) -> None:
    """A plate that rests above the angle wants its low roll raised, and every operation says so."""
    answer = call(name, base_step=-0.2, **PLATE, **request_)
    assert "stack-below-zero" in _codes(answer)


@pytest.mark.parametrize(
    ("name", "request_"),
    [
        ("sine.low-stack", {"angle": 7, "sizes": [2.0, 1.0], **PLATE}),
        ("sine.compound", {**COMPOUND, "sizes": [2.0, 1.0, 3.0]}),
        ("sine.correction", {"angle": 23.57, "measured_error_arcsec": 500, "blocks": [2.0],
                             "sizes": [2.0, 1.0], **PLATE}),
        ("sine.uncertainty", {"angle": 30, "height": 2.55, **PLATE}),
    ],
)  # fmt: skip
def test_what_is_built_for_another_angle_is_said(
    call: Call, name: str, request_: dict[str, Any]
) -> None:
    """Blocks too coarse for the angle build another one, and that is called out."""
    assert "stack-far-off" in _codes(call(name, **request_))


def test_a_stack_is_never_negative(call: Call) -> None:
    """A stack as measured has a height: a negative one is refused."""
    for field in ("high_stack", "low_stack"):
        with pytest.raises(ValidationError, match="greater than or equal to 0"):
            call("sine.angle", **{"high_stack": 1, field: -0.1}, **PLATE)


# Angles as measured ---------------------------------------------------------------------------
@pytest.mark.outside(
    "sine.correction",
    source="By hand: a cone's included angle is twice the plate's: 20″ on it are 10″ of the plate, "
    "5 cos 30° × 10/206264.8 in.",
)
@pytest.mark.parametrize(
    "stated",
    [
        {"angle": 30, "measured_included_angle_error_arcsec": 20},
        {"angle": 30, "measured_included_angle": "60°00'20\""},
        {"included_angle": 60, "measured_included_angle": "60°00'20\""},
        {"included_angle": 60, "measured_error_arcsec": 10},
        {"included_angle": "60°00'00\"", "measured_angle": "30°00'10\""},
    ],
)
def test_the_included_angle_is_taken_as_read(call: Call, stated: dict[str, Any]) -> None:
    """However a cone's angle is stated, half of its included angle's error is the plate's."""
    request = {"blocks": [2.0, 0.5], "set": "inch-81", **PLATE}
    result = call("sine.correction", **stated, **request)["result"]
    assert result["measured_error_arcsec"] == pytest.approx(10, abs=1e-6)
    by_hand = -5 * math.cos(math.radians(30)) * 10 / 206264.806
    assert result["height_change"] == pytest.approx(by_hand, rel=1e-4)
    assert result["swap"]["total"] == 2.4998


@pytest.mark.parametrize(
    ("change", "kind", "says"),
    [
        ({"included_angle": 60}, Disagreement, "were sent together"),
        ({"angle": None}, Disagreement, "are all missing"),
        ({"measured_angle": 30}, Disagreement, "were sent together"),
        ({"measured_error_arcsec": None, "measured_included_angle_error_arcsec": -220_000},
         Impossible, "measured angle -1"),
    ],
)  # fmt: skip
def test_an_angle_stated_twice(
    call: Call, change: dict[str, Any], kind: type[Exception], says: str
) -> None:
    """The angle wanted and the one measured are each stated in one way."""
    request = {"angle": 30, "measured_error_arcsec": 10, **PLATE} | change
    with pytest.raises(kind, match=says):
        call("sine.correction", **request)


def test_the_decimals_of_a_measured_angle_are_no_minutes(service: TestClient[Any]) -> None:
    """30.12 wanted may be a drawing's 30°12'; 30.13 measured is what the instrument gave."""
    body = {"angle": 30.12, "measured_angle": 30.13, **PLATE}
    answer = service.post("/v1/sine/correction", json=body).json()
    notes = [a["message"] for a in answer["advisories"] if a["code"] == "decimal-degrees-read"]
    assert len(notes) == 1
    assert notes[0].startswith("angle 30.12")


def test_advisories_of_the_set_are_kept(call: Call) -> None:
    """A metric set for a stack in inches is said to be one where blocks are swapped."""
    metric = {"units": "in", "center_distance": 5, "set": "metric-88"}
    blocks = [50 / 25.4, 10 / 25.4]
    answer = call("sine.correction", angle=28, measured_error_arcsec=5, blocks=blocks, **metric)
    assert "set-of-other-units" in _codes(answer)


# Noise ----------------------------------------------------------------------------------------
def _lengths(value: Any, name: str = "") -> Iterator[float]:
    """Every number of a result that is not an angle or a small error."""
    if isinstance(value, dict):
        for field, below in value.items():
            if field != "degrees" and "arcsec" not in field:
                yield from _lengths(below, field)
    elif isinstance(value, list):
        for below in value:
            yield from _lengths(below, name)
    elif isinstance(value, float):
        yield value


@pytest.mark.parametrize(
    ("name", "request_"),
    [
        ("sine.setting", {"angle": 30}),
        ("sine.table", {"first_angle": 0, "last_angle": 60, "angle_step": 0.5}),
        ("sine.low-stack", {"angle": 30, "set": "inch-81", "low_stack_use": "always"}),
        ("sine.correction", {"angle": 30, "measured_error_arcsec": 4, "low_stack": 0.12,
                             "blocks": [2.0, 0.5, 0.1, 0.12], "set": "inch-81"}),
        ("sine.angle", {"high_stack": 0.32, "low_stack": 0.2}),
        ("sine.taper-setting", {"half_angle": 30, "holding": "between-centers"}),
    ],
)  # fmt: skip
def test_no_length_shows_the_noise_of_binary_arithmetic(
    call: Call, name: str, request_: dict[str, Any]
) -> None:
    """A length that is short in decimals is given so: 2.5, not 2.4999999999999996."""
    lengths = list(_lengths(call(name, **PLATE, **request_)["result"]))
    assert lengths
    for length in lengths:
        short = float(f"{length:.12g}")
        assert length == short or abs(length - short) > 4e-15 * abs(length), length

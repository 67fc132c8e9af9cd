"""What holds of every answer about wheels, over requests drawn by chance, hard ones among them."""

import math
import time
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from halfangle_service.errors import Refusal
from halfangle_service.registry import load_registry
from support import Call

WHEELS = {n: o for n, o in load_registry().operations.items() if n.startswith("wheels.")}
#: Advice that may stand once for each flank, or each angle.
PER_FLANK = {
    "steep-flank",
    "other-zero",
    "radius-on-the-surface",
    "stack-off-the-angle",
    "decimal-degrees-read",
}

#: What the contract allows of a length.
SMALLEST_LENGTH = 1e-6
#: Lengths by magnitude, so that the very small and the very large are met as often as the usual.
magnitudes = st.floats(-6, 3).map(lambda power: float(f"{10.0**power:.3g}"))
optional_length = st.one_of(st.just(0.0), magnitudes)
signed_magnitudes = st.one_of(magnitudes, magnitudes.map(lambda value: -value))
arcseconds = st.sampled_from([0, 1, 5, 30, 60, 600, 3600])
tolerances = arcseconds.filter(bool)
signed_arcseconds = st.one_of(arcseconds, arcseconds.map(lambda value: -value))
angles = st.one_of(st.floats(0.01, 89), st.sampled_from([1e-4, 0.006, 30, 45, 89.49, 89.999999]))


def _cone(**more: Any) -> st.SearchStrategy[dict[str, Any]]:
    ordered = st.tuples(optional_length, magnitudes).map(sorted)
    return st.builds(
        lambda half, ends, rest: {
            "half_angle": half,
            "small_diameter": ends[0],
            "large_diameter": ends[1],
            **rest,
        },
        st.floats(0.006, 89.4),
        ordered,
        st.fixed_dictionaries(more),
    )


def _arcs() -> st.SearchStrategy[dict[str, float]]:
    """Arcs whose radius, width and sagitta agree, up to half a circle, and any three lengths."""
    agreeing = st.builds(
        lambda radius, share: {
            "radius": radius,
            "arc_width": 2 * radius * share,
            "sagitta": radius * share**2 / (1 + math.sqrt(1 - share**2)),
        },
        magnitudes,
        st.one_of(st.floats(1e-4, 1), st.just(1.0)),
    )
    lengths = dict.fromkeys(("radius", "arc_width", "sagitta"), magnitudes)
    allowed = agreeing.filter(lambda arc: min(arc.values()) >= SMALLEST_LENGTH)
    return st.one_of(allowed, st.fixed_dictionaries(lengths))


faces = st.fixed_dictionaries(
    {"kind": st.just("face"), "face_angle": angles, "rise": st.one_of(magnitudes, st.just(1e-6))}
)
surfaces = st.one_of(faces, _cone(kind=st.just("cone")))
units = st.sampled_from(["in", "mm"])
wheels = st.one_of(st.just(7.0), st.floats(1, 60))

REQUESTS: dict[str, st.SearchStrategy[dict[str, Any]]] = {
    "wheels.flank": st.fixed_dictionaries(
        {
            "units": units,
            "work": surfaces,
            "wheel_width": magnitudes,
            "depth_per_pass": magnitudes,
            "dresser": st.just({"kind": "sine-base", "center_distance": 2}),
            "spare_width": st.sampled_from(["stays-flat", "flank-runs-on", "land-below-flank"]),
        },
        optional={
            "other_side": surfaces,
            "wheel_diameter": wheels,
            "flange_diameter": magnitudes,
            "edge_flat": optional_length,
            "edge_radius": optional_length,
            "root_radius": optional_length,
            "overrun": optional_length,
        },
    ),
    "wheels.dressing": st.fixed_dictionaries(
        {
            "units": units,
            "rpm": st.floats(1, 20_000),
            "nose_radius": magnitudes,
            "depth_per_pass": magnitudes,
            "overlap_ratio": st.floats(0.01, 1000),
            "width_to_dress": magnitudes,
        },
        optional={"overrun": optional_length, "passes": st.integers(1, 100_000)},
    ),
    "wheels.dressing-errors": _cone(
        units=units,
        wheel_diameter=wheels,
        diamond_height=st.one_of(st.none(), st.floats(-0.3, 0.3)),
        dresser_angle_error_arcsec=st.one_of(st.none(), signed_arcseconds),
        wheel_wear_small_end=optional_length,
        wheel_wear_large_end=optional_length,
        nose_radius=optional_length,
        diamond_wear=optional_length,
        included_angle_tolerance_arcsec=st.one_of(st.none(), tolerances),
    ),
    "wheels.setup-errors": _cone(
        units=units,
        wheel_diameter=wheels,
        grinder=st.sampled_from(["surface", "cylindrical"]),
        way=st.sampled_from(["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"]),
        feed=st.sampled_from(["traversed", "plunge"]),
        rated_for_side=st.sampled_from([True, False, None]),
        axis_offset=st.one_of(st.none(), st.floats(-0.3, 0.3)),
        axis_pitch_arcsec=st.one_of(st.none(), signed_arcseconds),
        axis_yaw_arcsec=st.one_of(st.none(), signed_arcseconds),
    ),
    "wheels.speed": st.fixed_dictionaries(
        {
            "units": units,
            "wheel_diameter": wheels,
            "rpm": st.one_of(st.just(3450.0), st.floats(1, 20_000)),
        },
        optional={
            "marked_rpm": st.floats(1000, 10_000),
            "marked_m_per_s": st.floats(10, 100),
            "new_diameter": st.floats(10, 70),
            "worn_diameter": st.floats(0.5, 10),
            "wheel_type": st.sampled_from(["1-straight", "6-straight-cup"]),
            "grinding_side": st.booleans(),
            "rated_for_side": st.booleans(),
            "flange_diameter": st.floats(0.1, 10),
        },
    ),
    "wheels.choose": _cone(
        units=units,
        wheel_diameter=wheels,
        included_angle_tolerance_arcsec=st.sampled_from([1, 30, 70, 600, 3600]),
        ways=st.fixed_dictionaries(
            {},
            optional={
                "sine_plate": st.fixed_dictionaries(
                    {"center_distance": st.just(5)},
                    optional={
                        "stack_error_limit": optional_length,
                        "plate_error_limit_arcsec": arcseconds,
                        "axis_pitch_error_limit_arcsec": arcseconds,
                        "axis_yaw_error_limit_arcsec": arcseconds,
                        "wheel_breakdown": optional_length,
                    },
                ),
                "dressed_wheel": st.fixed_dictionaries(
                    {
                        "wheel_width": magnitudes,
                        "dresser": st.just({"kind": "scale", "graduation": "0 05"}),
                        "depth_per_pass": magnitudes,
                    },
                    optional={
                        "diamond_height_error_limit": optional_length,
                        "axis_yaw_error_limit_arcsec": arcseconds,
                    },
                ),
                "wheel_side": st.fixed_dictionaries(
                    {"usable_width": magnitudes},
                    optional={
                        "rated_for_side": st.booleans(),
                        "swivel_error_limit_arcsec": arcseconds,
                    },
                ),
                "swivelled_workhead": st.fixed_dictionaries(
                    {
                        "grinder": st.sampled_from(["surface", "cylindrical"]),
                        "graduation": st.just("0 05"),
                    },
                    optional={
                        "axis_offset_error_limit": optional_length,
                        "axis_yaw_error_limit_arcsec": arcseconds,
                    },
                ),
            },
        ),
    ),
    "wheels.diamond": st.fixed_dictionaries(
        {
            "units": units,
            "wheel_diameter": wheels,
            "diamond_height": st.one_of(
                st.just(0.0), signed_magnitudes, st.sampled_from([3.5, -3.4999999, 30.0])
            ),
            "nib_lean": st.one_of(st.floats(-60, 60), st.sampled_from([0, 10, 15, "-8 30"])),
        },
        optional={
            "worn_diameter": st.one_of(wheels, magnitudes),
            "feed_per_pass": st.one_of(magnitudes, st.sampled_from([3.4, 3.5, 3.6])),
            "formats": st.just(["svg"]),
        },
    ),
    "wheels.radius": st.builds(
        lambda arc, left_out, rest: {
            **{field: value for field, value in arc.items() if field not in left_out},
            **rest,
        },
        _arcs(),
        st.sampled_from([{"radius"}, {"arc_width"}, {"sagitta"}, set(), {"radius", "sagitta"}]),
        st.fixed_dictionaries(
            {"units": units, "arc_form": st.sampled_from(["convex", "concave"])},
            optional={
                "arc_width_error_limit": optional_length,
                "sagitta_error_limit": optional_length,
                "radius_error_limit": optional_length,
                "pin_diameter": magnitudes,
                "gauge_radius": magnitudes,
                "wheel_diameter": wheels,
                "diamond_height": st.one_of(st.just(0.0), signed_magnitudes),
            },
        ),
    ),
    "wheels.redress": st.fixed_dictionaries(
        {
            "units": units,
            "observed_pieces": st.lists(
                st.fixed_dictionaries(
                    {"piece_since_dress": st.one_of(st.integers(1, 20), st.just(1_000_000))},
                    optional={
                        "measured_error_arcsec": st.one_of(signed_arcseconds, st.just(1e-9)),
                        "measured_size_error": st.one_of(st.just(0.0), signed_magnitudes),
                    },
                ),
                max_size=12,
            ),
            "pieces": st.sampled_from([1, 2, 50, 1_000_000]),
        },
        optional={
            "tolerance_arcsec": tolerances,
            "size_tolerance": magnitudes,
            "measurement_error_limit_arcsec": tolerances,
            "measurement_error_limit": magnitudes,
            "decision_rule": st.sampled_from(["iso-14253-1-2017", "iso-14253-1-2013"]),
        },
    ),
}


def test_every_operation_is_drawn_from() -> None:
    """No operation about wheels is left out here."""
    assert set(REQUESTS) == set(WHEELS)


def _answer(call: Call, name: str, request: dict[str, Any]) -> dict[str, Any] | None:
    """The answer, or None where the request is refused with the fields named; nothing else."""
    try:
        return call(name, **request)
    except Refusal as refusal:
        if not refusal.fields:
            raise AssertionError(f"no field is named: {refusal.detail}") from refusal
        return None


def _numbers(value: Any) -> Iterator[float]:
    if isinstance(value, float):
        yield value
    elif isinstance(value, dict | list):
        for part in value.values() if isinstance(value, dict) else value:
            yield from _numbers(part)


@pytest.mark.parametrize("name", WHEELS)
@settings(max_examples=120, deadline=None)
@given(data=st.data())
def test_every_request_is_answered_or_refused(call: Call, name: str, data: st.DataObject) -> None:
    """An answer is finite and its advice agrees with its forecast; a refusal names its fields.

    A stop stands wherever the forecast is that it does not hold, and none where it holds; the
    wheel's caution stands once, and no other code twice, but for those of each flank.
    """
    answer = _answer(call, name, data.draw(REQUESTS[name]))
    if answer is None:
        return
    assert all(math.isfinite(number) for number in _numbers(answer))
    codes = [a["code"] for a in answer["advisories"]]
    assert len({"wheel-safety", "dressing-safety"} & set(codes)) == 1
    assert sorted(set(codes) - PER_FLANK) == sorted(c for c in codes if c not in PER_FLANK)
    forecast = answer["result"].get("forecast")
    stops = [a for a in answer["advisories"] if a["severity"] == "stop"]
    if forecast == "does-not-hold":
        assert stops
    if forecast in {"holds", "may-not-hold"}:
        assert not stops
    if name == "wheels.choose":
        ways = answer["result"]["ways"]
        assert bool(stops) == all(way["forecast"] == "does-not-hold" for way in ways)


@settings(max_examples=800, deadline=None)
@given(request=REQUESTS["wheels.flank"])
def test_a_flank_is_whole_or_refused(call: Call, request: dict[str, Any]) -> None:
    """Whatever the slopes, each side has its flank; it and its neighbours make up the wheel."""
    answer = _answer(call, "wheels.flank", request)
    if answer is None:
        return
    result = answer["result"]
    assert len(result["flanks"]) == (2 if "other_side" in request else 1)
    width = request["wheel_width"]
    assert result["profile"][-1]["x"] == pytest.approx(width, rel=1e-9)
    assert [p["x"] for p in result["profile"]] == sorted(p["x"] for p in result["profile"])
    for flank in result["flanks"]:
        assert flank["passes"] >= 1
        straight = flank["straight_slant_length"]
        assert 0 <= straight <= flank["slant_length"] * (1 + 1e-9) + 1e-12 * width
        depth = (flank["passes"] - 1) * request["depth_per_pass"] + flank["last_pass_depth"]
        assert depth == pytest.approx(flank["depth_to_dress"])
        assert flank["last_pass_depth"] <= request["depth_per_pass"] * (1 + 1e-6)


def _noise(value: float) -> bool:
    """True where a number is a short decimal but for its last bits, such as 0.12000000000000001."""
    short = float(f"{value:.12g}")
    digits = len(f"{abs(short):.12g}".replace(".", "").strip("0"))
    return value != short and digits <= 6 and math.isclose(value, short, rel_tol=6e-16)


@pytest.mark.parametrize("name", WHEELS)
@settings(max_examples=40, deadline=None)
@given(data=st.data())
def test_no_number_shows_the_noise_of_its_last_bits(
    call: Call, name: str, data: st.DataObject
) -> None:
    """A short decimal is given short: 0.12, never 0.12000000000000001."""
    answer = _answer(call, name, data.draw(REQUESTS[name])) or {"result": {}}
    assert [number for number in _numbers(answer["result"]) if _noise(number)] == []


#: Errors and a tolerance of 0.01 are as usual in inches as in millimetres: nothing tells which.
NO_SIZE_SENT = {"wheels.redress"}


@pytest.mark.parametrize("name", sorted(set(WHEELS) - NO_SIZE_SENT))
def test_the_other_unit_does_not_pass_in_silence(call: Call, name: str) -> None:
    """Inches taken for millimetres, or the other way, are refused or asked after by name."""
    example = dict(WHEELS[name].example)
    example["units"] = "mm" if example["units"] == "in" else "in"
    try:
        advisories = call(name, **example)["advisories"]
        asked = [a["message"] for a in advisories if a["code"] == "unusual-size"]
    except Refusal as refusal:
        asked = [refusal.detail]
    assert len(asked) == 1
    assert "`units`" in asked[0]
    usual = call(name, **WHEELS[name].example)
    assert "unusual-size" not in [a["code"] for a in usual["advisories"]]


#: The most that may be asked of the operations that are calculated on the event loop.
LARGEST: dict[str, dict[str, Any]] = {
    "wheels.radius": {},  # its example sends all that there is
    "wheels.dressing": {"passes": 100_000, "overrun": 10},
    "wheels.dressing-errors": {
        "inspections": [
            {"name": f"no. {place}", "smallest_straightness": 1e-5} for place in range(12)
        ]
    },
    "wheels.speed": {"marked_m_per_s": 40, "marked_ft_per_min": 8000, "largest_machine_rpm": 4000},
}


def test_what_is_not_heavy_takes_less_than_5_ms(call: Call) -> None:
    """The largest requests of what is not marked heavy take under 5 ms of processor time."""
    light = {name for name, operation in WHEELS.items() if operation.heavy is False}
    assert light == set(LARGEST)

    def seconds(name: str) -> float:
        start = time.process_time()
        call(name, **{**WHEELS[name].example, **LARGEST[name]})
        return time.process_time() - start

    assert {name: min(seconds(name) for _ in range(5)) < 0.005 for name in light} == dict.fromkeys(
        light, True
    )

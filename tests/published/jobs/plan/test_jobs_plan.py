"""The plan of a whole job: its named cases, and that its figures are the single operations' own."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.registry import load_registry
from support import Call

Json = dict[str, Any]


def plan_of(call: Call, feature: Json | None = None, **changes: Any) -> Json:
    """The plan of the operation's own example, with another feature or other fields."""
    request = {**load_registry().operations["jobs.plan"].example, **changes}
    if feature is not None:
        request["feature"] = feature
        # It holds the example's center, and may foul with another cone.
        shop = dict(request["equipment"])
        shop.pop("spin_fixture", None)
        request["equipment"] = shop
    answer: Json = call("jobs.plan", **request)
    return answer


def shop(plate: Json | None = None, **changes: Any) -> Json:
    """The example's equipment, its plate changed."""
    example = load_registry().operations["jobs.plan"].example["equipment"]
    plates = [{**example["sine_plates"][0], **(plate or {})}]
    return {**example, "sine_plates": plates, **changes}


def way_of(answer: Json, way: str) -> Json:
    """The one way of this name in an answer."""
    found: list[Json] = [row for row in answer["result"]["ways"] if row["way"] == way]
    assert len(found) == 1
    return found[0]


def face(degrees: float, tolerance: float = 60.0) -> Json:
    """A face 0.5 in high."""
    return {
        "kind": "angled-face",
        "face_angle": degrees,
        "rise": 0.5,
        "tolerance_arcsec": tolerance,
    }


@pytest.mark.outside("jobs.plan", source="Common practice: 30° on a 5 in sine plate is 2.5 in")
def test_sixty_degree_center_takes_two_and_a_half_inches(call: Call) -> None:
    """A 60° center on a 5 in plate is set to 30° by 2.5 in, of 2 and 0.5."""
    best = plan_of(call)["result"]["ways"][0]
    assert best["way"] == "sine-plate"
    assert best["settings"][0]["angle"]["degrees"] == 30
    assert best["settings"][0]["height"] == 2.5
    assert best["stacks"][0]["blocks"] == [2.0, 0.5]


def center_request() -> Json:
    """What `jobs.center` is asked for the same job as the example."""
    example = load_registry().operations["jobs.plan"].example
    feature, equipment = dict(example["feature"]), example["equipment"]
    feature.pop("kind")
    plate, blocks = equipment["sine_plates"][0], dict(equipment["block_sets"][0])
    blocks.pop("name")
    return {
        "job": example["job"],
        "units": example["units"],
        **feature,
        **blocks,
        "center_distance": plate["center_distance"],
        "angle_errors": plate["angle_errors"],
        "runout_errors": equipment["runout_errors"],
    }


def test_a_plan_has_the_figures_of_the_single_operation(call: Call) -> None:
    """Stack, budget of the angle and budget of the runout are those of `jobs.center`."""
    way = way_of(plan_of(call), "sine-plate")
    center = call("jobs.center", **center_request())["result"]
    budget = center["angle_budget"]
    assert way["angles"][0]["error_arcsec"] == budget["included_angle_error_arcsec"]
    for name in ("tolerance_used_percent", "forecast"):
        assert way["angles"][0][name] == budget[name]
    assert way["runout_budget"] == center["runout_budget"]
    assert way["forecast"] == center["forecast"]
    stack = way["stacks"][0]
    assert {name: stack[name] for name in stack if name != "role"} == {
        name: center["plate_setting"][name] for name in stack if name != "role"
    }
    check = next(stack for stack in way["stacks"] if stack["role"] == "check")
    assert check["blocks"] == center["second_stack"]


def test_two_degrees_included_stand_on_both_stacks(call: Call) -> None:
    """1° on 5 in has no single stack to the set's step: it stands on both, as `sine.low-stack`."""
    feature = {
        "kind": "cone",
        "included_angle": 2,
        "included_angle_tolerance_arcsec": 120,
        "large_diameter": 0.75,
        "small_diameter": 0.7,
    }
    answer = plan_of(call, feature)
    assert answer["result"]["best"] == "stacks-under-both-rolls"
    way = way_of(answer, "stacks-under-both-rolls")
    low_stack = call(
        "sine.low-stack",
        units="in",
        center_distance=5,
        angle=1,
        set="inch-81",
        low_stack_use="always",
        max_blocks=5,
    )["result"]
    stacks = {stack["role"]: stack["blocks"] for stack in way["stacks"]}
    assert stacks["high"] == low_stack["high"]["blocks"]
    assert stacks["low"] == low_stack["low"]["blocks"]
    assert way["settings"][0]["height"] == low_stack["height"]
    assert way["settings"][0]["deviation_arcsec"] == pytest.approx(
        low_stack["deviation_arcsec"], abs=1e-9
    )


def test_half_a_degree_bar_stands_on_both_stacks(call: Call) -> None:
    """0°30′ on 5 in is 0.0436 in, below every single stack of the set."""
    answer = plan_of(call, face(0.5))
    assert answer["result"]["best"] == "stacks-under-both-rolls"
    way = way_of(answer, "stacks-under-both-rolls")
    high, low = (
        next(stack["total"] for stack in way["stacks"] if stack["role"] == role)
        for role in ("high", "low")
    )
    assert math.degrees(math.asin((high - low) / 5)) == pytest.approx(0.5, abs=0.0006)
    ruled_out = answer["result"]["ruled_out"][0]
    assert ruled_out["way"] == "sine-plate"
    assert "under both rolls" in ruled_out["instead"]


@pytest.mark.outside("jobs.plan", source="Trigonometry: the complement of 72° is 18°")
def test_work_of_72_degrees_is_turned_a_quarter_on_a_60_degree_plate(call: Call) -> None:
    """A plate that reaches 60° makes a face of 72° with the work turned: it is set to 18°."""
    answer = plan_of(call, face(72))
    assert answer["result"]["best"] == "quarter-turn"
    setting = answer["result"]["ways"][0]["settings"][0]
    assert setting["angle"]["degrees"] == pytest.approx(18, abs=1e-12)
    assert setting["height"] == pytest.approx(5 * math.sin(math.radians(18)), rel=1e-14)
    ruled_out = answer["result"]["ruled_out"][0]
    assert ruled_out["field"] == "equipment/sine_plates/0/largest_angle"
    assert "18°" in ruled_out["instead"]


def test_what_no_equipment_reaches_is_refused_with_every_reason(call: Call) -> None:
    """Where no way can, each is named with its field."""
    with pytest.raises(Unreachable, match="No way of the shop makes this feature") as refused:
        plan_of(call, face(45), equipment=shop({"largest_angle": 30}))
    assert set(refused.value.fields) == {"equipment/sine_plates/0/largest_angle"}
    assert [way["way"] for way in refused.value.more["ruled_out"]] == [  # type: ignore[attr-defined]
        "sine-plate",
        "quarter-turn",
    ]


def test_a_plate_that_cannot_is_not_named_in_place_of_a_compound_one(call: Call) -> None:
    """Only a shop without sine plates is told that a compound plate's base sets one angle."""
    compound = {
        "name": "compound plate",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
    }
    for plates, said in ((shop({"largest_angle": 30})["sine_plates"], False), ([], True)):
        equipment = shop(sine_plates=plates, compound_plates=[compound])
        with pytest.raises(Unreachable, match="No way of the shop") as refused:
            plan_of(call, face(45), equipment=equipment)
        assert ("Its base plate" in str(refused.value)) is said


def test_two_things_of_one_name_are_refused(call: Call) -> None:
    """A shop that calls two plates alike contradicts itself."""
    plate = shop()["sine_plates"][0]
    equipment = {**shop(), "sine_plates": [plate, plate]}
    with pytest.raises(Disagreement, match="called '5 in plate'") as refused:
        plan_of(call, equipment=equipment)
    assert refused.value.fields == {
        "equipment/sine_plates/1/name": "repeats equipment/sine_plates/0/name"
    }


def test_an_unknown_shank_is_refused_where_it_stands(call: Call) -> None:
    """A shank is the feature's: the refusal names it there."""
    center = load_registry().operations["jobs.plan"].example["feature"]
    unknown = {**center, "shank": {"kind": "taper", "designation": "morse-99"}}
    with pytest.raises(Unreachable, match="morse-99") as refused:
        plan_of(call, unknown)
    assert set(refused.value.fields) == {"feature/shank/designation"}


def test_a_morse_plug_needs_no_more_than_its_name(call: Call) -> None:
    """Morse 3 by its designation has its gauge diameter and length from the table."""
    feature = {
        "kind": "taper-plug",
        "designation": "morse-3",
        "included_angle_tolerance_arcsec": 60,
    }
    found = plan_of(call, feature)["result"]["feature"]
    assert found["large_diameter"] == pytest.approx(0.938)
    assert found["included_angle"]["degrees"] == pytest.approx(2.8752, abs=1e-3)


def test_an_unknown_grade_or_shank_is_refused_by_its_place(call: Call) -> None:
    """A grade stands with its set of blocks, a shank with the feature."""
    blocks = {"name": "set", "set": "inch-81", "grade": "asme-0.5"}
    with pytest.raises(Unreachable, match="There is no grade") as refused:
        plan_of(call, equipment=shop(block_sets=[blocks]))
    assert set(refused.value.fields) == {"equipment/block_sets/0/grade"}
    feature = dict(load_registry().operations["jobs.plan"].example["feature"])
    feature["shank"] = {"kind": "taper", "designation": "morse-2.5"}
    with pytest.raises(Unreachable, match="no standard") as refused:
        plan_of(call, feature)
    assert set(refused.value.fields) == {"feature/shank/designation"}

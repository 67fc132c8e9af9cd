"""Means that find no room or cannot reach, what was not stated, and what is no part at all."""

import re
from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Impossible, Refusal, Unreachable
from inspection_plan_support import (
    BALLS,
    BLUING,
    FACE,
    GAUGES,
    PLATE,
    PLUG,
    ROLLS,
    SOCKET,
    by,
    only,
    planned,
    reading,
    setting,
)
from support import Call, changed

Json = dict[str, Any]


def ruled_out(call: Call, feature: Json, **means: Any) -> Json:
    """The one means that a plan with one rules out."""
    plan = planned(call, feature, **means)
    assert plan["inspections"] == []
    assert plan["best"] is None
    (found,) = plan["ruled_out"]
    result: Json = found
    return result


def named(text: str) -> list[float]:
    """The lengths and angles that a sentence names."""
    return [float(number) for number in re.findall(r"\d+(?:\.\d+)?", text)]


def test_a_socket_lies_in_no_vee_and_is_indicated_in_its_bore(call: Call) -> None:
    """Held in a vee or on a generator a socket is out of reach; with its axis along it is not."""
    for holding in ("in-a-vee", "on-its-generator"):
        found = ruled_out(call, SOCKET, plate={**PLATE, "holding": holding})
        assert found["field"] == "plate/holding"
        assert "axis along the plate" in found["instead"]
    assert "bore" in only(call, SOCKET, plate=PLATE)["how"]


# Each names what works, and that does work ----------------------------------------------------
@pytest.mark.parametrize(
    ("feature", "means", "instead"),
    [
        (SOCKET, {"rolls": ROLLS}, "Two balls"),
        (PLUG, {"balls": BALLS}, "Two equal rolls"),
        (SOCKET, {"comparator": {}}, "cast"),
        (FACE, {"rolls": ROLLS}, "sine plate"),
        (FACE, {"balls": BALLS}, "sine plate"),
        (FACE, {"gauges": GAUGES}, "sine plate"),
        (FACE, {"bluing": BLUING}, "sine plate"),
    ],
)
def test_a_means_for_another_kind_of_part_names_its_like(
    call: Call, feature: Json, means: Json, instead: str
) -> None:
    """What does not take this kind of part says why, and what does."""
    found = ruled_out(call, feature, **means)
    assert found["field"] == next(iter(means))
    assert instead in found["instead"]
    assert found["reason"]


def test_rolls_that_find_no_room_name_those_that_do(call: Call) -> None:
    """A short cone takes thin rolls only: the largest named finds room, 1 % more does not."""
    short = {**PLUG, "gauge_diameter": 0.5, "length": 0.3}
    found = ruled_out(call, short, rolls={"roll_diameters": [0.5]})
    assert found["field"] == "rolls/roll_diameters"
    (most,) = named(found["instead"])
    assert setting(only(call, short, rolls={"roll_diameters": [most * 0.999]}), "stack_rise") > 0
    ruled_out(call, short, rolls={"roll_diameters": [most * 1.01]})


def test_blocks_too_high_for_the_cone_name_those_that_are_not(call: Call) -> None:
    """A second height past the cone is refused with the highest that is not."""
    found = ruled_out(call, PLUG, rolls={**ROLLS, "stack_rise": 3.5})
    assert found["field"] == "rolls/stack_rise"
    (most,) = named(found["instead"])
    rise = setting(only(call, PLUG, rolls={**ROLLS, "stack_rise": most * 0.9999}), "stack_rise")
    assert rise == pytest.approx(most, rel=1e-3)
    ruled_out(call, PLUG, rolls={**ROLLS, "stack_rise": most * 1.001})


def test_balls_that_do_not_touch_name_those_that_do(call: Call) -> None:
    """Two unlike balls must touch inside; those at the ends of the range named do."""
    found = ruled_out(call, SOCKET, balls={"ball_diameters": [0.875, 1.0, 0.5]})
    assert "one of them" in found["reason"]
    assert found["field"] == "balls/ball_diameters"
    small, large = named(found["instead"])
    touching = only(call, SOCKET, balls={"ball_diameters": [small * 1.001, large * 0.999]})
    assert setting(touching, "large_ball_diameter") == pytest.approx(large * 0.999)
    ruled_out(call, SOCKET, balls={"ball_diameters": [small * 0.999, large * 1.001]})
    ruled_out(call, SOCKET, balls={"ball_diameters": [0.875, 0.875]})


def test_a_gauge_that_misses_names_one_that_does_not(call: Call) -> None:
    """A gauge larger than the mouth or smaller than the small end rests nowhere."""
    for missing in (1.0, 0.7):
        found = ruled_out(call, SOCKET, gauges={**GAUGES, "gauge_diameter": missing})
        assert found["field"] == "gauges/gauge_diameter"
        small, large = named(found["instead"])
        for diameter in (small * 1.001, large * 0.999):
            only(call, SOCKET, gauges={**GAUGES, "gauge_diameter": diameter})


def test_a_gauge_proves_a_diameter_that_has_a_tolerance(call: Call) -> None:
    """Without a tolerance of the diameter there is nothing that a depth could prove."""
    unsized = {name: value for name, value in PLUG.items() if name != "large_diameter_tolerance"}
    found = ruled_out(call, unsized, gauges=GAUGES)
    assert found["field"] == "feature/large_diameter_tolerance"
    over_rolls = only(call, unsized, rolls=ROLLS)
    assert over_rolls["size_proof"] is None
    assert reading(over_rolls, "lower_measure")["smallest_reading"] is None
    assert reading(over_rolls, "measure_difference")["smallest_reading"] is not None


@pytest.mark.parametrize(
    ("second", "length", "field"),
    [
        (0.93, 0.0, "gauges/second_gauge_diameter"),
        (0.8, 1.0, "gauges/gauge_length"),
        (0.5, 0.0, "gauges/second_gauge_diameter"),
    ],
)
def test_two_gauges_need_unlike_sharp_edges(
    call: Call, second: float, length: float, field: str
) -> None:
    """Two of one diameter, a cone of its own, an edge that misses: no angle comes of these."""
    gauges = {**GAUGES, "second_gauge_diameter": second, "gauge_length": length}
    (found,) = planned(call, PLUG, gauges=gauges)["ruled_out"]
    assert (found["means"], found["field"]) == ("two-gauges", field)
    edges = {**GAUGES, "second_gauge_diameter": 0.8}
    proof = by(planned(call, PLUG, gauges=edges), "two-gauges")["angle_proof"]
    assert proof["angle_error_arcsec"]["expanded_uncertainty"] > 0


def test_a_plate_that_does_not_reach_names_the_holding_that_does(call: Call) -> None:
    """On its generator a cone asks for its included angle; between centers for half of it."""
    cone = {
        "kind": "cone",
        "included_angle": 60,
        "large_diameter": 1,
        "small_diameter": 0,
        "included_angle_tolerance_arcsec": 60,
    }
    plate = {**PLATE, "largest_angle": 45, "holding": "on-its-generator"}
    found = ruled_out(call, cone, plate=plate)
    assert found["field"] == "plate/holding"
    assert "30°" in found["instead"]
    held = only(call, cone, plate={**plate, "holding": "between-centers"})
    assert setting(held, "plate_angle") == pytest.approx(30)
    assert ruled_out(call, cone, plate={**plate, "largest_angle": 29})["instead"] is None
    blunt = {**cone, "included_angle": 100}
    in_a_vee = ruled_out(call, blunt, plate={**PLATE, "holding": "in-a-vee"})
    assert in_a_vee["field"] == "plate/vee_angle"
    assert "between centers" in in_a_vee["instead"]


def test_a_steep_face_is_turned_a_quarter(call: Call) -> None:
    """72° on a plate that reaches 60° stands at 18°, and rises the other way round."""
    steep = {**FACE, "face_angle": 72}
    plate = {**PLATE, "largest_angle": 60, "resolution": 1e-6}
    found = only(call, steep, plate=plate)
    assert setting(found, "plate_angle") == pytest.approx(18)
    assert "turned a quarter" in found["how"]
    assert "error-of-the-setting" in found["cannot_see"]
    direct = only(call, steep, plate={**plate, "largest_angle": 80})
    assert setting(direct, "plate_angle") == pytest.approx(72)
    ruled = ruled_out(call, {**FACE, "face_angle": 45}, plate={**plate, "largest_angle": 40})
    assert "reaches 45°" in ruled["instead"]


def test_a_gauge_longer_than_the_part_is_not_blued(call: Call) -> None:
    """A film cannot touch over more than there is."""
    found = ruled_out(call, PLUG, bluing={**BLUING, "contact_length": 4})
    assert found["field"] == "bluing/contact_length"
    (most,) = named(found["instead"])
    assert most == pytest.approx(3.1875)
    assert only(call, PLUG, bluing={**BLUING, "contact_length": most})["angle_proof"]


@pytest.mark.parametrize(
    ("feature", "means", "field"),
    [
        (PLUG, {"rolls": {**ROLLS, "stack_rise_error_limit": 3}}, "rolls/stack_rise_error_limit"),
        (SOCKET, {"balls": {**BALLS, "roll_error_limit": 0.13}}, "balls/roll_error_limit"),
        (SOCKET, {"balls": {**BALLS, "measure_error_limit": 3}}, "balls/measure_error_limit"),
    ],
)
def test_an_error_that_swallows_what_is_measured_rules_out_its_means(
    call: Call, feature: Json, means: Json, field: str
) -> None:
    """One means of absurd errors is ruled out with its field; the others are answered."""
    plan = planned(call, feature, **means, bluing=BLUING)
    assert [one["means"] for one in plan["inspections"]] == ["bluing"]
    (found,) = plan["ruled_out"]
    assert found["field"] == field
    assert "swallows" in found["reason"]
    assert "less than" in found["instead"]


def test_a_point_is_nothing_to_stand_on(call: Call) -> None:
    """A center stands on its large end; asked to stand on its point it is ruled out."""
    center = {
        "kind": "cone",
        "included_angle": 60,
        "large_diameter": 0.75,
        "small_diameter": 0,
        "included_angle_tolerance_arcsec": 120,
    }
    assert "large end" in only(call, center, rolls=ROLLS)["how"]
    assert "small end" in only(call, PLUG, rolls=ROLLS)["how"]
    found = ruled_out(call, center, rolls={**ROLLS, "standing_on": "small-end"})
    assert found["field"] == "rolls/standing_on"
    assert "large end" in found["instead"]


# What was not stated --------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("feature", "means", "path"),
    [
        (PLUG, {"rolls": ROLLS}, "rolls__measure_error_limit"),
        (PLUG, {"rolls": ROLLS}, "rolls__stack_rise_error_limit"),
        (SOCKET, {"balls": BALLS}, "balls__measure_error_limit"),
        (SOCKET, {"balls": BALLS}, "balls__roll_error_limit"),
        (PLUG, {"plate": PLATE}, "plate__center_distance_error_limit"),
        (PLUG, {"plate": PLATE}, "plate__stack_error_limit"),
        (PLUG, {"plate": PLATE}, "plate__temperature_celsius"),
        (PLUG, {"plate": PLATE}, "plate__indicating_error_limit"),
        (PLUG, {"bluing": BLUING}, "bluing__blue_film_error_limit"),
        (PLUG, {"bluing": BLUING}, "bluing__gauge_angle_error_limit_arcsec"),
    ],
)
def test_what_was_not_stated_is_named_and_proves_nothing(
    call: Call, feature: Json, means: Json, path: str
) -> None:
    """One error left out is named, and the answer to whether it proves the tolerance is null."""
    whole = only(call, feature, **means)["angle_proof"]
    assert whole["proves_tolerance"] is True
    assert whole["angle_error_arcsec"]["not_stated"] == []
    without = changed(means, **{path: None})
    field = path.rpartition("__")[2]
    for holder in without.values():
        holder.pop(field)
    partly = only(call, feature, **without)["angle_proof"]
    assert partly["proves_tolerance"] is None
    assert partly["angle_error_arcsec"]["not_stated"] == [field]
    # Too much by what was stated alone is too much, whatever else there is.
    tight = {**feature, "included_angle_tolerance_arcsec": 0.01}
    assert only(call, tight, **without)["angle_proof"]["proves_tolerance"] is False


def test_nothing_stated_is_nothing_known(call: Call) -> None:
    """Means of which nothing was stated give what to expect and limits, and no uncertainty."""
    means = {"rolls": {"roll_diameters": [0.25]}, "comparator": {}}
    plan = planned(call, PLUG, **means)
    assert plan["best"] is None
    for found in plan["inspections"]:
        proof = found["angle_proof"]
        assert proof["proves_tolerance"] is proof["largest_accepted_error_arcsec"] is None
        assert proof["angle_error_arcsec"]["value"] is None
        assert proof["angle_error_arcsec"]["not_stated"]
        assert found["readings"][-1]["expected_reading"]


def test_the_best_is_the_finest_of_those_that_prove_it(call: Call) -> None:
    """Of rolls, plate and comparator the one with the least uncertainty; none where none proves."""
    means = {
        "rolls": ROLLS,
        "plate": PLATE,
        "comparator": {"instrument_angle_error_limit_arcsec": 30},
    }
    plan = planned(call, PLUG, **means)
    own = {
        one["means"]: one["angle_proof"]["angle_error_arcsec"]["expanded_uncertainty"]
        for one in plan["inspections"]
        if one["angle_proof"]["proves_tolerance"]
    }
    assert len(own) == 3
    assert plan["best"] == min(own, key=lambda name: own[name])
    tight = planned(call, {**PLUG, "included_angle_tolerance_arcsec": 1}, **means)
    assert tight["best"] is None


def test_a_stack_of_blocks_is_read_as_it_stands(call: Call) -> None:
    """Blocks that miss the height, or are off by their certificate, are counted in the reading."""
    box = [{"size": 0.125, "deviation": 0.00001, "expanded_uncertainty": 0.000002}]
    found = only(call, PLUG, plate={**PLATE, "indicator_travel": 2.5}, box=box)
    assert found["blocks"] == [0.125]
    assert setting(found, "height") == pytest.approx(0.12501)
    parts = found["angle_proof"]["angle_error_arcsec"]["contributions"]
    assert "block_calibration" in [part["name"] for part in parts]
    assert "stack_error_limit" not in [part["name"] for part in parts]
    rise = reading(found, "indicator_rise")["expected_reading"]
    # 5 sin α = 0.125447 in; 0.000437 in low in 5 in, over 2.5 in of travel.
    assert rise == pytest.approx((0.125447 - 0.12501) / 5 * 2.5, abs=2e-6)


# What is no part ------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("feature", "more", "kind", "field"),
    [
        ({"included_angle_tolerance_arcsec": None}, {}, Disagreement, "feature/cone_angle_grade"),
        ({"cone_angle_grade": "AT5"}, {}, Disagreement, "feature/cone_angle_grade"),
        ({"designation": None}, {}, Disagreement, "feature/included_angle"),
        ({"designation": "iso-1:20"}, {}, Disagreement, "feature/gauge_diameter"),
        ({"length": 30}, {}, Impossible, "feature/length"),
        ({"large_diameter_tolerance": 1}, {}, Impossible, "feature/large_diameter_tolerance"),
        (
            {"included_angle_tolerance_arcsec": 20_000},
            {},
            Impossible,
            "feature/included_angle_tolerance_arcsec",
        ),
        ({"included_angle": 3}, {}, Disagreement, "feature/designation"),
        ({}, {"rolls": None}, Disagreement, "rolls"),
        ({}, {"set": "inch-81"}, Disagreement, "plate"),
        ({}, {"plate": {"center_distance": 127}}, Disagreement, "plate/center_distance"),
        (
            {},
            {"plate": {"center_distance": 5, "resolution": 1}},
            Disagreement,
            "plate/resolution",
        ),
        (
            {},
            {"bluing": {"blue_film": 0.0001, "blue_film_error_limit": 0.0001}},
            Disagreement,
            "bluing/blue_film_error_limit",
        ),
    ],
)
def test_what_contradicts_itself_is_refused(
    call: Call, feature: Json, more: Json, kind: type[Refusal], field: str
) -> None:
    """A part or a means that cannot be names the field of the request, with its path."""
    part = {name: value for name, value in {**PLUG, **feature}.items() if value is not None}
    request = {"units": "in", "feature": part, "rolls": ROLLS, **more}
    stated = {name: value for name, value in request.items() if value is not None}
    with pytest.raises(kind, match=r"\w") as refused:
        call("inspection.plan", **stated)
    assert field in refused.value.fields


def test_a_grade_outside_its_table_names_the_length(call: Call) -> None:
    """AT grades begin above 6 mm of length."""
    short = {
        "kind": "taper-plug",
        "one_in_x": 5,
        "gauge_diameter": 4,
        "length": 5,
        "cone_angle_grade": "AT5",
    }
    with pytest.raises(Unreachable, match="above 6 mm") as refused:
        planned(call, short, units="mm", bluing={})
    assert list(refused.value.fields) == ["feature/length"]

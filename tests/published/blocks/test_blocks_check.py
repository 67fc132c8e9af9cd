"""Checks of a stack, its error budget, several stacks and a day's plan, through the operations."""

import math
import random
from collections import Counter
from itertools import combinations
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from uncertainties import ufloat

from halfangle_service.errors import BeyondBound, Disagreement, Impossible, Refusal, Unreachable
from halfangle_service.trade.stacks.mistakes import ranked, single_mistakes, within_limit
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.sets import built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import grades
from support import Call, stacks_request

INCH = 254_000_000
STACK: dict[str, Any] = {
    "units": "in",
    "set": "inch-81",
    "blocks": [2, 0.134, 0.1003],
    "height": 2.2343,
    "center_distance": 5,
}


def angle_of(height: float) -> float:
    """Angle on a 5 in plate in degrees, by hand."""
    return math.degrees(math.asin(height / 5))


@pytest.mark.outside("blocks.check", source="Worked by hand: .103 for .1003 is 0.0027 in too high")
def test_a_block_misread_by_a_zero_is_found(call: Call) -> None:
    """A plate measured 124.5″ steep is explained by .103 in place of .1003, first of all."""
    wrong = angle_of(2 + 0.134 + 0.103)
    result = call("blocks.check", **STACK, measured_angle=wrong)["result"]
    first = result["mistakes"][0]
    assert (first["meant"], first["wrung"], first["likeness"]) == (0.1003, 0.103, "same-digits")
    assert first["explains"]
    assert first["angle"]["degrees"] == pytest.approx(wrong)
    assert first["angle_error_arcsec"] == pytest.approx((wrong - angle_of(2.2343)) * 3600)
    assert result["verdict"] == "not-conforming"


def test_a_forgotten_wear_block_is_found(call: Call) -> None:
    """A height short by a wear block is explained by that before all else."""
    result = call(
        "blocks.check",
        units="in",
        set="inch-83",
        blocks=[2, 0.134, 0.1003],
        wear_blocks=[0.05, 0.05],
        height=2.3343,
        measured_height=2.2843,
    )["result"]
    assert result["mistakes"][0]["kind"] == "wear-block-left-out"
    assert result["explained"]


def test_a_stack_that_is_not_the_wanted_one_says_what_it_lacks(call: Call) -> None:
    """Without a measurement the stack is compared with what is wanted, the other way round."""
    result = call("blocks.check", **{**STACK, "blocks": [2, 0.134, 0.103]})
    first = result["result"]["mistakes"][0]
    assert (first["meant"], first["wrung"]) == (0.1003, 0.103)
    assert result["advisories"][0]["code"] == "wrong-stack"
    assert "0.103 in place of 0.1003" in result["advisories"][0]["message"]


def test_a_stack_as_wanted_is_said_to_be(call: Call) -> None:
    """30° on a 5 in plate with 2 and .5 is as wanted; its uncertainty is that of the grade."""
    answer = call(
        "blocks.check",
        units="in",
        set="inch-81",
        blocks=[2, 0.5],
        angle=30,
        center_distance=5,
        grade="asme-as-1",
    )
    result = answer["result"]
    assert result["verdict"] == "conforming"
    assert result["mistakes"] == []
    assert result["angle"]["degrees"] == pytest.approx(30)
    assert result["actual_height"]["worst_case"] == pytest.approx(28e-6)
    assert answer["advisories"] == []


def test_without_anything_to_compare_with_there_is_no_verdict(call: Call) -> None:
    """Neither wanted nor measured: no verdict, and what would give one is named."""
    asked: dict[str, Any] = {"units": "in", "set": "inch-81", "blocks": [2, 0.5]}
    alone = call("blocks.check", **asked)["result"]
    assert alone["verdict"] is None
    assert alone["not_stated"] == ["height", "angle", "measured_height", "measured_angle"]
    wanted = call("blocks.check", **asked, height=2.5)["result"]
    assert (wanted["verdict"], wanted["not_stated"]) == ("conforming", [])


def test_no_single_mistake_is_said_so(call: Call) -> None:
    """Where no single block explains a measurement, the answer says to look elsewhere."""
    answer = call("blocks.check", **STACK, measured_height=2.24085)
    assert not answer["result"]["explained"]
    assert "no-single-mistake" in [entry["code"] for entry in answer["advisories"]]


@pytest.mark.outside("blocks.check", source="Every single mistake with a stack, by enumeration")
def test_every_single_mistake_is_found_and_explained() -> None:
    """Each swap, omission and addition, made for real, stands first or ties with the first."""
    box = built_in_sets()["inch-36"].sizes
    stack = (254_000_000, 50_800_000, 25_476_200)
    wear = [12_700_000]
    spare = sorted(set(box) - set(stack))
    parts = [[Piece(size) for size in part] for part in (stack, spare, wear)]
    found = single_mistakes(parts[0], parts[1], parts[2], (), INCH)
    made = [-meant for meant in stack] + [-12_700_000]
    made += [wrung for wrung in spare if wrung != 12_700_000]
    made += [wrung - meant for meant in stack for wrung in spare]
    for change in made:
        first = ranked(found, within_limit(change, 0, 0))[0]
        assert first.change == change


REFUSED: list[tuple[dict[str, Any], type[Refusal], str, str]] = [
    ({"blocks": [2, 0.1003, 0.1003]}, Disagreement, "the box holds 1 of it", "blocks/2"),
    ({"blocks": [2, 1.49]}, Disagreement, "a size of metric sets", "blocks/1"),
    ({"blocks": [2, 0.77777]}, Disagreement, "the box has no such block", "blocks/1"),
    ({"angle": 30}, Disagreement, "were sent together", "angle"),
    ({"blocks": [4, 3]}, Impossible, "lifts the high roll by 7", "blocks"),
    ({"measured_height": 2, "measured_angle": 20}, Disagreement, "sent together", "measured_angle"),
    (
        {"center_distance": None, "measured_angle": 20},
        Disagreement,
        "Send `center_distance` together",
        "center_distance",
    ),
]


@pytest.mark.parametrize(("changes", "kind", "words", "field"), REFUSED)
def test_bad_stacks_are_refused_by_name(
    call: Call, changes: dict[str, Any], kind: type[Refusal], words: str, field: str
) -> None:
    """Each wrong stack is refused with the reason, naming the field."""
    with pytest.raises(kind, match=words) as refused:
        call("blocks.check", **{**STACK, **changes})
    assert field in refused.value.fields


@pytest.mark.outside("blocks.budget", source="`uncertainties` library: the same model propagated")
@pytest.mark.parametrize(("blocks", "plate"), [("tungsten-carbide", "steel"), ("ceramic", None)])
def test_budget_is_that_of_an_uncertainty_library(
    call: Call, blocks: str, plate: str | None
) -> None:
    """Height and standard uncertainty are those of the model written out for the library."""
    request = {
        "units": "mm",
        "blocks": [50.0, 10.0, 1.3],
        "grade": "iso-1",
        "block_material": blocks,
        "temperature_celsius": 23.0,
        "temperature_error_limit_celsius": 0.5,
        "temperature_difference_celsius": 0.2,
        "film_nanometres": 5.0,
    }
    if plate:
        request["plate_material"] = plate
    result = call("blocks.budget", **request)["result"]
    # Coefficients and their spreads in 1e-6/K, of all but steel's 11.5 from memory.
    alpha = {"steel": (11.5, 1.0), "tungsten-carbide": (4.5, 0.7), "ceramic": (9.5, 0.8)}
    root = math.sqrt(3)
    limits = {50.0: 0.4e-3, 10.0: 0.2e-3, 1.3: 0.2e-3}
    sizes = [size + ufloat(0, limit / root) for size, limit in limits.items()]
    films = sum(ufloat(5e-6, 10e-6 / root) for _ in sizes)
    off = ufloat(3.0, 0.5 / root)
    own = ufloat(alpha[blocks][0] * 1e-6, alpha[blocks][1] * 1e-6 / root)
    growth = own * off
    if plate:
        apart = ufloat(0.0, 0.2 / root)
        growth += own * apart
        growth -= ufloat(alpha[plate][0] * 1e-6, alpha[plate][1] * 1e-6 / root) * off
    height = sum(sizes) + films + 61.3 * growth
    found = result["height"]
    assert found["value"] == pytest.approx(height.nominal_value, abs=1e-9)
    assert found["standard_uncertainty"] == pytest.approx(height.std_dev, rel=1e-6)
    assert sum(c["share_percent"] for c in found["contributions"]) == pytest.approx(100)
    # 95 % of a million heights drawn from the same model (JCGM 101:2008, 7) lie as near.
    generator = np.random.default_rng(20261126)

    def drawn(mean: float, limit: float) -> NDArray[np.float64]:
        return mean + generator.uniform(-limit, limit, 1_000_000)

    off_drawn, own_drawn = drawn(3.0, 0.5), drawn(alpha[blocks][0], alpha[blocks][1]) * 1e-6
    total = sum(drawn(size, limit) + drawn(5e-6, 10e-6) for size, limit in limits.items())
    per_size = own_drawn * off_drawn
    if plate:
        per_size += own_drawn * drawn(0.0, 0.2)
        per_size -= drawn(alpha[plate][0], alpha[plate][1]) * 1e-6 * off_drawn
    away = np.abs(total + 61.3 * per_size - height.nominal_value)
    assert found["expanded_uncertainty"] == pytest.approx(np.quantile(away, 0.95), rel=5e-3)


def test_calibrated_blocks_need_no_grade(call: Call) -> None:
    """A calibration stands for the grade; a block with neither is refused by name."""
    known = {"size": 2, "deviation": 3e-6, "expanded_uncertainty": 2e-6}
    asked: dict[str, Any] = {"units": "in", "film_error_limit_nanometres": 0}
    result = call("blocks.budget", **asked, calibrated_blocks=[known])["result"]
    assert result["height"]["value"] == pytest.approx(2.000003)
    assert result["height"]["standard_uncertainty"] == pytest.approx(1e-6)
    with pytest.raises(Disagreement, match="Neither a calibration nor a grade") as refused:
        call("blocks.budget", **asked, calibrated_blocks=[known, {"size": 0.5}])
    assert "calibrated_blocks/1" in refused.value.fields
    with pytest.raises(Disagreement, match="they are all missing"):
        call("blocks.budget", **asked)


def test_steel_on_steel_does_not_move_off_twenty_degrees(call: Call) -> None:
    """Blocks and plate of one material grow together: no effect, whatever the temperature."""
    request = {
        "units": "in",
        "blocks": [2.5],
        "grade": "asme-0",
        "temperature_celsius": 25,
        "plate_material": "steel",
    }
    assert call("blocks.budget", **request)["result"]["expansion"] == 0
    # formulas: +5 °C at 30°, carbide on steel −4.2″, which is 2.5 in × 5 × (4.5 − 11.5)e-6.
    carbide = call("blocks.budget", **request, block_material="tungsten-carbide")["result"]
    arcsec = carbide["expansion"] / (5 * math.cos(math.radians(30))) * 206_264.8
    assert arcsec == pytest.approx(-4.2, abs=0.05)


def test_several_stacks_share_no_block(call: Call) -> None:
    """On random heights all stacks together use no block more often than the set has it."""
    generator = random.Random(8)  # noqa: S311
    box = Counter(built_in_sets()["inch-81"].sizes)
    for _ in range(25):
        heights = [generator.randrange(4000, 40_000) / 10_000 for _ in range(3)]
        result = call("blocks.stacks", **stacks_request(*heights))["result"]
        used = [round(b * INCH) for stack in result["stacks"] for b in stack["blocks"]]
        assert not Counter(used) - box
        assert result["count"] == len(used)
        for stack in result["stacks"]:
            assert sum(stack["blocks"]) == pytest.approx(heights[int(stack["name"][1:])])
        assert len(result["stacks"]) + len(result["left_out"]) == 3


def test_two_heights_that_need_the_same_block(call: Call) -> None:
    """.1003 twice is impossible from one set; the first is kept, and the other told why not."""
    answer = call("blocks.stacks", **stacks_request(0.1003, 0.1003))
    result = answer["result"]
    assert not result["complete"]
    assert [stack["name"] for stack in result["stacks"]] == ["h0"]
    assert "h0 cannot stand at once" in result["left_out"][0]["reason"]
    assert result["proved"]
    assert answer["advisories"][0]["code"] == "not-all-heights"


def test_more_heights_than_the_bound_are_answered_with_the_gap(call: Call) -> None:
    """Twelve heights at once end within the bound: what is not proved is said, with the gap."""
    heights = [1.0 + k * 0.1111 for k in range(12)]
    answer = call("blocks.stacks", **stacks_request(*heights, max_blocks=6))
    result = answer["result"]
    assert result["fewest_possible"] <= result["count"]
    assert (result["bound"] is None) == result["proved"]
    again = call("blocks.stacks", **stacks_request(*heights, max_blocks=6))
    assert again == answer


def test_several_stacks_refuse_what_is_wrong(call: Call) -> None:
    """Names given twice, wide tolerances, and heights none of which can be built are refused."""
    twice = {"heights": [{"name": "a", "height": 1}, {"name": "a", "height": 2}]}
    with pytest.raises(Disagreement, match="names two heights"):
        call("blocks.stacks", **{**stacks_request(), **twice})
    wide = {"heights": [{"name": "a", "height": 1, "tolerance": 0.5}]}
    with pytest.raises(BeyondBound, match="more than 100 steps"):
        call("blocks.stacks", **{**stacks_request(), **wide})
    with pytest.raises(Unreachable, match="None of the heights") as refused:
        call("blocks.stacks", **stacks_request(70, 80))
    assert "heights/1/height" in refused.value.fields


DAY = [
    {"job": "A", "bench": "one", "slot": 1, "height": 2.5},
    {"job": "B", "bench": "two", "slot": 1, "height": 2.5},
    {"job": "C", "bench": "one", "slot": 2, "height": 0.1003},
    {"job": "D", "bench": "two", "slot": 2, "height": 0.1003},
    {"job": "E", "bench": "one", "slot": 3, "height": 2.5},
]


@pytest.mark.outside("blocks.day", source="Worked by hand: .1003 cannot stand on two benches")
def test_a_day_says_who_shares_and_who_is_in_the_way(call: Call) -> None:
    """Equal heights share a stack; benches that need one block in one slot are named."""
    result = call("blocks.day", units="in", set="inch-81", jobs=DAY)["result"]
    first, second, third = result["slots"]
    assert first["contention"][0]["benches"] == ["one", "two"]
    assert first["contention"][0]["avoidable"]
    assert first["left_out"] == []
    assert second["contention"][0] == {
        "jobs": ["C", "D"],
        "benches": ["one", "two"],
        "blocks": [0.1003],
        "avoidable": False,
    }
    assert [entry["name"] for entry in second["left_out"]] == ["D"]
    assert third["stacks"][0]["blocks"] == [2.0, 0.5]
    shared = {"height": 2.5, "blocks": [2.0, 0.5], "jobs": ["A", "B", "E"], "at_once": True}
    assert result["shared"][0] == shared
    for slot in result["slots"]:
        for one, other in combinations(slot["stacks"], 2):
            assert not set(one["blocks"]) & set(other["blocks"])


def test_a_day_refuses_a_bench_used_twice(call: Call) -> None:
    """Two jobs of one name, or on one bench in one slot, are refused."""
    for changed, words in (
        ({"job": "A"}, "names two jobs"),
        ({"slot": 1}, "two jobs in slot"),
    ):
        jobs = [*DAY, {"job": "F", "bench": "one", "slot": 4, "height": 1, **changed}]
        with pytest.raises(Disagreement, match=words):
            call("blocks.day", units="in", set="inch-81", jobs=jobs)


ANGLES: list[tuple[dict[str, Any], type[Refusal], str, str]] = [
    ({}, Disagreement, "they are all missing", "set"),
    ({"set": "angle-16", "box": [{"angle": 1}]}, Disagreement, "sent together", "box"),
    ({"set": "angle-15"}, Unreachable, "no built-in set of angle blocks", "set"),
    ({"set": "angle-16", "grade": "fine"}, Unreachable, "no grade of angle blocks", "grade"),
    ({"set": "angle-6"}, Unreachable, "nearest below it is 37°00'00", "angle"),
    ({"box": [{"angle": k, "count": 4} for k in range(1, 8)]}, BeyondBound, "22", "box"),
    (
        {"box": [{"angle": 1, "deviation_arcsec": 90}]},
        Disagreement,
        "not one of an angle block",
        "box/0/deviation_arcsec",
    ),
]


@pytest.mark.parametrize(("request_", "kind", "words", "field"), ANGLES)
def test_bad_angle_stacks_are_refused_by_name(
    call: Call, request_: dict[str, Any], kind: type[Refusal], words: str, field: str
) -> None:
    """Each wrong box of angle blocks is refused with the reason, naming the field."""
    with pytest.raises(kind, match=words) as refused:
        call("blocks.angle-stack", angle="37 24 18", **request_)
    assert field in refused.value.fields


def test_angle_stack_errors_follow_the_signs(call: Call) -> None:
    """A subtracted block's deviation counts the other way; limits add up whatever the sign."""
    pieces = [
        {"angle": 5, "deviation_arcsec": 0.4, "expanded_uncertainty_arcsec": 0.2},
        {"angle": 1, "deviation_arcsec": 0.3},
    ]
    result = call("blocks.angle-stack", angle=4, box=pieces, grade="toolroom")["result"]
    assert result["words"] == "5° − 1°"
    assert result["actual_deviation_arcsec"] == pytest.approx(0.1)
    angle = result["actual_angle"]
    assert angle["value"]["degrees"] * 3600 == pytest.approx(4 * 3600 + 0.1)
    assert angle["worst_case"] == pytest.approx(3 * 0.1 + 1)
    assert angle["standard_uncertainty"] == pytest.approx(math.hypot(0.1, 1 / 3**0.5))
    named = [(part["name"], part["of"], part["sensitivity"]) for part in angle["contributions"]]
    assert named == [("block_calibration", "5°", 1), ("block_grade_limit", "1°", -1)]
    assert angle["not_stated"] == []


def test_an_angle_of_blocks_of_no_known_grade_has_no_uncertainty(call: Call) -> None:
    """Without calibration or grade nothing is said of the angle's error, and that is named."""
    angle = call("blocks.angle-stack", angle=30, set="angle-16")["result"]["actual_angle"]
    assert angle["value"]["degrees"] == 30
    assert angle["standard_uncertainty"] is angle["worst_case"] is None
    assert (angle["contributions"], angle["not_stated"]) == ([], ["grade"])


def test_tables_come_over_http(service: Any) -> None:
    """Sets, grades and sets of angle blocks are listed, and each entry is had by its name."""
    for table, key in (("sets", "inch-83"), ("grades", "iso-1"), ("angle-sets", "angle-13")):
        listing = service.get(f"/v1/blocks/{table}")
        entry = service.get(f"/v1/blocks/{table}/{key}")
        assert (listing.status_code, entry.status_code) == (200, 200)
        assert entry.json()["result"]["name"] == key
    limits = service.get("/v1/blocks/grades/iso-1").json()["result"]["ranges"]
    assert len(limits) == len(grades()["iso-1"].up_to)

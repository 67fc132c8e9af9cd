"""Single mistakes with a stack: cases worked by hand."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Impossible, Refusal
from support import Call

#: The same stack, right and with .1001 taken for .1.
RIGHT: dict[str, Any] = {"units": "in", "set": "inch-81", "blocks": [2.0, 0.4, 0.1]}
WRONG: dict[str, Any] = {**RIGHT, "blocks": [2.0, 0.4, 0.1001]}
#: A worn .1001, 80 millionths short.
WORN = [{"size": 0.1}, {"size": 0.1001, "deviation": -0.00008}, {"size": 2}, {"size": 0.4}]
#: Two blocks of .1, one of them 20 millionths long.
TWINS = [
    {"size": 0.1, "mark": "A"},
    {"size": 0.1, "mark": "B", "deviation": 0.00002},
    {"size": 2},
    {"size": 0.4},
]


def codes(answer: dict[str, Any]) -> list[str]:
    """Codes of an answer's advisories."""
    return [entry["code"] for entry in answer["advisories"]]


def message(answer: dict[str, Any], code: str) -> str:
    """What an advisory of this code says."""
    return next(str(a["message"]) for a in answer["advisories"] if a["code"] == code)


# What is explained -----------------------------------------------------------------------------


@pytest.mark.outside("blocks.check", source="Worked by hand: 2 + .4 + .1001 is .0001 over 2.5")
@pytest.mark.parametrize("more", [{}, {"measured_height": 2.5001}, {"measured_height": 2.50012}])
def test_a_wrong_block_is_found_though_the_measurement_agrees_with_it(
    call: Call, more: dict[str, Any]
) -> None:
    """A measurement that confirms the stack as read leaves the mistake against what is wanted."""
    answer = call("blocks.check", **WRONG, height=2.5, **more)
    result = answer["result"]
    assert result["verdict"] == "not-conforming"
    assert result["mistakes_explain"] == "the-stack-as-read"
    assert result["mistakes"][0]["words"] == "0.1001 in place of 0.1"
    assert result["explained"]
    assert codes(answer) == ["wrong-stack"]


def test_mistakes_explain_it_whether_they_are_listed_or_not(call: Call) -> None:
    """Without a list the stack is explained as well, and the likeliest mistake is named."""
    answer = call("blocks.check", **WRONG, height=2.5, max_explanations=0)
    assert answer["result"]["mistakes"] == []
    assert answer["result"]["explained"]
    assert "0.1001 in place of 0.1" in message(answer, "wrong-stack")


def test_every_explanation_is_counted(call: Call) -> None:
    """The count of explanations is that of all, not of those listed."""
    request = {**RIGHT, "measured_height": 2.5005, "measurement_error_limit": 0.0002}
    whole = call("blocks.check", **request, max_explanations=50)
    count = sum(entry["explains"] for entry in whole["result"]["mistakes"])
    assert count > 2
    for listed in (0, 1, 50):
        answer = call("blocks.check", **request, max_explanations=listed)
        assert message(answer, "several-explanations").startswith(f"{count} single mistakes")


@pytest.mark.outside("blocks.check", source="Worked by hand: .1001 - .00008 - .1 is .00002 in")
def test_the_deviation_of_the_block_taken_counts(call: Call) -> None:
    """A worn .1001 in place of .1 explains twenty millionths, to the last of them."""
    result = call(
        "blocks.check",
        **{**RIGHT, "set": None, "box": WORN},
        height=2.5,
        measured_height=2.50002,
        measurement_error_limit=0.00001,
    )["result"]
    first = result["mistakes"][0]
    assert first["words"] == "0.1001 in place of 0.1"
    assert (first["explains"], first["height"], first["unexplained"]) == (True, 2.50002, 0.0)
    assert result["explained"]


def test_of_two_blocks_of_one_size_it_is_said_which(call: Call) -> None:
    """The mark of the block taken is given, and the other one of its size may explain a height."""
    request = {**RIGHT, "set": None, "box": TWINS, "measured_height": 2.5}
    answer = call("blocks.check", **request, measurement_error_limit=0.00001)
    result = answer["result"]
    assert result["marks"] == [None, None, "B"]
    assert "0.1 (mark B, deviation 0.00002 in)" in message(answer, "one-of-several-taken")
    first = result["mistakes"][0]
    assert (first["meant_mark"], first["wrung_mark"], first["likeness"]) == ("B", "A", "same-size")
    assert first["explains"]


def test_by_nominal_sizes_either_of_two_blocks_is_one_mistake(call: Call) -> None:
    """Against a wanted height a size is listed once, whichever of its blocks it may be."""
    request = {**RIGHT, "set": None, "box": TWINS, "blocks": [2.0, 0.4]}
    found = call("blocks.check", **request, height=2.5, max_explanations=50)["result"]["mistakes"]
    assert found[0]["words"] == "0.1 left out"
    assert found[0]["meant_mark"] is None
    assert len({entry["words"] for entry in found}) == len(found)


# What agrees -----------------------------------------------------------------------------------

METRIC: dict[str, Any] = {"units": "mm", "set": "metric-112"}


@pytest.mark.outside("blocks.check", source="Worked by hand: 1.0005 for 1 makes 51.0005 of 51")
@pytest.mark.parametrize(
    "wanted",
    [
        {"height": 51},
        {"height": 51, "measured_height": 51.0005},
        {"height": 51, "measured_height": 51.0005, "measurement_error_limit": 0.002},
        {"angle": math.degrees(math.asin(0.51)), "center_distance": 100},
    ],
)
def test_a_block_one_step_off_does_not_pass(call: Call, wanted: dict[str, Any]) -> None:
    """The set's smallest step from the wanted height is a wrong block, whatever is measured."""
    result = call("blocks.check", **METRIC, blocks=[50, 1.0005], **wanted)["result"]
    assert result["verdict"] == "not-conforming"
    assert result["mistakes"][0]["words"] == "1.0005 in place of 1"
    assert result["mistakes"][0]["explains"]


@pytest.mark.parametrize("off", [0.00024, -0.00024, 0.00048, -0.00048])
def test_a_stack_rounded_to_the_bench_step_is_as_wanted(call: Call, off: float) -> None:
    """An angle whose height lies between the steps passes with the nearest height in 0.001 mm."""
    angle = math.degrees(math.asin((51 + off) / 100))
    request = {**METRIC, "angle": angle, "center_distance": 100}
    assert call("blocks.check", **request, blocks=[50, 1])["result"]["verdict"] == "conforming"
    worse = call("blocks.check", **request, blocks=[50, 1.001])["result"]
    assert worse["verdict"] == "not-conforming"


@pytest.mark.parametrize(("off", "verdict"), [(0.0002, "conforming"), (0.0003, "not-conforming")])
def test_a_height_is_met_below_half_of_the_step(call: Call, off: float, verdict: str) -> None:
    """Half of the 0.0005 mm of the set is the limit against a wanted height."""
    result = call("blocks.check", **METRIC, blocks=[50, 1], height=51 + off)["result"]
    assert result["verdict"] == verdict


@pytest.mark.outside("blocks.check", source="Worked by hand: ±0.4 and ±0.2 µm of ISO 1, summed")
@pytest.mark.parametrize(
    ("limit", "verdict"),
    # 1 µm too high. Of ±0.4 µm and ±0.2 µm together (0.6 − x)² / 0.64 lies past x µm: 5 % past
    # 0.4211 µm. So 95 % lie within 1.4211 µm of what is wanted, and 5 % within 0.5789 µm.
    [
        (0.00143, "conforming"),
        (0.00141, "not-provable"),
        (0.00059, "not-provable"),
        (0.00057, "not-conforming"),
    ],
)
def test_a_limit_without_a_measurement_is_that_of_the_wanted_height(
    call: Call, limit: float, verdict: str
) -> None:
    """Where nothing was measured the limit sent decides, by what the blocks' grades leave open."""
    request = {**METRIC, "blocks": [50, 1.001], "height": 51, "measurement_error_limit": limit}
    result = call("blocks.check", **request, grade="iso-1")["result"]
    assert (result["verdict"], result["not_stated"]) == (verdict, [])


def test_nothing_is_proved_of_blocks_of_no_known_grade(call: Call) -> None:
    """Within a limit of the wanted height: not without a grade or calibrations, which is named."""
    request = {**METRIC, "blocks": [50, 1.001], "height": 51}
    within = call("blocks.check", **request, measurement_error_limit=0.0015)["result"]
    assert (within["verdict"], within["not_stated"]) == ("not-provable", ["grade"])
    past = call("blocks.check", **request, measurement_error_limit=0.0009)["result"]
    assert (past["verdict"], past["not_stated"]) == ("not-conforming", [])


def test_two_limits_at_once_are_refused(call: Call) -> None:
    """A limit comes as a height or as an angle."""
    with pytest.raises(Disagreement, match="were sent together") as refused:
        call(
            "blocks.check",
            **RIGHT,
            center_distance=5,
            measurement_error_limit=0.0001,
            measurement_error_limit_arcsec=1,
        )
    assert set(refused.value.fields) == {
        "measurement_error_limit",
        "measurement_error_limit_arcsec",
    }


def test_a_measurement_too_coarse_for_the_set_is_said_to_be(call: Call) -> None:
    """To ±0.0005 mm nothing tells 1.0005 from 1; with a finer limit it does."""
    request = {**METRIC, "blocks": [50, 1], "height": 51, "measured_height": 51.0004}
    coarse = call("blocks.check", **request)
    assert (coarse["result"]["verdict"], coarse["result"]["not_stated"]) == ("not-provable", [])
    assert "1.0005 in place of 1" in message(coarse, "measurement-too-coarse")
    fine = call("blocks.check", **request, measurement_error_limit=0.0002)
    assert fine["result"]["mistakes"][0]["words"] == "1.0005 in place of 1"


def test_a_step_too_coarse_for_what_is_wanted_is_said_to_be(call: Call) -> None:
    """Where the blocks build nothing nearer, the stack as such is not at fault."""
    answer = call("blocks.check", units="mm", set="metric-103", blocks=[20, 1.2], height=21.202)
    assert answer["result"]["verdict"] == "not-conforming"
    assert "steps of 0.005 mm" in message(answer, "no-single-mistake")
    assert "dirt" not in message(answer, "no-single-mistake")


def test_the_mistake_to_look_for_first_is_one_that_explains(call: Call) -> None:
    """At the edge of the limit the order, the list and the words agree."""
    for blocks, wear in (([1.0005, 1.11, 1.42], [1.0]), ([1.11, 1.42], [1.0])):
        angle = math.degrees(math.asin(5.531 / 500))
        request = {**METRIC, "blocks": blocks, "wear_blocks": wear, "angle": angle}
        answer = call("blocks.check", **request, center_distance=500, max_explanations=50)
        found = answer["result"]["mistakes"]
        explains = [entry["explains"] for entry in found]
        assert explains == sorted(explains, reverse=True)
        assert explains[0] == ("Look first" in message(answer, "wrong-stack"))
        if explains[0]:
            assert found[0]["words"] in message(answer, "wrong-stack")


# What each mistake gives -----------------------------------------------------------------------


@pytest.mark.outside("blocks.check", source="Worked by hand: heights and sines on a 5 in plate")
@pytest.mark.parametrize("more", [{}, {"measured_height": 2.4}])
def test_each_mistake_shows_the_height_and_angle_that_it_gives(
    call: Call, more: dict[str, Any]
) -> None:
    """Height meant, plus the block wrung, less the block meant; the rest is unexplained."""
    request = {**WRONG, "angle": 30, "center_distance": 5, **more}
    result = call("blocks.check", **request, max_explanations=50)["result"]
    base, found = (2.5001, 2.4) if more else (2.5, 2.5001)
    for entry in result["mistakes"]:
        height = base + (entry["wrung"] or 0) - (entry["meant"] or 0)
        assert entry["height"] == pytest.approx(height, abs=1e-9)
        angle = math.degrees(math.asin(height / 5))
        assert entry["angle"]["degrees"] == pytest.approx(angle)
        assert entry["angle_error_arcsec"] == pytest.approx((angle - 30) * 3600, abs=1e-3)
        assert entry["unexplained"] == pytest.approx(found - height, abs=1e-9)
        assert entry["explains"] == (abs(found - height) <= 0.00005)
    assert len({entry["height"] for entry in result["mistakes"]}) > 10


def test_a_mistake_past_the_plate_has_no_angle(call: Call) -> None:
    """A candidate as high as the center distance is listed; the request is a good one."""
    request = {**RIGHT, "blocks": [4, 0.9], "center_distance": 5, "measured_angle": 80}
    found = call("blocks.check", **request, max_explanations=50)["result"]["mistakes"]
    high = [entry for entry in found if entry["height"] >= 5]
    assert high
    assert all(entry["angle"] is None for entry in high)
    assert all(entry["angle"] for entry in found if entry["height"] < 5)


def test_what_is_zero_by_construction_is_zero(call: Call) -> None:
    """2.5 in on a 5 in plate is 30°, with no error of 4.6e-11 seconds."""
    request = {**RIGHT, "angle": 30, "measured_angle": 30, "center_distance": 5}
    result = call("blocks.check", **request)["result"]
    zeros = (
        "actual_deviation",
        "angle_error_arcsec",
        "measured_deviation",
        "measured_error_arcsec",
    )
    assert [result[name] for name in zeros] == [0.0] * 4


# What is refused -------------------------------------------------------------------------------

ENDS: dict[str, Any] = {"set": "inch-83", "wear_blocks": [0.05, 0.05]}
ONE_END = [{"size": 1}, {"size": 0.05, "wear_block": True}]
REFUSED: list[tuple[dict[str, Any], type[Refusal], str, str]] = [
    ({"center_distance": 5, "measured_height": 9}, Impossible, "by 9 in", "measured_height"),
    ({"center_distance": 5, "height": 9}, Impossible, "by 9 in", "height"),
    ({"missing": [0.4]}, Disagreement, "0.4 in .* is said to be missing", "blocks/1"),
    ({"in_use": [0.4]}, Disagreement, "0.4 in .* is said to be in use", "blocks/1"),
    (
        {"set": None, "box": TWINS, "missing": [0.1], "blocks": [0.1, 0.1]},
        Disagreement,
        "holds 1 of it.* another one is said to be missing",
        "blocks/1",
    ),
    ({**ENDS, "blocks": [0.05] * 3}, Disagreement, "holds 1 of it.*`wear_blocks`", "blocks/1"),
    ({**ENDS, "missing": [0.05] * 2}, Disagreement, "2 in all, 1 of them missing", "wear_blocks/1"),
    ({"set": None, "box": ONE_END, "blocks": [0.05]}, Disagreement, "as a wear block", "blocks/0"),
    (
        {"set": None, "box": ONE_END, "blocks": [1], "wear_blocks": [0.05, 0.05]},
        Disagreement,
        "the box has 1 in all",
        "wear_blocks/1",
    ),
]


@pytest.mark.parametrize(("changes", "kind", "words", "field"), REFUSED)
def test_what_cannot_stand_is_refused_by_its_name(
    call: Call, changes: dict[str, Any], kind: type[Refusal], words: str, field: str
) -> None:
    """Each is refused for its own reason, naming the field that is at fault."""
    with pytest.raises(kind, match=words) as refused:
        call("blocks.check", **{**RIGHT, **changes})
    assert list(refused.value.fields) == [field]


def test_all_the_blocks_of_a_size_may_stand(call: Call) -> None:
    """The three .05 of a set make a stack with two wear blocks, and none is left to be mistaken."""
    request = {"units": "in", **ENDS, "blocks": [2.0, 0.05], "height": 2.15}
    result = call("blocks.check", **request)["result"]
    assert (result["total"], result["verdict"]) == (2.15, "conforming")
    short = call("blocks.check", **request, measured_height=2.1)["result"]
    assert short["mistakes"][0]["kind"] == "wear-block-left-out"


@pytest.mark.parametrize("off", [-1.001, -1.019])
def test_of_what_explains_the_likelier_mistake_comes_first(call: Call, off: float) -> None:
    """Within the measurement's limit how near a mistake comes says nothing: the likelier is first.

    1 in place of 2 and the 1.02 left out differ by 0.02 mm, which ± 0.03 does not tell apart.
    """
    sizes = [5, 2, 1.02, 1, 3]
    request = {"units": "mm", "sizes": sizes, "blocks": [5, 2, 1.02], "height": 8.02}
    found = call(
        "blocks.check", **request, measured_height=8.02 + off, measurement_error_limit=0.03
    )["result"]["mistakes"]
    assert [entry["words"] for entry in found[:2]] == ["1 in place of 2", "1.02 left out"]
    assert [entry["explains"] for entry in found[:3]] == [True, True, False]

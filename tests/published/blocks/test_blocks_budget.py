"""A stack's error budget: what counts, what was not stated, what is refused. Worked by hand."""

import math
from typing import Any

import pytest

from halfangle_service.errors import BeyondBound, Disagreement, Refusal
from support import Call


def codes(answer: dict[str, Any]) -> list[str]:
    """Codes of an answer's advisories."""
    return [entry["code"] for entry in answer["advisories"]]


ONE_INCH = {"size": 1, "expanded_uncertainty": 2e-6}
BUDGETS: list[tuple[dict[str, Any], type[Refusal], str, str]] = [
    ({"blocks": [25.4, 1.005]}, Disagreement, "sizes of metric sets: 1.005", "blocks/1"),
    ({"blocks": [0.1001], "units": "mm"}, Disagreement, "sizes of inch sets", "blocks/0"),
    (
        {"calibrated_blocks": [ONE_INCH, {"size": 1.49}]},
        Disagreement,
        "sizes of metric sets: 1.49",
        "calibrated_blocks/1/size",
    ),
    (
        {"calibrated_blocks": [{**ONE_INCH, "state": "missing"}]},
        Disagreement,
        "said to be missing",
        "calibrated_blocks/0/state",
    ),
    (
        {"calibrated_blocks": [{**ONE_INCH, "count": 20}] * 20},
        BeyondBound,
        "has 400 blocks; a budget takes at most 20",
        "calibrated_blocks",
    ),
]


@pytest.mark.parametrize(("changes", "kind", "words", "field"), BUDGETS)
def test_budgets_of_what_is_no_stack_are_refused(
    call: Call, changes: dict[str, Any], kind: type[Refusal], words: str, field: str
) -> None:
    """Sizes of the other unit, missing blocks and too many of them are refused by name."""
    with pytest.raises(kind, match=words) as refused:
        call("blocks.budget", **{"units": "in", "grade": "asme-0", **changes})
    assert list(refused.value.fields) == [field]


def test_an_odd_block_is_taken_into_a_budget(call: Call) -> None:
    """A size marked as special is taken as it stands; a lone round one is only called out."""
    asked: dict[str, Any] = {"units": "in", "grade": "asme-0"}
    special = [{"size": 1.49, "special": True}, {"size": 1.005, "special": True}]
    assert codes(call("blocks.budget", **asked, calibrated_blocks=special)) == []
    assert codes(call("blocks.budget", **asked, blocks=[7.5, 1])) == ["size-of-other-units"]


def test_a_difference_of_temperature_without_a_plate_is_said_to_be_left_out(call: Call) -> None:
    """What is sent and cannot count is said so; with a plate it counts, and nothing is said."""
    asked = {"units": "in", "blocks": [2], "grade": "asme-0"}
    apart = {**asked, "temperature_difference_celsius": 0.2}
    assert codes(call("blocks.budget", **asked)) == []
    assert codes(call("blocks.budget", **apart)) == ["difference-not-counted"]
    assert codes(call("blocks.budget", **apart, plate_material="steel")) == []


def test_a_block_in_use_is_noted(call: Call) -> None:
    """A block in use may be in use in this very stack: the budget is made, with a note."""
    used = [{**ONE_INCH, "state": "in-use"}]
    assert codes(call("blocks.budget", units="in", calibrated_blocks=used)) == ["block-in-use"]


def test_no_growth_is_zero_below_twenty_degrees_too(call: Call) -> None:
    """Steel on steel at 15 °C grows by 0.0, not by -0.0."""
    asked = {"units": "in", "blocks": [2.5], "grade": "asme-0", "plate_material": "steel"}
    growth = call("blocks.budget", **asked, temperature_celsius=15)["result"]["expansion"]
    assert math.copysign(1.0, growth) == 1.0


@pytest.mark.outside("blocks.budget", source="Worked by hand: 3 s of each calibration, te of each")
def test_a_stack_and_its_budget_have_one_worst_case(call: Call) -> None:
    """The blocks alone err by the same most in every answer: 3 s where calibrated, else te."""
    blocks = [ONE_INCH, {"size": 0.5}]
    asked: dict[str, Any] = {"units": "in", "grade": "asme-as-1"}
    built = call("blocks.stack", **asked, box=blocks, height=1.5)["result"]
    found = call("blocks.check", **asked, box=blocks, blocks=[1, 0.5])["result"]
    alone = call("blocks.budget", **asked, calibrated_blocks=blocks, film_error_limit_nanometres=0)
    height = alone["result"]["height"]
    assert height["worst_case"] == pytest.approx(3 * 1e-6 + 12e-6)
    assert built["actual_height"] == found["actual_height"]
    for name in ("standard_uncertainty", "worst_case", "contributions"):
        assert built["actual_height"][name] == height[name]


def test_limits_of_temperature_that_were_not_stated_are_named(call: Call) -> None:
    """Not stated is named, stated as none is not; nor is what could not matter."""
    asked = {"units": "in", "blocks": [2.5], "grade": "asme-0"}

    def not_stated(**more: Any) -> list[str]:
        names: list[str] = call("blocks.budget", **asked, **more)["result"]["height"]["not_stated"]
        return names

    limit, apart = "temperature_error_limit_celsius", "temperature_difference_celsius"
    of_all = "temperature_celsius"
    assert not_stated() == [of_all, limit]
    assert not_stated(**{of_all: 20}) == [limit]
    assert not_stated(plate_material="ceramic") == [of_all, limit, apart]
    assert not_stated(plate_material="steel") == [of_all, apart]
    assert not_stated(plate_material="ceramic", **{of_all: 20, limit: 0, apart: 0}) == []


def test_what_errs_by_nothing_has_no_uncertainty(call: Call) -> None:
    """A calibration and films stated without any error give 0, which is not null."""
    sure = [{"size": 1, "expanded_uncertainty": 0}]
    asked = {"units": "in", "calibrated_blocks": sure, "film_error_limit_nanometres": 0}
    height = call("blocks.budget", **asked)["result"]["height"]
    assert (height["value"], height["standard_uncertainty"], height["worst_case"]) == (1, 0, 0)

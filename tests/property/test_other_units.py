"""The same request asked in inches and in millimetres has the same answer, in the other unit.

Rows of published tables are in one unit; whoever asks in the other gets the same work. What does
differ between the units is named here, field by field, with its reason.
"""

import json
import re
from collections.abc import Iterator
from typing import Any

import pytest

from halfangle_service.errors import Refusal
from halfangle_service.registry import load_registry
from sent.known import known
from units_support import OTHER, differences, in_other_units, schemas_of

#: What is read or set at the bench where nothing is sent: 0.0001 in or 0.001 mm, which are no
#: conversion of one another. It is sent here.
BENCH_STEP = {"in": 0.0001, "mm": 0.001}
STEP_IN_MM = {"in": 0.00254, "mm": 0.001}
SET_OR_READ = ("resolution", "downfeed_step", "agree_within", "measurement_error_limit")
#: What a feed is taken to be where it is not sent, in such steps.
FEEDING = {
    "in": {
        "rough_downfeed_per_pass": 0.0005,
        "finish_downfeed_per_pass": 0.0001,
        "finish_allowance": 0.0005,
        "past_large_end": 0.1,
        "past_small_end": 0.1,
        "diameter_error_limit": 0.0002,
        "axial_position_error_limit": 0.0002,
        "height_error_limit": 0.0002,
    },
    "mm": {
        "rough_downfeed_per_pass": 0.01,
        "finish_downfeed_per_pass": 0.001,
        "finish_allowance": 0.012,
        "past_large_end": 2.5,
        "past_small_end": 2.5,
        "diameter_error_limit": 0.002,
        "axial_position_error_limit": 0.002,
        "height_error_limit": 0.002,
    },
}
#: Figures for one such step, which is of the request's own unit: they are as its steps are.
FOR_ONE_STEP = {
    "arcsec_per_measure_step",
    "arcsec_per_step",
    "bench_step",
    "half_angle_arcsec_per_measure_step",
    "included_angle_arcsec_per_step",
    "sine_arcsec_per_step",
}
#: What goes by the unit of the box, of the tools, or of the figures marked on the blocks.
OF_THE_UNIT = {
    "acceptance_arcsec": "indicators and micrometers read in steps of their own unit",
    "acceptance_tir": "the same",
    "room_to_prove_arcsec": "the same",
    "likeness": "digits of the sizes as they are marked on the blocks",
    "would_make_it_possible": "blocks that a set of this unit could have, to half a bench step",
}
#: Measured with rolls, blocks and gauges that come in round sizes of their unit.
BY_ROUND_SIZES = "inspections["
#: A value of a routing, whose unit stands beside it; some are in round steps of that unit.
WITH_ITS_UNIT = re.compile(r"^operations\[\d+\]\.values\[\d+\]\.value$")
#: Rounded to the unit's own step, with no step that could be sent.
ROUNDED = {"sine.taper-setting": {"height_to_set", "deviation_arcsec"}}
#: Cautions that blocks are of the other unit, and refusals of sizes for it.
ABOUT_UNITS = {"set-of-other-units", "size-of-other-units"}
OF_OTHER_SETS = "there are sizes of"
KNOWN = known()
NAMES = sorted(n for n, rs in KNOWN.requests.items() if any("units" in r for r in rs))
#: Known requests of each operation that are asked here.
MOST_REQUESTS = 14


def requests_of(name: str) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """Known requests of an operation that both units take, what is set or read sent with them."""
    operation = load_registry().operations[name]
    node, _ = schemas_of()[name]
    known = [request for request in KNOWN.requests[name] if "units" in request]
    for request in known[:MOST_REQUESTS]:
        usual = {f: BENCH_STEP[request["units"]] for f in SET_OR_READ if f in node.fields(request)}
        sent = {**usual, **{n: v for n, v in request.items() if v is not None}}
        if name in {"jobs.plan", "jobs.routing"}:
            sent["feeding"] = {**FEEDING[request["units"]], **sent.get("feeding", {})}
        converted = in_other_units(name, sent)
        try:
            operation.request.model_validate_json(json.dumps(converted))
        except ValueError:  # past a bound that is the same number in both units
            continue
        yield sent, converted


def answer_of(name: str, request: dict[str, Any]) -> dict[str, Any] | Refusal:
    """The answer, or the refusal, of a request."""
    operation = load_registry().operations[name]
    validated = operation.request.model_validate_json(json.dumps(request))
    try:
        answer: dict[str, Any] = json.loads(operation.answer_json(validated))
    except Refusal as refusal:
        return refusal
    return answer


def in_one_order(result: dict[str, Any]) -> dict[str, Any]:
    """Gaps by what they are between: of equal ones, rounding alone says which stands first."""
    gaps = result.get("gaps", [])
    ordered = sorted(gaps, key=lambda gap: (gap["wheel_state"], gap["part"], gap["body"]))
    return {**result, "gaps": ordered} if gaps else result


def codes_of(answer: dict[str, Any]) -> set[tuple[str, str]]:
    """Codes and severities of an answer's advisories, but those about units."""
    advisories = [a for a in answer["advisories"] if a["code"] not in ABOUT_UNITS]
    return {(a["code"], a["severity"]) for a in advisories}


@pytest.mark.parametrize("name", NAMES)
def test_the_other_unit_gives_the_same_answer(name: str) -> None:
    """Every length converts, every angle, share, count, option and caution is the same.

    Figures for one bench step are as the steps: 0.0001 in is 2.54 times 0.001 mm.
    """
    for request, converted in requests_of(name):
        first, second = answer_of(name, request), answer_of(name, converted)
        if isinstance(first, Refusal) or isinstance(second, Refusal):
            refused = [r for r in (first, second) if isinstance(r, Refusal)]
            if not any(OF_OTHER_SETS in refusal.detail for refusal in refused):
                assert type(first) is type(second), (request, first, second)
                assert all(r.fields.keys() == refused[0].fields.keys() for r in refused)
            continue
        assert codes_of(first) == codes_of(second), request
        to = converted["units"]
        results = in_one_order(first["result"]), in_one_order(second["result"])
        for apart in differences(name, *results, to):
            leaf = apart.path.rpartition(".")[2]
            if leaf in FOR_ONE_STEP:
                ratio = STEP_IN_MM[to] / STEP_IN_MM[OTHER[to]]
                assert apart.found == pytest.approx(apart.expected * ratio, rel=1e-4), apart
            elif WITH_ITS_UNIT.search(apart.path):
                ratio = 25.4 if to == "mm" else 1.0 / 25.4
                assert apart.found == pytest.approx(apart.expected * ratio, rel=0.02), apart
            else:
                known = leaf in {*OF_THE_UNIT, *ROUNDED.get(name, ())}
                assert known or BY_ROUND_SIZES in apart.path, (request, apart)

"""Choosing a way: its limits against an uncertainty library and against the other operations."""

import copy
import math
from typing import Any

import pytest
import uncertainties
from halfangle_service.topics.wheels.operations_choose import OPERATION
from uncertainties import umath

from halfangle_service.errors import Disagreement, Impossible
from support import Call

EXAMPLE: dict[str, Any] = dict(OPERATION.example)
ARCSEC = math.pi / 648_000


def ways_of(answer: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """The ways of an answer by name."""
    return {way["way"]: way for way in answer["result"]["ways"]}


def with_(way: str, **changes: Any) -> dict[str, Any]:
    """The example with one way's fields changed."""
    request = copy.deepcopy(EXAMPLE)
    request["ways"][way].update(changes)
    return request


@pytest.mark.outside("wheels.choose", source="uncertainties: propagation through asin and atan")
def test_expected_error_is_the_propagated_one(call: Call) -> None:
    """The error to expect is what an uncertainty library propagates to the included angle."""
    plate = ways_of(call("wheels.choose", **EXAMPLE))["sine plate"]
    height = uncertainties.ufloat(2.5, 0.00002)
    pitch = uncertainties.ufloat(0, 5 * ARCSEC)
    wear = uncertainties.ufloat(0, 0.00005)
    included = 2 * (umath.asin(height / 5) + pitch + umath.atan(wear / 0.7))
    assert plate["expected_arcsec"] == pytest.approx(included.std_dev / ARCSEC, rel=1e-6)
    assert plate["worst_arcsec"] == pytest.approx(
        sum(c["limit_arcsec"] for c in plate["contributions"])
    )


@pytest.mark.outside("wheels.choose", source="The operations dressing-errors and setup-errors")
def test_limits_are_those_of_the_error_models(call: Call) -> None:
    """Diamond height and axis offset count with what their own operations give."""
    ways = ways_of(call("wheels.choose", **EXAMPLE))
    cone = {
        k: EXAMPLE[k]
        for k in ("units", "included_angle", "large_diameter", "small_diameter", "wheel_diameter")
    }
    dressed = call("wheels.dressing-errors", **cone, diamond_height=0.02)["result"]["errors"][0]
    named = {c["name"]: c["limit_arcsec"] for c in ways["dressed wheel"]["contributions"]}
    assert named["diamond height"] == pytest.approx(abs(dressed["included_angle_error_arcsec"]))
    # 0.0001 in over 0.7 in of slant, and 0.00005 in on a 2 in sine base, both twice.
    assert named["wear of the flank"] == pytest.approx(2 * 1e-4 / 0.7 / ARCSEC, rel=1e-6)
    assert named["dresser's setting"] == pytest.approx(
        2 * 0.00005 / (2 * math.cos(math.radians(30))) / ARCSEC
    )
    offset = call(
        "wheels.setup-errors",
        **cone,
        way="flat wheel on a sine plate",
        feed="plunge",
        axis_offset=0.02,
    )["result"]["errors"][0]
    named = {c["name"]: c["limit_arcsec"] for c in ways["swivelled workhead"]["contributions"]}
    assert named["axis offset"] == pytest.approx(
        abs(offset["included_angle_error_arcsec"]), rel=0.02
    )
    assert named["scale"] == pytest.approx(300)


def test_verdicts_and_reasons(call: Call) -> None:
    """Ways that fit come first; the others say why they are doubtful or ruled out."""
    answer = call("wheels.choose", **EXAMPLE)
    assert [(way["way"], way["verdict"]) for way in answer["result"]["ways"]] == [
        ("sine plate", "fits"),
        ("dressed wheel", "doubtful"),
        ("swivelled workhead", "ruled out"),
        ("wheel side", "ruled out"),
    ]
    assert answer["result"]["best"] == "sine plate"
    assert "not known to be rated" in ways_of(answer)["wheel side"]["ruled_out_by"][0]


@pytest.mark.parametrize(
    ("way", "changes", "name", "reason"),
    [
        (
            "wheel_side",
            {"rated_for_side": False, "swivel_error_arcsec": 5},
            "wheel side",
            "stated not to be rated",
        ),
        (
            "wheel_side",
            {"rated_for_side": True, "swivel_error_arcsec": 5, "usable_width": 0.5},
            "wheel side",
            "0.7 long, the side is usable over 0.5",
        ),
        ("dressed_wheel", {"wheel_width": 0.5}, "dressed wheel", "0.606218 wide, the wheel 0.5"),
        ("sine_plate", {"largest_angle": 25}, "sine plate", "reaches 25°"),
        (
            "swivelled_workhead",
            {"graduation": "0 00 30", "largest_angle": 20},
            "swivelled workhead",
            "swivels to 20°",
        ),
    ],
)
def test_one_reason_rules_a_way_out(
    call: Call, way: str, changes: dict[str, Any], name: str, reason: str
) -> None:
    """Each limit of a way rules it out by itself, in words."""
    row = ways_of(call("wheels.choose", **with_(way, **changes)))[name]
    assert row["verdict"] == "ruled out"
    assert len(row["ruled_out_by"]) == 1
    assert reason in row["ruled_out_by"][0]


def test_a_rated_side_may_be_chosen(call: Call) -> None:
    """A side stated to be rated, and set truly, is a way like another."""
    request = with_("wheel_side", rated_for_side=True, swivel_error_arcsec=5, setup_minutes=1)
    assert call("wheels.choose", **request)["result"]["best"] == "wheel side"


def test_time_counts_dressing_and_pieces(call: Call) -> None:
    """Dressing 0.35 in at 0.001 in a pass takes 350 passes; pieces add their own time."""
    row = ways_of(call("wheels.choose", **EXAMPLE))["dressed wheel"]
    assert row["first_piece_minutes"] == pytest.approx(40 + 350 * 10 / 60 + 20 + 10)
    assert row["total_minutes"] == pytest.approx(row["first_piece_minutes"] + 4 * 10)


def test_when_all_are_ruled_out_none_is_best(call: Call) -> None:
    """A tolerance below every way's error leaves no best way, and says so."""
    answer = call("wheels.choose", **{**EXAMPLE, "tolerance_arcsec": 1})
    assert answer["result"]["best"] is None
    assert "no-way-fits" in [a["code"] for a in answer["advisories"]]


@pytest.mark.parametrize(
    ("request_", "error", "match"),
    [
        (
            {**EXAMPLE, "ways": {}},
            Disagreement,
            "No way is described",
        ),
        (with_("dressed_wheel", diamond_height=3.2), Impossible, "never reaches the flank's root"),
        (with_("swivelled_workhead", axis_offset=4), Impossible, "misses the wheel"),
        ({**EXAMPLE, "small_diameter": 0.8}, Impossible, "not below the larger one"),
    ],
)
def test_bad_choices_are_refused(
    call: Call, request_: dict[str, Any], error: type[Exception], match: str
) -> None:
    """A choice of nothing, or of what cannot be, is refused with the reason."""
    with pytest.raises(error, match=match):
        call("wheels.choose", **request_)

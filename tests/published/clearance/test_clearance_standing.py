"""What may stand where under the wheel: bodies that no real set-up has are refused or stopped."""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.topics.clearance.tilted_plate import tilted_plate
from halfangle_service.trade.clearance.assembly import Assembly, Head, Stroke
from halfangle_service.trade.clearance.plate import Plate
from halfangle_service.trade.clearance.search import needed_riser, needed_stick_out
from halfangle_service.trade.clearance.turned import Cone, Fixture, TurningPart
from halfangle_service.trade.wording import figure
from support import Call, changed

EXAMPLE: dict[str, Any] = dict(tilted_plate.example)


@pytest.mark.outside(
    "clearance.tilted-plate", source="Coordinates: the plate's corner turned about the low roll"
)
@pytest.mark.parametrize("half_angle", [5, 15, 29.999, 30.1, 45, 60])
@pytest.mark.parametrize("low_roll_from_end", [0.0, 0.25, 0.5, 0.9])
def test_no_plate_is_taken_through_its_base(
    call: Call, half_angle: float, low_roll_from_end: float
) -> None:
    """A plate whose low corner, turned about the low roll, goes below its base is refused."""
    turn = math.radians(half_angle)
    corner = np.array([-low_roll_from_end, 0.0])
    turned = np.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]])
    into_base = -0.25 - (turned @ corner)[1]
    request = changed(
        EXAMPLE,
        included_angle=2 * half_angle,
        plate__low_roll_from_end=low_roll_from_end,
        past_large_end=0.01,
    )
    if into_base > 1e-9:
        with pytest.raises(Impossible, match="low end would go") as refusal:
            call("clearance.tilted-plate", **request)
        assert figure(into_base, "in") + " into" in refusal.value.detail
        most = float(refusal.value.fields["plate/low_roll_from_end"].split()[5])
        assert most == pytest.approx(0.25 / math.sin(turn), rel=1e-3)
    else:
        assert call("clearance.tilted-plate", **request)["result"]["svg"]


def test_where_the_rolls_lie_is_asked_for_where_it_matters(call: Call) -> None:
    """Rolls taken to lie in the middle are said to be, where the plate then tilts into its base."""
    with pytest.raises(Impossible, match="taken to lie in the middle") as refusal:
        call("clearance.tilted-plate", **changed(EXAMPLE, included_angle=90))
    assert refusal.value.fields["plate/low_roll_from_end"].startswith("should be sent, and no more")


def test_a_part_is_what_it_is_whatever_it_is_called() -> None:
    """A turning part called plate, stack, base, cone or shank counts as a turning part."""
    needed = []
    for name in ("dog", "plate", "stack", "base", "cone", "shank"):
        part = TurningPart(name, 1.1, 0.3, -0.1)
        fixture = Fixture(1.5, 3.0, 2.6, 0.625, 0.75, 0.75, 0.375, 1.0, (part,))
        assembly = Assembly(
            Cone(math.radians(30), 0.375, 0.025), fixture, Plate(6.0, 0.75, 2.2, 5.0, 0.5, 0.5)
        )
        head, stroke = Head(3.5, 0.5, 1.5, 1.25, None), Stroke(0.1, 0.25)
        needed.append(needed_stick_out(assembly, head, stroke, "along-travel", 0.1))
        assert needed_riser(assembly, head, stroke, "along-travel", 0.1) == 0.0
    assert needed[0] is not None
    assert needed[0] > 0.75
    assert needed == [needed[0]] * 6


@pytest.mark.parametrize("name", ["plate", "Fixture body", "nose", "shank"])
def test_a_part_called_like_another_body_is_refused(call: Call, name: str) -> None:
    """No two bodies of one answer have one name: it would not say which of them is near."""
    part = {"name": name, "diameter": 1.5, "length": 0.3}
    with pytest.raises(Disagreement, match="Two bodies would be called") as refusal:
        call("clearance.tilted-plate", **changed(EXAMPLE, fixture__turning_parts=[part]))
    assert list(refusal.value.fields) == ["fixture/turning_parts/0/name"]
    dog = {"name": "dog", "diameter": 1.5, "length": 0.3}
    with pytest.raises(Disagreement, match="Two bodies would be called") as refusal:
        call("clearance.tilted-plate", **changed(EXAMPLE, fixture__turning_parts=[dog, dog]))
    assert list(refusal.value.fields) == ["fixture/turning_parts/1/name"]


def test_a_part_that_meets_the_plate_in_its_turn_stops_the_set_up(call: Call) -> None:
    """A dog that swings through the plate, 1.5 in below the axis, is a stop; one less is none."""
    for diameter, stopped in ((2.99, False), (3.01, True)):
        dog = {"name": "dog", "diameter": diameter, "length": 0.1, "behind_face": 0.65}
        answer = call("clearance.tilted-plate", **changed(EXAMPLE, fixture__turning_parts=[dog]))
        codes = [a["code"] for a in answer["advisories"] if a["severity"] == "stop"]
        assert ("turning-part-fouls" in codes) == stopped
        if stopped:
            assert answer["result"]["forecast"] == "does-not-hold"


@pytest.mark.parametrize(
    ("change", "field", "right"),
    [
        ({"plate__center_distance": 127, "plate__length": 150}, "plate/center_distance", "5 in"),
        ({"wheel__diameter": 177.8}, "wheel/diameter", "7 in"),
        ({"units": "mm"}, "plate/center_distance", "127 mm"),
    ],
)
def test_a_slip_of_the_unit_is_refused(
    call: Call, change: dict[str, Any], field: str, right: str
) -> None:
    """A plate of 127 in, a wheel of 177.8 in, and inches sent as millimetres are no such thing."""
    with pytest.raises(Disagreement, match=f"would be {right}") as refusal:
        call("clearance.tilted-plate", **changed(EXAMPLE, **change))
    assert "should be from" in refusal.value.fields[field]


def test_a_change_past_the_limit_is_not_offered(call: Call) -> None:
    """More stick-out than the work may have is no change that would help."""
    near = changed(EXAMPLE, fixture__stick_out=0.2)
    free = call("clearance.tilted-plate", **near)["result"]["changes"]
    assert free[0]["kind"] == "stick-out"
    limited = changed(near, fixture__limit_stick_out=0.25)
    changes = call("clearance.tilted-plate", **limited)["result"]["changes"]
    assert "stick-out" not in [change["kind"] for change in changes]

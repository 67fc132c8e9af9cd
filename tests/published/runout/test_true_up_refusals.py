"""What cannot be tapped true, or was read wrong: refused, the field named."""

from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Impossible
from shaft_support import SWING_SLIDE, Shaft, asked
from support import Call


@pytest.mark.parametrize(
    ("changes", "field", "match"),
    [
        ({"far": {"station": 10}}, "far/station", "no tilt can be told"),
        ({"tap_places": [{"kind": "swing", "station": 80}]}, "tap_places/0/pivot_station", "swing"),
        (
            {"tap_places": [{"kind": "slide", "station": 80, "pivot_station": 0}]},
            "tap_places/0/pivot_station",
            "about no station",
        ),
        (
            {"tap_places": [{"kind": "swing", "station": 5, "pivot_station": 5}]},
            "tap_places/0/station",
            "does not swing",
        ),
        (
            {"tap_places": [{"kind": "slide", "station": 80}, {"kind": "slide", "station": 10}]},
            "tap_places/1",
            "alike",
        ),
        (
            {
                "tap_places": [
                    {"kind": "swing", "station": 80, "pivot_station": 0},
                    {"kind": "swing", "station": 40, "pivot_station": 0},
                ]
            },
            "tap_places/1",
            "alike",
        ),
        (
            {
                "tap_places": [
                    {"kind": "swing", "station": 80, "pivot_station": 0},
                    {"kind": "swing", "station": 80, "pivot_station": 0.01},
                ]
            },
            "tap_places/0/pivot_station",
            "hardly tell",
        ),
        ({"far": {"station": 11}}, "far/station", "tilted by"),
    ],
)
def test_what_tells_or_moves_nothing_is_refused(
    call: Call, changes: dict[str, Any], field: str, match: str
) -> None:
    """Sections at one station, a swing without a pivot, taps that move alike, mistaken units."""
    request = asked(Shaft(0.02 + 0.01j, 0.0004 - 0.0003j, 12.0))
    changed = {
        key: {**request[key], **value} if isinstance(value, dict) else value
        for key, value in changes.items()
    }
    if changed.get("far", {}).get("station") == 11:
        changed["near"] = {**request["near"], "station": 10}
    with pytest.raises(Disagreement, match=match) as refused:
        call("runout.true-up", **{**request, **changed})
    assert field in refused.value.fields


def test_the_pivot_cannot_be_brought_true_by_a_swing(call: Call) -> None:
    """One swing does not move its own pivot: asked to bring that true, it is refused."""
    request = asked(Shaft(0.02 + 0.01j, 0j, 12.0), tap_places=SWING_SLIDE[:1], stations=[-20])
    with pytest.raises(Impossible, match="which no tap here moves") as refused:
        call("runout.true-up", **request)
    assert set(refused.value.fields) == {"tap_places/0", "stations/0"}


def test_bad_readings_are_named_by_index(call: Call) -> None:
    """A stray reading, an angle twice and too few readings, each at its section."""
    part = Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0)
    stray, twice, few = asked(part), asked(part), asked(part)
    stray["far"]["readings"][5]["reading"] += 0.02
    twice["near"]["readings"][3]["angular_position"] = 90
    few["far"]["readings"] = few["far"]["readings"][:4]
    for request, field, match in (
        (stray, "far/readings/5/reading", "reading 6"),
        (twice, "near/readings/3/angular_position", "the same angle"),
        ({**few, "harmonics": 2}, "far/readings", "need 5 readings"),
    ):
        with pytest.raises((Disagreement, Impossible), match=match) as refused:
            call("runout.true-up", **request)
        assert field in refused.value.fields

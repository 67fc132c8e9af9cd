"""What each way of a plan asks of the hand: every caution of it is there, whatever else fits."""

from typing import Any

import pytest

from clearance_support import CONE, DRESSED, GRINDER, SIDE, SOCKET
from halfangle_service.errors import Unreachable
from support import Call

Json = dict[str, Any]
#: What wheels ask for, whoever runs them.
ALWAYS = {"wheel-safety", "dressing-safety", "grinding-dust", "prove-by-hand"}
FACE: Json = {"kind": "angled-face", "face_angle": 20, "rise": 0.4, "tolerance_arcsec": 120}
COMPOUND: Json = {
    "kind": "compound-face",
    "orientation": {"kind": "projected-angles", "x_angle": 12, "y_angle": 20},
    "rise": 0.4,
    "tolerance_arcsec": 120,
}
BLOCKS: Json = {"block_sets": [{"name": "set", "set": "inch-81"}]}
PLATE: Json = {"name": "plate", "center_distance": 5, "largest_angle": 45}
HINGED: Json = {
    "name": "compound plate",
    "base_center_distance": 5,
    "upper_center_distance": 5,
    "base_axis": "x",
}
SPINDLE: Json = {"wheel_diameter": 0.5, "reach": 4, "quill_diameter": 0.375}


def asked(call: Call, feature: Json, **shop: Any) -> set[str]:
    """Codes of the cautions and stops that come with a plan."""
    request = {"units": "in", "job": "HL-0800", "feature": feature, "equipment": shop}
    return {advisory["code"] for advisory in call("jobs.plan", **request)["advisories"]}


@pytest.mark.parametrize(
    ("feature", "shop", "own"),
    [
        (CONE, {"sine_plates": [PLATE], **BLOCKS}, {"magnetic-holding"}),
        (
            {**CONE, "included_angle": 120},
            {"sine_plates": [PLATE], **BLOCKS},
            {"magnetic-holding", "clamped-on-an-upright"},
        ),
        (FACE, {"sine_plates": [PLATE], **BLOCKS}, {"magnetic-holding", "work-may-slide"}),
        (COMPOUND, {"compound_plates": [HINGED], **BLOCKS}, {"magnetic-holding", "work-may-slide"}),
        (CONE, {"dressed_wheels": [DRESSED]}, {"magnetic-holding", "dressed-angle-unproved"}),
        (CONE, {"wheel_sides": [SIDE]}, {"magnetic-holding", "side-grinding-last"}),
        (CONE, {"swivelled_workheads": [GRINDER]}, {"driven-work"}),
        (
            SOCKET,
            {"sine_plates": [PLATE], **BLOCKS, "internal_spindle": SPINDLE},
            {"magnetic-holding", "internal-wheel-speed", "long-quill"},
        ),
    ],
    ids=["plate", "quarter", "face", "compound", "dressed", "side", "workhead", "socket"],
)
def test_each_way_comes_with_its_cautions(
    call: Call, feature: Json, shop: Json, own: set[str]
) -> None:
    """Speed, dust, holding and whatever a way asks of its own are said, and said without others."""
    codes = asked(call, feature, **shop)
    assert ALWAYS | own <= codes
    every = {
        "magnetic-holding",
        "clamped-on-an-upright",
        "work-may-slide",
        "dressed-angle-unproved",
        "side-grinding-last",
        "driven-work",
        "internal-wheel-speed",
        "long-quill",
    }
    assert codes & every == own


def test_a_way_that_is_not_taken_is_cautioned_too(call: Call) -> None:
    """Cautions of the ways behind the best one stand there as well: somebody may take them."""
    shop = {
        "sine_plates": [PLATE],
        **BLOCKS,
        "swivelled_workheads": [GRINDER],
        "wheel_sides": [SIDE],
    }
    codes = asked(call, CONE, **shop)
    assert {"driven-work", "side-grinding-last", "magnetic-holding"} <= codes


@pytest.mark.parametrize("rated", [False, None])
def test_a_side_that_is_not_rated_is_no_way(call: Call, rated: bool | None) -> None:
    """A wheel not stated to be rated for grinding with its side makes nothing, whatever else."""
    side = {name: value for name, value in SIDE.items() if name != "rated_for_side"}
    shop = {"wheel_sides": [side if rated is None else {**side, "rated_for_side": rated}]}
    with pytest.raises(Unreachable, match="rated for grinding with its side") as refused:
        asked(call, CONE, **shop)
    assert set(refused.value.fields) == {"equipment/wheel_sides/0/rated_for_side"}

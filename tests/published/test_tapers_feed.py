"""Feed on a cone, clean-up and stand-off against cut geometry and known constants."""

import math

import numpy as np
import pytest
from mpmath import mp
from shapely.geometry import LineString

from halfangle_service.errors import Disagreement, Impossible
from support import Call


@pytest.mark.outside("tapers.infeed", source="shapely: the flank offset parallel to itself")
@pytest.mark.parametrize("half_degrees", [1.49, 5, 8.297, 30, 45, 59])
def test_infeed_is_an_offset_of_the_flank(call: Call, half_degrees: float) -> None:
    """A flank offset by h cuts a fixed station and the axis where the answer says."""
    slope = math.tan(math.radians(half_degrees))
    flank = LineString([(0, 0), (10, 10 * slope)])
    parallel = flank.parallel_offset(0.01, "right")
    (x0, y0), (x1, y1) = parallel.coords[0], parallel.coords[-1]
    crossing = x0 - y0 * (x1 - x0) / (y1 - y0)
    drop = 5 * slope - (y0 + (5 - x0) * (y1 - y0) / (x1 - x0))
    result = call("tapers.infeed", units="mm", half_angle=half_degrees, amount=0.01)["result"]
    assert result["axial_shift"] == pytest.approx(crossing, rel=1e-6)
    assert result["off_radius"] == pytest.approx(drop, rel=1e-6)


def test_every_measure_of_a_layer_is_the_same_layer(call: Call) -> None:
    """Radius, diameter and axial shift sent back give the downfeed they came from."""
    first = call("tapers.infeed", units="in", included_angle=60, amount=0.001)["result"]
    pairs = {"radius": "off_radius", "diameter": "off_diameter", "axial": "axial_shift"}
    for measure, field in pairs.items():
        back = call(
            "tapers.infeed", units="in", included_angle=60, amount=first[field], amount_is=measure
        )["result"]
        assert back["off_normal"] == pytest.approx(0.001, rel=1e-12)


def test_passes_hold_the_stock_and_the_spark_out(call: Call) -> None:
    """0.0011 in at 0.0002 in a pass is six passes, the last of 0.0001 in, and two to spark out."""
    result = call(
        "tapers.infeed", units="in", included_angle=60, amount=0.0011, downfeed_per_pass=0.0002
    )["result"]
    assert (result["cutting_passes"], result["total_passes"]) == (6, 8)
    assert result["last_pass"] == pytest.approx(0.0001)


def test_a_blunt_part_leaves_stock_at_its_small_end(call: Call) -> None:
    """A part too blunt is touched at its large end first; the wedge is slant times sine."""
    result = call(
        "tapers.infeed",
        units="in",
        half_angle=30,
        amount=0.001,
        length=0.5,
        half_angle_error_arcsec=60,
    )["result"]
    assert result["touches_first"] == "large-end"
    slant = 0.5 / math.cos(math.radians(30 + 60 / 3600))
    assert result["stock_at_small_end"] == pytest.approx(slant * math.sin(math.radians(60 / 3600)))
    assert result["stock_at_large_end"] == 0


@pytest.mark.outside("tapers.clean-up", source="numpy: lowest and highest spot of a sampled cone")
@pytest.mark.parametrize("error", [-300.0, 0.0, 200.0])
def test_clean_up_reaches_the_lowest_spot(call: Call, error: float) -> None:
    """The right cone through the lowest spot of an eccentric, wrong cone has the answered size."""
    half, large, length, wear = math.radians(30), 0.75, 0.55, 0.001
    as_is = half + math.radians(error / 3600)
    z, turn = np.meshgrid(np.linspace(0, length, 300), np.linspace(0, 2 * np.pi, 181))
    swing = 0.0005 + (0.001 - 0.0005) * z / length
    radius = large / 2 - z * np.tan(as_is)
    # A swing square to the surface is that over cos α on the radius.
    spread = swing * np.cos(turn) / np.cos(half) - wear / np.cos(half)
    lowest = float(np.min(radius + spread + z * np.tan(half)))
    result = call(
        "tapers.clean-up",
        units="in",
        half_angle=30,
        large_diameter=large,
        length=length,
        tir_large_end=0.001,
        tir_small_end=0.002,
        half_angle_error_arcsec=error,
        wear=wear,
        least_large_diameter=0.7,
    )["result"]
    assert result["final_large_diameter"] == pytest.approx(2 * lowest, abs=4e-6)
    assert result["forecast"] == "holds"


def test_a_part_without_stock_cannot_be_saved(call: Call) -> None:
    """Stock short of the need is a stop, with the margin below zero."""
    answer = call(
        "tapers.clean-up",
        units="in",
        half_angle=30,
        large_diameter=0.75,
        length=0.5,
        tir_large_end=0.01,
        least_large_diameter=0.749,
    )
    assert answer["result"]["margin_at_large_end"] < 0
    assert "does-not-clean-up" in {a["code"] for a in answer["advisories"]}


@pytest.mark.outside("tapers.standoff", source="mpmath: 1 / (2 tan α) of 60°, 7/24 and 1:10")
@pytest.mark.parametrize(
    ("slope", "tangent"),
    [
        ({"included_angle": 60}, "tan(pi/6)"),
        ({"taper_per_foot": 3.5}, "7/48"),
        ({"one_in_x": 10}, "1/20"),
    ],
)
def test_gauge_line_shift(call: Call, slope: dict[str, float], tangent: str) -> None:
    """The gauge line moves by the diameter's error over twice the tangent."""
    mp.dps = 30
    value = {"tan(pi/6)": mp.tan(mp.pi / 6), "7/48": mp.mpf(7) / 48, "1/20": mp.mpf(1) / 20}
    result = call(
        "tapers.standoff", units="in", kind="external", contact_length=1, diameter_error=1, **slope
    )["result"]
    assert result["standoff"] == pytest.approx(float(1 / (2 * value[tangent])), rel=1e-12)


def test_a_sharp_hole_bears_at_its_mouth(call: Call) -> None:
    """A 59° hole on a 60° plug bears at its mouth; a 61° hole at its small end, the plug out."""
    sharp, blunt = (
        call(
            "tapers.standoff",
            units="mm",
            included_angle=60,
            kind="internal",
            contact_length=5,
            included_angle_error_arcsec=error,
        )["result"]
        for error in (-3600, 3600)
    )
    assert (sharp["bears_at"], sharp["standoff_from_angle"]) == ("large-end", 0)
    assert blunt["bears_at"] == "small-end"
    assert blunt["standoff_from_angle"] > 0
    assert blunt["bluing_marks"] == "at-small-end-only"


def test_refusals_name_what_fails(call: Call) -> None:
    """A cone past its point, slopes that disagree and an error without a length are refused."""
    with pytest.raises(Impossible, match="comes to its point"):
        call("tapers.clean-up", units="in", half_angle=30, large_diameter=0.5, length=1)
    with pytest.raises(Disagreement, match="disagrees with included_angle"):
        call("tapers.infeed", units="in", included_angle=60, half_angle=29, amount=0.001)
    with pytest.raises(Disagreement, match="only over a length"):
        call("tapers.infeed", units="in", half_angle=30, amount=0.1, half_angle_error_arcsec=5)

"""Feed on a cone and clean-up against cut geometry."""

import math

import numpy as np
import pytest
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


@pytest.mark.outside("tapers.infeed", source="numpy: a wheel's line lowered onto sampled flanks")
@pytest.mark.parametrize("half_degrees", [1.49, 8.297, 30, 59])
@pytest.mark.parametrize("error", [-1200.0, -60.0, 60.0, 1200.0])
@pytest.mark.parametrize("measure", ["square-to-surface", "diameter"])
def test_each_end_loses_what_the_wheel_cuts_off_it(
    call: Call, half_degrees: float, error: float, measure: str
) -> None:
    """A wheel lowered from its first touch leaves the right cone, and the ends lose as answered."""
    length, amount = 0.6, 0.001
    half, as_is = math.radians(half_degrees), math.radians(half_degrees + error / 3600)
    z = np.linspace(0, length, 2001)
    part, wheel = 2 - z * math.tan(as_is), -z * math.tan(half)
    touch = float(np.max(part - wheel))
    request = {"half_angle": half_degrees, "amount": amount, "amount_is": measure}
    result = call(
        "tapers.infeed", units="in", length=length, half_angle_error_arcsec=error, **request
    )["result"]
    lowered = wheel + touch - result["total_downfeed"] / math.cos(half)
    off = 2 * (part - np.minimum(part, lowered))
    ends = result["large_end"], result["small_end"]
    first = 0 if error > 0 else 1
    assert result["touches_first"] == ("large-end", "small-end")[first]
    assert [end["off_diameter"] for end in ends] == pytest.approx([off[0], off[-1]], rel=1e-9)
    assert float(np.min(off)) == pytest.approx(result["off_diameter"], rel=1e-9)
    air = (touch - (part - wheel)) * math.cos(half)
    assert [end["gap_at_first_touch"] for end in ends] == pytest.approx([air[0], air[-1]], rel=1e-9)
    assert ends[first]["off_normal"] == pytest.approx(result["total_downfeed"], rel=1e-12)
    assert ends[1 - first]["off_normal"] == pytest.approx(result["off_normal"], rel=1e-12)


def test_ends_that_lose_unequally_are_said_to(call: Call) -> None:
    """With an angle error the answer says in words what each end loses; without one it need not."""
    request = {"units": "in", "half_angle": 30, "amount": 0.001, "length": 0.5}
    off = call("tapers.infeed", half_angle_error_arcsec=60, **request)
    said = next(a for a in off["advisories"] if a["code"] == "ends-lose-unequally")
    assert "0.00270 in at the large end and 0.00231 in at the small end" in said["message"]
    right = call("tapers.infeed", half_angle_error_arcsec=0, **request)
    assert {a["code"] for a in right["advisories"]} == {"wheel-safety"}


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"amount": 0.5}, "deep-stock"),
        ({"downfeed_per_pass": 0.02}, "heavy-pass"),
        ({"amount": 0.05}, "many-passes"),
        ({"units": "mm", "amount": 4}, "deep-stock"),
        ({"units": "mm", "downfeed_per_pass": 0.2}, "heavy-pass"),
    ],
)
def test_a_slip_of_unit_or_point_is_doubted(
    call: Call, changed: dict[str, object], code: str
) -> None:
    """Stock and passes that no wheel takes off a cone are answered, but not in silence."""
    request = {"units": "in", "half_angle": 30, "amount": 0.001, "downfeed_per_pass": 0.0002}
    fed = call("tapers.infeed", **{**request, **changed})
    assert code in {a["code"] for a in fed["advisories"]}
    sane = {a["code"] for a in call("tapers.infeed", **request)["advisories"]}
    assert sane == {"wheel-safety"}


def test_feed_comes_back_as_it_was_typed(call: Call) -> None:
    """Angle and last pass are the figures of the bench, without the noise of their arithmetic."""
    request = {"units": "in", "included_angle": 60, "amount": 0.0011, "downfeed_per_pass": 0.0002}
    result = call("tapers.infeed", **request)["result"]
    assert result["half_angle"]["degrees"] == 30
    assert result["last_pass"] == 0.0001


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
        smallest_large_diameter=0.7,
    )["result"]
    assert result["final_large_diameter"] == pytest.approx(2 * lowest, abs=4e-6)
    assert result["forecast"] == "holds"


@pytest.mark.outside("tapers.clean-up", source="numpy: a sampled cone, its virtual points and tops")
@pytest.mark.parametrize("error", [-300.0, 0.0, 200.0])
def test_clean_up_costs_what_the_cones_show(call: Call, error: float) -> None:
    """Downfeed runs from the highest spot to the lowest; the point loses what the cones show."""
    half, large, length, swing = math.radians(30), 0.75, 0.55, 0.001
    as_is = half + math.radians(error / 3600)
    z, turn = np.meshgrid(np.linspace(0, length, 301), np.linspace(0, 2 * np.pi, 181))
    radius = large / 2 - z * np.tan(as_is) + swing * np.cos(turn) / np.cos(half)
    over = (radius + z * np.tan(half)) * np.cos(half)
    result = call(
        "tapers.clean-up",
        units="in",
        half_angle=30,
        large_diameter=large,
        length=length,
        tir_large_end=2 * swing,
        tir_small_end=2 * swing,
        half_angle_error_arcsec=error,
        wear=0,
        limit_point_loss=0.01,
    )["result"]
    assert result["downfeed_from_first_touch"] == pytest.approx(float(np.ptp(over)), rel=1e-9)
    right = float(np.min(over)) / math.sin(half)
    lost = large / 2 / math.tan(as_is) - right
    assert result["point_loss"] == pytest.approx(lost, rel=1e-9)
    assert result["point_margin"] == pytest.approx(0.01 - lost, rel=1e-9)


def test_a_part_without_stock_cannot_be_saved(call: Call) -> None:
    """Stock short of the need is a stop, with the margin below zero."""
    answer = call(
        "tapers.clean-up",
        units="in",
        half_angle=30,
        large_diameter=0.75,
        length=0.5,
        tir_large_end=0.01,
        smallest_large_diameter=0.749,
    )
    assert answer["result"]["margin_at_large_end"] < 0
    assert "does-not-clean-up" in {a["code"] for a in answer["advisories"]}


def test_refusals_name_what_fails(call: Call) -> None:
    """A cone past its point, slopes that disagree and an error without a length are refused."""
    with pytest.raises(Impossible, match="comes to its point"):
        call("tapers.clean-up", units="in", half_angle=30, large_diameter=0.5, length=1)
    with pytest.raises(Disagreement, match="disagrees with included_angle"):
        call("tapers.infeed", units="in", included_angle=60, half_angle=29, amount=0.001)
    with pytest.raises(Disagreement, match="a gap only over a length"):
        call("tapers.infeed", units="in", half_angle=30, amount=0.1, half_angle_error_arcsec=5)

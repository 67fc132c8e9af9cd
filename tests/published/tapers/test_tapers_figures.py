"""Figures beside the headline of answers about cones and their feed, each worked out apart."""

import math
from typing import Any

import numpy as np
import pytest

from support import Call, assert_values

#: Of 1 in 20 on the diameter: α, and what every slope is stated by.
SIXTH = {"taper_per_foot": 0.6, "one_in_x": 20, "rate_of_taper": 0.05}


@pytest.mark.outside("tapers.angle", source="By hand: tan α = 0.75 / 24")
def test_three_quarters_in_a_foot(call: Call) -> None:
    """3/4 in a foot is 1/32 for each side: α = 0.0312398 rad, 88.2101° from the square."""
    result = call("tapers.angle", text="3/4 per foot")["result"]
    half = math.atan(1 / 32)
    assert half == pytest.approx(0.0312398, abs=5e-8)
    expected = {
        "half_angle_radians": half,
        "complement.degrees": 90 - math.degrees(half),
        "taper_per_foot": 0.75,
        "one_in_x": 16,
        "taper_percent": 6.25,
    }
    assert_values(result, expected)


@pytest.mark.outside("tapers.solve", source="Pythagoras, and 0.6 in a foot is 1 in 20")
@pytest.mark.parametrize("unknown", ["large_diameter", "small_diameter", "length", None])
def test_a_cone_in_all_its_figures(call: Call, unknown: str | None) -> None:
    """From 0.7 to 0.5 at 0.6 in a foot is 4 long and √(4² + 0.1²) along the slope."""
    cone = {"large_diameter": 0.7, "small_diameter": 0.5, "length": 4.0}
    stated: dict[str, float] = {n: v for n, v in cone.items() if n != unknown}
    slope = {} if unknown is None else {"taper_per_foot": 0.6}
    along = {
        "slant_length": math.hypot(4, 0.1),
        "half_angle.degrees": math.degrees(math.atan(0.025)),
    }
    result = call("tapers.solve", units="in", **stated, **slope)["result"]
    assert_values(result, {**cone, **SIXTH, **along})


@pytest.mark.outside("tapers.tolerance", source="By hand: 2 atan(1/40)")
def test_the_tolerated_angle_is_the_cones(call: Call) -> None:
    """1:20 is 2.8642° included."""
    cone = {"units": "mm", "one_in_x": 20, "large_diameter": 40, "length": 80}
    result = call("tapers.tolerance", cone_angle_grade="AT5", **cone)["result"]
    assert_values(result, {"included_angle.degrees": 2 * math.degrees(math.atan(1 / 40))})
    assert result["included_angle"]["degrees"] == pytest.approx(2.8642, abs=5e-5)


@pytest.mark.outside("tapers.tolerance", source="By hand: D − x / 20")
def test_stations_of_a_toleranced_cone(call: Call) -> None:
    """1:20 from 40 mm: 39 mm at 20 mm, 36.5 mm at 70 mm from the large end."""
    cone = {"units": "mm", "one_in_x": 20, "large_diameter": 40, "length": 80}
    result = call(
        "tapers.tolerance", cone_angle_grade="AT5", **cone, stations_from_large_end=[20, 70]
    )["result"]
    expected = {
        "at_stations[0].station_from_large_end": 20,
        "at_stations[0].nominal_diameter": 39,
        "at_stations[1].station_from_large_end": 70,
        "at_stations[1].nominal_diameter": 36.5,
    }
    assert_values(result, expected)


@pytest.mark.outside("tapers.angle", source="By hand: 10 minutes are 600 seconds")
def test_a_tolerance_is_read_with_its_angle(call: Call) -> None:
    """60° ± 0°10′ included may be off by 600″."""
    request = {"text": "60° ± 0°10'", "bare_angle_is": "included"}
    assert call("tapers.angle", **request)["result"]["tolerance_arcsec"] == pytest.approx(600)


@pytest.mark.outside("tapers.infeed", source="Counted by hand")
def test_passes_of_a_feed(call: Call) -> None:
    """0.0011 in by 0.0002 in is five passes and one of 0.0001 in, and three to spark out."""
    request = {"units": "in", "half_angle": 30, "amount": 0.0011, "downfeed_per_pass": 0.0002}
    result = call("tapers.infeed", **request, spark_out_passes=3)["result"]
    assert_values(result, {"cutting_passes": 6, "last_pass": 0.0001, "total_passes": 9})


@pytest.mark.outside("tapers.infeed", source="Right triangle by hand: 1 / sin α, 2 / cos α")
@pytest.mark.parametrize("half", [1.5, 30, 60])
def test_what_a_downfeed_of_one_does(call: Call, half: float) -> None:
    """Fed square to the cone by 1, it moves 1 / sin α along its axis, and loses 2 / cos α."""
    result = call("tapers.infeed", units="in", half_angle=half, amount=0.001)["result"]
    angle = math.radians(half)
    moved = {
        "half_angle.degrees": half,
        "axial_per_downfeed": 1 / math.sin(angle),
        "diameter_per_downfeed": 2 / math.cos(angle),
    }
    assert_values(result, moved)


@pytest.mark.outside("tapers.clean-up", source="numpy: a sampled cone against the right one")
@pytest.mark.parametrize("error", [-300.0, 0.0, 120.0])
@pytest.mark.parametrize("indicated", ["square-to-surface", "radially"])
def test_stock_at_both_ends_in_figures(call: Call, error: float, indicated: str) -> None:
    """What each end needs is from its own mean surface down to the lowest spot of all.

    The part's surface over the right cone through its large end, square to it, is
    u(z) = (tan α − tan α′) z cos α, with runout to either side. An indicator held radially shows
    1 / cos α as much. Passes of 0.0002 in cover the whole from the highest spot.
    """
    half, large, length, wear = math.radians(30), 0.75, 0.6, 0.002
    result = call(
        "tapers.clean-up",
        units="in",
        half_angle=30,
        large_diameter=large,
        length=length,
        tir_large_end=0.001,
        tir_small_end=0.002,
        tir_indicated=indicated,
        half_angle_error_arcsec=error,
        wear=wear,
        smallest_large_diameter=0.74,
        downfeed_per_pass=0.0002,
        spark_out_passes=3,
    )["result"]
    z = np.linspace(0, length, 1001)
    square = 1.0 if indicated == "square-to-surface" else math.cos(half)
    mean = (math.tan(half) - math.tan(half + math.radians(error / 3600))) * z * math.cos(half)
    swing = (0.0005 + 0.0005 * z / length) * square
    lowest = float(np.min(mean - swing)) - wear
    highest = float(np.max(mean + swing))
    needed = -lowest
    passes = math.ceil(round((highest - lowest) / 0.0002, 9))
    available = 0.005 * math.cos(half)
    expected = {
        "needed_at_large_end": needed,
        "needed_at_small_end": float(mean[-1]) - lowest,
        "off_diameter": 2 * needed / math.cos(half),
        "final_large_diameter": large - 2 * needed / math.cos(half),
        "from_runout": 0.001 * square,
        "available_at_large_end": available,
        "margin_at_large_end": available - needed,
        "cutting_passes": passes,
        "total_passes": passes + 3,
    }
    assert_values(result, expected, rel=1e-7)
    assert result["from_angle"] == pytest.approx(abs(float(mean[-1])), rel=1e-7)


GAUGE: dict[str, Any] = {
    "units": "in",
    "taper_per_foot": 3.5,
    "kind": "external",
    "contact_length": 2.5,
    "blue_film": 0.0001,
}


@pytest.mark.outside("tapers.standoff", source="numpy: where the sampled gap is under the film")
def test_the_film_marks_where_the_gap_is_under_it(call: Call) -> None:
    """A plug blunter by 20″ bears at its large end, and marks up to where the gap is the film's.

    The gap grows by (tan α′ − tan α) cos α for each inch.
    """
    result = call("tapers.standoff", **GAUGE, diameter_error=0, included_angle_error_arcsec=40)
    half = math.atan(3.5 / 24)
    blunter = half + math.radians(20 / 3600)
    along = np.linspace(0, 2.5, 1_000_001)
    gap = along * (math.tan(blunter) - math.tan(half)) * math.cos(half)
    marked = float(along[gap <= 0.0001][-1])
    expected = {"marked_length": marked, "marked_share_percent": marked / 0.025}
    assert_values(result["result"], expected, rel=1e-4)


@pytest.mark.outside("tapers.standoff", source="By hand: the side that bears is the blunter one's")
def test_a_gauge_stands_off_along_the_blunter_side(call: Call) -> None:
    """In a ring of 30°, a plug of 31° moves by 1 / (2 tan 15.5°) of the diameter.

    One of 29° moves along the ring's side, which is then the blunter: 1 / (2 tan 15°).
    """
    ring = {"units": "mm", "included_angle": 30, "kind": "external", "contact_length": 20}
    for error, bears in ((0, 15), (3600, 15.5), (-3600, 15)):
        result = call("tapers.standoff", **ring, included_angle_error_arcsec=error)["result"]
        expected = 1 / (2 * math.tan(math.radians(bears)))
        assert result["standoff_per_diameter"] == pytest.approx(expected, rel=1e-9)


@pytest.mark.outside("tapers.standoff", source="First order by hand: 2 f cos α over the length")
@pytest.mark.parametrize("sign", [1, -1])
def test_the_least_error_that_a_film_shows_is_just_shown(call: Call, sign: int) -> None:
    """An error a hair over it leaves an end unmarked, one a hair under marks all over.

    To the first order it is 2 f cos α over the length: 0.0001 in over 2.5 in shows 16.3″.
    """
    least = call("tapers.standoff", **GAUGE)["result"]["smallest_error_shown_arcsec"]
    first_order = math.degrees(2 * 0.0001 * math.cos(math.atan(3.5 / 24)) / 2.5) * 3600
    assert least == pytest.approx(first_order, rel=1e-3)
    marks = [
        call("tapers.standoff", **GAUGE, included_angle_error_arcsec=sign * least * share)
        for share in (0.999, 1.001)
    ]
    under, over = (answer["result"] for answer in marks)
    assert under["bluing_marks"] == "all-over"
    assert over["bluing_marks"] != "all-over"
    assert over["marked_share_percent"] == pytest.approx(100, abs=0.2)


@pytest.mark.outside("tapers.set-over", source="Sine against tangent, and settings by hand")
def test_settings_of_each_way(call: Call) -> None:
    """1 in a foot over 9 in: 9 sin α off center, 12 tan α over 12 in, 6 α round the swivel.

    The shop's rule takes 9 tan α for 9 sin α, which turns α to asin(1/24), 7.46″ more.
    """
    result = call(
        "tapers.set-over",
        units="in",
        taper_per_foot=1,
        work_length=9,
        scale_radius=6,
        scale_reading_error_limit=0.005,
        set_over_error_limit=0.002,
        attachment_length=12,
        attachment_error_limit=0.005,
    )["result"]
    half = math.atan(1 / 24)
    settings = {way["way"]: way["setting"] for way in result["ways"]}
    assert settings == pytest.approx(
        {
            "tailstock-set-over": 9 * math.sin(half),
            "taper-attachment": 0.5,
            "swivel": 6 * half,
        }
    )
    more = math.degrees(math.asin(1 / 24) - half) * 3600
    assert more == pytest.approx(7.46, abs=0.005)
    assert result["rule_error_arcsec"] == pytest.approx(more)


@pytest.mark.outside("tapers.identify", source="Morse No. 2, 0.59941 in a foot, by hand")
def test_what_would_explain_a_misfit(call: Call) -> None:
    """0.1 in over 2 in is 1 in 20; a Morse No. 2 has 0.0999017 in there, 0.0000983 in less.

    Its 0.1 in would take 24 × 0.05 / 0.59941 = 2.0019686 in, 0.0019686 in more than was measured.
    """
    result = call(
        "tapers.identify", units="in", large_diameter=0.699, small_diameter=0.599, length=2
    )["result"]
    assert_values(
        result,
        {
            "included_angle.degrees": 2 * math.degrees(math.atan(1 / 40)),
            "one_in_x": 20,
            "rate_of_taper": 0.05,
            "taper_per_foot": 0.6,
        },
    )
    morse = next(
        candidate
        for candidate in result["candidates"]
        if "morse-2" in [name["designation"] for name in candidate["names"]]
    )
    angle = 2 * (math.atan(1 / 40) - math.atan(0.59941 / 24))
    expected = {
        "taper_per_foot": 0.59941,
        "misfit_on_diameter": 0.1 - 0.59941 / 6,
        "length_error_to_explain": 1.2 / 0.59941 - 2,
        "misfit_arcsec": math.degrees(angle) * 3600,
    }
    assert_values(morse, expected, rel=1e-8)

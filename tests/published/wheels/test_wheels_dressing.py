"""Dressing and wheel speed against published worked examples and rules."""

import math
from typing import Any

import pytest
from pydantic import ValidationError
from shapely.geometry import LineString, Point

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.tables.wheels.guides import guides
from halfangle_service.trade.tables.wheels.start_checks import start_checks
from support import Call

#: The wheel of the worked example that both checks use.
DIAMOND: dict[str, Any] = {
    "units": "mm",
    "rpm": 1410,
    "nose_radius": 0.38,
    "depth_per_pass": 0.025,
    "width_to_dress": 25,
}
WHEEL: dict[str, Any] = {"units": "in", "wheel_diameter": 7, "rpm": 3450}


@pytest.mark.outside("wheels.dressing", source="Published worked example of dresser overlaps")
@pytest.mark.parametrize(("overlap", "traverse"), [(2, 192.5), (4, 96.25)])
def test_traverse_for_an_overlap(call: Call, overlap: float, traverse: float) -> None:
    """Radius 0.38 mm, depth 0.025 mm, 1410 per minute: 192.5 mm/min for 2 overlays, 96.25 for 4.

    The example rounds the half width to 0.137 mm; its width of 0.273 mm is 0.7 % above the chord.
    """
    result = call("wheels.dressing", **DIAMOND, overlap_ratio=overlap)["result"]
    assert result["traverse"] == pytest.approx(traverse, rel=8e-3)
    width = call(
        "wheels.dressing",
        **{**DIAMOND, "nose_radius": None, "active_width": 0.273},
        overlap_ratio=overlap,
    )["result"]
    assert width["traverse"] == pytest.approx(traverse, abs=0.05)


@pytest.mark.outside("wheels.dressing", source="shapely: a circle cut by the wheel's surface")
def test_active_width_and_cusps_are_chords_of_the_nose(call: Call) -> None:
    """The width is the chord at the depth; the cusp the height at which two noses meet."""
    result = call("wheels.dressing", **DIAMOND, overlap_ratio=3)["result"]
    nose = Point(0, 0.38).buffer(0.38, quad_segs=20_000)
    surface = LineString([(-1, 0.025), (1, 0.025)])
    assert nose.intersection(surface).length == pytest.approx(result["active_width"], rel=1e-6)
    lead = result["lead"]
    meeting = LineString([(lead / 2, -1), (lead / 2, 0.38)]).intersection(nose).bounds[1]
    assert result["cusp_height"] == pytest.approx(meeting, abs=1e-9)
    assert result["cusp_height"] == pytest.approx(lead**2 / (8 * 0.38), rel=1e-2)


def test_traverse_and_overlap_return(call: Call) -> None:
    """The traverse found for an overlap ratio gives that overlap ratio back; so does a purpose."""
    traverse = call("wheels.dressing", **DIAMOND, overlap_ratio=3.5)["result"]["traverse"]
    back = call("wheels.dressing", **DIAMOND, traverse=traverse)["result"]
    assert back["overlap_ratio"] == pytest.approx(3.5)
    named = call("wheels.dressing", **DIAMOND, purpose="general")["result"]
    assert named["overlap_ratio"] == pytest.approx(3.5)
    assert [g["purpose"] for g in named["guides"] if g["within_guide"]] == ["general"]


def test_guide_values_go_from_coarse_to_fine() -> None:
    """Overlap rises and depth falls from roughing to finishing; every row names its source."""
    rows = list(guides().values())
    assert [row.purpose for row in rows] == ["roughing", "general", "finishing"]
    assert [r.overlap_low for r in rows] == sorted(r.overlap_low for r in rows)
    assert [r.depth_high_mm for r in rows] == sorted((r.depth_high_mm for r in rows), reverse=True)
    assert all(row.source and row.standing == "from-memory" for row in rows)


@pytest.mark.parametrize(
    ("change", "error", "match"),
    [
        ({}, Disagreement, "`traverse` and `purpose` is needed; they are all missing"),
        ({"overlap_ratio": 2, "traverse": 10}, Disagreement, "were sent together"),
        ({"overlap_ratio": 2, "active_width": 0.2}, Disagreement, "were sent together"),
        ({"overlap_ratio": 2, "depth_per_pass": 0.5}, Impossible, "shank would touch the wheel"),
        ({"overlap_ratio": 2, "rpm": 0}, ValidationError, "greater than or equal to 1"),
    ],
)
def test_bad_dressings_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], match: str
) -> None:
    """A dress that is not fully stated, contradicts itself or cannot be is refused."""
    with pytest.raises(error, match=match):
        call("wheels.dressing", **{**DIAMOND, **change})


def test_a_dress_too_long_for_one_diamond_is_told(call: Call) -> None:
    """740 passes of 0.0005 in, 0.37 in deep, do not pass in silence; ten of them do."""
    request: dict[str, Any] = {
        "units": "in",
        "rpm": 3450,
        "nose_radius": 0.015,
        "depth_per_pass": 0.0005,
        "overlap_ratio": 3,
        "width_to_dress": 0.5,
    }
    long = call("wheels.dressing", **request, passes=740)
    words = {a["code"]: a["message"] for a in long["advisories"]}["long-dress"]
    assert words.startswith("740 passes take 0.37 in off the wheel.")
    assert "Past 100 passes or 0.098 in" in words
    assert long["result"]["total_depth"] == 0.37
    short = call("wheels.dressing", **request, passes=10)
    assert "long-dress" not in [a["code"] for a in short["advisories"]]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"nose_radius": 9.6}, "nose_radius is 9.6 mm, usual are 0.02 to 5 mm"),
        ({"width_to_dress": 635}, "width_to_dress is 635 mm, usual are 0.5 to 300 mm"),
    ],
)
def test_unusual_sizes_name_what_is_usual(call: Call, change: dict[str, Any], words: str) -> None:
    """A size of the wrong unit is asked after, with what is usual."""
    answer = call("wheels.dressing", **{**DIAMOND, **change}, overlap_ratio=2)
    asked = {a["code"]: a["message"] for a in answer["advisories"]}["unusual-size"]
    assert words in asked


def test_a_thread_is_named(call: Call) -> None:
    """An overlap below 1 leaves a thread, and the answer says so."""
    answer = call("wheels.dressing", **DIAMOND, overlap_ratio=0.8)
    assert "thread-left" in [a["code"] for a in answer["advisories"]]


@pytest.mark.outside("wheels.speed", source="Published worked example: 16 in at 1410 per minute")
def test_surface_speed_of_a_published_example(call: Call) -> None:
    """A 16 in (406 mm) wheel at 1410 per minute runs at 5900 ft/min, 30 m/s."""
    result = call("wheels.speed", units="in", wheel_diameter=16, rpm=1410)["result"]
    assert result["surface_speed_ft_per_min"] == pytest.approx(5900, abs=50)
    assert result["surface_speed_m_per_s"] == pytest.approx(30, abs=0.5)
    metric = call("wheels.speed", units="mm", wheel_diameter=406, rpm=1410)["result"]
    assert metric["surface_speed_m_per_s"] == pytest.approx(30, abs=0.5)


@pytest.mark.outside("wheels.speed", source="Arithmetic by hand: π × 7/12 ft × 3450 per minute")
def test_speed_both_ways(call: Call) -> None:
    """7 in at 3450 per minute is 6322 ft/min or 32.1 m/s, and either speed gives 3450 back."""
    result = call("wheels.speed", **WHEEL)["result"]
    assert result["surface_speed_ft_per_min"] == pytest.approx(math.pi * 7 / 12 * 3450)
    assert result["surface_speed_m_per_s"] == pytest.approx(32.1, abs=0.05)
    for name in ("surface_speed_m_per_s", "surface_speed_ft_per_min"):
        back = call("wheels.speed", units="in", wheel_diameter=7, **{name: result[name]})
        assert back["result"]["rpm"] == pytest.approx(3450)


@pytest.mark.parametrize(
    ("marks", "forecast", "not_stated"),
    [
        ({"marked_rpm": 3600, "wheel_type": "1-straight"}, "holds", []),
        ({"marked_rpm": 3450, "wheel_type": "1-straight"}, "holds", []),
        ({"marked_rpm": 3400, "wheel_type": "1-straight"}, "does-not-hold", []),
        ({"marked_rpm": 3400}, "does-not-hold", ["wheel_type"]),
        (
            {"marked_m_per_s": 32, "wheel_type": "1-straight"},
            "does-not-hold",
            ["new_diameter"],
        ),
        (
            {"marked_ft_per_min": 6500, "wheel_type": "1-straight"},
            "not-stated",
            ["new_diameter"],
        ),
        (
            {"marked_ft_per_min": 6500, "wheel_type": "1-straight", "new_diameter": 7},
            "holds",
            [],
        ),
        (
            {"marked_rpm": 3600, "largest_machine_rpm": 3000, "wheel_type": "1-straight"},
            "does-not-hold",
            [],
        ),
        ({"largest_machine_rpm": 3600, "wheel_type": "1-straight"}, "not-stated", ["marked_rpm"]),
        ({"wheel_type": "1-straight"}, "not-stated", ["marked_rpm"]),
        ({"marked_rpm": 3600}, "may-not-hold", ["wheel_type"]),
        ({}, "not-stated", ["marked_rpm", "wheel_type"]),
        (
            {"marked_rpm": 3600, "wheel_type": "6-straight-cup", "grinding_side": True},
            "not-stated",
            ["rated_for_side"],
        ),
        (
            {
                "marked_rpm": 3600,
                "wheel_type": "1-straight",
                "grinding_side": True,
                "rated_for_side": False,
            },
            "does-not-hold",
            [],
        ),
        (
            {
                "marked_rpm": 3600,
                "wheel_type": "6-straight-cup",
                "grinding_side": True,
                "rated_for_side": True,
            },
            "holds",
            [],
        ),
    ],
)
def test_forecast_never_softens(
    call: Call, marks: dict[str, Any], forecast: str, not_stated: list[str]
) -> None:
    """Over any mark does not hold; without a mark, type or rating nothing is said to hold."""
    answer = call("wheels.speed", **WHEEL, **marks)
    assert answer["result"]["forecast"] == forecast
    assert answer["result"]["not_stated"] == not_stated
    codes = [a["code"] for a in answer["advisories"]]
    stops = [a for a in answer["advisories"] if a["severity"] == "stop"]
    assert bool(stops) == (forecast == "does-not-hold" or "rated_for_side" in not_stated)
    assert ("wheel-unknown" in codes) == bool(set(not_stated) - {"new_diameter"})
    assert ("new-diameter-unknown" in codes) == ("new_diameter" in not_stated)
    assert codes.count("wheel-safety") == 1


@pytest.mark.parametrize(
    ("rated", "forecast"), [(None, "not-stated"), (False, "does-not-hold"), (True, "holds")]
)
def test_side_is_judged_only_where_it_grinds(call: Call, rated: bool | None, forecast: str) -> None:
    """The side's forecast follows its rating, and is null where the side is not to grind."""
    asked = call("wheels.speed", **WHEEL, grinding_side=True, rated_for_side=rated)
    assert asked["result"]["side_forecast"] == forecast
    unasked = call("wheels.speed", **WHEEL, rated_for_side=rated)
    assert unasked["result"]["side_forecast"] is None


def test_marks_hold_for_the_new_diameter(call: Call) -> None:
    """A worn wheel may not be sped up past its mark, though its surface speed has fallen."""
    marks: dict[str, Any] = {"marked_m_per_s": 33, "wheel_type": "1-straight"}
    worn = {"units": "in", "wheel_diameter": 6, "new_diameter": 7, "rpm": 4000}
    assert call("wheels.speed", **worn, **marks)["result"]["forecast"] == "does-not-hold"
    new = {"worn_diameter": 6, "new_diameter": 7}
    result = call("wheels.speed", **WHEEL, **marks, **new)["result"]["worn"]
    assert result["rpm_to_restore"] is None
    assert "4025" in result["reason"]
    assert result["surface_speed_m_per_s"] == pytest.approx(32.12 * 6 / 7, abs=0.01)
    free = call("wheels.speed", **WHEEL, marked_rpm=4100, worn_diameter=6)["result"]["worn"]
    assert free["rpm_to_restore"] == pytest.approx(4025)
    marks = {"marked_m_per_s": 40}
    unknown = call("wheels.speed", **WHEEL, **marks, worn_diameter=6)["result"]["worn"]
    assert (unknown["rpm_to_restore"], "new_diameter" in unknown["reason"]) == (None, True)


def test_a_speed_that_no_wheel_runs_at_is_asked_after(call: Call) -> None:
    """A 7 mm wheel at 3450 per minute runs at 1.26 m/s: inches taken for millimetres are told."""
    slip = call("wheels.speed", **{**WHEEL, "units": "mm"})
    words = {a["code"]: a["message"] for a in slip["advisories"]}
    assert "1.264 m/s; wheels are run at 5 to 160 m/s" in words["unusual-speed"]
    assert "wheel_diameter is 7 mm" in words["unusual-size"]
    assert "unusual-speed" not in [a["code"] for a in call("wheels.speed", **WHEEL)["advisories"]]


@pytest.mark.outside("wheels.speed", source="OAR 437-004-2100(4)(b): flanges, a third of the wheel")
def test_small_flanges_are_a_stop(call: Call) -> None:
    """Flanges below a third of a straight wheel's diameter are a stop, and nothing holds then."""
    marked = {**WHEEL, "wheel_type": "1-straight", "marked_rpm": 3600}
    for flange, wrong in ((7 / 3, False), (2.3, True)):
        answer = call("wheels.speed", **marked, flange_diameter=flange)
        assert ("flange-too-small" in [a["code"] for a in answer["advisories"]]) == wrong
        assert answer["result"]["forecast"] == ("does-not-hold" if wrong else "holds")


def test_start_checks_name_their_sources(call: Call) -> None:
    """The checks before starting name ring test, guard and run-up, each with its source."""
    words = " ".join(check.action for check in start_checks())
    assert all(name in words for name in ("ring-test", "Guard", "one minute", "flanges"))
    assert {check.standing for check in start_checks()} == {"published", "from-memory"}
    assert len(call("wheels.speed", **WHEEL)["result"]["before_starting"]) == len(start_checks())


@pytest.mark.parametrize(
    ("change", "error", "match"),
    [
        ({"rpm": 0}, ValidationError, "greater than or equal to 1"),
        ({"rpm": None}, Disagreement, "One of `rpm`, .* is needed; they are all missing"),
        ({"surface_speed_m_per_s": 30}, Disagreement, "were sent together"),
        ({"worn_diameter": 8}, Impossible, "does not wear to 8"),
        ({"new_diameter": 6}, Impossible, "was not 6 in when new"),
        ({"wheel_diameter": 127}, Disagreement, "127 mm would be 5 in"),
        ({"wheel_diameter": 0.01}, Disagreement, "No grinding wheel has a diameter of 0.01 in"),
    ],
)
def test_bad_speeds_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], match: str
) -> None:
    """Zero speed, no speed, two speeds and growing wheels are refused with the reason."""
    with pytest.raises(error, match=match):
        call("wheels.speed", **{**WHEEL, **change})

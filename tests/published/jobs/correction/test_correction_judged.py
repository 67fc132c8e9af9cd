"""What a correction leaves, forecasts, ranks and refuses."""

import math

import pytest
from scipy import stats

from correction_support import CONTACT, example, measured
from estimates_support import assert_found
from support import Call, assert_values


# Agreement with the single operations -------------------------------------------------------------
@pytest.mark.parametrize("arcsec", [-47.0, 31.0])
def test_a_stack_is_changed_as_sine_correction_changes_it(call: Call, arcsec: float) -> None:
    """One stack, one plate: change, new height and blocks are those of the single operation."""
    ours = call("jobs.correction", **example(measured=measured(arcsec)))["result"]["settings"][0]
    single = call(
        "sine.correction",
        units="in",
        center_distance=5,
        angle=30,
        measured_error_arcsec=arcsec,
        blocks=[2, 0.5],
        set="inch-81",
    )["result"]
    for name in ("height_now", "height_change", "new_height"):
        assert ours["height"][name] == single[name]
    [stack] = ours["height"]["stacks"]
    for name in ("remove", "add", "blocks", "total"):
        assert stack[name] == single["swap"][name]
    left = single["swap"]["remaining_error_arcsec"]
    assert ours["expected_error_arcsec"]["value"] == pytest.approx(left, rel=1e-4)


def test_seats_are_those_of_runout_reversal(call: Call) -> None:
    """Socket and part, the clocking and what it leaves are those of the single operation."""
    reads = {
        "at_0": {"tir": 0.01, "high_spot": 30, "eccentricity_standard_uncertainty": 1e-4},
        "at_180": {"tir": 0.004, "high_spot": 200, "eccentricity_standard_uncertainty": 2e-4},
    }
    seats = call(
        "jobs.correction",
        units="mm",
        measured={"kind": "reseating", "surface": "internal", **reads},
    )["result"]["seats"]
    single = call("runout.reversal", units="mm", surface="internal", **reads)["result"]
    assert_found(seats["socket_tir"], single["socket_tir"]["value"], [(1e-4, 1), (2e-4, 1)])
    assert_found(seats["part_tir"], single["part_tir"]["value"], [(1e-4, 1), (2e-4, 1)])
    assert seats["best_clocking_tir"] == single["best_clocking_tir"]
    for name in ("best_clocking", "socket_off_toward", "part_off_toward"):
        assert seats[name]["degrees"] == single[name]["degrees"]


# Figures ------------------------------------------------------------------------------------------
@pytest.mark.outside("jobs.correction", source="Law of propagation, JCGM 100:2008, 5.1.2, by hand")
def test_estimates_by_the_law_of_propagation(call: Call) -> None:
    """A normal error of the included angle counts half in the half angle, all in the included."""
    request = example(
        measured={
            "kind": "angle",
            "measured_included_angle": "59 59 00",
            "standard_uncertainty_arcsec": 4,
        }
    )
    result = call("jobs.correction", **request)["result"]
    assert_found(result["angle_error_arcsec"], -30, [(4, 0.5)])
    assert_found(result["included_angle_error_arcsec"], -60, [(4, 1)])
    [setting] = result["settings"]
    assert_found(setting["angle_error_arcsec"], -30, [(4, 0.5)])
    missed = setting["height"]["stacks"][0]["total"] - setting["height"]["new_height"]
    left = missed / (5 * math.cos(math.pi / 6)) * math.degrees(1) * 3600
    for field, counted in (
        (setting["expected_error_arcsec"], 1.0),
        (result["expected_included_angle_error_arcsec"], 2.0),
    ):
        parts = [2 * counted, counted * 3 / math.sqrt(3)]
        spread = math.hypot(*parts)
        # Of a normal and a rectangular error: scipy's convolution by numbers, to 1 %.
        grid = stats.uniform(-3 * counted, 6 * counted)
        points = [grid.ppf((k + 0.5) / 400) for k in range(400)]
        width = field["expanded_uncertainty"]
        inside = sum(
            stats.norm.cdf((width - p) / parts[0]) - stats.norm.cdf((-width - p) / parts[0])
            for p in points
        )
        assert inside / 400 == pytest.approx(0.95, abs=1e-3)
        figures = {
            "value": counted * left,
            "standard_uncertainty": spread,
            "coverage_factor": width / spread,
            "coverage_probability": 0.95,
            "worst_case": abs(counted * left) + 3 * parts[0] + 3 * counted,
        }
        assert_values(field, figures, rel=1e-3)
        rows = zip(field["contributions"], (4, 3), (0.5, 1), parts, (3, 3**0.5), strict=True)
        for row, value, by, part, reach in rows:
            figures = {
                "input_value": value,
                "sensitivity": counted * by,
                "standard_uncertainty": part,
                "worst_case": reach * part,
                "share_percent": 100 * part**2 / spread**2,
            }
            assert_values(row, figures)


@pytest.mark.outside("jobs.correction", source="Finite differences of the geometry, by hand")
def test_what_a_contact_leaves_open(call: Call) -> None:
    """Each error of gap, film, share and gauge moves the half angle as differences show."""
    half, length = math.radians(30), 2.0

    def error(gap: float) -> float:
        return (math.atan(math.tan(half) + gap / length) - half) * math.degrees(1) * 3600

    by_gap = {**CONTACT, "gap_at_other_end": 0.0004, "gap_error_limit": 0.0001}
    by_film = {
        **CONTACT,
        "marked_share_percent": 40,
        "marked_share_error_limit_percent": 5,
        "blue_film": 0.0001,
        "blue_film_error_limit": 0.00002,
        "gauge_angle_error_limit_arcsec": 2,
    }
    found = call("jobs.correction", **example(measured=by_gap))["result"]["angle_error_arcsec"]
    assert found["value"] == pytest.approx(error(0.0004))
    [row] = found["contributions"]
    assert row["sensitivity"] == pytest.approx((error(0.0005) - error(0.0003)) / 0.0002, rel=1e-4)
    assert found["not_stated"] == ["measured/gauge_angle_error_limit_arcsec"]
    found = call("jobs.correction", **example(measured=by_film))["result"]["angle_error_arcsec"]

    def gap(share: float, film: float) -> float:
        return film / (share / 100 * math.cos(half))

    assert found["value"] == pytest.approx(error(gap(40, 0.0001)))
    share, film, gauge = found["contributions"]
    slope = (error(gap(40.01, 1e-4)) - error(gap(39.99, 1e-4))) / 0.02
    assert share["sensitivity"] == pytest.approx(slope, rel=1e-4)
    slope = (error(gap(40, 1.001e-4)) - error(gap(40, 0.999e-4))) / 2e-7
    assert film["sensitivity"] == pytest.approx(slope, rel=1e-4)
    assert gauge["sensitivity"] == 0.5
    assert found["not_stated"] == []


@pytest.mark.outside("jobs.correction", source="tapers.standoff: the other way round")
def test_a_marked_share_is_the_one_that_standoff_marks(call: Call) -> None:
    """A plug that is blunter by 20″ of included angle marks the share that gives 10″ back."""
    shown = call(
        "tapers.standoff",
        units="in",
        kind="external",
        half_angle=8,
        contact_length=2,
        blue_film=0.00005,
        included_angle_error_arcsec=20,
    )["result"]
    found = call(
        "jobs.correction",
        units="in",
        work={"kind": "cone", "half_angle": 8},
        measured={
            **CONTACT,
            "marked_share_percent": shown["marked_share_percent"],
            "blue_film": 0.00005,
        },
    )["result"]["angle_error_arcsec"]
    assert found["value"] == pytest.approx(10, rel=1e-3)


# Judgements ---------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("arcsec", "leave"), [(9.4, True), (-9.4, True), (9.6, False), (-9.6, False)]
)
def test_what_is_within_its_uncertainty_is_left(call: Call, arcsec: float, leave: bool) -> None:
    """An error of up to 0.95 of a rectangular limit is left, and the set-up stays as it is."""
    request = example(measured=measured(arcsec, measurement_error_limit_arcsec=10))
    result = call("jobs.correction", **request)["result"]
    assert result["leave_it"] is leave
    [setting] = result["settings"]
    assert setting["leave_it"] is leave
    assert (setting["height"] is None) is leave
    if leave:
        assert setting["expected_error_arcsec"]["value"] == pytest.approx(arcsec)


def test_what_is_left_has_no_error_of_a_setting_made_anew(call: Call) -> None:
    """Nothing is set anew, so nothing of that is missing, and what was measured is the forecast."""
    tight = {"kind": "cone", "included_angle": 60, "included_angle_tolerance_arcsec": 30}
    for limit in (None, 20):
        left = example(
            work=tight,
            measured=measured(2, measurement_error_limit_arcsec=10),
            setting_error_limit_arcsec=limit,
        )
        result = call("jobs.correction", **left)["result"]
        assert result["leave_it"] is True
        expected = result["expected_included_angle_error_arcsec"]
        assert expected["not_stated"] == []
        assert [row["input_value"] for row in expected["contributions"]] == [10]
        assert result["forecast"] == "holds"


def test_nothing_is_judged_by_what_was_not_stated(call: Call) -> None:
    """Without an uncertainty nothing is said to leave, and no forecast holds; each is named."""
    result = call("jobs.correction", **example(measured=measured(1)))["result"]
    assert result["leave_it"] is None
    assert result["forecast"] == "may-not-hold"
    named = result["settings"][0]["expected_error_arcsec"]["not_stated"]
    assert named == ["measured/standard_uncertainty_arcsec"]
    without = example(setting_error_limit_arcsec=None)
    result = call("jobs.correction", **without)["result"]
    assert result["forecast"] == "may-not-hold"
    named = result["settings"][0]["expected_error_arcsec"]["not_stated"]
    assert named == ["setting_error_limit_arcsec"]
    no_tolerance = example(work={"kind": "cone", "included_angle": 60})
    assert call("jobs.correction", **no_tolerance)["result"]["forecast"] is None


def test_contact_all_over_is_left_as_far_as_the_film_tells(call: Call) -> None:
    """A film marked all over proves no error, and none below what it still marks all over."""
    request = example(measured={**CONTACT, "touches": "both-ends", "blue_film": 0.0001})
    result = call("jobs.correction", **request)["result"]
    assert result["sense"] == "alike"
    assert result["leave_it"] is True
    limit = 0.0001 * math.cos(math.radians(30)) / 2 * math.degrees(1) * 3600
    assert result["angle_error_arcsec"]["contributions"][0]["worst_case"] == pytest.approx(limit)
    bare = call("jobs.correction", **example(measured={**CONTACT, "touches": "both-ends"}))
    assert bare["result"]["leave_it"] is None


@pytest.mark.parametrize(
    ("surface", "touches", "sense"),
    [
        ("external", "large-end", "larger"),
        ("external", "small-end", "smaller"),
        ("internal", "large-end", "smaller"),
        ("internal", "small-end", "larger"),
    ],
)
def test_contact_alone_says_which_way(call: Call, surface: str, touches: str, sense: str) -> None:
    """Without gap or mark only the sense is known: no change is made up."""
    request = example(measured={**CONTACT, "surface": surface, "touches": touches})
    result = call("jobs.correction", **request)["result"]
    assert result["sense"] == sense
    assert result["angle_error_arcsec"] is None
    assert result["settings"] == []
    assert result["leave_it"] is None


def test_work_that_keeps_its_limit_is_not_clocked(call: Call) -> None:
    """Within the limit as it is read it is left; past it the best clocking is forecast."""
    reads = {
        "at_0": {"tir": 0.0002, "high_spot": 30, "eccentricity_standard_uncertainty": 1e-5},
        "at_180": {"tir": 0.0006, "high_spot": 100, "eccentricity_standard_uncertainty": 1e-5},
    }
    request = {"units": "in", "measured": {"kind": "reseating", "surface": "external", **reads}}
    for limit, leave in ((0.00025, True), (0.0002, False)):
        request["measured"]["limit_tir"] = limit  # type: ignore[index]
        result = call("jobs.correction", **request)["result"]
        assert result["leave_it"] is leave
        assert result["forecast"] == "holds"

"""Parts tapped true: simulated in space, tapped as said, read again."""

import cmath
import json
import math
from typing import Any

import numpy as np
import pytest
from scipy import stats

from shaft_support import EIGHT, SWING_SLIDE, TWO_SWINGS, Shaft, asked
from support import Call, assert_values

SOURCE = "Brute force: a slanting cylinder in space, read by an indicator, turned and shifted"


@pytest.mark.outside("runout.true-up", source=SOURCE)
@pytest.mark.parametrize("surface", ["external", "internal"])
@pytest.mark.parametrize("places", [SWING_SLIDE, SWING_SLIDE[::-1], TWO_SWINGS])
@pytest.mark.parametrize("toward", [25.0, 155.0, 290.0])
def test_each_tap_gives_the_readings_said(
    call: Call, surface: str, places: list[dict[str, Any]], toward: float
) -> None:
    """After each tap every reading is as it was said, and after the last the part runs true."""
    part = Shaft(
        cmath.rect(0.003, math.radians(toward)),
        cmath.rect(0.00004, 2.6),
        12.0,
        surface,
        ((2, 0.00012, 0.4), (3, 0.00008, 1.9)),
    )
    request = asked(part, tap_places=places, harmonics=3)
    result = call("runout.true-up", **request)["result"]
    assert result["tilt_arcsec"] == pytest.approx(0.00004 * 206264.806, rel=1e-3)
    for tap in result["taps"]:
        assert not tap["leave_it"]
        before, part = part, part.tapped([tap])
        for name, station in (("near", 10.0), ("far", 80.0)):
            said, shown = tap[name], part.dial(station, EIGHT)
            assert said["expected_readings"] == pytest.approx(shown, abs=2e-6)
            assert said["tir_of_readings"] == pytest.approx(np.ptp(shown), abs=3e-6)
            assert said["tir"] == pytest.approx(2 * abs(part.center(station)), abs=2e-6)
            side = np.array([tap["tap_from"]["degrees"]])
            moved = part.dial(station, side) - before.dial(station, side)
            assert said["indicator_change"] == pytest.approx(moved[0], abs=2e-6)
            if abs(part.center(station)) > 0.0005:
                shown_high = math.degrees(cmath.phase(part.center(station))) % 360
                high = (shown_high + (180 if surface == "internal" else 0)) % 360
                assert said["high_spot"]["degrees"] == pytest.approx(high, abs=0.1)
    for station in (-20.0, 10.0, 80.0, 140.0):
        assert abs(part.center(station)) < 1e-6
    for name, station in (("near", 10.0), ("far", 80.0)):
        form = np.ptp(part.dial(station, EIGHT))
        assert result[name]["tir_left_after_tapping"] == pytest.approx(form, abs=3e-6)


def test_the_sign_of_a_bore_is_the_other_way(call: Call) -> None:
    """The same readings on a shaft and in a bore: tapped from opposite sides by the same amount."""
    request = asked(Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0))
    shaft = call("runout.true-up", **request)["result"]["taps"]
    bore = call("runout.true-up", **{**request, "surface": "internal"})["result"]["taps"]
    for one, other in zip(shaft, bore, strict=True):
        assert one["tap_distance"]["value"] == other["tap_distance"]["value"]
        turned = (one["tap_from"]["degrees"] - other["tap_from"]["degrees"]) % 360
        assert turned == pytest.approx(180)
        assert one["far"]["expected_readings"] == other["far"]["expected_readings"]
        assert one["far"]["indicator_change"] == -other["far"]["indicator_change"]


@pytest.mark.outside(
    "runout.true-up", source=f"{SOURCE}; readings rounded and scattered, 300 parts"
)
@pytest.mark.parametrize("surface", ["external", "internal"])
def test_tapped_parts_keep_what_was_forecast(call: Call, surface: str) -> None:
    """Of parts read with rounding and scatter, 95 of 100 end within the TIR expected at the nose.

    Each is tapped as said, with taps that miss within their limit; where the swing is said to be
    too small to tell it is left. No forecast that holds is broken by more than 5 of 100.
    """
    chance = np.random.default_rng(20)
    inside, kept, promised = 0, 0, 0
    parts = 300
    for _ in range(parts):
        part = Shaft(
            cmath.rect(0.02 * chance.random(), 2 * math.pi * chance.random()),
            cmath.rect(0.0002 * chance.random(), 2 * math.pi * chance.random()),
            12.0,
            surface,
        )
        request = asked(
            part,
            indicator_resolution=0.001,
            repeatability=0.0004,
            tap_error_limit=0.001,
            limit_tir=0.008,
        )
        for name in ("near", "far"):
            for reading in request[name]["readings"]:
                shown = reading["reading"] + 0.0004 * chance.standard_normal()
                reading["reading"] = round(float(shown), 3)
        result = call("runout.true-up", **request)["result"]
        for tap in result["taps"]:
            part = part.tapped([tap])
            if not tap["leave_it"]:
                miss = cmath.rect(0.001 * math.sqrt(chance.random()), 2 * math.pi * chance.random())
                part = (
                    part.slid(miss)
                    if tap["kind"] == "slide"
                    else part.swung(tap["pivot_station"], tap["station"], miss)
                )
        [at] = result["at_stations"]
        left = 2 * abs(part.center(140))
        reach = at["tir_after"]["value"] + at["tir_after"]["expanded_uncertainty"]
        inside += left <= reach
        if at["forecast"] == "holds" or (result["leave_it"] and at["verdict"] == "conforming"):
            promised += 1
            kept += left <= 0.008
    assert inside / parts >= 0.93
    assert promised > parts / 2
    assert kept / promised >= 0.95


@pytest.mark.outside("runout.true-up", source="scipy: Rice's and Rayleigh's law")
def test_what_is_left_follows_rice(call: Call) -> None:
    """95 of 100 lengths of a vector of nothing lie within 2.4477 standard deviations.

    A vector expected to be long lies within 1.96 of its length. Judged just inside and just outside
    the radius that Rice's law gives for 95 and 5 of 100.
    """
    part = Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0)
    request = asked(part, repeatability=0.003, tap_error_limit=0)
    [at] = call("runout.true-up", **request)["result"]["at_stations"]
    spread = at["tir_after"]["standard_uncertainty"]
    # Both sections alike, 0.003 √(2/8) each; at 140 weights of -6/7 and 13/7; TIR twice of it.
    assert spread == pytest.approx(2 * 0.003 * 0.5 * math.hypot(6 / 7, 13 / 7))
    assert at["tir_after"]["value"] == 0
    rayleigh = stats.rayleigh.ppf(0.95) * spread
    assert at["tir_after"]["expanded_uncertainty"] == pytest.approx(rayleigh, rel=1e-6)
    for limit, forecast in ((1.001 * rayleigh, "holds"), (0.999 * rayleigh, "may-not-hold")):
        judged = call("runout.true-up", **request, limit_tir=limit)["result"]["at_stations"][0]
        assert judged["forecast"] == forecast
    now = at["tir"]["value"]
    for share, inside, outside in (
        (0.95, "conforming", "not-provable"),
        (0.05, "not-provable", "not-conforming"),
    ):
        edge = stats.rice.ppf(share, now / spread, scale=spread)
        for limit, verdict in ((1.001 * edge, inside), (0.999 * edge, outside)):
            judged = call("runout.true-up", **request, limit_tir=limit)["result"]["at_stations"][0]
            assert judged["verdict"] == verdict


def test_taps_agree_with_the_single_operations(call: Call) -> None:
    """Sections are those of runout.indicate; stations and moves those of runout.axis by them."""
    part = Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0, "external", ((2, 0.001, 1.0),))
    request = asked(part, repeatability=0.0002, harmonics=2, stations=[140, -30])
    result = call("runout.true-up", **request)["result"]
    found: dict[str, Any] = {}
    for name in ("near", "far"):
        single = call(
            "runout.indicate",
            **{k: request[k] for k in ("units", "surface", "indicator_resolution")},
            repeatability=0.0002,
            harmonics=2,
            readings=request[name]["readings"],
        )["result"]
        for field in (
            "eccentricity",
            "tir_from_eccentricity",
            "high_spot",
            "tir_of_readings",
            "form",
            "tir_left_after_tapping",
        ):
            assert json.dumps(result[name][field]) == json.dumps(single[field])
        assert result[name]["station"] == request[name]["station"]
        found[name] = {
            "station": request[name]["station"],
            "tir": single["tir_from_eccentricity"],
            "high_spot": single["high_spot"]["value"]["degrees"],
            "eccentricity_standard_uncertainty": single["eccentricity"]["standard_uncertainty"],
        }
    axis = call(
        "runout.axis",
        units="mm",
        surface="external",
        **found,
        stations=[140, -30],
        pivot_station=-20,
    )["result"]
    assert result["tilt_arcsec"] == pytest.approx(axis["tilt_arcsec"])
    for here, there in zip(result["at_stations"], axis["at_stations"], strict=True):
        assert here["station"] == there["station"]
        for key in ("value", "standard_uncertainty", "expanded_uncertainty", "worst_case"):
            assert here["tir"][key] == pytest.approx(there["tir"][key], rel=1e-6)
        for key in ("standard_uncertainty", "expanded_uncertainty", "worst_case"):
            assert here["high_spot"][key] == pytest.approx(there["high_spot"][key], rel=1e-6)
        shown = here["high_spot"]["value"]["degrees"]
        assert shown == pytest.approx(there["high_spot"]["value"]["degrees"])
    swing, slide = result["taps"]
    for tap, move, arm in zip(
        (swing, slide), axis["corrections"], ("far_move", "far_move"), strict=True
    ):
        assert tap["kind"] == move["kind"]
        assert tap["tap_distance"]["value"] == pytest.approx(move[arm])
        assert tap["tap_from"]["degrees"] == pytest.approx(move["tap_from"]["degrees"])
    assert (swing["station"], swing["pivot_station"]) == (80, -20)
    assert (slide["station"], slide["pivot_station"]) == (-20, None)


def test_one_place_brings_one_station_true(call: Call) -> None:
    """Tapped at the nose only, the first station wanted runs true, and the others as is said."""
    part = Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0)
    request = asked(part, tap_places=SWING_SLIDE[:1], stations=[140, 30], tap_error_limit=0.0)
    answer = call("runout.true-up", **request)
    [tap] = answer["result"]["taps"]
    after = part.tapped([tap])
    assert abs(after.center(140)) < 1e-5
    first, second = answer["result"]["at_stations"]
    assert first["tir_after"]["value"] == 0
    assert second["tir_after"]["value"] == pytest.approx(2 * abs(after.center(30)), abs=1e-5)
    assert tap["near"]["tir"] == pytest.approx(2 * abs(after.center(10)), abs=1e-5)
    assert "one-station-true" in {a["code"] for a in answer["advisories"]}
    # The pivot and the near section keep the offset of the pivot in part: said, not hidden.
    assert tap["near"]["tir"] > 0.01


def test_what_is_within_its_uncertainty_is_left(call: Call) -> None:
    """A part without tilt is slid only; one that runs true is left, and so is one within limits."""
    straight = call("runout.true-up", **asked(Shaft(0.02 + 0.01j, 1e-7j, 12.0)))
    swing, slide = straight["result"]["taps"]
    assert swing["leave_it"]
    assert not slide["leave_it"]
    assert swing["near"]["indicator_change"] == swing["far"]["indicator_change"] == 0
    assert slide["tap_distance"]["value"] == pytest.approx(abs(0.02 + 0.01j + 140e-7j), rel=1e-4)
    assert not straight["result"]["leave_it"]
    true = call("runout.true-up", **asked(Shaft(1e-6 + 0j, 0j, 12.0)))["result"]
    assert true["leave_it"]
    assert all(tap["leave_it"] for tap in true["taps"])
    part = Shaft(0.002 + 0j, 0j, 12.0)
    for limit, leave in ((0.0045, True), (0.0035, False)):
        found = call("runout.true-up", **asked(part, limit_tir=limit))["result"]
        assert found["leave_it"] is leave
        assert found["at_stations"][0]["verdict"] == ("conforming" if leave else "not-conforming")


def test_what_was_not_stated_is_named_and_holds_nothing(call: Call) -> None:
    """Without a tapping error the forecast is never that the limit holds; stated as 0, it is."""
    request = asked(Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0), limit_tir=0.01)
    [at] = call("runout.true-up", **request)["result"]["at_stations"]
    assert at["forecast"] == "may-not-hold"
    assert at["tir_after"]["not_stated"] == ["tap_error_limit"]
    [at] = call("runout.true-up", **request, tap_error_limit=0)["result"]["at_stations"]
    assert at["forecast"] == "holds"
    del request["limit_tir"]
    [at] = call("runout.true-up", **request)["result"]["at_stations"]
    assert at["forecast"] is None
    assert at["verdict"] is None


def test_three_readings_prove_nothing(call: Call) -> None:
    """Of three readings the scatter is not known: nothing conforms by them, and form is null."""
    angles = np.array([0.0, 120.0, 240.0])
    request = asked(Shaft(0.0001 + 0j, 0j, 12.0), angles, limit_tir=1)
    result = call("runout.true-up", **request)["result"]
    assert result["near"]["tir_left_after_tapping"] is None
    assert result["at_stations"][0]["verdict"] == "not-provable"
    assert result["at_stations"][0]["tir"]["not_stated"] == ["repeatability"]


def test_a_cone_and_a_lever_read_by_their_cosines(call: Call) -> None:
    """Square to a cone of half angle α with a tip at β the dial shows e cos α / cos β."""
    part = Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0)
    plain, leaning = asked(part), asked(part, tip_angle=20)
    by = math.cos(math.radians(15)) / math.cos(math.radians(20))
    for name in ("near", "far"):
        leaning[name] = {
            "station": leaning[name]["station"],
            "half_angle": 15,
            "readings": [{**r, "reading": by * r["reading"]} for r in leaning[name]["readings"]],
        }
    one, other = (call("runout.true-up", **r)["result"] for r in (plain, leaning))
    for tap, leant in zip(one["taps"], other["taps"], strict=True):
        assert leant["tap_distance"]["value"] == pytest.approx(tap["tap_distance"]["value"])
        for name in ("near", "far"):
            assert_values(leant[name], {"indicator_change": by * tap[name]["indicator_change"]})
            assert leant[name]["expected_readings"] == pytest.approx(
                [by * r for r in tap[name]["expected_readings"]], abs=1e-12
            )
            swing = by * tap[name]["tir_of_readings"] * math.cos(math.radians(20))
            assert leant[name]["tir_of_readings"] == pytest.approx(swing, abs=1e-12)


def test_form_is_said_to_stay(call: Call) -> None:
    """Lobes are not tapped out: noted, and past the limit warned of."""
    lobed = Shaft(0.02 + 0.01j, 0j, 12.0, "external", ((3, 0.004, 0.3),))
    codes = {a["code"] for a in call("runout.true-up", **asked(lobed))["advisories"]}
    assert "form-not-tapped-out" in codes
    answer = call("runout.true-up", **asked(lobed, limit_tir=0.007))
    assert "form-past-limit" in {a["code"] for a in answer["advisories"]}
    left = answer["result"]["far"]["tir_left_after_tapping"]
    assert left == pytest.approx(np.ptp(lobed.slid(-0.02 - 0.01j).dial(80, EIGHT)), abs=1e-5)


def test_nothing_conforms_where_form_alone_passes_the_limit(call: Call) -> None:
    """What an inspector reads on such a part passes the limit, however true its axis runs."""
    for shaft in (
        Shaft(0.001 + 0j, 0j, 12.0, "external", ((2, 0.004, 0.3),)),
        Shaft(0.02 + 0.01j, 0j, 12.0, "external", ((2, 0.004, 0.3),)),
    ):
        for limit, kept in ((0.007, False), (0.05, True)):
            result = call("runout.true-up", **asked(shaft, limit_tir=limit))["result"]
            for at in result["at_stations"]:
                assert at["verdict"] != "conforming" or kept
                assert (at["forecast"] == "holds") is kept

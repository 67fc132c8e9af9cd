"""The feed of each way of a plan, and `tapers.infeed` asked with the plan's figures."""

import pytest

from plan_support import Json, whole_request
from support import Call

SIDE: Json = {"name": "cup wheel", "rated_for_side": True, "usable_width": 1}
HEAD: Json = {"name": "workhead", "grinder": "cylindrical", "graduation": "0 05"}
WHEEL: Json = {
    "name": "form wheel",
    "wheel_diameter": 7,
    "wheel_width": 1,
    "dresser": {"kind": "scale", "graduation": "0 05"},
    "depth_per_pass": 0.001,
}
CONE: Json = {
    "kind": "cone",
    "included_angle": 60,
    "large_diameter": 0.75,
    "small_diameter": 0.3,
    "included_angle_tolerance_arcsec": 600,
}
#: The way that each slide goes: square to the surface but for a flank, square to the work's axis.
MEASURED = {
    "sine-plate": "square-to-surface",
    "quarter-turn": "square-to-surface",
    "dressed-wheel": "radius",
    "wheel-side": "square-to-surface",
    "swivelled-workhead": "square-to-surface",
}


def request_for(feature: Json) -> Json:
    """A shop with every way of grinding a cone."""
    return whole_request(
        feature=feature,
        equipment__wheel_sides=[SIDE],
        equipment__swivelled_workheads=[{**HEAD, "wheel_diameter": 7}],
        equipment__dressed_wheels=[WHEEL],
        equipment__spin_fixture=None,
    )


@pytest.mark.outside("jobs.plan", source="tapers.infeed, itself against geometry cut")
def test_what_a_dial_moves_is_the_layer_as_infeed_has_it(call: Call) -> None:
    """Asked by what the dial moves and measures, `tapers.infeed` takes off what the plan says."""
    ways = call("jobs.plan", **request_for(CONE))["result"]["ways"]
    assert {way["way"] for way in ways} == set(MEASURED)
    for way in ways:
        feed = way["feed_plan"]
        assert feed["dial_measures"] == MEASURED[way["way"]]
        for phase in (feed["rough"], feed["finish"]):
            alone = call(
                "tapers.infeed",
                units="in",
                included_angle=60,
                amount=phase["dial_per_pass"],
                amount_is=feed["dial_measures"],
            )["result"]
            assert alone["off_normal"] == pytest.approx(phase["downfeed_per_pass"], rel=1e-12)
            whole = call(
                "tapers.infeed",
                units="in",
                included_angle=60,
                amount=phase["stock"],
                downfeed_per_pass=phase["downfeed_per_pass"],
            )["result"]
            assert whole["cutting_passes"] == phase["cutting_passes"]
            assert whole["last_pass"] == pytest.approx(phase["last_pass"])
        read = {each["read_off"]: each["per_downfeed"] for each in feed["stop_readings"]}
        assert read["diameter"] == pytest.approx(alone["diameter_per_downfeed"])
        assert read["axial-position"] == pytest.approx(alone["axial_per_downfeed"])
        dial = phase["dial_per_pass"] / phase["downfeed_per_pass"]
        assert read["feed-dial"] == pytest.approx(dial)


def test_why_no_wheel_from_outside_grinds_a_socket(call: Call) -> None:
    """Each wheel is named with the bore that it does not enter, and what would grind it."""
    socket: Json = {
        "kind": "taper-socket",
        "designation": "morse-3",
        "included_angle_tolerance_arcsec": 120,
    }
    request = request_for(socket)
    request["equipment"]["internal_spindle"] = {"wheel_diameter": 0.5, "reach": 4}
    answer = call("jobs.plan", **request)["result"]
    out = {way["way"]: way for way in answer["ruled_out"]}
    names = ("dressed-wheel", "wheel-side", "swivelled-workhead")
    assert set(names) <= set(out)
    for name in names:
        assert "does not go into a bore of 0.7" in out[name]["reason"]
        assert out[name]["instead"] == "A sine plate under the internal spindle grinds it."
    head = out["swivelled-workhead"]
    assert "flat wheel beside the swivelled workhead" in head["reason"]
    assert head["field"] == "equipment/swivelled_workheads/0/wheel_diameter"

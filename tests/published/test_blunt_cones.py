"""Half angles past 45°, where a tangent passes 1: answers and refusals, each by geometry."""

import math
from typing import Any

import pytest
from scipy.optimize import brentq, minimize_scalar
from shapely import LineString, Point

from halfangle_service.errors import Impossible, Unreachable
from halfangle_service.registry import load_registry
from halfangle_service.trade.wording import figure
from support import Call

HALF_ANGLES = (50, 75, 85)
#: Of the included angle no more than 10° of error are taken.
MOST_ERROR_ARCSEC = 36_000
blunt = pytest.mark.parametrize("half", HALF_ANGLES)


def of_half(name: str, half: float, **changes: Any) -> dict[str, Any]:
    """The operation's own example with another slope, and changed."""
    slopes = {"included_angle", "half_angle", "one_in_x", "taper_per_foot", "designation"}
    example = load_registry().operations[name].example
    kept = {field: value for field, value in example.items() if field not in slopes}
    request = {**kept, "half_angle": half, **changes}
    return {field: value for field, value in request.items() if value is not None}


@pytest.mark.outside(
    "runout.off-crest", source="Brute force: a ball let down on the cone until it touches"
)
@pytest.mark.parametrize("half", [60, *HALF_ANGLES])
@pytest.mark.parametrize("tip_radius", [0, 0.04, 0.2])
def test_a_tip_beside_the_crest_of_a_blunt_cone(call: Call, half: float, tip_radius: float) -> None:
    """A ball tip beside the crest sinks until it is one radius from the cone, at 120° too.

    The ball's center moves square to the surface at the crest; its distance from the cone is that
    to the generator in the plane through it and the axis.
    """
    angle = math.radians(half)
    answer = call(
        "runout.off-crest",
        **of_half("runout.off-crest", half, miss=0.04, tip_radius=tip_radius),
    )["result"]
    generator = LineString([(0, 0), (10 * math.cos(angle), 10 * math.sin(angle))])

    def drop_at(radius: float) -> float:
        along = radius / math.tan(angle)
        center = (along - tip_radius * math.sin(angle), radius + tip_radius * math.cos(angle))

        def from_surface(drop: float) -> float:
            axial = center[0] + drop * math.sin(angle)
            out = math.hypot(center[1] - drop * math.cos(angle), 0.04)
            outside = out * math.cos(angle) - axial * math.sin(angle)
            return math.copysign(generator.distance(Point(axial, out)), outside) - tip_radius

        return float(brentq(from_surface, 0, 0.04, xtol=1e-15))

    drops = drop_at(0.05), drop_at(0.25)
    found = answer["drop_at_small_end"], answer["drop_at_large_end"]
    assert found == pytest.approx(drops, rel=1e-9)
    # Read over the slant between both: what it drops more at the small end seems steeper.
    slant = 0.2 / math.sin(angle)
    seems = math.degrees(math.atan2(drops[0] - drops[1], slant)) * 3600
    assert answer["false_half_angle_arcsec"] == pytest.approx(seems, rel=1e-8)
    # The largest miss for 10″ gives just these.
    allowed = call(
        "runout.off-crest",
        **of_half(
            "runout.off-crest", half, miss=answer["limit_miss"] * 0.999999, tip_radius=tip_radius
        ),
    )["result"]["false_half_angle_arcsec"]
    assert allowed == pytest.approx(10, rel=1e-4)


@blunt
@pytest.mark.outside("sine.taper-setting", source="Twice the half angle, by hand")
def test_a_blunt_cone_does_not_lie_on_its_generator(call: Call, half: int) -> None:
    """On its generator it would lean by 2α, past 90°; between centers it takes L sin α."""
    on_it = of_half("sine.taper-setting", half, holding="on-its-generator")
    with pytest.raises(Impossible, match=rf"asks for a plate angle of {2 * half}°") as refused:
        call("sine.taper-setting", **on_it)
    assert refused.value.fields == {"holding": "should leave the plate's angle below 90°"}
    held = {**on_it, "holding": "between-centers"}
    result = call("sine.taper-setting", **held)["result"]
    assert result["height"] == pytest.approx(5 * math.sin(math.radians(half)), rel=1e-12)


@blunt
@pytest.mark.outside("sine.taper-setting", source="Turned until both faces of the vee touch")
def test_a_blunt_cone_in_a_vee(call: Call, half: int) -> None:
    """In a vee of 90° it does not lie at all; in one of 174° it would lean past 90°.

    The lean is where the cone, of its point in the vee's line, turned up about it, touches the
    faces: the least angle between its surface and a face is 0 there.
    """
    vee = of_half("sine.taper-setting", half, holding="in-a-vee")
    with pytest.raises(Impossible, match=rf"half angle {half}° does not lie in a vee of 90°"):
        call("sine.taper-setting", **{**vee, "vee_angle": 90})
    face = math.radians(174 / 2)

    def beyond_the_face(tilt: float) -> float:
        """Angle from the axis, tilted up, to a face; less the cone's half angle."""
        nearest = minimize_scalar(
            lambda turn: (
                -math.cos(tilt) * math.cos(turn) - math.sin(tilt) * math.sin(turn) * math.cos(face)
            ),
            bounds=(0, math.pi / 2),
            method="bounded",
            options={"xatol": 1e-12},
        )
        return math.acos(-nearest.fun) - math.radians(half)

    tilt = brentq(beyond_the_face, 1e-6, math.pi / 2 - 1e-9)
    lean = math.degrees(tilt) + half
    with pytest.raises(Impossible, match=rf"asks for a plate angle of {lean:.6g}°") as refused:
        call("sine.taper-setting", **{**vee, "vee_angle": 174})
    assert list(refused.value.fields) == ["holding"]


@blunt
@pytest.mark.outside("sine.setting", source="The complement by hand: L cos θ")
def test_past_its_reach_the_complement_is_offered(call: Call, half: int) -> None:
    """A plate that reaches 45° is told 90° less the angle, set by L cos θ; one of 3° is not."""
    request = {"units": "in", "center_distance": 5, "angle": half}
    with pytest.raises(Unreachable, match=rf"complement, {90 - half}°") as refused:
        call("sine.setting", **request, largest_angle=45)
    setting = refused.value.more["complement_setting"]
    assert isinstance(setting, dict)
    assert setting["angle"]["degrees"] == 90 - half
    assert setting["height"] == pytest.approx(5 * math.cos(math.radians(half)), rel=1e-12)
    with pytest.raises(Unreachable, match=rf"reaches 3°; {half}° is asked of it\.$") as refused:
        call("sine.setting", **request, largest_angle=3)
    assert refused.value.fields == {"angle": "should take the plate to no more than 3°"}
    assert refused.value.more == {}


@blunt
def test_a_measured_angle_stays_below_upright(call: Call, half: int) -> None:
    """An error that stands the plate upright is refused; one arc-second less is answered."""
    request = {"units": "in", "center_distance": 5, "angle": half}
    upright = (90 - half) * 3600
    with pytest.raises(Impossible, match=r"would make the measured angle 90°") as refused:
        call("sine.correction", **request, measured_error_arcsec=upright)
    limit = "should leave the measured angle between 0° and 90°"
    assert refused.value.fields == {"measured_error_arcsec": limit}
    result = call("sine.correction", **request, measured_error_arcsec=upright - 1)["result"]
    change = 5 * (math.sin(math.radians(half)) - math.cos(math.radians(1 / 3600)))
    assert result["height_change"] == pytest.approx(change, rel=1e-9)


@blunt
def test_a_pitch_leaves_the_axis_an_angle(call: Call, half: int) -> None:
    """The pitch may take the half angle to neither 0° nor 90°: the limits are both distances."""
    limits = f"should be between {-half * 3600} and {(90 - half) * 3600}"
    for pitch in (-half * 3600, (90 - half) * 3600):
        request = of_half("wheels.setup-errors", half, axis_pitch_arcsec=pitch)
        with pytest.raises(Impossible, match="at no angle, or upright") as refused:
            call("wheels.setup-errors", **request)
        assert refused.value.fields == {"axis_pitch_arcsec": limits}


@pytest.mark.parametrize("name", ["tapers.infeed", "tapers.clean-up"])
@pytest.mark.parametrize("half", [80.5, 85, 89])
def test_an_error_leaves_a_cone(call: Call, name: str, half: float) -> None:
    """An error that opens the half angle past 90° is refused by the angle that it would have."""
    request = of_half(name, half, length=1e-4, half_angle_error_arcsec=MOST_ERROR_ARCSEC)
    with pytest.raises(Impossible, match=rf"half angle would be {half + 10:g}°") as refused:
        call(name, **request)
    limit = "should leave the half angle between 0° and 90°"
    assert refused.value.fields == {"half_angle_error_arcsec": limit}
    less = {**request, "half_angle_error_arcsec": (90 - half) * 3600 - 360, "wear": None}
    less = {field: value for field, value in less.items() if value is not None}
    assert call(name, **less)["result"]


@pytest.mark.parametrize("half", [85.5, 87, 89])
def test_a_part_on_its_gauge_is_a_cone(call: Call, half: float) -> None:
    """Half of 10° more of included angle takes a gauge past 85° to no cone; to less, to one."""
    request = of_half("tapers.standoff", half, contact_length=1e-4)
    limit = "should leave a half angle of 0° to 90°"
    with pytest.raises(Impossible, match=r"With this error the part would be no cone") as refused:
        call("tapers.standoff", **{**request, "included_angle_error_arcsec": MOST_ERROR_ARCSEC})
    assert refused.value.fields == {"included_angle_error_arcsec": limit}
    just = 2 * (90 - half) * 3600 - 36
    assert call("tapers.standoff", **{**request, "included_angle_error_arcsec": just})["result"]


@blunt
@pytest.mark.outside("tapers.solve", source="Right triangle by hand: D / (2 tan α)")
def test_a_blunt_cone_is_short(call: Call, half: int) -> None:
    """A cone of 0.7 in is 0.35 / tan α long; a longer one is refused with that length."""
    length = 0.35 / math.tan(math.radians(half))
    request = {"units": "in", "half_angle": half, "large_diameter": 0.7}
    with pytest.raises(Impossible, match="comes to its point") as refused:
        call("tapers.solve", **request, length=length * 1.001)
    assert refused.value.fields == {"length": f"should be at most {figure(length, 'in')}"}
    whole = call("tapers.solve", **request, length=length)["result"]
    assert whole["small_diameter"] == pytest.approx(0, abs=1e-12)
    assert whole["slant_length"] == pytest.approx(0.35 / math.sin(math.radians(half)))


@blunt
@pytest.mark.outside("centers.hole", source="A ball's circle of contact by hand: d cos α")
def test_a_ball_on_a_blunt_hole(call: Call, half: int) -> None:
    """A ball touches at d cos α: from the pilot's edge to the mouth of 5 mm, both over cos α."""
    pilot = 2.5
    least, most = (d / math.cos(math.radians(half)) for d in (pilot, 5))
    request = of_half("centers.hole", half, ball_diameter=least * 0.999)
    with pytest.raises(Impossible, match="falls into the pilot") as refused:
        call("centers.hole", **request)
    assert refused.value.fields == {
        "ball_diameter": f"should be over {figure(least, 'mm')} and under {figure(most, 'mm')}"
    }
    result = call("centers.hole", **{**request, "ball_diameter": least * 1.01})["result"]
    assert result["ball"]["contact_diameter"] == pytest.approx(pilot * 1.01)


@blunt
@pytest.mark.outside("wheels.flank", source="dh / (L cos θ) by hand at both zeros of the dresser")
def test_the_other_zero_is_the_complement(call: Call, half: int) -> None:
    """A dresser at 50°, 75° or 85° is told its other zero, where a step turns it less."""
    request = of_half("wheels.flank", half)
    work = {key: v for key, v in request.pop("work").items() if key != "included_angle"}
    del request["half_angle"]
    small = 0.75 - 0.01
    work |= {"half_angle": half, "large_diameter": 0.75, "small_diameter": small}
    answer = call("wheels.flank", **request, work=work)
    message = next(a["message"] for a in answer["advisories"] if a["code"] == "other-zero")
    step = math.degrees(0.0001 / 2) * 3600
    here, there = (step / trig(math.radians(half)) for trig in (math.cos, math.sin))
    assert f"At {half}° one bench step" in message
    assert f"takes {90 - half}°" in message
    assert f"{here:.1f}″" in message
    assert f"{there:.1f}″" in message

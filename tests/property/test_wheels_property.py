"""Round trips and invariants of the wheel's and the clearance's maths."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon

from halfangle_service.trade.clearance.bodies import Body, HeadPart, box, gaps_between
from halfangle_service.trade.clearance.search import smallest, stick_out_to_pass_under
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.tables.blocks.sets import find_set
from halfangle_service.trade.wheel.dresser import round_to_graduation, stacks_for
from halfangle_service.trade.wheel.dressing import active_width, cusp_height
from halfangle_service.trade.wheel.dressing_errors import DressedCone, hyperbola
from halfangle_service.trade.wheel.flank import dressing_passes, flank_for_rise, run_on
from halfangle_service.trade.wheel.profile import blend_corners, dressed_corners
from halfangle_service.trade.wheel.setup_errors import (
    Errors,
    Setup,
    ground_by_plunge,
    ground_by_traverse,
)
from halfangle_service.trade.wheel.speed import Marking, rpm_for_speed, surface_speed

angles = st.floats(math.radians(1), math.radians(85))
lengths = st.floats(0.01, 50)


@given(angles, lengths, st.floats(0, 1))
def test_flank_is_a_right_triangle(angle: float, rise: float, overrun: float) -> None:
    """Width and depth of a flank are the legs of its slant, at its angle."""
    flank = flank_for_rise(angle, rise, overrun)
    assert math.hypot(flank.width, flank.depth) == pytest.approx(flank.slant)
    assert math.atan2(flank.depth, flank.width) == pytest.approx(angle)
    longer = run_on(flank, angle, 0.25)
    assert longer.width == pytest.approx(flank.width + 0.25)


@given(lengths, st.floats(1e-4, 0.1))
def test_passes_reach_the_depth_and_no_further(depth: float, per_pass: float) -> None:
    """The passes make up the depth, and one less does not."""
    passes = dressing_passes(depth, per_pass)
    assert passes * per_pass >= depth * (1 - 1e-8)
    assert (passes - 1) * per_pass < depth


@given(
    st.floats(math.radians(10), math.radians(70)),
    st.floats(math.radians(10), math.radians(70)),
    st.floats(0.001, 0.01),
    st.floats(0.001, 0.01),
)
def test_blends_are_smooth(first: float, second: float, edge: float, root: float) -> None:
    """Every point of an arc lies one radius from its center; it ends square to its straights."""
    flanks = [flank_for_rise(first, 0.2, 0.0), flank_for_rise(second, 0.1, 0.0)]
    corners = dressed_corners(flanks, [0.1, 0.1], 0.2, edge, root)
    profile = blend_corners(corners)
    straights = list(profile.straights())
    for index, blend in enumerate(profile.blends):
        assert blend is not None
        for share in np.linspace(0, 1, 7):
            assert math.dist(blend.point(share), blend.center) == pytest.approx(blend.radius)
        for tangent, straight in (
            (blend.before, straights[index]),
            (blend.after, straights[index + 1]),
        ):
            (ax, ay), (bx, by) = straight
            across = (tangent[0] - blend.center[0]) * (bx - ax) + (tangent[1] - blend.center[1]) * (
                by - ay
            )
            assert across == pytest.approx(0, abs=1e-9)


@given(st.floats(20, 500), st.floats(10, 20_000))
def test_speed_and_rpm_return(diameter: float, rpm: float) -> None:
    """From spindle speed to surface speed and back; half the diameter, half the speed."""
    assert rpm_for_speed(diameter, surface_speed(diameter, rpm)) == pytest.approx(rpm)
    assert surface_speed(diameter / 2, rpm) == pytest.approx(surface_speed(diameter, rpm) / 2)


@given(
    st.one_of(st.none(), st.floats(100, 10_000)),
    st.one_of(st.none(), st.floats(1, 100)),
    st.one_of(st.none(), st.floats(100, 10_000)),
    st.floats(100, 10_000),
)
def test_nothing_holds_while_over_a_mark(
    marked: float | None, speed: float | None, machine: float | None, rpm: float
) -> None:
    """`holds` is said only of a marked wheel that is over none of its limits."""
    marking = Marking(marked, {} if speed is None else {"marked_m_per_s": speed}, machine)
    if marking.forecast(rpm, 180.0) == "holds":
        assert marked is not None or speed is not None
        assert marked is None or rpm <= marked * (1 + 1e-8)
        assert speed is None or surface_speed(180.0, rpm) <= speed * (1 + 1e-8)
        assert machine is None or rpm <= machine * (1 + 1e-8)
        assert rpm <= (marking.limit_rpm(180.0) or 0) * (1 + 1e-8)


@given(st.floats(0.05, 5), st.floats(0.01, 1), st.floats(0.1, 20))
def test_cusp_is_below_the_depth_where_overlapped(
    radius: float, share: float, ratio: float
) -> None:
    """With an overlap of 1 or more the cusps are no higher than the depth of the pass."""
    depth = radius * share
    width = active_width(radius, depth)
    cusp = cusp_height(radius, width / ratio)
    if ratio >= 1:
        assert cusp is not None
        assert cusp <= depth * (1 + 1e-9)


@given(st.floats(math.radians(5), math.radians(80)), st.floats(0.001, 0.9), st.floats(0.05, 0.8))
def test_hyperbola_always_flattens_the_cone(angle: float, height: float, rise: float) -> None:
    """Above or below the axis alike, the flank is flatter and hollow, never steeper."""
    cone = DressedCone(angle, 0.1, 0.1 + rise, 2.0)
    curve = hyperbola(cone, height)
    assert curve.angle_rad < 0
    assert curve.straightness >= 0
    assert hyperbola(cone, -height) == curve


@settings(max_examples=25, deadline=None)
@given(
    st.floats(math.radians(2), math.radians(70)),
    st.floats(0, math.pi / 2),
    st.floats(-0.2, 0.2),
    st.floats(-0.01, 0.01),
)
def test_plunge_never_grinds_below_the_plane(
    half: float, wheel: float, offset: float, yaw: float
) -> None:
    """A wheel lies on one side of its plane, so that it leaves no less than a traverse does."""
    setup = Setup(half, wheel, 0.2, 0.3 * math.cos(half), 4.0)
    errors = Errors(axis_offset=offset, yaw_rad=yaw)
    stations = np.linspace(0, setup.length, 9)
    plunged = ground_by_plunge(setup, errors, stations).radii
    swept = ground_by_traverse(setup, errors, stations).radii
    assert np.all(plunged >= swept - 1e-10)


@settings(max_examples=40, deadline=None)
@given(st.floats(0.005, 4.9))
def test_dresser_stacks_reach_within_half_a_step(height: float) -> None:
    """From the 81-piece inch set every height gets one or two stacks within half of 0.0001 in."""
    sizes = find_set("inch-81").sizes
    pair = stacks_for(height * 254_000_000, sizes, 6)
    assert abs(pair.difference - height * 254_000_000) <= 12_700 * (1 + 1e-9)


@given(angles, st.floats(1e-5, 0.01))
def test_graduation_errs_by_half_at_most(angle: float, graduation: float) -> None:
    """The nearest graduation is within half of one."""
    assert abs(round_to_graduation(angle, graduation) - angle) <= graduation / 2 * (1 + 1e-6)


points = st.tuples(st.floats(-5, 5), st.floats(-5, 5))


@given(points, st.floats(0.1, 3), st.floats(0, math.pi), st.floats(0.1, 2))
def test_gap_agrees_with_the_geometry_library(
    at: tuple[float, float], size: float, turn: float, radius: float
) -> None:
    """A gap is positive where the outlines are apart and negative where they overlap."""
    corners = tuple(
        (
            at[0] + x * math.cos(turn) - y * math.sin(turn),
            at[1] + x * math.sin(turn) + y * math.cos(turn),
        )
        for x, y in box(0, 0, size, size / 2)
    )
    path = HeadPart("wheel", ((-1.0, 0.0), (1.0, 0.0)), radius)
    (gap,) = gaps_between([(path, Body("block", "turning-part", corners))])
    outline, core = Polygon(corners), LineString(path.core)
    if core.distance(outline) > 1e-9:
        assert gap.gap == pytest.approx(core.distance(outline) - radius, abs=1e-12)
        assert outline.distance(Point(gap.on_body)) == pytest.approx(0, abs=1e-9)
        assert core.distance(Point(gap.on_part)) == pytest.approx(radius, abs=1e-9)
    else:
        assert gap.gap <= -radius + 1e-9


@given(st.floats(0, 10), st.floats(0.1, 10))
def test_smallest_finds_the_threshold(threshold: float, room: float) -> None:
    """What just leaves enough is found, also where more of it leaves no more; or there is none."""
    found = smallest(lambda value: min(value - threshold, 0.0), 0.0, threshold + room)
    assert found == pytest.approx(threshold, rel=1e-10, abs=1e-12)
    assert smallest(lambda _: -1.0, 0.0, 1.0) is None


@given(angles, st.floats(0.1, 2), st.floats(0, 0.5))
def test_passing_under_leaves_just_the_margin(half: float, nose: float, margin: float) -> None:
    """A nose set back by that much has its upper corner the margin under the ground line."""
    cone = Cone(half, 0.1, 0.05)
    back = stick_out_to_pass_under(cone, nose, margin)
    rise = -back * math.sin(half) + (nose - 0.1) * math.cos(half)
    if back > 0:
        assert rise == pytest.approx(-margin, abs=1e-9)
    else:
        assert rise <= -margin + 1e-9

"""How a layer is ground off, against geometry cut and passes made one by one."""

import math
from collections.abc import Callable
from decimal import Decimal

import numpy as np
import pytest
from shapely import LineString, intersection
from shapely.affinity import translate

from halfangle_service.trade.planning.feed import (
    MOTIONS,
    ErrorLimits,
    FedSurface,
    Habits,
    Phase,
    Wheel,
    advance_for_cusps,
    finest,
    minutes_of,
    phases,
    readings,
    travel_of,
    usual,
)

#: A 60° center and a Morse taper's half angle, in radians.
HALF_ANGLES = (math.radians(30.0), math.atan(0.05020 / 2.0))
STEP = Habits(0.0005, 0.0001, 0.0005, 2, 0.1, 0.25)


def center(half_angle: float = HALF_ANGLES[0]) -> FedSurface:
    """A cone of 0.75 in to its point."""
    return FedSurface(half_angle, 0.75 / (2.0 * math.sin(half_angle)), 0.75)


def generator(half_angle: float, shift: tuple[float, float]) -> LineString:
    """A cone's generator from (0, 0) along its axis, moved by a shift (axial, radial)."""
    line = LineString([(-9.0, -9.0 * math.tan(half_angle)), (9.0, 9.0 * math.tan(half_angle))])
    return translate(line, *shift)


@pytest.mark.parametrize("radius", [3.5, 2.75, 88.9])
@pytest.mark.parametrize("cusps", [0.0001, 0.00001])
def test_advance_leaves_the_cusps_asked_for(radius: float, cusps: float) -> None:
    """The envelope of a wheel's circle at every advance stands as high as the cusps asked for."""
    advance = advance_for_cusps(radius, cusps)
    places = np.linspace(0.0, 3.0 * advance, 30_001)
    centers = np.arange(-2, 6) * advance
    off = np.abs(places[:, np.newaxis] - centers)
    under = np.where(off < radius, radius - np.sqrt(np.maximum(radius**2 - off**2, 0.0)), np.inf)
    assert np.max(np.min(under, axis=1)) == pytest.approx(cusps, rel=1e-6)


@pytest.mark.parametrize("half_angle", HALF_ANGLES)
@pytest.mark.parametrize(
    ("way", "direction"),
    [
        ("plate-along-travel", lambda a: (math.sin(a), -math.cos(a))),
        ("swivelled-workhead", lambda a: (math.sin(a), -math.cos(a))),
        ("dressed-wheel", lambda _: (0.0, -1.0)),
    ],
)
def test_feed_dial_moves_the_wheel_by_the_layer(
    half_angle: float, way: str, direction: Callable[[float], tuple[float, float]]
) -> None:
    """A generator moved as far as the dial says, the way that its slide goes, is a layer below."""
    surface = center(half_angle)
    found = phases(surface, MOTIONS[way], STEP, 0.004, Wheel(), "in")
    for phase in found[:-1]:
        axial, radial = direction(half_angle)
        moved = generator(half_angle, (phase.dial * axial, phase.dial * radial))
        assert moved.distance(generator(half_angle, (0.0, 0.0))) == pytest.approx(
            phase.downfeed, rel=1e-9
        )


@pytest.mark.parametrize("half_angle", HALF_ANGLES)
@pytest.mark.parametrize("internal", [False, True])
def test_readings_before_finishing_are_those_of_the_cut_cone(
    half_angle: float, internal: bool
) -> None:
    """With the finishing stock on, gauge line and diameter lie where cut geometry has them."""
    stock, size = 0.0005, 0.75
    surface = FedSurface(half_angle, 1.0, size, internal=internal)
    by_name = {
        reading.name: reading
        for reading in readings(
            surface, MOTIONS["dressed-wheel"], 0.004, stock, size, ErrorLimits()
        )
    }
    out = -1.0 if internal else 1.0
    layer = (-out * stock * math.sin(half_angle), out * stock * math.cos(half_angle))
    before = generator(half_angle, layer)
    station = intersection(before, LineString([(0.0, -9.0), (0.0, 9.0)]))
    assert by_name["diameter"].at_finish == pytest.approx(size + 2.0 * station.y, rel=1e-12)
    assert by_name["diameter"].at_size == size
    place = intersection(before, LineString([(-9.0, 0.0), (9.0, 0.0)]))
    assert by_name["axial-position"].at_finish == pytest.approx(abs(place.x), rel=1e-9)
    assert by_name["feed-dial"].at_finish == pytest.approx(0.0035 / math.cos(half_angle))
    assert by_name["feed-dial"].at_size == pytest.approx(0.004 / math.cos(half_angle))


def test_finest_reading_is_by_the_layer_not_by_the_reading() -> None:
    """On a slow taper a depth known ten times worse than a diameter still tells more."""
    limits = ErrorLimits(diameter=0.0002, axial=0.002)
    slow, steep = (
        finest(readings(center(a), MOTIONS["plate-along-travel"], 0.004, 0.0005, 0.75, limits))
        for a in (HALF_ANGLES[1], HALF_ANGLES[0])
    )
    assert slow is not None
    assert slow.name == "axial-position"
    # By hand: sin α 0.0251 → a depth's 0.002 in is a layer of 0.00005 in.
    assert slow.layer_error_limit == pytest.approx(0.002 * 0.025092, rel=1e-4)
    assert steep is not None
    assert steep.name == "diameter"
    # By hand: 0.0002 × cos 30° / 2.
    assert steep.layer_error_limit == pytest.approx(0.0000866025, rel=1e-6)


def test_nothing_is_finest_where_no_error_limit_is_stated() -> None:
    """Without a limit of any reading none is chosen, and without an allowance none has figures."""
    found = readings(center(), MOTIONS["dressed-wheel"], None, None, None, ErrorLimits())
    assert finest(found) is None
    assert [(each.at_finish, each.at_size) for each in found] == [
        (None, None),
        (None, 0.0),
        (None, None),
    ]


@pytest.mark.parametrize("allowance", [0.0001, 0.0004, 0.0005, 0.0006, 0.00125, 0.004, 0.0111])
def test_passes_are_those_that_a_hand_makes(allowance: float) -> None:
    """Feeding by the rough step, then by the finish step, until nothing is left takes as many."""
    found = {
        p.name: p
        for p in phases(center(), MOTIONS["dressed-wheel"], STEP, allowance, Wheel(), "in")
    }
    left, made = Decimal(str(allowance)), {"rough": 0, "finish": 0}
    rough, finish, stock = (Decimal(x) for x in ("0.0005", "0.0001", "0.0005"))
    while left > stock:
        left = max(left - rough, stock)
        made["rough"] += 1
    while left > 0:
        left = max(left - finish, Decimal(0))
        made["finish"] += 1
    counts = {name: found[name].passes if name in found else 0 for name in made}
    assert counts == made
    feeds = [(p.passes - 1) * p.downfeed + p.last_downfeed for p in found.values() if p.stock]
    assert sum(feeds) == pytest.approx(allowance, rel=1e-12)


def test_times_of_a_pass_are_those_of_its_turns() -> None:
    """Turn by turn along the slant, a turn at its end, a pass of a rim takes as long."""
    surface, motion = center(), MOTIONS["plate-along-travel"]
    wheel = Wheel(7.0, 0.5, 30.0)
    travel = travel_of(surface, motion, STEP, wheel)
    assert travel == pytest.approx(0.75 + 0.35)
    (rough, finish, spark) = phases(surface, motion, STEP, 0.004, wheel, "in")
    assert (rough.passes, finish.passes, spark.passes) == (7, 5, 2)
    # By hand: 2 √(0.0001 × 6.9999) = 0.05292 in a turn; 1.1 / 0.05292 + 1 turns at 40 a minute.
    assert rough.advance == pytest.approx(0.052915, rel=1e-5)
    assert minutes_of(rough, surface, travel, 40.0, 1.0) == pytest.approx(
        7 * (1.1 / 0.0529146 + 1.0) / 40.0, rel=1e-5
    )
    assert finish.advance == pytest.approx(0.0167332, rel=1e-5)
    assert minutes_of(finish, surface, travel, None, 1.0) is None


def test_times_of_a_face_are_those_of_its_strokes() -> None:
    """Stroke by stroke across a face, from its first edge until the other is covered."""
    face = FedSurface(0.5, 2.0, None, width=1.0)
    wheel = Wheel(7.0, 0.5)
    found = phases(face, MOTIONS["plate-along-travel"], STEP, 0.001, wheel, "in")
    travel = travel_of(face, MOTIONS["plate-along-travel"], STEP, wheel)
    assert travel == pytest.approx(2.35)
    at, strokes = 0.0, 1
    while at < 1.0 - 1e-12:
        at += 0.25 * 0.5
        strokes += 1
    assert found[0].name == "rough"
    assert found[0].passes == 1
    assert minutes_of(found[0], face, travel, None, 100.0) == pytest.approx(strokes * 2.35 / 100.0)


def test_plunged_wheel_stays_for_turns_at_each_step() -> None:
    """A dressed flank travels nowhere; each step is held for three turns of the work."""
    motion = MOTIONS["dressed-wheel"]
    travel = travel_of(center(), motion, STEP, Wheel())
    assert travel == 0.0
    (rough, *_) = phases(center(), motion, STEP, 0.004, Wheel(), "in")
    assert rough.advance is None
    assert minutes_of(rough, center(), travel, 60.0, 1.0) == pytest.approx(7 * 3.0 / 60.0)


def test_wheel_on_edge_travels_less_its_width_and_is_not_guessed() -> None:
    """Seen on edge the wheel goes its width less, never less than nothing; unknown it goes None."""
    motion = MOTIONS["plate-across-travel"]
    assert travel_of(center(), motion, STEP, Wheel(7.0, 0.5)) == pytest.approx(0.6)
    assert travel_of(center(), motion, STEP, Wheel(7.0, 2.0)) == 0.0
    assert travel_of(center(), motion, STEP, Wheel(7.0, None)) is None
    (rough, *_) = phases(center(), motion, STEP, 0.004, Wheel(7.0, None), "in")
    assert rough.advance is None
    assert minutes_of(rough, center(), None, 40.0, 1.0) is None


def test_usual_habits_are_in_steps_that_a_dial_has() -> None:
    """What shops do is written in whole bench steps of either unit, without noise."""
    assert usual("in") == Habits(0.0005, 0.0001, 0.0005, 2, 0.1, 0.1)
    assert usual("mm") == Habits(0.01, 0.001, 0.012, 2, 2.5, 2.5)


def test_one_step_for_all_is_the_feed_of_a_center() -> None:
    """An allowance all of which is finished takes as many passes as there are steps in it."""
    habits = Habits(0.0005, 0.0001, 1.0, 0, 0.0, 0.0)
    found: tuple[Phase, ...] = phases(
        center(), MOTIONS["plate-along-travel"], habits, 0.0043, Wheel(), "in"
    )
    assert [phase.name for phase in found] == ["finish", "spark-out"]
    assert found[0].passes == 43

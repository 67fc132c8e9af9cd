"""Tapers over rolls and balls: models to maths and back."""

import math
from collections.abc import Callable, Mapping, Sequence

from halfangle_service.errors import Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians, bench_step
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.tapers.models_contact import (
    TaperMeasuredResult,
    TaperOneBallRequest,
    TaperOneBallResult,
    TaperOverBallsNominalRequest,
    TaperOverBallsNominalResult,
    TaperOverBallsRequest,
    TaperOverRollsNominalRequest,
    TaperOverRollsNominalResult,
    TaperOverRollsRequest,
)
from halfangle_service.topics.tapers.models_slope import half_angle_rad_of
from halfangle_service.trade.tapers.contact import (
    ball_contact,
    ball_depth,
    base_diameter,
    half_angle_of_balls,
    lean_over_rolls,
    mouth_diameter,
    over_rolls,
    require_contact,
    roll_contact,
)
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import plain

TANGENT_CIRCLES = Source(
    citation="Derived here: a circle tangent to a side at α to the axis has its center r / cos α "
    "from it across the axis and touches it r sin α along the axis; checked against tangent "
    "circles.",
    standing="derived",
)


def budget_of(
    function: Callable[[Sequence[float]], float],
    values: Sequence[float],
    tolerances: Mapping[int, float],
) -> Budget:
    """Budget of a measured value; each tolerance is a rectangular half-width of that input.

    Sensitivities are half the change over the whole tolerance, so that they hold over it.
    """
    terms = []
    for index, width in tolerances.items():
        if width:
            low, high = (
                function([v + s * width if i == index else v for i, v in enumerate(values)])
                for s in (-1.0, 1.0)
            )
            terms.append(Contribution(str(index), width, sensitivity=(high - low) / (2 * width)))
    return Budget(tuple(terms))


def _taper(
    half: float, large: float, small: float, contacts: list[float], budgets: Sequence[Budget]
) -> TaperMeasuredResult:
    if small <= 0:
        raise Impossible(
            f"The taper would end before the length: its small diameter would be {plain(small)}.",
            fields={"length": "should end before the cone's point"},
        )
    rate = 2.0 * math.tan(half)
    return TaperMeasuredResult(
        half_angle=angle_from_radians(half),
        included_angle=angle_from_radians(2.0 * half),
        taper_per_foot=12.0 * rate,
        one_in_x=1.0 / rate,
        large_diameter=large,
        small_diameter=small,
        contacts=contacts,
        half_angle_worst_arcsec=budgets[0].worst_case * ARCSEC_PER_RADIAN,
        half_angle_expanded_arcsec=budgets[0].expanded() * ARCSEC_PER_RADIAN,
        large_diameter_expanded=budgets[1].expanded(),
        small_diameter_expanded=budgets[2].expanded(),
    )


def over_rolls_measured(request: TaperOverRollsRequest) -> Outcome[TaperMeasuredResult]:
    """Taper from measures over rolls at two heights."""
    values = (request.lower_measure, request.upper_measure, request.rise, request.roll_diameter)
    lean = lean_over_rolls(*values[:3])
    if lean == 0.0:
        raise Impossible(
            "Equal measures at both heights: this is a cylinder, not a taper.",
            fields={"upper_measure": "should differ from lower_measure"},
        )
    contacts = _roll_contacts(
        request.lower_stack, request.rise, lean, request.roll_diameter, request.length
    )

    def diameter_at(height: float) -> Callable[[Sequence[float]], float]:
        def of(v: Sequence[float]) -> float:
            slope = lean_over_rolls(v[0], v[1], v[2])
            center = request.lower_stack + v[3] / 2.0
            return base_diameter(v[0], slope, v[3], center - height)

        return of

    tolerances = {
        0: request.measure_tolerance,
        1: request.measure_tolerance,
        2: min(request.rise_tolerance, request.rise / 2.0),
        3: min(request.roll_tolerance, request.roll_diameter / 2.0),
    }
    ends = (request.length, 0.0) if lean > 0 else (0.0, request.length)
    at_ends = [diameter_at(height) for height in ends]
    budgets = [
        budget_of(f, values, tolerances)
        for f in (lambda v: lean_over_rolls(v[0], v[1], v[2]), *at_ends)
    ]
    large, small = (f(values) for f in at_ends)
    return Outcome(_taper(abs(lean), large, small, contacts, budgets))


def _roll_contacts(
    stack: float, rise: float, lean: float, roll: float, length: float
) -> list[float]:
    """Heights at which lower and upper rolls touch; refuses those off the cone."""
    centers = (stack + roll / 2.0, stack + rise + roll / 2.0)
    contacts = [roll_contact(center, lean, roll) for center in centers]
    for station, field in zip(contacts, ("lower_stack", "rise"), strict=True):
        require_contact(station, length, "roll", field)
    return contacts


def over_rolls_nominal(
    request: TaperOverRollsNominalRequest,
) -> Outcome[TaperOverRollsNominalResult]:
    """What to expect over rolls."""
    half = half_angle_rad_of(request)
    small = request.large_diameter - 2.0 * request.length * math.tan(half)
    if small < 0:
        raise Impossible(
            "The taper comes to its point before the length.",
            fields={"length": "should end before the cone's point"},
        )
    up = request.standing_on == "small end"
    lean, base = (half, small) if up else (-half, request.large_diameter)
    low, high = _roll_contacts(
        request.lower_stack, request.rise, lean, request.roll_diameter, request.length
    )
    center = request.lower_stack + request.roll_diameter / 2.0
    lower, upper = (
        over_rolls(base + 2.0 * z * math.tan(lean), lean, request.roll_diameter)
        for z in (center, center + request.rise)
    )
    per_measure = math.cos(half) ** 2 / (2.0 * request.rise) * ARCSEC_PER_RADIAN
    return Outcome(
        TaperOverRollsNominalResult(
            lower_measure=lower,
            upper_measure=upper,
            difference=upper - lower,
            lower_contact=low,
            upper_contact=high,
            half_angle=angle_from_radians(half),
            half_angle_arcsec_per_measure_step=per_measure * bench_step(request.units),
        )
    )


def over_balls_measured(request: TaperOverBallsRequest) -> Outcome[TaperMeasuredResult]:
    """Socket from two balls."""
    values = (
        request.large_ball,
        request.small_ball,
        request.large_ball_depth,
        request.small_ball_depth,
    )
    half = half_angle_of_balls(*values)
    contacts = [
        ball_contact(request.large_ball, request.large_ball_depth, half),
        ball_contact(request.small_ball, request.small_ball_depth, half),
    ]
    for station, field in zip(contacts, ("large_ball", "small_ball"), strict=True):
        require_contact(station, request.length, "ball", field)

    def angle(v: Sequence[float]) -> float:
        return half_angle_of_balls(v[0], v[1], v[2], v[3])

    def diameter_at(depth: float) -> Callable[[Sequence[float]], float]:
        return lambda v: mouth_diameter(v[0], v[2] - depth, angle(v))

    tolerances = {0: request.roll_tolerance, 1: request.roll_tolerance}
    tolerances |= {2: request.measure_tolerance, 3: request.measure_tolerance}
    functions = (angle, diameter_at(0.0), diameter_at(request.length))
    budgets = [budget_of(f, values, tolerances) for f in functions]
    large, small = (f(values) for f in functions[1:])
    return Outcome(_taper(half, large, small, contacts, budgets))


def one_ball(request: TaperOneBallRequest) -> Outcome[TaperOneBallResult]:
    """Mouth of a socket of known slope from one ball."""
    half = half_angle_rad_of(request)
    contact = ball_contact(request.ball, request.ball_depth, half)
    require_contact(contact, request.length, "ball", "ball_depth")
    values = (request.ball, request.ball_depth, half)
    tolerance = min(
        request.included_angle_tolerance_arcsec / 2.0 / ARCSEC_PER_RADIAN,
        half / 2.0,
        (math.pi / 2.0 - half) / 2.0,
    )
    budget = budget_of(
        lambda v: mouth_diameter(v[0], v[1], v[2]),
        values,
        {0: request.roll_tolerance, 1: request.measure_tolerance, 2: tolerance},
    )
    return Outcome(
        TaperOneBallResult(
            mouth_diameter=mouth_diameter(*values),
            contact_diameter=request.ball * math.cos(half),
            contact_depth=contact,
            mouth_per_depth=2.0 * math.tan(half),
            mouth_diameter_expanded=budget.expanded(),
        )
    )


def over_balls_nominal(
    request: TaperOverBallsNominalRequest,
) -> Outcome[TaperOverBallsNominalResult]:
    """What to expect with balls in a socket."""
    half = half_angle_rad_of(request)
    if request.small_ball >= request.large_ball:
        raise Impossible(
            "The smaller ball is not smaller than the larger one.",
            fields={"small_ball": "should be less than large_ball"},
        )
    balls = (request.large_ball, request.small_ball)
    depths = [ball_depth(ball, request.mouth_diameter, half) for ball in balls]
    contacts = [ball_contact(b, depth, half) for b, depth in zip(balls, depths, strict=True)]
    for station, field in zip(contacts, ("large_ball", "small_ball"), strict=True):
        require_contact(station, request.length, "ball", field)
    return Outcome(
        TaperOverBallsNominalResult(
            large_ball_depth=depths[0],
            small_ball_depth=depths[1],
            large_ball_contact=contacts[0],
            small_ball_contact=contacts[1],
            half_angle=angle_from_radians(half),
        )
    )


OVER_ROLLS = Operation(
    topic="tapers",
    verb="over-rolls",
    title="Taper measured over rolls",
    summary="Half angle, diameters and their uncertainty from measures over two equal rolls at two "
    "heights.",
    request=TaperOverRollsRequest,
    result=TaperMeasuredResult,
    calculate=over_rolls_measured,
    relations=("tan α = (M2 − M1) / (2 H)", "D at the roll's center = M − d (1 + sec α)"),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "mm",
        "roll_diameter": 12,
        "lower_measure": 60.21,
        "upper_measure": 67.695,
        "rise": 75,
        "length": 100,
        "measure_tolerance": 0.002,
        "roll_tolerance": 0.0005,
        "rise_tolerance": 0.0005,
    },
)
OVER_ROLLS_NOMINAL = Operation(
    topic="tapers",
    verb="over-rolls-nominal",
    title="What to expect over rolls",
    summary="Measures over two rolls at two heights for a nominal taper, and where they touch.",
    request=TaperOverRollsNominalRequest,
    result=TaperOverRollsNominalResult,
    calculate=over_rolls_nominal,
    relations=("M = D + d (1 + sec α), D at the roll's center", "δα = cos² α · δM / (2 H)"),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "in",
        "taper_per_foot": 0.59941,
        "large_diameter": 0.7,
        "length": 2.5625,
        "roll_diameter": 0.25,
        "rise": 2,
    },
)
OVER_BALLS = Operation(
    topic="tapers",
    verb="over-balls",
    title="Socket measured with two balls",
    summary="Half angle, diameters and their uncertainty from the depths of two balls.",
    request=TaperOverBallsRequest,
    result=TaperMeasuredResult,
    calculate=over_balls_measured,
    relations=("sin α = (R1 − R2) / c", "D = d / cos α + 2 c1 tan α, c1 the center's depth"),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "mm",
        "large_ball": 40,
        "small_ball": 32,
        "large_ball_depth": -8,
        "small_ball_depth": 76,
        "length": 120,
        "measure_tolerance": 0.005,
        "roll_tolerance": 0.0005,
    },
)
OVER_BALLS_NOMINAL = Operation(
    topic="tapers",
    verb="over-balls-nominal",
    title="What to expect with balls",
    summary="Depths of two balls in a nominal socket, and where they touch.",
    request=TaperOverBallsNominalRequest,
    result=TaperOverBallsNominalResult,
    calculate=over_balls_nominal,
    relations=("c = (D − d / cos α) / (2 tan α), the center's depth",),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "in",
        "taper_per_foot": 0.59941,
        "mouth_diameter": 0.7,
        "length": 2.5,
        "large_ball": 0.6875,
        "small_ball": 0.625,
    },
)
ONE_BALL = Operation(
    topic="tapers",
    verb="one-ball",
    title="Socket's mouth from one ball",
    summary="Mouth diameter of a socket of known slope from the depth of one ball.",
    request=TaperOneBallRequest,
    result=TaperOneBallResult,
    calculate=one_ball,
    relations=("D = d (1 + sin α) / cos α − 2 P tan α, P the protrusion",),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "in",
        "included_angle": 60,
        "ball": 0.5,
        "ball_depth": -0.2,
        "length": 0.6,
        "measure_tolerance": 0.0001,
    },
)

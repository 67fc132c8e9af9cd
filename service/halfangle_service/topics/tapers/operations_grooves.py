"""Vees and dovetails over rolls: models to maths and back."""

import math
from collections.abc import Sequence

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians, bench_step
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.tapers.models_grooves import (
    DovetailOverRollsRequest,
    DovetailOverRollsResult,
    VeeOverRollsNominalRequest,
    VeeOverRollsNominalResult,
    VeeOverRollsRequest,
    VeeOverRollsResult,
    VeeRollExpected,
)
from halfangle_service.topics.tapers.operations_contact import TANGENT_CIRCLES, budget_of
from halfangle_service.trade.tapers.contact import (
    dovetail_constant,
    dovetail_contact,
    require_contact,
    vee_contact_depth,
    vee_half_angle,
    vee_roll_top,
    vee_width,
)
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.wording import plain

_DOVETAIL = Source(
    citation="Machinery's Handbook, dovetail slides measured over rolls: D (1 + cot(θ/2)).",
    standing="published",
)


def vee(request: VeeOverRollsRequest) -> Outcome[VeeOverRollsResult]:
    """Vee from two rolls of different size."""
    half = vee_half_angle(
        request.large_roll, request.small_roll, request.large_roll_top, request.small_roll_top
    )
    width = vee_width(request.large_roll_top, half, request.large_roll)
    apex = width / (2.0 * math.tan(half))
    depths = [
        vee_contact_depth(request.large_roll_top, half, request.large_roll),
        vee_contact_depth(request.small_roll_top, half, request.small_roll),
    ]
    for depth, field in zip(depths, ("large_roll", "small_roll"), strict=True):
        require_contact(depth, max(apex, 0.0), "roll", field)
    angle_budget, width_budget = _vee_budgets(request)
    return Outcome(
        VeeOverRollsResult(
            half_angle=angle_from_radians(half),
            included_angle=angle_from_radians(2.0 * half),
            width=width,
            apex_depth=apex,
            contact_depths=depths,
            half_angle_worst_arcsec=angle_budget.worst_case * ARCSEC_PER_RADIAN,
            half_angle_expanded_arcsec=angle_budget.expanded() * ARCSEC_PER_RADIAN,
            width_expanded=width_budget.expanded(),
        )
    )


def _vee_budgets(request: VeeOverRollsRequest) -> tuple[Budget, Budget]:
    """Budgets of half angle and width; refuses tolerances that leave no angle."""
    values = (
        request.large_roll,
        request.small_roll,
        request.large_roll_top,
        request.small_roll_top,
    )
    tolerances = {0: request.roll_tolerance, 1: request.roll_tolerance}
    tolerances |= {2: request.measure_tolerance, 3: request.measure_tolerance}

    def half(v: Sequence[float]) -> float:
        return vee_half_angle(v[0], v[1], v[2], v[3])

    try:
        return (
            budget_of(half, values, tolerances),
            budget_of(lambda v: vee_width(v[2], half(v), v[0]), values, tolerances),
        )
    except Impossible as swallowed:
        raise Impossible(
            "The tolerances swallow the difference of the rolls: no angle can be had from these.",
            fields={
                "measure_tolerance": "should leave the rise above the difference of the radii",
                "roll_tolerance": "should be less than the difference of the rolls",
            },
        ) from swallowed


def vee_nominal(request: VeeOverRollsNominalRequest) -> Outcome[VeeOverRollsNominalResult]:
    """What to expect over rolls in a nominal vee."""
    half = math.radians(request.included_angle) / 2.0
    apex = request.width / (2.0 * math.tan(half))
    rolls = [_roll_in_vee(roll, half, request.width) for roll in request.rolls]
    for index, expected in enumerate(rolls):
        require_contact(expected.contact_depth, apex, "roll", f"rolls/{index}")
    return Outcome(
        VeeOverRollsNominalResult(
            apex_depth=apex,
            largest_roll=request.width / math.cos(half),
            rolls=rolls,
            top_per_width=1.0 / (2.0 * math.tan(half)),
        )
    )


def _roll_in_vee(roll: float, half: float, width: float) -> VeeRollExpected:
    top = vee_roll_top(width, half, roll)
    depth = vee_contact_depth(top, half, roll)
    return VeeRollExpected(roll=roll, top=top, contact_depth=depth)


def dovetail(request: DovetailOverRollsRequest) -> Outcome[DovetailOverRollsResult]:
    """Dovetail with rolls in its corners."""
    angle = math.radians(request.angle)
    share = dovetail_constant(angle, request.roll_diameter)
    contact = dovetail_contact(angle, request.roll_diameter)
    require_contact(contact, request.height, "roll", "roll_diameter")
    sign = 1.0 if request.kind == "male" else -1.0
    corner = _corner_width(request, sign * share)
    measure = corner + sign * share
    edge = corner + sign * 2.0 * request.height / math.tan(angle)
    if min(corner, measure, edge) <= 0:
        raise Impossible(
            f"No such dovetail: corner width {plain(corner)}, edge width {plain(edge)}, measure "
            f"{plain(measure)}; all must be above zero.",
            fields={"corner_width": "should leave room for flanks and rolls"},
        )
    budget = _dovetail_budget(request)
    return Outcome(
        DovetailOverRollsResult(
            measure=measure,
            corner_width=corner,
            edge_width=edge,
            contact_height=contact,
            rolls_constant=share,
            sought_expanded=budget.expanded(),
            sought_worst=budget.worst_case,
        )
    )


def _dovetail_budget(request: DovetailOverRollsRequest) -> Budget:
    """Budget of measure less rolls' share, or of corner width plus it: the same but for M."""
    measured = 0.0 if request.measure is None else request.measure_tolerance
    return budget_of(
        lambda v: v[0] - dovetail_constant(v[2], v[1]),
        (request.measure or 0.0, request.roll_diameter, math.radians(request.angle)),
        {
            0: measured,
            1: min(request.roll_tolerance, request.roll_diameter / 2.0),
            2: request.angle_tolerance_arcsec / ARCSEC_PER_RADIAN,
        },
    )


def _corner_width(request: DovetailOverRollsRequest, share: float) -> float:
    """Corner width as given, or from the measure; both must agree to the bench step."""
    from_measure = None if request.measure is None else request.measure - share
    corner = request.corner_width if request.corner_width is not None else from_measure
    if corner is None:
        raise Disagreement(
            "The dovetail's width is missing.",
            fields={"corner_width": "send this or measure"},
        )
    if from_measure is not None and abs(from_measure - corner) > bench_step(request.units):
        raise Disagreement(
            f"measure gives a corner width of {plain(from_measure, 8)}, not {plain(corner, 8)}.",
            fields={"measure": "should agree with corner_width, or be left out"},
        )
    return corner


VEE_OVER_ROLLS = Operation(
    topic="tapers",
    verb="vee-over-rolls",
    title="Vee over two rolls",
    summary="Angle and width of a vee from the tops of two rolls of different size.",
    request=VeeOverRollsRequest,
    result=VeeOverRollsResult,
    calculate=vee,
    relations=("sin ν = (R − r) / rise of the centers",),
    sources=(TANGENT_CIRCLES,),
    example={
        "units": "mm",
        "large_roll": 40,
        "small_roll": 20,
        "large_roll_top": 20,
        "small_roll_top": -10,
        "measure_tolerance": 0.002,
        "roll_tolerance": 0.0005,
    },
)
VEE_OVER_ROLLS_NOMINAL = Operation(
    topic="tapers",
    verb="vee-over-rolls-nominal",
    title="What to expect over rolls in a vee",
    summary="Height of rolls over the faces of a nominal vee, and where they touch.",
    request=VeeOverRollsNominalRequest,
    result=VeeOverRollsNominalResult,
    calculate=vee_nominal,
    relations=("top = r (1 + 1 / sin ν) − W / (2 tan ν)", "largest roll = W / cos ν"),
    sources=(TANGENT_CIRCLES,),
    example={"units": "mm", "included_angle": 60, "width": 46.188, "rolls": [40, 20]},
)
DOVETAIL_OVER_ROLLS = Operation(
    topic="tapers",
    verb="dovetail-over-rolls",
    title="Dovetail over rolls",
    summary="Measure over or between two rolls in a dovetail's corners, or its widths from it.",
    request=DovetailOverRollsRequest,
    result=DovetailOverRollsResult,
    calculate=dovetail,
    relations=("M = corner width ± d (1 + cot(θ / 2))", "contact height = r (1 + cos θ)"),
    sources=(_DOVETAIL, TANGENT_CIRCLES),
    example={
        "units": "mm",
        "kind": "male",
        "angle": 60,
        "height": 10,
        "roll_diameter": 8,
        "corner_width": 50,
    },
)

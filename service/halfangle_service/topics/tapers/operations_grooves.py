"""Vees and dovetails over rolls: models to maths and back."""

import math

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.quantities import angle_from_radians, bench_step
from halfangle_service.topics.tapers.contact import (
    dovetail_constant,
    dovetail_contact,
    require_contact,
    vee_contact_depth,
    vee_half_angle,
    vee_width,
)
from halfangle_service.topics.tapers.models_contact import (
    DovetailOverRollsRequest,
    DovetailOverRollsResult,
    VeeOverRollsRequest,
    VeeOverRollsResult,
)
from halfangle_service.topics.tapers.operations_contact import TANGENT_CIRCLES

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
    return Outcome(
        VeeOverRollsResult(
            half_angle=angle_from_radians(half),
            included_angle=angle_from_radians(2.0 * half),
            width=width,
            apex_depth=apex,
            contact_depths=depths,
        )
    )


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
            f"No such dovetail: corner width {corner:.6g}, edge width {edge:.6g}, measure "
            f"{measure:.6g}; all must be above zero.",
            fields={"corner_width": "should leave room for flanks and rolls"},
        )
    return Outcome(
        DovetailOverRollsResult(
            measure=measure,
            corner_width=corner,
            edge_width=edge,
            contact_height=contact,
            rolls_constant=share,
        )
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
            f"measure gives a corner width of {from_measure:.8g}, not {corner:.8g}.",
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
    },
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

"""An inspection planned: what to expect of each means at hand, and what it proves."""

from collections.abc import Iterator

from halfangle_service.cautions import bluing_blind, by_grade, odd_sizes
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.blocks import SOURCES
from halfangle_service.fields.choice import at_least_one_of, needs, sent_of
from halfangle_service.fields.drawings.asked import is_drawn
from halfangle_service.fields.inspection.against import against_part, film_of
from halfangle_service.fields.inspection.planned import inspection_out, ruled_out
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.inspection.plan.drawing import drawing_of
from halfangle_service.topics.inspection.plan.feature import inspected_part, part_out
from halfangle_service.topics.inspection.plan.reached import Found, on_plate
from halfangle_service.topics.inspection.plan.request import MEANS, InspectionPlanRequest
from halfangle_service.topics.inspection.plan.result import InspectionPlanResult
from halfangle_service.trade.cone import rate_from_half_angle
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    OutOfReach,
    best_of,
)
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.wording import arcsec


@operation(
    "inspection.plan",
    relations=(
        "over rolls: ΔM = 2 H tan α; M = D + d (1 + sec α), D at the roll's center",
        "over balls: sin α = (R1 − R2) / c; c = (D − d / cos α) / (2 tan α), the center's depth",
        "gauge: p = (D − D_g) / (2 tan α); two sharp edges: tan α = (D1 − D2) / (2 (p2 − p1))",
        "probe: travel = D − 2 depth tan α − d / cos α in a socket, + outside",
        "sine plate: height = center_distance × sin θ + base_step; rise = travel × tan(lean of the "
        "surface − θ); between centers θ = α, on its generator 2α, in a vee α + asin(sin α / "
        "sin(vee / 2)); a face by its own angle",
        "bluing: marked share = film / gap at the open end",
        "limits to read: the same relations at the limits of the tolerance; accepted is what is "
        "conforming by decision_rule with the means' own uncertainty",
    ),
    sources=(
        Source(
            citation="Derived here: circles and spheres tangent to a cone, a plane levelled on a "
            "sine plate, two cones bearing on an edge; each as the single operation has it.",
            standing="derived",
        ),
        Source(
            citation="JCGM 100:2008, 5.1.2 (law of propagation) and 4.3.7 (rectangular limits).",
            standing="published",
        ),
        Source(
            citation="ISO 14253-1:2017 and :2013, JCGM 106:2012, 8: what conforms does so with a "
            "probability of at least 95 %; before 2017 within a guard band of 2 u.",
            standing="from-memory",
        ),
        Source(
            citation="ISO 1947:1973 (withdrawn): AT grades, rebuilt from the R10 rule and one row, "
            "not read row by row. Hold a drawing's own table above it.",
            standing="from-memory",
        ),
        Source(
            citation="Thickness of a marking film, round steps of the rise, the indicator's travel "
            "over four fifths of a surface.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "units": "in",
        "feature": {
            "kind": "taper-plug",
            "designation": "morse-3",
            "included_angle_tolerance_arcsec": 40,
            "large_diameter_tolerance": 0.0005,
        },
        "rolls": {
            "roll_diameters": [0.125, 0.25, 0.5],
            "measure_error_limit": 0.00005,
            "roll_error_limit": 0.00002,
            "stack_rise_error_limit": 0.00002,
        },
        "gauges": {
            "gauge_diameter": 0.938,
            "depth_error_limit": 0.001,
            "gauge_error_limit": 0.00003,
        },
        "plate": {
            "center_distance": 5,
            "center_distance_error_limit": 0.0001,
            "roll_difference": 0.00005,
            "roll_parallelism": 0.00005,
            "face_parallelism": 0.0001,
            "face_flatness": 0.00005,
            "table_flatness": 0.00005,
            "particle": 0.00002,
            "temperature_celsius": 20,
            "temperature_error_limit_celsius": 1,
            "temperature_difference_celsius": 0.5,
            "axis_pitch_error_limit_arcsec": 5,
            "axis_yaw_error_limit_arcsec": 60,
            "indicating_error_limit": 0.00005,
        },
        "set": "inch-81",
        "grade": "asme-0",
        "comparator": {"instrument_angle_error_limit_arcsec": 60},
        "bluing": {
            "blue_film": 0.00008,
            "blue_film_error_limit": 0.00004,
            "marked_share_error_limit_percent": 10,
            "gauge_angle_error_limit_arcsec": 4,
        },
        "formats": ["svg"],
    },
    largest_request="seven means, a stack of up to 8 blocks from up to 500",
    heavy=True,
)
def plan(request: InspectionPlanRequest) -> Outcome[InspectionPlanResult]:
    """Plan of an inspection.

    A cone, a taper or an angled face with its tolerances: by each means at hand what to expect, the
    limits to read with its own uncertainty, whether it can prove the tolerance, and what it cannot
    see; and each means that finds no room or cannot reach, with the reason and the nearest that
    works.
    """
    part = inspected_part(request.feature, request.units)
    found = list(_found(request, part))
    reached = [one.outcome for one in found if isinstance(one.outcome, Inspected)]
    result = InspectionPlanResult(
        feature=part_out(request.feature, part),
        best=best_of(reached),
        inspections=[
            inspection_out(one.outcome, one.blocks)
            for one in found
            if isinstance(one.outcome, Inspected)
        ],
        ruled_out=[ruled_out(one.outcome) for one in found if isinstance(one.outcome, OutOfReach)],
        svg=drawing_of(part, reached, request.units) if is_drawn(request) else None,
    )
    asides = (aside for one in found for aside in one.advisories)
    return Outcome(result, (*asides, *_advisories(request, part, result)))


def _found(request: InspectionPlanRequest, part: InspectedCone | InspectedFace) -> Iterator[Found]:
    """Each means that was sent, in a fixed order, the plate last."""
    at_least_one_of(request, *MEANS)
    for source in sent_of(request, *SOURCES):
        needs(request, source, "plate", why="The blocks are for the plate's stack.")
    for outcome in against_part(request, part, request.units, request.decision_rule):
        yield Found(outcome)
    if request.plate is not None:
        yield on_plate(request, request.plate, part)


def _advisories(
    request: InspectionPlanRequest,
    part: InspectedCone | InspectedFace,
    result: InspectionPlanResult,
) -> Iterator[Advisory]:
    if request.rolls is not None:
        yield from odd_sizes(request.units, "rolls", *request.rolls.roll_diameters)
    if request.balls is not None:
        yield from odd_sizes(request.units, "balls", *request.balls.ball_diameters)
    if request.bluing is not None and isinstance(part, InspectedCone):
        film = film_of(request.bluing, part, request.units, path="bluing/")
        yield bluing_blind(film.blind_arcsec(part))
    if isinstance(part, InspectedCone) and part.angle.field == "cone_angle_grade":
        yield from by_grade(rate_from_half_angle(part.cone.half_rad))
    proofs = [one.angle_proof for one in result.inspections if one.angle_proof is not None]
    unknown = sorted({n for p in proofs for n in p.angle_error_arcsec.not_stated})
    if unknown:
        yield caution(
            "unstated-contributions",
            "Not stated and not counted, so that no reading that lacks them is said to prove the "
            f"tolerance: {', '.join(unknown)}.",
        )
    if not any(proof.proves_tolerance is not False for proof in proofs):
        band = arcsec(result.feature.angle_band_arcsec)
        yield caution(
            "tolerance-unproved",
            f"No means at hand can prove the angle within its tolerance, {band} from least to "
            "most: measure it by finer means before it is accepted.",
        )

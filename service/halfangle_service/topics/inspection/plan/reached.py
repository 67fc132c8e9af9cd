"""Each means at hand against the part: what it comes to, or why it does not reach."""

from collections.abc import Iterator
from dataclasses import dataclass

from halfangle_service.cautions import STEEP_DEGREES, bluing_blind, odd_sizes, steep_angle
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import from_mm, from_tenth_nm
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.blocks import SOURCES
from halfangle_service.fields.choice import at_least_one_of, needs, sent_of
from halfangle_service.fields.plates import arcsec_per_step
from halfangle_service.fields.supply import read_supply
from halfangle_service.topics.inspection.plan.at_hand import (
    InspectionBluing,
    InspectionGauges,
    InspectionPlate,
    InspectionRolls,
)
from halfangle_service.topics.inspection.plan.plate import levelled, plate_set, stack_of
from halfangle_service.topics.inspection.plan.request import MEANS, InspectionPlanRequest
from halfangle_service.trade.inspection.bluing import FilmAtHand, inspected_by_bluing
from halfangle_service.trade.inspection.by_depth import (
    GaugesAtHand,
    inspected_by_depth,
    inspected_by_two_gauges,
)
from halfangle_service.trade.inspection.comparator import inspected_on_screen
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    MeansName,
    OutOfReach,
)
from halfangle_service.trade.inspection.over_balls import BallsAtHand, inspected_over_balls
from halfangle_service.trade.inspection.over_rolls import RollsAtHand, inspected_over_rolls
from halfangle_service.trade.inspection.practice import FILM_MM, ROUND_RISE
from halfangle_service.trade.inspection.sine_plate import InspectedFace, inspected_on_plate
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.unit_slips import require_center_distance, require_resolution
from halfangle_service.trade.wording import figure

#: Means that take a cone, by the field that states them, and what a face lacks for them.
_OF_A_CONE: dict[str, tuple[MeansName, str]] = {
    "rolls": ("over-rolls", "Rolls lie against a cone from both sides; a face has one."),
    "balls": ("over-balls", "Balls rest in a socket; a face has none."),
    "gauges": ("gauge-depth", "A gauge rests on a cone; a face has none."),
    "bluing": ("bluing", "The gauge of a taper is blued; a face has none."),
}


@dataclass(frozen=True, slots=True)
class Found:
    """What a means comes to, the blocks of its plate's stack, and what a hand would add."""

    outcome: Inspected | OutOfReach
    blocks: tuple[float, ...] = ()
    advisories: tuple[Advisory, ...] = ()


def measured(
    request: InspectionPlanRequest, part: InspectedCone | InspectedFace
) -> Iterator[Found]:
    """Each means that was sent, in a fixed order."""
    at_least_one_of(request, *MEANS)
    for source in sent_of(request, *SOURCES):
        needs(request, source, "plate", why="The blocks are for the plate's stack.")
    if isinstance(part, InspectedCone):
        yield from _of_a_cone(request, part)
    else:
        for field in sent_of(request, *_OF_A_CONE):
            means, reason = _OF_A_CONE[field]
            instead = "A sine plate, or a comparator."
            yield Found(OutOfReach(means, reason, field, instead))
    if request.plate is not None:
        yield _on_plate(request, request.plate, part)
    if request.comparator is not None:
        error = request.comparator.measurement_error_limit_arcsec
        yield Found(inspected_on_screen(part, error, request.decision_rule))
    if request.bluing is not None and isinstance(part, InspectedCone):
        yield _blued(request, request.bluing, part)


def _of_a_cone(request: InspectionPlanRequest, part: InspectedCone) -> Iterator[Found]:
    units, rule = request.units, request.decision_rule
    if (rolls := request.rolls) is not None:
        odd = odd_sizes(units, "rolls", *rolls.roll_diameters)
        yield Found(
            inspected_over_rolls(part, _rolls(rolls, ROUND_RISE[units]), units, rule),
            advisories=odd,
        )
    if (balls := request.balls) is not None:
        at_hand = BallsAtHand(
            balls.ball_diameters, balls.measure_error_limit, balls.roll_error_limit
        )
        odd = odd_sizes(units, "balls", *balls.ball_diameters)
        yield Found(inspected_over_balls(part, at_hand, units, rule), advisories=odd)
    if (gauges := request.gauges) is not None:
        made = _gauges(gauges)
        yield Found(inspected_by_depth(part, made, units, rule))
        if gauges.second_gauge_diameter is not None:
            yield Found(inspected_by_two_gauges(part, made, units, rule))


def _rolls(rolls: InspectionRolls, step: float) -> RollsAtHand:
    return RollsAtHand(
        rolls.roll_diameters,
        rolls.standing_on == "small-end",
        rolls.stack_rise,
        step,
        rolls.measure_error_limit,
        rolls.roll_error_limit,
        rolls.stack_rise_error_limit,
    )


def _gauges(gauges: InspectionGauges) -> GaugesAtHand:
    return GaugesAtHand(
        gauges.gauge_diameter,
        gauges.gauge_length,
        gauges.second_gauge_diameter,
        gauges.depth_error_limit,
        gauges.gauge_error_limit,
    )


def _on_plate(
    request: InspectionPlanRequest, plate: InspectionPlate, part: InspectedCone | InspectedFace
) -> Found:
    """The part on the sine plate, its stack of the blocks sent, where some were."""
    units = request.units
    require_center_distance(plate.center_distance, units, "plate/center_distance")
    require_resolution(plate.resolution, units, "plate/resolution")
    try:
        level = levelled(part, plate)
    except Impossible as lies_not:
        field = f"plate/{next(iter(lies_not.fields))}"
        instead = "Held between centers."
        return Found(OutOfReach("sine-plate", lies_not.detail, field, instead))
    if isinstance(level, OutOfReach):
        return Found(level)
    pieces: tuple[Piece, ...] | None = None
    said: tuple[Advisory, ...] = ()
    if sent_of(request, *SOURCES):
        supply = read_supply(request)
        pieces = stack_of(level, plate, supply, request.grade, request.max_blocks, units)
        said = supply.advisories
    made = plate_set(level, plate, pieces, units)
    blocks = tuple(from_tenth_nm(piece.size, units) for piece in pieces or ())
    if isinstance(made, OutOfReach):
        return Found(made, advisories=said)
    per_step = arcsec_per_step(plate.center_distance, level.plate_rad, units)
    steep = steep_angle(level.plate_degrees, per_step, STEEP_DEGREES)
    found = inspected_on_plate(level, made, part.angle, units, request.decision_rule)
    return Found(found, blocks, (*said, *steep))


def _blued(request: InspectionPlanRequest, bluing: InspectionBluing, part: InspectedCone) -> Found:
    """The part blued in its gauge; refuses a film that is all error."""
    film = bluing.blue_film or from_mm(FILM_MM, request.units)
    if (bluing.blue_film_error_limit or 0.0) >= film:
        raise Disagreement(
            f"The film is {figure(film, request.units)} thick and would be off by no less.",
            fields={
                "bluing/blue_film_error_limit": f"should be below {figure(film, request.units)}"
            },
        )
    share = bluing.marked_share_error_limit_percent
    at_hand = FilmAtHand(
        film,
        bluing.blue_film_error_limit,
        bluing.contact_length or part.length,
        None if share is None else share / 100.0,
        bluing.gauge_angle_error_limit_arcsec,
    )
    found = inspected_by_bluing(part, at_hand, request.units, request.decision_rule)
    blind = bluing_blind(at_hand.blind_arcsec(part))
    return Found(found, advisories=(blind,) if isinstance(found, Inspected) else ())

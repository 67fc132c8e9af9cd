"""Each means at hand against a part: what it comes to, or why it does not reach."""

from collections.abc import Callable, Iterator

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import Units, from_mm
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.inspection.at_hand import (
    InspectionBluing,
    InspectionGauges,
    InspectionRolls,
    MeansAtHandFields,
)
from halfangle_service.trade.inspection.bluing import FilmAtHand, inspected_by_bluing
from halfangle_service.trade.inspection.by_depth import (
    GaugesAtHand,
    inspected_by_depth,
    inspected_by_two_gauges,
)
from halfangle_service.trade.inspection.by_probe import ProbeAtHand, inspected_by_probe
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
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.uncertainty import DecisionRule
from halfangle_service.trade.wording import figure, said_in

#: Means that take a cone, by the field that states them, and what a face lacks for them.
OF_A_CONE: dict[str, tuple[MeansName, str]] = {
    "rolls": ("over-rolls", "Rolls lie against a cone from both sides; a face has one."),
    "balls": ("over-balls", "Balls rest in a socket; a face has none."),
    "gauges": ("gauge-depth", "A gauge rests on a cone; a face has none."),
    "probe": ("probe", "A probe travels across a cone; a face has one side."),
    "bluing": ("bluing", "The gauge of a taper is blued; a face has none."),
}


def against_part(
    at_hand: MeansAtHandFields,
    part: InspectedCone | InspectedFace,
    units: Units,
    rule: DecisionRule,
    *,
    path: str = "",
) -> Iterator[Inspected | OutOfReach]:
    """Each means that was sent, in a fixed order; `path` is that of the object that holds them."""
    if isinstance(part, InspectedCone):
        yield from _of_a_cone(at_hand, part, units, rule)
    else:
        for field in sent_of(at_hand, *OF_A_CONE):
            means, reason = OF_A_CONE[field]
            yield OutOfReach(means, reason, field, "A sine plate, or a comparator.")
    if at_hand.comparator is not None:
        error = at_hand.comparator.instrument_angle_error_limit_arcsec
        yield inspected_on_screen(part, error, rule)
    if at_hand.bluing is not None and isinstance(part, InspectedCone):
        film = film_of(at_hand.bluing, part, units, path=f"{path}bluing/")
        yield inspected_by_bluing(part, film, units, rule)


def _of_a_cone(
    at_hand: MeansAtHandFields, part: InspectedCone, units: Units, rule: DecisionRule
) -> Iterator[Inspected | OutOfReach]:
    if (rolls := at_hand.rolls) is not None:
        sizes = _rolls(rolls, ROUND_RISE[units])
        yield _or_swallowed(
            "over-rolls", "rolls", units, lambda: inspected_over_rolls(part, sizes, units, rule)
        )
    if (balls := at_hand.balls) is not None:
        laid = BallsAtHand(balls.ball_diameters, balls.measure_error_limit, balls.roll_error_limit)
        yield _or_swallowed(
            "over-balls", "balls", units, lambda: inspected_over_balls(part, laid, units, rule)
        )
    if (gauges := at_hand.gauges) is not None:
        made = _gauges(gauges)
        yield _or_swallowed(
            "gauge-depth", "gauges", units, lambda: inspected_by_depth(part, made, units, rule)
        )
        if gauges.second_gauge_diameter is not None:
            yield _or_swallowed(
                "two-gauges",
                "gauges",
                units,
                lambda: inspected_by_two_gauges(part, made, units, rule),
            )
    if (probe := at_hand.probe) is not None:
        tip = ProbeAtHand(
            probe.tip_diameter,
            ROUND_RISE[units],
            probe.measure_error_limit,
            probe.depth_error_limit,
            probe.tip_error_limit,
        )
        yield _or_swallowed(
            "probe", "probe", units, lambda: inspected_by_probe(part, tip, units, rule)
        )


def _or_swallowed(
    means: MeansName, field: str, units: Units, found: Callable[[], Inspected | OutOfReach]
) -> Inspected | OutOfReach:
    """What a means comes to; out of reach where an error of it swallows what it measures."""
    try:
        return found()
    except Impossible as swallowed:
        name, wanted = next(iter(swallowed.fields.items()))
        return OutOfReach(
            means,
            said_in(swallowed.detail, units),
            f"{field}/{name}",
            f"The error {said_in(wanted, units)}.",
        )


def _rolls(rolls: InspectionRolls, step: float) -> RollsAtHand:
    return RollsAtHand(
        rolls.roll_diameters,
        None if rolls.standing_on is None else rolls.standing_on == "small-end",
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


def film_of(
    bluing: InspectionBluing, part: InspectedCone, units: Units, *, path: str
) -> FilmAtHand:
    """The film and its gauge; refuses a film that is all error. `path` is the bluing's."""
    film = require_film(bluing, units, path)
    share = bluing.marked_share_error_limit_percent
    return FilmAtHand(
        film,
        bluing.blue_film_error_limit,
        bluing.contact_length or part.length,
        None if share is None else share / 100.0,
        bluing.gauge_angle_error_limit_arcsec,
    )


def require_film(bluing: InspectionBluing, units: Units, path: str) -> float:
    """Thickness of the film; refuses one that is all error. `path` is the bluing's."""
    film = bluing.blue_film or from_mm(FILM_MM, units)
    if (bluing.blue_film_error_limit or 0.0) >= film:
        raise Disagreement(
            f"The film is {figure(film, units)} thick and would be off by no less.",
            fields={f"{path}blue_film_error_limit": f"should be below {figure(film, units)}"},
        )
    return film

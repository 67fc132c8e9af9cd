"""The tolerance of a feature's size: by which reading to stop, and whether it will be kept."""

from pydantic import Field

from halfangle_service.fields import CountOut, LengthOut, ResultModel
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.topics.jobs.plan.parts.batch import PlanBatch
from halfangle_service.topics.jobs.plan.parts.feed import Fed, Feeding, PlanFeeding
from halfangle_service.trade.planning.feed import ErrorLimits, Reading, ReadingName
from halfangle_service.trade.planning.size import (
    SizeErrors,
    drift,
    size_budget,
    sized_of,
    stop_zone,
)
from halfangle_service.trade.uncertainty import DecisionRule, Forecast, forecast_of


class PlanSize(ResultModel):
    """The size that the feed ends at: the large diameter, or a face's distance."""

    nominal_size: LengthOut = Field(description="The size wanted.")
    size_tolerance: LengthOut = Field(description="± tolerance asked for.")
    read_off: ReadingName = Field(description="The reading to stop by.")
    aimed_stop: LengthOut | None = Field(
        description="What to stop at: the middle of both below; null where they are."
    )
    smallest_stop: LengthOut | None = Field(
        description="Smallest reading at which the size is inside by `decision_rule`; null where "
        "none says so, or what it is counted from was not stated."
    )
    largest_stop: LengthOut | None = Field(description="Largest such reading; null likewise.")
    pieces_between: CountOut = Field(
        description="Pieces that are stopped by the dial as the first of a dress was; 0 where each "
        "is stopped by its own reading."
    )
    size_error: LengthEstimate = Field(
        description="The size's error to expect, stopped there: by the reading, the dial's step, "
        "the wheel's wear and warmth of the work."
    )
    forecast: Forecast = Field(
        description="Whether it will keep the tolerance, by `decision_rule`; never `holds` with "
        "something not stated."
    )


def planned_size(
    feeding: Feeding, fed: Fed, batch: PlanBatch, pieces: int, rule: DecisionRule
) -> PlanSize | None:
    """What keeps the size of the feature by one way; None where no tolerance of it was stated."""
    wanted, surface = feeding.wanted, feeding.surface
    reading = fed.reading
    if wanted.size is None or wanted.size_tolerance is None or reading is None:
        return None
    sized = sized_of(surface, wanted.size, wanted.size_tolerance)
    errors = _errors(feeding.stated, _between(reading, batch, pieces))
    budget = size_budget(sized, fed.motion, surface.half_angle_rad, reading, errors)
    drifts = drift(sized, errors, internal=surface.internal)
    zone = None
    if not budget.not_stated:
        zone = stop_zone(sized, reading, budget, drifts, rule, internal=surface.internal)
    return PlanSize(
        nominal_size=sized.nominal,
        size_tolerance=sized.tolerance,
        read_off=reading.name,
        aimed_stop=None if zone is None else zone.aim,
        smallest_stop=None if zone is None else zone.smallest,
        largest_stop=None if zone is None else zone.largest,
        pieces_between=errors.pieces_between,
        size_error=estimate(LengthEstimate, budget),
        forecast=forecast_of(budget, -sized.tolerance, sized.tolerance, rule),
    )


def _errors(stated: PlanFeeding, between: int) -> SizeErrors:
    """What was stated, nothing taken as usual: no judgement comes out of that."""
    limits = ErrorLimits(
        stated.diameter_error_limit,
        stated.axial_position_error_limit,
        stated.height_error_limit,
        stated.dial_error_limit,
    )
    return SizeErrors(
        limits,
        stated.dial_step,
        stated.size_wear_per_piece,
        stated.work_temperature_difference_celsius,
        between,
    )


def _between(reading: Reading, batch: PlanBatch, pieces: int) -> int:
    """Pieces stopped by the dial as the first of a dress was; 0 where each is read by itself."""
    if reading.name != "feed-dial":
        return 0
    return min(pieces, batch.pieces_per_dress or pieces) - 1

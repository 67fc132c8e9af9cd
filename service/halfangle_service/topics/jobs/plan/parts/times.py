"""What a way takes in time, and what of it was taken as usual."""

from collections.abc import Sequence

from pydantic import Field

from halfangle_service.fields import CountOut, Minutes, MinutesOut, RequestModel, ResultModel
from halfangle_service.topics.jobs.plan.parts.batch import PlanBatch
from halfangle_service.trade.planning.times import (
    DRESSING_MINUTES,
    LOADING_MINUTES,
    MINUTES_PER_PIECE,
    JobTime,
    SetupPart,
    SetupTimes,
    TimedPart,
)

_USUAL = SetupTimes()


class PlanTimes(RequestModel):
    """What a shop takes in time beside each way's own set-up and inspection, in minutes.

    The usual times are common practice, no source.
    """

    block_minutes: Minutes = Field(_USUAL.block, description="To clean and wring a block.")
    stack_minutes: Minutes = Field(
        _USUAL.stack, description="To measure a stack and put it under its roll."
    )
    further_tilt_minutes: Minutes = Field(
        _USUAL.further_tilt, description="To set another plate than the first, and lock it."
    )
    squaring_minutes: Minutes = Field(
        _USUAL.squaring,
        description="To square what holds work turned a quarter on the plate, by indicator.",
    )
    edge_trueing_minutes: Minutes = Field(
        _USUAL.edge_trueing,
        description="To indicate the edge of a face's work true to the plate.",
    )
    turn_in_plan_minutes: Minutes = Field(
        _USUAL.turn_in_plan, description="To turn work in plan by an angle on the plate."
    )
    loading_minutes: Minutes = Field(
        LOADING_MINUTES, description="To put a piece in and take it out."
    )
    dressing_minutes: Minutes = Field(
        DRESSING_MINUTES, description="To dress the wheel again between pieces."
    )

    @property
    def of_setup(self) -> SetupTimes:
        """What a set-up is made of."""
        return SetupTimes(
            self.block_minutes,
            self.stack_minutes,
            self.further_tilt_minutes,
            self.squaring_minutes,
            self.edge_trueing_minutes,
            self.turn_in_plan_minutes,
        )


class PlanSetupPart(ResultModel):
    """A part of a set-up, in minutes."""

    setup_part: SetupPart = Field(description="Which part.")
    times_done: CountOut = Field(description="How often.")
    minutes_each: MinutesOut = Field(description="Time of each.")


class PlanTime(ResultModel):
    """Time of a way by its parts, in minutes."""

    setup_minutes: MinutesOut = Field(description="To set up, the first dress with it.")
    setup_parts: list[PlanSetupPart] = Field(
        description="What that is made of: the equipment's own time, blocks, stacks and the rest."
    )
    loading_minutes: MinutesOut = Field(
        description="To put a piece in and take it out; 0 where `minutes_per_piece` was stated, "
        "which holds it."
    )
    minutes_per_piece: MinutesOut = Field(
        description="To grind one piece: as stated, else by the feed, else as usual."
    )
    inspection_minutes: MinutesOut = Field(description="To inspect one piece.")
    dressing_minutes: MinutesOut = Field(description="To dress the wheel again.")
    pieces_inspected: CountOut = Field(
        description="Pieces that are inspected: first and last where no dress is known."
    )
    dressings: CountOut = Field(description="Dresses between the pieces; 0 where not told.")
    by_feed: bool = Field(description="Whether the time of a piece follows from the feed.")


def planned_time(
    setup: Sequence[TimedPart],
    inspection_minutes: float,
    times: PlanTimes,
    stated_per_piece: float | None,
    by_feed: float | None,
    pieces: int,
    batch: PlanBatch,
) -> tuple[PlanTime, JobTime]:
    """The time of a way; that of a piece as stated, else by its feed, else as usual."""
    loading, per_piece = 0.0, MINUTES_PER_PIECE
    if stated_per_piece is not None:
        per_piece = stated_per_piece
    elif by_feed is not None:
        loading, per_piece = times.loading_minutes, by_feed
    whole = JobTime(
        setup=sum(part.minutes for part in setup),
        loading=loading,
        grinding=per_piece,
        inspection=inspection_minutes,
        dressing=times.dressing_minutes,
        pieces=pieces,
        inspected=batch.pieces_inspected,
        dressings=batch.dressings or 0,
    )
    parts = PlanTime(
        setup_minutes=whole.setup,
        setup_parts=[
            PlanSetupPart(setup_part=part.part, times_done=part.count, minutes_each=part.each)
            for part in setup
        ],
        loading_minutes=loading,
        minutes_per_piece=per_piece,
        inspection_minutes=whole.inspection,
        dressing_minutes=whole.dressing,
        pieces_inspected=whole.inspected,
        dressings=whole.dressings,
        by_feed=stated_per_piece is None and by_feed is not None,
    )
    return parts, whole

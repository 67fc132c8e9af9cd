"""What a way takes in time, and what of it was taken as usual."""

from pydantic import Field

from halfangle_service.fields import CountOut, MinutesOut, ResultModel
from halfangle_service.topics.jobs.plan.parts.batch import PlanBatch
from halfangle_service.trade.planning.times import (
    DRESSING_MINUTES,
    LOADING_MINUTES,
    MINUTES_PER_PIECE,
    JobTime,
)


class PlanTime(ResultModel):
    """Time of a way by its parts, in minutes."""

    setup_minutes: MinutesOut = Field(description="To set up, the first dress with it.")
    loading_minutes: MinutesOut = Field(
        description="To put a piece in and take it out; 0 where `minutes_per_piece` was stated, "
        "which holds it."
    )
    minutes_per_piece: MinutesOut = Field(
        description="To grind one piece: as stated, else by the feed, else as usual."
    )
    inspection_minutes: MinutesOut = Field(description="To inspect one piece.")
    dressing_minutes: MinutesOut = Field(
        description="To dress the wheel again (common practice, no source)."
    )
    pieces_inspected: CountOut = Field(
        description="Pieces that are inspected: first and last where no dress is known."
    )
    dressings: CountOut = Field(description="Dresses between the pieces; 0 where not told.")
    by_feed: bool = Field(description="Whether the time of a piece follows from the feed.")


def planned_time(
    setup_minutes: float,
    inspection_minutes: float,
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
        loading, per_piece = LOADING_MINUTES, by_feed
    whole = JobTime(
        setup=setup_minutes,
        loading=loading,
        grinding=per_piece,
        inspection=inspection_minutes,
        dressing=DRESSING_MINUTES,
        pieces=pieces,
        inspected=batch.pieces_inspected,
        dressings=batch.dressings or 0,
    )
    parts = PlanTime(
        setup_minutes=setup_minutes,
        loading_minutes=loading,
        minutes_per_piece=per_piece,
        inspection_minutes=inspection_minutes,
        dressing_minutes=DRESSING_MINUTES,
        pieces_inspected=whole.inspected,
        dressings=whole.dressings,
        by_feed=loading > 0.0,
    )
    return parts, whole

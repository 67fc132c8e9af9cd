"""A batch of pieces by a way: how the angle's error grows, when to dress, which to measure."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ArcsecOut,
    Count,
    CountOut,
    RequestModel,
    ResultModel,
    SignedArcsec,
)
from halfangle_service.fields.estimate import NotStated
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.shop.wheel import PlanWheel
from halfangle_service.trade.planning.batch import (
    FEWEST_OBSERVED,
    Growth,
    Inspected,
    first_piece_fails,
    observed_growth,
    pieces_per_dress,
    to_inspect,
)
from halfangle_service.trade.uncertainty import Budget, DecisionRule
from halfangle_service.trade.wording import arcsec, plain

#: What a budget says of the wheel's wear; a batch has its own account of it.
WHEEL_TERMS = frozenset(
    {"wheel_face_error_limit_arcsec", "wheel_breakdown", "flank_wear", "side_wear"}
)
BREAKDOWN = "equipment/wheel/breakdown_per_piece"
#: Ten degrees: far past what a wheel breaks down to.
_LARGEST_OBSERVED_ARCSEC = 36_000.0


#: The budget of an angle in arc-seconds without the wheel's wear, and its ± tolerance.
Tolerated = tuple[Budget, float]


class PlanObservedPiece(RequestModel):
    """A piece of an earlier batch on this wheel, as it was measured."""

    piece_since_dress: Annotated[int, Count(ge=1, le=1_000_000)] = Field(
        description="Which piece it was since the wheel was dressed, the first being 1."
    )
    measured_error_arcsec: SignedArcsec = Field(
        description="Its angle as measured, less the angle wanted: of a cone the included one."
    )


ObservedPieces = Annotated[
    list[PlanObservedPiece],
    Field(
        max_length=100,
        description="Pieces that were measured, at least three, from which the wheel's breakdown "
        "is taken in place of `breakdown_per_piece`.",
    ),
]


class PlanBatch(ResultModel):
    """The pieces of the job on one wheel; what was not stated could only make a dress sooner."""

    growth_per_piece_arcsec: ArcsecOut | None = Field(
        description="Growth of the angle's error in one piece; null where no breakdown was stated, "
        "and by another wheel than the flat one over the plates."
    )
    pieces_per_dress: CountOut | None = Field(
        description="Most pieces on one dress, so that the last still keeps the tolerance by "
        "`decision_rule` and what was stated; 0 where not even the first does."
    )
    growth_at_last_arcsec: ArcsecOut | None = Field(
        description="Growth up to the last piece before a dress."
    )
    dressings: CountOut | None = Field(description="Dresses between the first piece and the last.")
    pieces_inspected: CountOut = Field(description="How many pieces to measure.")
    pieces_to_measure: list[CountOut] = Field(
        description="Which, by number: first, last before each dress, first after it, last of all; "
        "no more than the first 24 of them. First and last where no dress is known."
    )
    reason: str = Field(description="Why these, in plain words.")
    not_stated: NotStated


@dataclass(frozen=True, slots=True)
class Batch:
    """What of a job's batch is the same for all its ways: pieces, growth, rule.

    `flat_wheel`: the flat wheel over the plates grinds, of whose breakdown the request tells.
    """

    pieces: int
    growth: Growth | None
    rule: DecisionRule
    flat_wheel: bool = True

    def by_other_wheel(self) -> "Batch":
        """The same batch by a wheel of whose breakdown nothing is asked."""
        return replace(self, growth=None, flat_wheel=False)

    def most(self, angles: Sequence[Tolerated]) -> int | None:
        """Most pieces on one dress that keep every angle; None where it is not known."""
        if self.growth is None:
            return None
        found = [
            pieces_per_dress(budget, self.growth, self.pieces, tolerance, self.rule)
            for budget, tolerance in angles
        ]
        known = [count for count in found if count is not None]
        return min(known) if len(known) == len(found) else None

    def first_fails(self, angles: Sequence[Tolerated]) -> bool:
        """True where the first piece on a dress does not keep some angle, however it grows."""
        growth = self.growth
        return growth is not None and any(
            first_piece_fails(budget, growth, tolerance, self.rule) for budget, tolerance in angles
        )


def batch_of(
    wanted: Wanted,
    wheel: PlanWheel | None,
    observed: Sequence[PlanObservedPiece],
    pieces: int,
    rule: DecisionRule,
) -> Batch:
    """The batch as it was stated; refuses a breakdown stated and observed, and too few pieces."""
    # A flat wheel's breakdown says nothing of the one that goes into a socket.
    stated = None if wheel is None or wanted.internal else wheel.breakdown_per_piece
    if observed and stated is not None:
        raise Disagreement(
            "The breakdown of the wheel was stated and observed too.",
            fields={
                BREAKDOWN: "send this or observed_pieces",
                "observed_pieces": "send this or breakdown_per_piece",
            },
        )
    growth = None
    if observed:
        _require_small(observed)
        errors = [(each.piece_since_dress, each.measured_error_arcsec) for each in observed]
        growth = observed_growth(errors, wanted.counted)
        if growth is None:
            raise Disagreement(
                "No growth can be told from these pieces.",
                fields={
                    "observed_pieces": f"should be {FEWEST_OBSERVED} at least, not all of one place"
                },
            )
    elif stated is not None and wheel is not None:
        growth = Growth.of_breakdown(
            stated, wanted.slant, wheel.breakdown_makes, counted=wanted.counted
        )
    return Batch(pieces, growth, rule, not wanted.internal or growth is not None)


def _require_small(observed: Sequence[PlanObservedPiece]) -> None:
    """Refuse an error of a piece that no wheel's wear makes: a slip of the unit is likelier."""
    for place, each in enumerate(observed):
        if abs(each.measured_error_arcsec) > _LARGEST_OBSERVED_ARCSEC:
            raise Impossible(
                f"A piece {arcsec(each.measured_error_arcsec)} off is no worn wheel's.",
                fields={
                    f"observed_pieces/{place}/measured_error_arcsec": "should be within "
                    f"±{plain(_LARGEST_OBSERVED_ARCSEC)}″"
                },
            )


def planned_batch(batch: Batch, angles: Sequence[Tolerated]) -> PlanBatch:
    """The batch by one way."""
    growth, most = batch.growth, batch.most(angles)
    inspected = to_inspect(batch.pieces, most) if most else None
    last = min(most, batch.pieces) if most else None
    ends = sorted({1, batch.pieces}) if most is None else [1]
    return PlanBatch(
        growth_per_piece_arcsec=None if growth is None else growth.error_arcsec(1),
        pieces_per_dress=most,
        growth_at_last_arcsec=None if last is None or growth is None else growth.error_arcsec(last),
        dressings=None if inspected is None else inspected.dressings,
        pieces_inspected=len(ends) if inspected is None else inspected.count,
        pieces_to_measure=ends if inspected is None else list(inspected.listed),
        reason=_reason(batch, most, inspected, last),
        not_stated=[BREAKDOWN] if growth is None and batch.flat_wheel else [],
    )


def without_wear(budget: Budget, per_unit: float) -> Budget:
    """A budget in arc-seconds, without what it says of the wheel's wear.

    `per_unit` are the arc-seconds of its own unit.
    """
    parts = tuple(
        part.times(per_unit) for part in budget.contributions if part.name not in WHEEL_TERMS
    )
    missing = tuple(name for name in budget.not_stated if name not in WHEEL_TERMS)
    return Budget(parts, budget.offset * per_unit, missing)


def _reason(batch: Batch, most: int | None, inspected: Inspected | None, last: int | None) -> str:
    if not batch.flat_wheel:
        return (
            "Nothing is asked of this wheel's breakdown a piece, so no dress can be told: measure "
            "the first piece and the last, and dress where they differ."
        )
    if batch.growth is None:
        return (
            "The breakdown of the wheel was not stated, so no dress can be told: measure the first "
            "piece and the last, and dress where they differ."
        )
    if most is None:
        return "Nothing was stated of the set-up, so no dress can be told."
    if inspected is None or last is None:
        return (
            "Not even the first piece on a fresh dress keeps the tolerance by this rule: mend the "
            "set-up first."
        )
    grown = arcsec(batch.growth.error_arcsec(last))
    if not inspected.dressings:
        return f"One dress serves all pieces: by the last the angle has grown {grown}."
    return (
        f"Dress after every {most} pieces, by which the angle has grown {grown}. The first piece "
        "proves the set-up, the last before a dress the wheel, the first after it the dress."
    )

"""When to dress again, by the pieces that were measured as the wheel broke down."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import DRESSING_SAFETY
from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    Arcsec,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    SignedArcsec,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import at_least_one_of
from halfangle_service.fields.estimate import (
    DECISION_RULE,
    ArcsecEstimate,
    DecisionRuleField,
    LengthEstimate,
    estimate,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.planning.batch import (
    FEWEST_OBSERVED,
    Line,
    judged_at,
    line_through,
    most_pieces,
    to_inspect,
)
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule

#: Scatter below this part of a tolerance is the rounding of figures.
_NO_SCATTER = 1e-9
#: What is judged, of which one at least is sent.
TOLERANCES = ("tolerance_arcsec", "size_tolerance")

_LINE = Source(
    citation="Least-squares line and the prediction of a further value, s √(1 + 1/n + (k − mean)² "
    "/ Σ(k − mean)²), with Student's distribution: JCGM 100:2008, H.3 and G.3.",
    standing="from-memory",
)


class WheelObservedPiece(RequestModel):
    """A piece ground on one dress, as it was measured."""

    piece_since_dress: Annotated[int, Count(ge=1, le=1_000_000)] = Field(
        description="Which piece it was since the wheel was dressed, the first being 1."
    )
    measured_error_arcsec: SignedArcsec | None = Field(
        None, description="Its angle as measured, less the angle wanted."
    )
    measured_size_error: SignedLength | None = Field(
        None, description="Its size as measured, less the size wanted, in `units`."
    )


class WheelRedressRequest(RequestModel):
    """Pieces of an earlier dress, and what further ones have to keep."""

    rules = (Rule("at-least-one-of", TOLERANCES),)

    units: UnitsField
    observed_pieces: list[WheelObservedPiece] = Field(
        max_length=100,
        description="Pieces that were measured, each by angle, size or both; three at least of "
        "what has a tolerance.",
    )
    pieces: Annotated[int, Count(ge=1, le=1_000_000)] = Field(
        description="How many pieces are to be ground.", examples=[50]
    )
    tolerance_arcsec: Arcsec | None = Field(
        None, description="± tolerance of the angle, in arc-seconds.", examples=[30.0]
    )
    size_tolerance: Length | None = Field(None, description="± tolerance of the size, in `units`.")
    measurement_error_limit_arcsec: Arcsec | None = Field(
        None, description="Largest error ± common to all measured angles, in arc-seconds."
    )
    measurement_error_limit: Length | None = Field(
        None, description="Largest error ± common to all measured sizes, in `units`."
    )
    decision_rule: DecisionRuleField = DECISION_RULE


class WheelRedressResult(ResultModel):
    """How angle and size grow, and how many pieces keep them on one dress."""

    growth_per_piece_arcsec: ArcsecEstimate | None = Field(
        description="Growth of the angle's error a piece, signed; null without a tolerance of it."
    )
    growth_per_piece: LengthEstimate | None = Field(
        description="Growth of the size's error a piece, signed; null without a tolerance of it."
    )
    first_piece_error_arcsec: ArcsecOut | None = Field(
        description="Angle's error of the first piece by the line: the set-up's own."
    )
    first_piece_size_error: LengthOut | None = Field(
        description="Size's error of the first piece by the line."
    )
    pieces_per_dress: CountOut = Field(
        description="Most pieces on one dress, so that the last still keeps every tolerance by "
        "`decision_rule` and what was stated; 0 where not even the first does."
    )
    limited_by: Literal["angle", "size"] | None = Field(
        description="Which of them asks for the dress; null where all pieces keep both."
    )
    dressings: CountOut | None = Field(
        description="Dresses between the first piece and the last; null where none would do."
    )
    pieces_inspected: CountOut | None = Field(description="How many pieces to measure.")
    pieces_to_measure: list[CountOut] = Field(
        description="Which: first, last before each dress, first after it, last; at most 24."
    )
    not_stated: list[str] = Field(
        description="Fields that were not stated; they could only make a dress sooner."
    )


@operation(
    "wheels.redress",
    relations=(
        "error(k) = a + b k, least squares over the pieces observed",
        "u(k) = s √(1 + 1/n + (k − mean)² / Σ(k − mean)²), n − 2 degrees of freedom",
        "last piece k that keeps ± tolerance with a probability of 95 %",
    ),
    sources=(_LINE,),
    example={
        "units": "mm",
        "observed_pieces": [
            {"piece_since_dress": 1, "measured_error_arcsec": -2, "measured_size_error": 0.0},
            {"piece_since_dress": 5, "measured_error_arcsec": 1, "measured_size_error": 0.0007},
            {"piece_since_dress": 9, "measured_error_arcsec": 5, "measured_size_error": 0.0011},
            {"piece_since_dress": 13, "measured_error_arcsec": 7, "measured_size_error": 0.0018},
        ],
        "pieces": 50,
        "tolerance_arcsec": 20,
        "size_tolerance": 0.01,
        "measurement_error_limit_arcsec": 3,
        "measurement_error_limit": 0.001,
    },
    largest_request="100 pieces observed, a million to grind",
    heavy=True,
)
def redress(request: WheelRedressRequest) -> Outcome[WheelRedressResult]:
    """When to dress again.

    How angle and size grow from piece to piece, by pieces measured on one dress, and after how many
    to dress so that the last still keeps its tolerance; which pieces to measure.
    """
    at_least_one_of(request, *TOLERANCES)
    judged = [one for one in (_angle(request), _size(request)) if one is not None]
    most = {one.what: one.most(request.pieces, request.decision_rule) for one in judged}
    per_dress = min(most.values())
    inspected = to_inspect(request.pieces, per_dress) if per_dress else None
    found = {one.what: one for one in judged}
    angle, size = found.get("angle"), found.get("size")
    enough = per_dress == request.pieces
    result = WheelRedressResult(
        growth_per_piece_arcsec=None
        if angle is None
        else estimate(ArcsecEstimate, angle.slope_budget, angle.line.slope),
        growth_per_piece=None
        if size is None
        else estimate(LengthEstimate, size.slope_budget, size.line.slope),
        first_piece_error_arcsec=None if angle is None else angle.line.at(1),
        first_piece_size_error=None if size is None else size.line.at(1),
        pieces_per_dress=per_dress,
        limited_by=None if enough else min(most, key=lambda what: most[what]),
        dressings=None if inspected is None else inspected.dressings,
        pieces_inspected=None if inspected is None else inspected.count,
        pieces_to_measure=[] if inspected is None else list(inspected.listed),
        not_stated=[name for one in judged for name in one.budget.not_stated],
    )
    return Outcome(result, tuple(_advisories(judged, result)))


@dataclass(frozen=True, slots=True)
class _Judged:
    """The line of angle or size, its ± tolerance, and the budget of what all measures share."""

    what: Literal["angle", "size"]
    line: Line
    tolerance: float
    budget: Budget

    def most(self, pieces: int, rule: DecisionRule) -> int:
        """Most pieces on one dress."""
        return most_pieces(
            lambda piece: (
                judged_at(self.budget, self.line, piece, self.tolerance, rule) == "conforming"
            ),
            pieces,
        )

    @property
    def slope_budget(self) -> Budget:
        """Budget of the growth a piece: an error that all measures share is not in it."""
        freedom = self.line.degrees_of_freedom
        part = Contribution("scatter", self.line.spread, "normal", degrees_of_freedom=freedom)
        return Budget((part,))


def _angle(request: WheelRedressRequest) -> _Judged | None:
    if request.tolerance_arcsec is None:
        return None
    values = [(p.piece_since_dress, p.measured_error_arcsec) for p in request.observed_pieces]
    line = _line(values, "measured_error_arcsec")
    shared = _shared("measurement_error_limit_arcsec", request.measurement_error_limit_arcsec)
    return _Judged("angle", line, request.tolerance_arcsec, shared)


def _size(request: WheelRedressRequest) -> _Judged | None:
    if request.size_tolerance is None:
        return None
    values = [(p.piece_since_dress, p.measured_size_error) for p in request.observed_pieces]
    line = _line(values, "measured_size_error")
    shared = _shared("measurement_error_limit", request.measurement_error_limit)
    return _Judged("size", line, request.size_tolerance, shared)


def _line(values: Sequence[tuple[int, float | None]], field: str) -> Line:
    """The line through what was measured; refuses too few pieces, or all of one place."""
    line = line_through([(piece, value) for piece, value in values if value is not None])
    if line is None:
        raise Disagreement(
            "No growth can be told from these pieces.",
            fields={
                "observed_pieces": f"should have {field} of {FEWEST_OBSERVED} pieces at least, not "
                "all of one place"
            },
        )
    return line


def _shared(field: str, limit: float | None) -> Budget:
    if limit is None:
        return Budget((), not_stated=(field,))
    return Budget((Contribution(field, limit),))


def _advisories(judged: Sequence[_Judged], result: WheelRedressResult) -> Iterator[Advisory]:
    if result.pieces_per_dress == 0:
        yield caution(
            "first-piece-not-sure",
            "By what was measured not even the first piece keeps its tolerance surely: mend the "
            "set-up, or measure it better, before dressing oftener.",
        )
    if any(one.line.scatter <= _NO_SCATTER * one.tolerance for one in judged):
        yield caution(
            "no-scatter",
            "The pieces measured lie on a line to the last figure, as rounded readings may: what "
            "they scatter is not known, and the answer counts none of it. Measure more finely, or "
            "more pieces.",
        )
    if any(abs(one.line.slope) <= 2.0 * one.line.spread for one in judged):
        yield note(
            "growth-not-told",
            "A growth is no more than twice its own uncertainty: the wheel may not break down at "
            "all. Measure later pieces.",
        )
    seen = max(one.line.last for one in judged)
    if result.pieces_per_dress > 2 * seen:
        yield caution(
            "far-past-the-observed",
            f"The answer runs to piece {result.pieces_per_dress}, the pieces measured to {seen}: a "
            "wheel that breaks down rarely stays on a straight line so long.",
        )
    yield DRESSING_SAFETY

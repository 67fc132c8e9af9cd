"""Runout as requests and answers say it: found, with its high spot; or of unknown phases."""

from collections.abc import Mapping
from typing import Annotated

from pydantic import Field

from halfangle_service.fields.angles import AngleInput, Direction
from halfangle_service.fields.base import RequestModel
from halfangle_service.fields.choice import needs
from halfangle_service.fields.estimate import (
    DirectionEstimate,
    EstimateT,
    LengthEstimate,
    estimate,
)
from halfangle_service.fields.numbers import NonNegativeLength, SharePercent
from halfangle_service.trade.runout import doubt
from halfangle_service.trade.runout.budget import RunoutBudget
from halfangle_service.trade.runout.true_up import left_half_width
from halfangle_service.trade.runout.vectors import Surface, center_of, direction, vector
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.uncertainty.coverage import COVERAGE_PROBABILITY

#: What no request states of a chain, so that its TIR itself is not known.
PHASES_NOT_STATED = "high_spots"
COVERAGE_PERCENT = 95

HighSpot = Annotated[float, AngleInput(ge=-360, le=360, measured=True)]
SurfaceField = Annotated[
    Surface,
    Field(
        description="Surface that the indicator reads: `external`, a shaft or cone from outside; "
        "`internal`, a bore or socket. Highest is where metal comes nearest to the indicator: on a "
        "shaft toward its center's offset, in a bore opposite to it.",
        examples=["external"],
    ),
]


class TirEstimate(LengthEstimate):
    """TIR at the station, as the length of a sum of vectors of unknown phase.

    `value` is null, for no `high_spots` were stated. `standard_uncertainty` is the root mean square
    of that length, the root sum of squares of the contributors' TIR: `rms_share_percent` says how
    many assemblies keep it. `expanded_uncertainty` is the TIR that 95 of 100 assemblies do not pass
    (by their phases, so without a coverage factor); `worst_case` the sum, all in line, that none
    passes. Vector quantities are treated in JCGM 102:2011, cited from memory; for
    this chain it is derived here.
    """

    rms_share_percent: SharePercent | None = Field(
        description="Share of assemblies whose TIR does not pass `standard_uncertainty`, in "
        "percent: half of two alike, 59 of 100 where one is twice each of two others."
    )


class RunoutVector(RequestModel):
    """A runout found: its TIR by eccentricity and its high spot."""

    tir: NonNegativeLength = Field(description="Twice the eccentricity, in `units`.")
    high_spot: HighSpot | None = Field(
        None,
        description="Angle at which the indicator reads highest, in degrees on the spindle, "
        "counted alike at every section: seen from one end, in one sense. Needed unless `tir` "
        "is 0.",
        examples=[20],
    )

    def center(self, surface: Surface, *, path: str) -> complex:
        """The center's offset from the axis, as a vector; `path` is that of this runout.

        Raises Disagreement for a runout without its high spot.
        """
        if self.tir:
            why = "A runout without its high spot has no direction."
            needs(self, "tir", "high_spot", why=why, path=path)
        return center_of(vector(self.tir / 2.0, self.high_spot or 0.0), surface)


class RunoutFound(RunoutVector):
    """A runout found, and how well its eccentricity is known."""

    eccentricity_standard_uncertainty: NonNegativeLength | None = Field(
        None,
        description="Standard uncertainty of its eccentricity, in `units`, alike in every "
        "direction, as `runout.indicate` gives it; not stated where absent.",
    )


def budget_of_found(parts: Mapping[str, tuple[RunoutFound, float]]) -> Budget:
    """Budget, in any direction, of a sum of eccentricities found, each by its name times a factor.

    They are independent; one whose uncertainty was not stated is named.
    """
    stated = {
        f"{name}/eccentricity_standard_uncertainty": (part.eccentricity_standard_uncertainty, times)
        for name, (part, times) in parts.items()
    }
    return Budget(
        tuple(
            Contribution(path, spread, "normal", times)
            for path, (spread, times) in stated.items()
            if spread is not None
        ),
        not_stated=tuple(path for path, (spread, _) in stated.items() if spread is None),
    )


def length_estimate(
    offset: complex, budget: Budget, *, per_eccentricity: float = 1.0
) -> LengthEstimate:
    """Write the length of an eccentricity vector, times a factor, as an estimate.

    `budget` is that of the vector along itself, in the eccentricity's unit.
    """
    found = estimate(
        LengthEstimate, budget, per_eccentricity * abs(offset), per_unit=per_eccentricity
    )
    return _covering(found, per_eccentricity * doubt.length_half_width(abs(offset), budget))


def left_estimate(
    left: complex, budget: Budget, *, per_eccentricity: float = 1.0
) -> LengthEstimate:
    """Write the length to expect of a vector that taps should leave, times a factor.

    `budget` is that of the vector in any direction, in the eccentricity's unit.
    """
    found = estimate(
        LengthEstimate, budget, per_eccentricity * abs(left), per_unit=per_eccentricity
    )
    return _covering(found, per_eccentricity * left_half_width(left, budget))


def direction_estimate(
    offset: complex, across: Budget, surface: Surface = "external"
) -> DirectionEstimate | None:
    """Write the direction in which a vector reads highest as an estimate; None of nothing.

    `across` is the budget of the vector across itself, in its own unit of length.
    """
    if not offset:
        return None
    shown = Direction.of(direction(center_of(offset, surface)))
    found = estimate(DirectionEstimate, doubt.direction_budget(abs(offset), across), shown)
    if found.standard_uncertainty is None:
        return found
    half_width = doubt.direction_half_width(abs(offset), across)
    update: dict[str, float | None] = {
        "worst_case": doubt.direction_worst_case(abs(offset), across)
    }
    if half_width >= doubt.ANY_DIRECTION_DEG:
        # No direction is further off than the opposite one, whatever is known of the error.
        update = {
            "standard_uncertainty": doubt.ANY_DIRECTION_SPREAD_DEG,
            "worst_case": doubt.ANY_DIRECTION_DEG,
        }
    return _covering(found.model_copy(update=update), half_width)


def _covering(found: EstimateT, half_width: float) -> EstimateT:
    """The same estimate with the half-width that covers 95 %; of nothing stated as it is."""
    if found.standard_uncertainty is None:
        return found
    factor = half_width / found.standard_uncertainty if found.standard_uncertainty else None
    return found.model_copy(
        update={
            "expanded_uncertainty": half_width,
            "coverage_factor": factor,
            "coverage_probability": COVERAGE_PROBABILITY,
        }
    )


def tir_estimate(budget: RunoutBudget) -> TirEstimate:
    """Write a runout budget as an estimate, in its own unit of length.

    `not_stated` begins with `high_spots`, which is the phases; what the budget was not told of
    follows.
    """
    known = bool(budget.contributors)
    rms = budget.root_sum_of_squares
    return TirEstimate(
        value=None,
        standard_uncertainty=rms if known else None,
        degrees_of_freedom=None,
        expanded_uncertainty=budget.not_passed(COVERAGE_PERCENT)[0] if known else None,
        coverage_factor=None,
        coverage_probability=COVERAGE_PERCENT / 100.0 if known else None,
        worst_case=budget.worst_case if known else None,
        rms_share_percent=budget.percent_within(rms) if known else None,
        contributions=[
            {
                "name": part.name,
                "of": part.of,
                "input_value": part.tir,
                "input_unit": "length",
                "sensitivity": 1.0,
                "distribution": "uniform-phase",
                "standard_uncertainty": part.tir,
                "worst_case": part.tir,
                "share_percent": share,
            }
            for part, share in zip(budget.contributors, budget.shares(), strict=True)
        ],
        not_stated=[PHASES_NOT_STATED, *budget.not_stated],
    )

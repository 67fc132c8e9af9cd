"""Runout as requests and answers say it: found, with its high spot; or of unknown phases."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields.angles import AngleInput
from halfangle_service.fields.base import RequestModel
from halfangle_service.fields.estimate import LengthEstimate
from halfangle_service.fields.numbers import NonNegativeLength
from halfangle_service.trade.runout.budget import RunoutBudget
from halfangle_service.trade.runout.vectors import vector

#: What no request states of a chain, so that its TIR itself is not known.
PHASES_NOT_STATED = "high_spots"
COVERAGE_PERCENT = 95

HighSpot = Annotated[float, AngleInput(ge=-360, le=360)]
TirEstimate = Annotated[
    LengthEstimate,
    Field(
        description="TIR at the station, as the length of a sum of vectors of unknown phase: "
        "`value` is null, for no `high_spots` were stated; `standard_uncertainty` is the root mean "
        "square of that length, the root sum of squares of the contributors' TIR; "
        "`expanded_uncertainty` is the TIR that 95 of 100 assemblies do not pass (Monte Carlo over "
        "uniform phases, so without a coverage factor); `worst_case` is the sum, all in line. "
        "Vector quantities are treated in JCGM 102:2011, cited from memory; for this chain it is "
        "derived here."
    ),
]


class RunoutVector(RequestModel):
    """A runout found: its TIR by eccentricity and its high spot."""

    tir: NonNegativeLength = Field(description="Twice the eccentricity, in `units`.")
    high_spot: HighSpot = Field(description="Angle of the high spot on the spindle, in degrees.")

    @property
    def eccentricity_vector(self) -> complex:
        """Its eccentricity, a length, in the direction of the high spot."""
        return vector(self.tir / 2.0, self.high_spot)


def tir_estimate(budget: RunoutBudget) -> LengthEstimate:
    """Write a runout budget as an estimate, in its own unit of length.

    `not_stated` begins with `high_spots`, which is the phases; what the budget was not told of
    follows. Runs the Monte Carlo of the budget's percentiles.
    """
    known = bool(budget.contributors)
    return LengthEstimate(
        value=None,
        standard_uncertainty=budget.root_sum_of_squares if known else None,
        degrees_of_freedom=None,
        expanded_uncertainty=budget.percentiles[COVERAGE_PERCENT] if known else None,
        coverage_factor=None,
        coverage_probability=COVERAGE_PERCENT / 100.0 if known else None,
        worst_case=budget.worst_case if known else None,
        contributions=[
            {
                "name": name,
                "input_value": tir,
                "input_unit": "length",
                "sensitivity": 1.0,
                "distribution": "uniform-phase",
                "standard_uncertainty": tir,
                "worst_case": tir,
                "share_percent": share,
            }
            for (name, tir), share in zip(budget.contributors, budget.shares(), strict=True)
        ],
        not_stated=[PHASES_NOT_STATED, *budget.not_stated],
    )

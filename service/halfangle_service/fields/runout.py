"""A runout of contributors of unknown phase, as every answer that predicts one gives it."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields.estimate import LengthEstimate
from halfangle_service.trade.runout.budget import RunoutBudget

#: What no request states of a chain, so that its TIR itself is not known.
PHASES_NOT_STATED = "high_spots"
COVERAGE_PERCENT = 95

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

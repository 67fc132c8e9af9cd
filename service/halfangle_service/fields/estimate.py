"""A quantity that carries an error, predicted or measured: one object in every answer."""

import math
from typing import Annotated, Any, Generic, Literal, TypeVar

from pydantic import Field

from halfangle_service.fields.angles import Angle, Direction
from halfangle_service.fields.base import ResultModel
from halfangle_service.fields.glossary import option_labels
from halfangle_service.fields.numbers import (
    ArcsecOut,
    DegreesOut,
    LengthOut,
    NumberOut,
    SharePercent,
    Unit,
)
from halfangle_service.trade.uncertainty import (
    Budget,
    DecisionRule,
    Distribution,
)
from halfangle_service.trade.uncertainty.coverage import (
    COVERAGE_PROBABILITY,
    half_width,
    probability_within,
)

ValueT = TypeVar("ValueT")
SpreadT = TypeVar("SpreadT")
ContributionT = TypeVar("ContributionT")

#: Of a contribution; a vector of known length and unknown phase has no half-width to divide.
ContributionDistribution = Literal[Distribution, "uniform-phase"]

NotStated = Annotated[
    list[str],
    Field(
        description="Fields of the request that were not stated: nothing is known of them, and "
        "nothing counted."
    ),
]

#: Contributions that no one field of a request states: one name a cause over the whole project.
OWN_CAUSES = (
    "adapter_runout",
    "block_calibration",
    "block_expansion",
    "block_grade_limit",
    "form_not_fitted",
    "plate_expansion",
    "rocking_in_the_seat",
    "scatter",
    "socket_runout",
)


def _labelled(schema: dict[str, Any]) -> None:
    """Add the labels of causes that are no fields, as options have theirs."""
    labels = option_labels()
    schema["x-labels"] = {cause: labels[cause] for cause in OWN_CAUSES}


#: Default of `DecisionRuleField`: the edition in force.
DECISION_RULE: DecisionRule = "iso-14253-1-2017"
DecisionRuleField = Annotated[
    DecisionRule,
    Field(
        description="Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a "
        "probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard "
        "uncertainties at either limit."
    ),
]


class EstimateContribution(ResultModel, Generic[SpreadT]):
    """One contribution to an estimate, in the estimate's unit."""

    name: str = Field(
        description="What contributes: the field of the request that states it, spelled as in "
        "`not_stated`; or, where no one field does, a name of its own, which has a label.",
        json_schema_extra=_labelled,
    )
    of: str | None = Field(
        description="Which one, where several may bear one name: a block by its size, a film by "
        "its number, an expansion of blocks by their material, a measured size by its field; else "
        "null."
    )
    input_value: Annotated[float, Unit("stated")] = Field(
        description="Half-width of the input's distribution, or its standard deviation where it is "
        "normal, or the length of a vector of unknown phase, in `input_unit`."
    )
    input_unit: str = Field(description="Unit of the input, as `x-unit` names units.")
    sensitivity: Annotated[float, Unit("per_stated")] = Field(
        description="Change of the estimate for one unit of the input, signed; of a one-sided "
        "input the change at its limit, over that limit."
    )
    distribution: ContributionDistribution = Field(
        description="Its distribution (JCGM 100:2008, 4.3; JCGM 101:2008, 6.4); `uniform-phase` of "
        "a vector that may point any way, all alike."
    )
    standard_uncertainty: SpreadT = Field(
        description="What it adds to the estimate's standard uncertainty."
    )
    worst_case: SpreadT | None = Field(
        description="Largest change of the estimate that it can cause; null where its spread was "
        "estimated from few readings, which is no limit."
    )
    share_percent: SharePercent = Field(description="Its share of the combined variance.")


def contribution_words(contribution: EstimateContribution[float]) -> str:
    """A contribution as a sentence has it: by its label, else by its field."""
    name, which = contribution.name, contribution.of
    label = option_labels().get(name)
    words = f"`{name}`" if label is None else f"{label[0].lower()}{label[1:]}"
    return words if which is None else f"{words} ({which})"


class LengthContribution(EstimateContribution[LengthOut]):
    """One contribution to a length, in the request's `units`."""


class ArcsecContribution(EstimateContribution[ArcsecOut]):
    """One contribution to an angle, in arc-seconds."""


class DirectionContribution(EstimateContribution[DegreesOut]):
    """One contribution to a direction, in degrees."""


class Estimate(ResultModel, Generic[ValueT, SpreadT, ContributionT]):
    """A quantity with its uncertainty (JCGM 100:2008). What nothing was stated of is null."""

    value: ValueT | None = Field(
        description="Best estimate, known offsets and the means of one-sided errors included."
    )
    standard_uncertainty: SpreadT | None = Field(
        description="Combined standard uncertainty; null where no contribution was stated."
    )
    degrees_of_freedom: Annotated[float, Unit("1")] | None = Field(
        description="Effective degrees of freedom (Welch and Satterthwaite); null where they are "
        "not limited, as with stated limits."
    )
    expanded_uncertainty: SpreadT | None = Field(
        description="Expanded uncertainty: half of the width that covers `coverage_probability`."
    )
    coverage_factor: NumberOut | None = Field(
        description="Coverage factor k: expanded over standard uncertainty; null where both are 0."
    )
    coverage_probability: NumberOut | None = Field(
        description="Probability, 0 to 1, that value ± expanded uncertainty covers, by the "
        "distributions of the contributions (JCGM 101:2008), or by Student's where degrees of "
        "freedom are limited (JCGM 100:2008, G.4)."
    )
    worst_case: SpreadT | None = Field(
        description="Largest error with every stated contribution at its limit at once, known "
        "offsets included; of a normal contribution three standard deviations. Never less than "
        "what covers 95 %; null where a contribution has no limit, because its spread was itself "
        "estimated from few readings (`degrees_of_freedom`)."
    )
    contributions: list[ContributionT] = Field(description="What was stated, in a fixed order.")
    not_stated: list[str] = Field(
        description="Contributions that were not stated: nothing is known of them, and nothing "
        "counted."
    )


class LengthEstimate(Estimate[LengthOut, LengthOut, LengthContribution]):
    """A length with its uncertainty, all in the request's `units`."""


class ArcsecEstimate(Estimate[ArcsecOut, ArcsecOut, ArcsecContribution]):
    """A small angle, or an angle's error, with its uncertainty, all in arc-seconds."""


class AngleEstimate(Estimate[Angle, ArcsecOut, ArcsecContribution]):
    """An angle with its uncertainty in arc-seconds."""


class DirectionEstimate(Estimate[Direction, DegreesOut, DirectionContribution]):
    """A direction round a turn with its uncertainty in degrees."""


EstimateT = TypeVar("EstimateT", LengthEstimate, ArcsecEstimate, AngleEstimate, DirectionEstimate)
_UNITS = {
    LengthEstimate: "length",
    ArcsecEstimate: "arcsecond",
    AngleEstimate: "arcsecond",
    DirectionEstimate: "degree",
}


def estimate(
    kind: type[EstimateT],
    budget: Budget,
    value: object = None,
    *,
    per_unit: float = 1.0,
    coverage: float | None = None,
) -> EstimateT:
    """Write a budget as an estimate of this kind.

    `value` is the estimate where a budget of a measurement knows none; without it, the budget's
    mean error. `per_unit` turns the budget's unit into the estimate's, such as arc-seconds a
    radian. `coverage` is a coverage factor that a request asks for; without it the expanded
    uncertainty covers 95 %, by the distributions themselves. Where a budget holds no contribution,
    only its value, if any, and `not_stated` are given.
    """
    best = budget.mean * per_unit if value is None else value
    if not budget.contributions:
        known = value is not None or budget.offset != 0.0 or not budget.not_stated
        return kind(
            value=best if known else None,
            standard_uncertainty=None,
            degrees_of_freedom=None,
            expanded_uncertainty=None,
            coverage_factor=None,
            coverage_probability=None,
            worst_case=None,
            contributions=[],
            not_stated=list(budget.not_stated),
        )
    freedom, spread = budget.degrees_of_freedom, budget.standard_uncertainty
    if coverage is None:
        expanded, probability = half_width(budget), COVERAGE_PROBABILITY
    else:
        expanded = budget.expanded(coverage)
        probability = probability_within(budget, expanded)
    return kind(
        value=best,
        standard_uncertainty=spread * per_unit,
        degrees_of_freedom=None if math.isinf(freedom) else freedom,
        expanded_uncertainty=expanded * per_unit,
        coverage_factor=expanded / spread if spread else coverage,
        coverage_probability=probability,
        worst_case=_times(budget.worst_case, per_unit),
        contributions=[
            {
                "name": contribution.name,
                "of": contribution.of,
                "input_value": abs(contribution.value),
                "input_unit": contribution.unit or _UNITS[kind],
                "sensitivity": contribution.sensitivity * per_unit,
                "distribution": contribution.distribution,
                "standard_uncertainty": contribution.in_result * per_unit,
                "worst_case": _times(contribution.worst_case, per_unit),
                "share_percent": share,
            }
            for contribution, share in zip(budget.contributions, budget.shares(), strict=True)
        ],
        not_stated=list(budget.not_stated),
    )


def _times(value: float | None, per_unit: float) -> float | None:
    return None if value is None else value * per_unit

"""What must be held of each part of a sine set-up for its angle's tolerance."""

from collections.abc import Iterator, Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Arcsec,
    ArcsecOut,
    NumberOut,
    ResultModel,
    Unit,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.estimate import NotStated
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.stated_errors import (
    BUDGET,
    DECISION,
    EXAMPLE,
    EXPANSION,
    RELATIONS,
    SENSITIVITIES,
    SineErrorFields,
    angle_forecast,
    error_inputs,
    smallest_tolerance_arcsec,
    stack_advisories,
    tolerance_rad,
)
from halfangle_service.trade.sine.angle_error import ErrorInputs
from halfangle_service.trade.sine.angle_model import Term, thermal_shift, unit_of
from halfangle_service.trade.sine.angle_requirements import (
    Goal,
    Requirements,
    allowed_spread,
    fewest_to_mend,
)
from halfangle_service.trade.uncertainty import Forecast
from halfangle_service.trade.wording import plain

_InTermUnit = Annotated[float, Unit("stated")]


class SineRequirementsRequest(SineErrorFields):
    """The angle's tolerance, and the set-up as it is at hand."""

    tolerance_arcsec: Arcsec = Field(
        description="The angle must keep within ± this, in arc-seconds.", examples=[20.0]
    )


class SineRequirement(ResultModel):
    """What must be held of one term; each value in `input_unit`, as ± a limit."""

    term: Term = Field(description="The term.")
    input_unit: str = Field(description="Unit of the values, as `x-unit` names units.")
    at_hand: _InTermUnit | None = Field(description="Value as stated; null where it was not.")
    alone: _InTermUnit = Field(description="Largest value were all else perfect.")
    equal_share: _InTermUnit = Field(
        description="Largest value when this and the terms at hand each take an equal share of the "
        "variance; 0 where what is known to be off leaves no room."
    )
    with_others: _InTermUnit | None = Field(
        description="Largest value with all other terms as stated; null where they leave no room."
    )


class SineMend(ResultModel):
    """A term to mend, and how far; its values in its `input_unit`."""

    term: Term = Field(description="The term.")
    input_unit: str = Field(description="Unit of the values, as `x-unit` names units.")
    at_hand: _InTermUnit = Field(description="Value as stated.")
    hold: _InTermUnit = Field(description="Value to hold.")
    ratio: NumberOut = Field(description="`hold` over `at_hand`: near 1 is a small mend.")


class SineRequirementsResult(ResultModel):
    """What must be held so that the angle keeps its tolerance."""

    forecast: Forecast = Field(
        description="Whether the set-up at hand will keep the tolerance, by `decision_rule`; "
        "`holds` only where every error that can act here was stated."
    )
    not_stated: NotStated
    smallest_tolerance_arcsec: ArcsecOut | None = Field(
        description="Tightest ± tolerance, on what `tolerance_on` names, that holds with the "
        "errors stated, by `decision_rule`. Null where no error was stated."
    )
    limit_standard_uncertainty_arcsec: ArcsecOut | None = Field(
        description="Combined standard uncertainty of the plate's angle, were it normal, that the "
        "tolerance leaves after the expected error; null where that alone is past it."
    )
    requirements: list[SineRequirement] = Field(
        description="What to hold of each term that has any effect here. Yaw ends at 18000″."
    )
    cheapest_to_mend: SineMend | None = Field(
        description="The one term that needs the smallest improvement, in proportion, to bring the "
        "set-up within the tolerance by itself; null where it is already, or no single term can."
    )
    mend_together: list[Term] = Field(
        description="Where no single term can: the fewest, largest first, that would have to be "
        "all but removed."
    )


@operation(
    "sine.requirements",
    relations=(*RELATIONS, "each allowed value: the largest with which the tolerance holds"),
    sources=(SENSITIVITIES, BUDGET, DECISION, EXPANSION),
    example=EXAMPLE | {"tolerance_arcsec": 10},
    largest_request="one set-up of 16 terms",
    heavy=True,
)
def requirements(request: SineRequirementsRequest) -> Outcome[SineRequirementsResult]:
    """What must be held for a tolerance.

    From the angle's tolerance to the allowed error of each part of the set-up, and the cheapest
    term to mend.
    """
    inputs = error_inputs(request)
    goal = Goal(tolerance_rad(request, request.tolerance_arcsec), request.decision_rule)
    allowing = Requirements(inputs, goal)
    plate = allowing.errors
    allowed = allowed_spread(plate, goal)
    rows = list(_requirements(allowing))
    mend = None if goal.kept_by(plate) else _cheapest(rows)
    result = SineRequirementsResult(
        forecast=angle_forecast(request, plate, goal.limit),
        not_stated=list(plate.not_stated),
        smallest_tolerance_arcsec=smallest_tolerance_arcsec(request, plate),
        limit_standard_uncertainty_arcsec=None if allowed is None else allowed * ARCSEC_PER_RADIAN,
        requirements=rows,
        cheapest_to_mend=mend,
        mend_together=[] if mend else list(fewest_to_mend(inputs, goal)),
    )
    return Outcome(result, tuple(_advisories(request, inputs, goal.limit)))


def _requirements(allowing: Requirements) -> Iterator[SineRequirement]:
    """What to hold of each term; alone it always has room."""
    for term, share in allowing.equal_shares.items():
        yield SineRequirement(
            term=term,
            input_unit=unit_of(term),
            at_hand=allowing.inputs.values.get(term),
            alone=allowing.alone(term),
            equal_share=share,
            with_others=allowing.with_others(term),
        )


def _cheapest(rows: Sequence[SineRequirement]) -> SineMend | None:
    """The term that needs the smallest improvement in proportion, where one can do it alone."""
    mends = [
        SineMend(
            term=row.term,
            input_unit=row.input_unit,
            at_hand=row.at_hand,
            hold=row.with_others,
            ratio=row.with_others / row.at_hand,
        )
        for row in rows
        if row.at_hand and row.with_others
    ]
    return max(mends, key=lambda mend: mend.ratio, default=None)


def _advisories(
    request: SineRequirementsRequest, inputs: ErrorInputs, limit: float
) -> Iterator[Advisory]:
    yield from stack_advisories(request, inputs.set_up)
    celsius = request.temperature_celsius
    if celsius is not None and abs(thermal_shift(inputs.set_up)) > limit:
        yield caution(
            "let-it-soak",
            f"At {plain(celsius)} °C the two materials alone are past the "
            "tolerance: let plate and blocks soak at 20 °C, or correct the height.",
        )

"""What must be held of each part of a sine set-up for its angle's tolerance."""

import math
from collections.abc import Iterator
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
    tolerance_rad,
)
from halfangle_service.trade.sine.angle_error import ErrorInputs, budget
from halfangle_service.trade.sine.angle_model import Term, thermal_shift, unit_of
from halfangle_service.trade.sine.angle_requirements import (
    alone,
    holdable_terms,
    largest_value,
    mendable,
    together,
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
        description="Largest value when this and the other terms at hand each take an equal share "
        "of the variance."
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
        description="Whether the set-up at hand will keep the tolerance; `holds` only where every "
        "error was stated."
    )
    not_stated: NotStated
    smallest_tolerance_arcsec: ArcsecOut | None = Field(
        description="Tightest ± tolerance, on what `tolerance_on` names, that the errors stated "
        "leave room for. Null where no error was stated."
    )
    allowed_standard_uncertainty_arcsec: ArcsecOut | None = Field(
        description="Combined standard uncertainty of the plate's angle that the tolerance leaves "
        "after the expected error; null where that alone is past it."
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
    relations=(*RELATIONS, "each allowed value: the largest that keeps |mean| + k u ≤ tolerance"),
    sources=(SENSITIVITIES, BUDGET, DECISION, EXPANSION),
    example=EXAMPLE | {"tolerance_arcsec": 10},
    largest_request="one set-up of 15 terms",
    heavy=True,
)
def requirements(request: SineRequirementsRequest) -> Outcome[SineRequirementsResult]:
    """What must be held for a tolerance.

    From the angle's tolerance to the allowed error of each part of the set-up, and the cheapest
    term to mend.
    """
    inputs, coverage = error_inputs(request), request.coverage_factor
    plate = budget(inputs)
    limit = tolerance_rad(request, request.tolerance_arcsec)
    room = (limit - abs(plate.mean)) / coverage
    mend = _cheapest(inputs, limit, coverage)
    result = SineRequirementsResult(
        forecast=angle_forecast(request, plate, limit),
        not_stated=list(plate.not_stated),
        smallest_tolerance_arcsec=smallest_tolerance_arcsec(request, plate),
        allowed_standard_uncertainty_arcsec=room * ARCSEC_PER_RADIAN if room > 0.0 else None,
        requirements=list(_requirements(inputs, limit, coverage)),
        cheapest_to_mend=mend,
        mend_together=[] if mend else list(together(inputs, limit, coverage)),
    )
    return Outcome(result, tuple(_advisories(request, inputs, limit)))


def _requirements(inputs: ErrorInputs, limit: float, coverage: float) -> Iterator[SineRequirement]:
    """What to hold of each term; alone and at an equal share it always has room."""
    terms = holdable_terms(inputs)
    sharers = max(1, sum(1 for term in terms if inputs.values.get(term)))
    equal = max(0.0, limit - abs(thermal_shift(inputs.set_up))) / math.sqrt(sharers)
    for term in terms:
        lonely = alone(inputs, term)
        yield SineRequirement(
            term=term,
            input_unit=unit_of(term),
            at_hand=inputs.values.get(term),
            alone=largest_value(lonely, term, limit, coverage) or 0.0,
            equal_share=largest_value(lonely, term, equal, coverage) or 0.0,
            with_others=largest_value(inputs, term, limit, coverage),
        )


def _cheapest(inputs: ErrorInputs, limit: float, coverage: float) -> SineMend | None:
    """The term that needs the smallest improvement in proportion."""
    mends = mendable(inputs, limit, coverage)
    if not mends:
        return None
    term = max(mends, key=lambda name: mends[name] / inputs.values[name])
    now, hold = inputs.values[term], mends[term]
    return SineMend(term=term, input_unit=unit_of(term), at_hand=now, hold=hold, ratio=hold / now)


def _advisories(
    request: SineRequirementsRequest, inputs: ErrorInputs, limit: float
) -> Iterator[Advisory]:
    if abs(thermal_shift(inputs.set_up)) > limit:
        yield caution(
            "let-it-soak",
            f"At {plain(request.temperature_celsius)} °C the two materials alone are past the "
            "tolerance: let plate and blocks soak at 20 °C, or correct the height.",
        )

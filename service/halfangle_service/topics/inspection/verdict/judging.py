"""One measurement judged: what it proves, the gauge limits, and how well it would have to be known.

The request is in `request`, how it is read in `reading`, what to do next in `steps`.
"""

import math
from collections.abc import Iterator
from typing import Generic, Literal, TypeVar

from pydantic import Field

from halfangle_service.fields import Angle, ArcsecOut, LengthOut, NumberOut, ResultModel
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.estimate import AngleEstimate, LengthEstimate, estimate
from halfangle_service.fields.glossary import option_labels
from halfangle_service.fields.runout import length_estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.inspection.verdict.reading import Judged, read_measured
from halfangle_service.topics.inspection.verdict.request import (
    InspectionVerdictRequest,
    Party,
    Quantity,
)
from halfangle_service.topics.inspection.verdict.steps import InspectionNextStep, next_steps
from halfangle_service.topics.inspection.verdict.wording import Words, probability_words
from halfangle_service.trade.uncertainty import Budget, Verdict, VerdictRule
from halfangle_service.trade.uncertainty.coverage import COVERAGE_PROBABILITY
from halfangle_service.trade.uncertainty.lengths import length_of_nothing
from halfangle_service.trade.wording import plain

Decision = Literal["accept", "hold-back", "reject"]
ValueT = TypeVar("ValueT")
_ZONES = (
    *("smallest_allowed", "largest_allowed"),
    *("smallest_accepted", "largest_accepted"),
    *("rejected_below", "rejected_above"),
)
_NEEDED = (
    "Largest standard uncertainty with which the value as measured would prove that the limits are "
    "kept, or where it lies outside that they are not; the error distributed as the one stated, "
    "else normal. Of simple acceptance the one agreed on. Null where the rule does not go by it, "
    "and where none would do: on a limit."
)
_WORDS: dict[Verdict, str] = {
    "conforming": "It is proved that the limits are kept",
    "not-conforming": "It is proved that the limits are not kept",
    "not-provable": "It is proved neither that the limits are kept nor that they are not",
}
#: The same by rules that go by the value alone: they accept and reject, and prove nothing.
_BY_VALUE: dict[VerdictRule, dict[Verdict, str]] = {
    "simple-acceptance": {
        "conforming": "The value as measured keeps the limits, which is all that is asked",
        "not-conforming": "The value as measured does not keep the limits, which is all that is "
        "asked",
    },
    "guard-band": {
        "conforming": "The value as measured keeps the limits with the guard band agreed on",
        "not-conforming": "The value as measured is past a limit by more than the guard band "
        "agreed on",
    },
}


class JudgedZones(ResultModel, Generic[ValueT]):
    """Limits, and what would have to be measured to prove something."""

    smallest_allowed: ValueT | None = Field(description="Lower limit; null where there is none.")
    largest_allowed: ValueT | None = Field(description="Upper limit; null where there is none.")
    smallest_accepted: ValueT | None = Field(
        description="Lower gauge limit: the smallest value that, measured as well as this one, "
        "proves that the limits are kept. Null without a lower limit, and where no value does."
    )
    largest_accepted: ValueT | None = Field(
        description="Upper gauge limit, likewise the largest such value."
    )
    rejected_below: ValueT | None = Field(
        description="Below this value, measured as well as this one, the limits are proved not to "
        "be kept. Null without a lower limit, and where no value proves it."
    )
    rejected_above: ValueT | None = Field(description="Likewise above this value.")


class AngleJudged(JudgedZones[Angle]):
    """An angle judged."""

    needed_standard_uncertainty_arcsec: ArcsecOut | None = Field(description=_NEEDED)

    estimate: AngleEstimate = Field(description="The angle as measured, with its uncertainty.")


class LengthJudged(JudgedZones[LengthOut]):
    """A diameter, a depth or a TIR judged, in the request's `units`."""

    needed_standard_uncertainty: LengthOut | None = Field(description=_NEEDED)

    estimate: LengthEstimate = Field(
        description="The length as measured, corrected to 20 °C where temperatures were sent, with "
        "its uncertainty."
    )


class InspectionVerdictResult(ResultModel):
    """What a measurement proves, and what to do next."""

    verdict: Verdict = Field(
        description="`conforming`: the limits are proved to be kept; `not-conforming`: they are "
        "proved not to be; `not-provable`: neither, by `decision_rule`."
    )
    decision: Decision | None = Field(
        description="What follows for the part. Where neither is proved it depends on who proves: "
        "a supplier holds it back, a customer accepts it; null where that was not stated."
    )
    reason: str = Field(description="Why, with the rule and its figures.")
    quantity: Quantity = Field(description="What was measured.")
    probability_of_conformance: NumberOut | None = Field(
        description="Probability, 0 to 1, that the true value keeps its limits (JCGM 106:2012, 7); "
        "null where no uncertainty was stated."
    )
    probability_below: NumberOut | None = Field(
        description="Probability, 0 to 1, that the true value lies under its lower limit."
    )
    probability_above: NumberOut | None = Field(
        description="Probability, 0 to 1, that the true value lies over its upper limit."
    )
    measurement_capability_index: NumberOut | None = Field(
        description="Tolerance over four standard uncertainties (JCGM 106:2012, 7.6.3), of a TIR "
        "its limit: the N of a rule N:1. Null with a limit to one side only, and without an "
        "uncertainty."
    )
    angle_judged: AngleJudged | None = Field(description="The angle judged; null of a length.")
    length_judged: LengthJudged | None = Field(description="The length judged; null of an angle.")
    next_steps: list[InspectionNextStep] = Field(
        description="What to do next, the first thing first."
    )
    not_stated: list[str] = Field(
        description="Where no uncertainty was stated, the fields one of which states it."
    )


_JCGM_106 = Source(
    citation="JCGM 106:2012: probability of conformance (7), measurement capability index (7.6.3), "
    "simple acceptance and guard bands (8.2, 8.3).",
    standing="from-memory",
)
_ISO_14253_1 = Source(
    citation="ISO 14253-1:2017 and 2013: decision rules; the uncertainty is at the cost of who "
    "proves.",
    standing="from-memory",
)
_LENGTHS = Source(
    citation="Derived here: the true length of a vector whose error is alike in both directions, "
    "by Rice's law, any length beforehand as likely as another and none below nothing; checked by "
    "simulation.",
    standing="derived",
)


@operation(
    "inspection.verdict",
    relations=(
        "P = ∫ g(η) dη from the lower to the upper limit, g the distribution of the true value",
        "2017: conforming at P ≥ 95 %, not conforming at P ≤ 5 % outside the limits",
        "2013: guard band U = 2 u; agreed: guard band w; simple acceptance: w = 0",
        "C_m = (upper − lower) / (4 u)",
        "TIR: P(τ ≤ L | r) = ∫ exp(−(τ − r)² / 2u²) i0e(r τ / u²) dτ / (u √(π/2) i0e(r² / 4u²))",
        "at 20 °C: reading × (1 + α_instrument Δt) / (1 + α_part Δt)",
    ),
    sources=(_JCGM_106, _ISO_14253_1, _LENGTHS),
    # Student's vectors are averaged over what their spread may be, and mixed budgets are series.
    heavy=lambda request: (
        request.part_temperature_celsius is not None
        or (request.measured_tir is not None and request.degrees_of_freedom is not None)
    ),
    example={
        "units": "in",
        "measured_included_angle": "60 00 07",
        "included_angle": 60,
        "included_angle_tolerance_arcsec": 10,
        "expanded_uncertainty_arcsec": 4,
        "coverage_factor": 2,
        "who_proves": "supplier",
    },
)
def verdict(request: InspectionVerdictRequest) -> Outcome[InspectionVerdictResult]:
    """Verdict on a measurement.

    A measured angle, diameter, depth or runout with its uncertainty against its limits: what it
    proves by the rule named, how probable it is, the gauge limits, the uncertainty that would be
    needed, and what to do next.
    """
    judged = read_measured(request)
    case, value = judged.case, judged.value
    found = case.verdict(value)
    words = Words(judged.measurand, request.units)
    within, below = case.conformance(value), case.under(value)
    above = None if within is None or below is None else max(0.0, 1.0 - within - below)
    angle, length = _zones(judged)
    result = InspectionVerdictResult(
        verdict=found,
        decision=_decision(found, request.who_proves),
        reason=_reason(request, judged, found),
        quantity=judged.measurand.quantity,
        probability_of_conformance=within,
        probability_below=below,
        probability_above=above,
        measurement_capability_index=case.capability_index,
        angle_judged=angle,
        length_judged=length,
        next_steps=next_steps(judged, found, request.who_proves, words),
        not_stated=list(case.budget.not_stated),
    )
    return Outcome(result, tuple(_advisories(request, judged, found, words)))


def _decision(found: Verdict, who_proves: Party | None) -> Decision | None:
    if found == "conforming":
        return "accept"
    if found == "not-conforming":
        return "reject"
    if who_proves is None:
        return None
    return "hold-back" if who_proves == "supplier" else "accept"


def _reason(request: InspectionVerdictRequest, judged: Judged, found: Verdict) -> str:
    case = judged.case
    within = case.conformance(judged.value)
    rule = option_labels()[request.decision_rule]
    if within is None:
        return f"Nothing is proved: no uncertainty was stated. Rule: {rule}."
    likely = probability_words(within)
    words = _BY_VALUE.get(request.decision_rule, {}).get(found, _WORDS[found])
    return f"{words}: they are kept with a probability of {likely}. Rule: {rule}."


def _zones(judged: Judged) -> tuple[AngleJudged | None, LengthJudged | None]:
    """Limits and gauge limits of an angle, or of a length."""
    case, value = judged.case, judged.value
    accepted = case.accepted() or (-math.inf, math.inf)
    needed = case.needed_uncertainty(value)
    zones = (case.lower, case.upper, *accepted, *case.rejected())
    limits = dict(zip(_ZONES, map(_finite, zones), strict=True))
    if judged.measurand.is_angle:
        angles = {
            name: None if limit is None else Angle.of(limit / 3600.0)
            for name, limit in limits.items()
        }
        measured = estimate(AngleEstimate, case.budget, Angle.of(value / 3600.0))
        return AngleJudged(
            **angles, needed_standard_uncertainty_arcsec=needed, estimate=measured
        ), None
    if case.of_a_vector:
        length = length_estimate(complex(value), case.budget)
    else:
        length = estimate(LengthEstimate, case.budget, value)
    return None, LengthJudged(**limits, needed_standard_uncertainty=needed, estimate=length)


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _advisories(
    request: InspectionVerdictRequest, judged: Judged, found: Verdict, words: Words
) -> Iterator[Advisory]:
    case, value = judged.case, judged.value
    index, within = case.capability_index, case.conformance(value)
    if index is not None and index < case.least_index:
        yield caution(
            "coarser-than-agreed",
            f"The tolerance is {plain(index, 4)} times four standard uncertainties, and "
            f"{plain(case.least_index, 4)} times was agreed on: nothing is judged by so coarse a "
            "measurement.",
        )
    elif case.stated and case.accepted() is None:
        by_band = request.decision_rule == "guard-band"
        what = "the guard band agreed on" if by_band else "the uncertainty"
        mend = "Agree on a smaller one" if by_band else "Measure it better"
        yield caution(
            "no-value-proves-it",
            f"Measured so, no value proves that {words.name} keeps its limits: {what} takes all "
            f"of the tolerance. {mend}.",
        )
    if within is not None and _at_risk(found, within):
        alone = "and the guard band agreed on" if request.decision_rule == "guard-band" else "alone"
        yield caution(
            "risk-shared",
            f"By the measured value {alone} it is {found.replace('-', ' ')}; the limits are kept "
            f"with a probability of {probability_words(within)}. Supplier and customer share "
            "that risk.",
        )
    if case.of_a_vector and case.stated and _may_be_nothing(case.budget, value):
        yield note(
            "tir-may-be-nothing",
            f"A TIR of nothing would be read as {words.value(value)} or more at least 1 time in "
            "20: the reading is mostly the measurement's own error.",
        )


def _may_be_nothing(budget: Budget, value: float) -> bool:
    """Whether a TIR of nothing is read as so much at least 1 time in 20; not of a sure reading."""
    often = length_of_nothing(budget, 0.05)
    return often > 0.0 and value <= often


def _at_risk(found: Verdict, within: float) -> bool:
    """Whether a verdict by the value alone is less than 95 % sure."""
    if found == "conforming":
        return within < COVERAGE_PROBABILITY
    return found == "not-conforming" and within > 1.0 - COVERAGE_PROBABILITY

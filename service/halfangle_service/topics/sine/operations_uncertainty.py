"""What a set-up's angle is worth, and what must be held: models to maths and back."""

import math
from collections.abc import Iterator

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.errors import Disagreement
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.sine.models_uncertainty import (
    SineBudgetTerm,
    SineErrorFields,
    SineMend,
    SineMonteCarlo,
    SineRequirement,
    SineRequirementsRequest,
    SineRequirementsResult,
    SineUncertaintyRequest,
    SineUncertaintyResult,
)
from halfangle_service.trade.sine.angle_budget import (
    TERMS,
    SetUp,
    Term,
    sensitivity,
    thermal_shift,
    unit_of,
)
from halfangle_service.trade.sine.angle_error import (
    ErrorInputs,
    alone,
    bias,
    budget,
    contribution,
    holdable_terms,
    largest_value,
    mendable,
    reach,
    simulate,
    term_worst_case,
    together,
    worst_case,
)
from halfangle_service.trade.tables.materials.expansion import REFERENCE_CELSIUS, materials
from halfangle_service.trade.uncertainty import Distribution, Verdict, decide
from halfangle_service.trade.wording import plain

COVERAGE_PROBABILITY = 0.95
#: Past this difference the budget's straight lines no longer describe the set-up.
BENT_PERCENT = 5.0
#: A single term past this share is what to look at.
DOMINANT_PERCENT = 50.0

_BUDGET = Source(
    citation="JCGM 100:2008, 5.1.2 (law of propagation) and 6.2 (expanded uncertainty); 4.3 for "
    "the divisors of the distributions.",
    standing="from-memory",
)
_TRIALS = Source(
    citation="JCGM 101:2008, propagation of distributions, 7 and 8.", standing="from-memory"
)
_DECISION = Source(
    citation="ISO 14253-1: the acceptance zone is the specification less the guard band on either "
    "side.",
    standing="from-memory",
)
_SENSITIVITIES = Source(
    citation="Derived here: each sensitivity is the derivative of sin θ = (H + d/2)/L with "
    "expansion, face, yaw (second order), pitch and wheel; checked against numeric derivatives.",
    standing="derived",
)
_EXPANSION = Source(
    citation="ISO 3650:1998 for steel blocks; NIST Monograph 180 for the other materials.",
    standing="from-memory",
)


def error_inputs(request: SineErrorFields) -> ErrorInputs:
    """Read a set-up with its errors; refuses distributions that contradict one another."""
    return ErrorInputs(_set_up(request), _values(request), _distributions(request))


def _set_up(request: SineErrorFields) -> SetUp:
    if request.wheel_breakdown and request.wheel_contact_length is None:
        raise Disagreement(
            "The wheel's breakdown makes an angle only over a length of slant.",
            fields={"wheel_contact_length": "should be sent together with wheel_breakdown"},
        )
    known = materials()
    return SetUp(
        center_distance=request.center_distance,
        angle_rad=math.radians(request.angle),
        face_length=request.face_length or request.center_distance,
        wheel_contact_length=request.wheel_contact_length or math.inf,
        temperature_offset=request.temperature_celsius - REFERENCE_CELSIUS,
        block_expansion=known[request.block_material].coefficient,
        plate_expansion=known[request.plate_material].coefficient,
        parallelism_on_rolls=request.face_parallelism_on_rolls,
    )


def _values(request: SineErrorFields) -> dict[Term, float]:
    known = materials()
    return {
        "center-distance": request.center_distance_tolerance,
        "roll-difference": request.roll_difference,
        "roll-parallelism": request.roll_parallelism,
        "face-parallelism": request.face_parallelism,
        "face-flatness": request.face_flatness,
        "stack": request.stack_tolerance,
        "table-flatness": request.table_flatness,
        "particle": request.particle,
        "temperature": request.temperature_uncertainty_celsius,
        "temperature-difference": request.temperature_difference_celsius,
        "block-expansion": known[request.block_material].spread,
        "plate-expansion": known[request.plate_material].spread,
        "yaw": request.yaw,
        "fixture-pitch": request.fixture_pitch_arcsec,
        "wheel-breakdown": request.wheel_breakdown,
    }


def _distributions(request: SineErrorFields) -> dict[Term, Distribution]:
    lists: dict[Distribution, list[Term]] = {
        "normal": request.normal_terms,
        "triangular": request.triangular_terms,
        "u-shaped": request.u_shaped_terms,
    }
    shapes: dict[Term, Distribution] = {}
    for shape, terms in lists.items():
        field = f"{shape.replace('-', '_')}_terms"
        for position, term in enumerate(terms):
            if term == "yaw" or shapes.get(term, shape) != shape:
                raise Disagreement(
                    f"{term} cannot be {shape}: "
                    + ("yaw is rectangular." if term == "yaw" else "it is listed twice."),
                    fields={f"{field}/{position}": "should be listed once, and not be yaw"},
                )
            shapes[term] = shape
    return shapes


def uncertainty(request: SineUncertaintyRequest) -> Outcome[SineUncertaintyResult]:
    """Budget of the angle."""
    inputs = error_inputs(request)
    whole = budget(inputs)
    standard = whole.standard_uncertainty * ARCSEC_PER_RADIAN
    off = bias(inputs) * ARCSEC_PER_RADIAN
    expanded = request.coverage_factor * standard
    terms = [_term(inputs, term, share) for term, share in zip(TERMS, whole.shares(), strict=True)]
    result = SineUncertaintyResult(
        angle=Angle.of(request.angle),
        terms=terms,
        bias_arcsec=off,
        thermal_shift_arcsec=thermal_shift(inputs.set_up) * ARCSEC_PER_RADIAN,
        standard_uncertainty_arcsec=standard,
        coverage_factor=request.coverage_factor,
        expanded_uncertainty_arcsec=expanded,
        included_bias_arcsec=2.0 * off,
        included_expanded_uncertainty_arcsec=2.0 * expanded,
        worst_case_arcsec=worst_case(inputs) * ARCSEC_PER_RADIAN,
        largest_term=_largest(terms),
        monte_carlo=_monte_carlo(inputs, request.trials, standard),
        smallest_tolerance_arcsec=(abs(off) + expanded) * _count_on(request),
        verdict=_verdict(request, off, expanded),
    )
    return Outcome(result, tuple(_uncertainty_advisories(request, result)))


def _count_on(request: SineErrorFields) -> float:
    """How often the plate's error counts on what the tolerance belongs to."""
    return 2.0 if request.tolerance_on == "included angle" else 1.0


def _term(inputs: ErrorInputs, term: Term, share: float) -> SineBudgetTerm:
    value = inputs.values[term]
    part = contribution(inputs, term)
    worst = term_worst_case(inputs, term)
    slope = sensitivity(inputs.set_up, term)
    if term == "yaw":
        slope = -worst / value if value else 0.0
    return SineBudgetTerm(
        term=term,
        unit=unit_of(term),
        value=value,
        distribution=inputs.distributions.get(term, "rectangular"),
        sensitivity_arcsec_per_unit=slope * ARCSEC_PER_RADIAN,
        standard_uncertainty_arcsec=part.in_result * ARCSEC_PER_RADIAN,
        worst_case_arcsec=worst * ARCSEC_PER_RADIAN,
        share_percent=share,
    )


def _largest(terms: list[SineBudgetTerm]) -> Term | None:
    first = max(terms, key=lambda term: term.share_percent)
    return first.term if first.share_percent > 0.0 else None


def _monte_carlo(inputs: ErrorInputs, trials: int, standard_arcsec: float) -> SineMonteCarlo:
    sample = simulate(inputs, trials, COVERAGE_PROBABILITY)
    spread = sample.standard_deviation * ARCSEC_PER_RADIAN
    return SineMonteCarlo(
        trials=trials,
        mean_arcsec=sample.mean * ARCSEC_PER_RADIAN,
        standard_deviation_arcsec=spread,
        low_arcsec=sample.low * ARCSEC_PER_RADIAN,
        high_arcsec=sample.high * ARCSEC_PER_RADIAN,
        difference_percent=100.0 * (spread / standard_arcsec - 1.0) if standard_arcsec else 0.0,
    )


def _verdict(
    request: SineUncertaintyRequest, bias_arcsec: float, expanded_arcsec: float
) -> Verdict | None:
    """Judge the bias against the tolerance, both on the plate's angle."""
    if request.tolerance_arcsec is None:
        return None
    tolerance = request.tolerance_arcsec / _count_on(request)
    return decide(bias_arcsec, -tolerance, tolerance, expanded_arcsec)


def _uncertainty_advisories(
    request: SineUncertaintyRequest, result: SineUncertaintyResult
) -> Iterator[Advisory]:
    per_step = ARCSEC_PER_RADIAN / math.cos(math.radians(request.angle)) / request.center_distance
    step = 0.0001 if request.units == "in" else 0.001
    yield from steep_angle(request.angle, per_step * step, STEEP_DEGREES)
    largest = max(result.terms, key=lambda term: term.share_percent)
    if largest.share_percent > DOMINANT_PERCENT:
        yield caution(
            "one-term-dominates",
            f"{largest.term} makes {largest.share_percent:.0f} % of the variance: mend it before "
            "anything else.",
        )
    if abs(result.monte_carlo.difference_percent) > BENT_PERCENT:
        yield caution(
            "budget-bends",
            "Monte Carlo differs from the budget by "
            f"{result.monte_carlo.difference_percent:.1f} %: so large errors, or so steep an "
            "angle, do not act in straight lines; take the Monte Carlo figures.",
        )


def requirements(request: SineRequirementsRequest) -> Outcome[SineRequirementsResult]:
    """What must be held for a tolerance."""
    inputs = error_inputs(request)
    limit = request.tolerance_arcsec / _count_on(request) / ARCSEC_PER_RADIAN
    room = (limit - abs(bias(inputs))) / request.coverage_factor
    at_hand = reach(inputs, request.coverage_factor)
    mend = _cheapest(inputs, limit, request.coverage_factor)
    good = at_hand <= limit
    result = SineRequirementsResult(
        good=good,
        smallest_tolerance_arcsec=at_hand * _count_on(request) * ARCSEC_PER_RADIAN,
        allowed_standard_uncertainty_arcsec=room * ARCSEC_PER_RADIAN if room > 0.0 else None,
        requirements=_requirements(inputs, limit, request.coverage_factor),
        cheapest_to_mend=mend,
        mend_together=[]
        if good or mend
        else list(together(inputs, limit, request.coverage_factor)),
    )
    return Outcome(result, tuple(_requirement_advisories(request, inputs, limit)))


def _requirements(inputs: ErrorInputs, limit: float, coverage: float) -> list[SineRequirement]:
    terms = holdable_terms(inputs)
    sharers = max(1, sum(1 for term in terms if inputs.values.get(term)))
    return [_requirement(inputs, term, limit, coverage, sharers) for term in terms]


def _requirement(
    inputs: ErrorInputs, term: Term, limit: float, coverage: float, sharers: int
) -> SineRequirement:
    """What to hold of one term; alone and at an equal share it always has room."""
    lonely = alone(inputs, term)
    equal = max(0.0, limit - abs(thermal_shift(inputs.set_up))) / math.sqrt(sharers)
    return SineRequirement(
        term=term,
        unit=unit_of(term),
        at_hand=inputs.values[term],
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
    now = inputs.values[term]
    return SineMend(term=term, at_hand=now, hold=mends[term], ratio=mends[term] / now)


def _requirement_advisories(
    request: SineRequirementsRequest, inputs: ErrorInputs, limit: float
) -> Iterator[Advisory]:
    if abs(thermal_shift(inputs.set_up)) > limit:
        yield caution(
            "let-it-soak",
            f"At {plain(request.temperature_celsius)} °C the two materials alone are past the "
            "tolerance: let plate and blocks soak at 20 °C, or correct the height.",
        )


_EXAMPLE = {
    "units": "in",
    "center_distance": 5,
    "angle": 30,
    "center_distance_tolerance": 0.0002,
    "roll_difference": 0.00005,
    "face_parallelism": 0.0001,
    "stack_tolerance": 0.00002,
    "table_flatness": 0.00005,
    "particle": 0.00002,
    "temperature_celsius": 22,
    "temperature_uncertainty_celsius": 1,
    "temperature_difference_celsius": 0.5,
    "yaw": 0.25,
    "fixture_pitch_arcsec": 5,
    "tolerance_arcsec": 20,
}
_RELATIONS = (
    "dθ = dH/(L cos θ) − tan θ dL/L + d(roll difference)/(2 L cos θ) + face + pitch + wheel",
    "thermal: dθ = tan θ (α_blocks − α_plate) ΔT",
    "yaw: sin α = sin θ cos ψ; for ψ anywhere within ±a: mean −tan θ a²/6, standard deviation "
    "tan θ a²/√45",
    "u² = Σ (sensitivity × standard uncertainty)²; U = k u; good where |bias| + U ≤ tolerance",
)
UNCERTAINTY = Operation(
    topic="sine",
    verb="uncertainty",
    title="Uncertainty of a sine set-up",
    summary="The budget of a set-up's angle in arc-seconds, each term with its sensitivity and "
    "share, checked by Monte Carlo, and whether it is good for a tolerance.",
    request=SineUncertaintyRequest,
    result=SineUncertaintyResult,
    calculate=uncertainty,
    relations=_RELATIONS,
    sources=(_SENSITIVITIES, _BUDGET, _TRIALS, _DECISION, _EXPANSION),
    example=_EXAMPLE,
    largest_request="200,000 Monte Carlo trials",
    heavy=True,
)
REQUIREMENTS = Operation(
    topic="sine",
    verb="requirements",
    title="What must I hold?",
    summary="From the angle's tolerance to the allowed error of each part of the set-up, and the "
    "cheapest term to mend.",
    request=SineRequirementsRequest,
    result=SineRequirementsResult,
    calculate=requirements,
    relations=(
        *_RELATIONS,
        "each allowed value: the largest that keeps |bias| + k u ≤ tolerance",
    ),
    sources=(_SENSITIVITIES, _BUDGET, _DECISION, _EXPANSION),
    example=_EXAMPLE | {"tolerance_arcsec": 10},
    largest_request="one set-up of 15 terms",
    heavy=True,
)

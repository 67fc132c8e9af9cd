"""How a measurement is read: the value, its limits and its budget as a case to judge."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from halfangle_service.errors import Disagreement
from halfangle_service.fields.choice import all_or_none, at_most_one_of, needs, one_of, sent_of
from halfangle_service.topics.inspection.verdict.request import (
    ANGLE_UNCERTAINTIES,
    LENGTH_UNCERTAINTIES,
    MEASURANDS,
    MEASURED,
    TEMPERATURES,
    InspectionVerdictRequest,
    Measurand,
)
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.expansion import Body, at_reference, expansion_contributions
from halfangle_service.trade.tables.materials.expansion import materials
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.uncertainty.zones import Case


@dataclass(frozen=True, slots=True)
class Judged:
    """What is judged: a value with its case, in arc-seconds of an angle, else in `units`."""

    measurand: Measurand
    value: float
    case: Case


def read_measured(request: InspectionVerdictRequest) -> Judged:
    """Read a request; refuses one whose fields do not go together."""
    name = one_of(request, *MEASURED)
    measurand = next(m for m in MEASURANDS if m.measured == name)
    _require_own(request, measurand)
    lower, upper = _limits(request, measurand)
    value = _in_unit(measurand, getattr(request, name))
    stated = tuple(_stated(request, measurand))
    corrected, temperature = _at_reference(request, value)
    case = Case(
        lower,
        upper,
        Budget(
            (*stated, *temperature) if stated else (),
            not_stated=() if stated else measurand.uncertainties,
        ),
        request.decision_rule,
        _guard_band(request, measurand),
        _least_index(request),
        of_a_vector=measurand.quantity == "tir",
    )
    _require_tolerance(request, case)
    return Judged(measurand, corrected, case)


def _in_unit(measurand: Measurand, value: float) -> float:
    """A measured value or a limit, degrees in arc-seconds; text and number come to the same."""
    return tidy(value * 3600.0) if measurand.is_angle else value


def _limits(request: InspectionVerdictRequest, measurand: Measurand) -> tuple[float, float]:
    """Lower and upper limit, infinite where there is none; refuses none at all, and wrong order."""
    sent = sent_of(request, *measurand.limits)
    if not sent:
        wanted = "`, `".join(measurand.limits)
        raise Disagreement(
            f"No limit was sent to judge `{measurand.measured}` by: send `{wanted}` as far as "
            "there are any.",
            fields={measurand.limits[0]: f"a limit is needed with {measurand.measured}"},
        )
    if measurand.is_angle and all_or_none(
        request,
        measurand.nominal,
        measurand.tolerance,
        why="A tolerance is about the angle that is wanted.",
    ):
        at_most_one_of(request, measurand.nominal, measurand.lower)
        at_most_one_of(request, measurand.nominal, measurand.upper)
        nominal = _in_unit(measurand, getattr(request, measurand.nominal))
        tolerance = getattr(request, measurand.tolerance)
        return tidy(nominal - tolerance, nominal), tidy(nominal + tolerance, nominal)
    lower = getattr(request, measurand.lower) if measurand.lower else None
    upper = getattr(request, measurand.upper)
    if lower is not None and upper is not None and lower >= upper:
        raise Disagreement(
            "The smallest value allowed is no smaller than the largest.",
            fields={measurand.lower: f"should be smaller than {measurand.upper}"},
        )
    return (
        -math.inf if lower is None else _in_unit(measurand, lower),
        math.inf if upper is None else _in_unit(measurand, upper),
    )


def _require_own(request: InspectionVerdictRequest, measurand: Measurand) -> None:
    """Refuse limits, uncertainties and temperatures that belong to another quantity."""
    others = [m for m in MEASURANDS if m is not measurand]
    foreign = [
        *(name for m in others for name in m.limits),
        *(ANGLE_UNCERTAINTIES if not measurand.is_angle else LENGTH_UNCERTAINTIES),
        "guard_band" if measurand.is_angle else "guard_band_arcsec",
        *(TEMPERATURES if measurand.is_angle or measurand.quantity == "tir" else ()),
    ]
    sent = sent_of(request, *foreign)
    if sent:
        listed = "`, `".join(sent)
        raise Disagreement(
            f"`{measurand.measured}` was measured; `{listed}` says nothing of it.",
            fields=dict.fromkeys(sent, f"does not belong to {measurand.measured}"),
        )


def _stated(request: InspectionVerdictRequest, measurand: Measurand) -> Iterator[Contribution]:
    """How well the value is known, as it was stated; nothing where it was not."""
    standard, expanded, limit = measurand.uncertainties
    name = at_most_one_of(request, *measurand.uncertainties)
    whose = "A coverage factor belongs to an expanded uncertainty."
    if name == expanded:
        needs(request, expanded, "coverage_factor", why="What it is expanded by must be known.")
    elif request.coverage_factor is not None:
        raise Disagreement(whose, fields={expanded: "is needed together with coverage_factor"})
    freedom = request.degrees_of_freedom
    if freedom is not None and name in (None, limit):
        raise Disagreement(
            "Degrees of freedom belong to a standard or an expanded uncertainty.",
            fields={"degrees_of_freedom": f"is about {standard} or {expanded}"},
        )
    if name is None:
        return
    value = getattr(request, name)
    if name == limit:
        yield Contribution(name, value)
    else:
        factor = request.coverage_factor or 1.0
        spread = value / factor
        yield Contribution(name, spread, "normal", degrees_of_freedom=freedom or math.inf)


def _guard_band(request: InspectionVerdictRequest, measurand: Measurand) -> float:
    """The guard band agreed on; refuses one without its rule, and the rule without one."""
    name = "guard_band_arcsec" if measurand.is_angle else "guard_band"
    band: float | None = getattr(request, name)
    if (band is not None) != (request.decision_rule == "guard-band"):
        raise Disagreement(
            "A guard band agreed on and the rule `guard-band` belong together.",
            fields={
                name: "is needed with this decision_rule"
                if band is None
                else "is for the decision_rule guard-band"
            },
        )
    return band or 0.0


def _least_index(request: InspectionVerdictRequest) -> float:
    index = request.smallest_capability_index
    if index is not None and request.decision_rule != "simple-acceptance":
        raise Disagreement(
            "A smallest capability index belongs to simple acceptance: the other rules mind the "
            "uncertainty by themselves.",
            fields={"smallest_capability_index": "is for the decision_rule simple-acceptance"},
        )
    return index or 0.0


def _require_tolerance(request: InspectionVerdictRequest, case: Case) -> None:
    if request.smallest_capability_index is not None and case.tolerance is None:
        raise Disagreement(
            "A capability index compares the uncertainty with a tolerance, and with one limit "
            "there is none.",
            fields={"smallest_capability_index": "needs a limit to either side"},
        )


def _at_reference(
    request: InspectionVerdictRequest, value: float
) -> tuple[float, tuple[Contribution, ...]]:
    """A length corrected to 20 °C where temperatures were sent, and what they leave in doubt."""
    why = "A reading is corrected by what both part and instrument have grown."
    if not all_or_none(request, *TEMPERATURES, why=why):
        return value, ()
    part, instrument = (
        Body(
            name,
            materials()[getattr(request, f"{name}_material")],
            getattr(request, f"{name}_temperature_celsius"),
        )
        for name in ("part", "instrument")
    )
    error_limit = request.temperature_error_limit_celsius or 0.0
    doubt = expansion_contributions(value, part, instrument, error_limit)
    return at_reference(value, part, instrument), doubt

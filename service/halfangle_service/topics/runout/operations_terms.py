"""Terms of runout: models to maths and back."""

from halfangle_service.errors import Impossible
from halfangle_service.operation import Operation, Outcome, Source, published_table
from halfangle_service.topics.runout.models_terms import (
    RunoutConvertRequest,
    RunoutConvertResult,
    RunoutTerm,
)
from halfangle_service.trade.tables.runout.terms import Term, terms
from halfangle_service.trade.tables.runout.terms import convert as convert_term

_STANDARDS = Source(
    citation="ISO 1101:2017, coaxiality, circular and total run-out; ASME Y14.5-2009, "
    "concentricity, and ASME Y14.5-2018, which takes it out.",
    standing="published",
)
_BOUNDS = Source(
    citation="Derived here: a reading is e cos φ plus form; a profile of range R has a first "
    "harmonic of at most 2R/π.",
    standing="derived",
)


def convert(request: RunoutConvertRequest) -> Outcome[RunoutConvertResult]:
    """What a value of one term says of another."""
    given, wanted = terms()[request.given], terms()[request.wanted]
    found = convert_term(
        request.value,
        given,
        wanted,
        request.form_error,
        every_section_alike=request.every_section_alike,
    )
    bounds = found.bounds
    if bounds.most is None and bounds.least <= 0.0:
        raise Impossible(
            f"{given.name} says nothing of {wanted.name} here. {' '.join(found.reasons)}",
            fields={"wanted": "does not follow from what was sent"},
            more={"reasons": list(found.reasons)},
        )
    return Outcome(
        RunoutConvertResult(
            relation="equal"
            if bounds.exact
            else "at least"
            if bounds.most is None
            else "between"
            if bounds.least > 0.0
            else "at most",
            value=bounds.most if bounds.exact else None,
            least=bounds.least,
            most=bounds.most,
            reasons=[] if bounds.exact else list(found.reasons),
            given=_shown(given),
            wanted=_shown(wanted),
        )
    )


def _shown(term: Term) -> RunoutTerm:
    return RunoutTerm(
        key=term.key,
        name=term.name,
        definition=term.definition,
        scope=term.scope,
        source=term.source,
        standing=term.standing,
    )


@published_table("runout.terms", singular="term", key="key", sources=(_STANDARDS,))
def runout_terms() -> dict[str, RunoutTerm]:
    """Terms of runout.

    TIR, eccentricity, concentricity, coaxiality, circular and total run-out, each by the standard
    that defines it.
    """
    return {key: _shown(term) for key, term in terms().items()}


CONVERT = Operation(
    topic="runout",
    verb="convert",
    title="From one term of runout to another",
    summary="TIR, eccentricity, concentricity, coaxiality, circular and total run-out: the value "
    "where it follows, bounds with the reason where it does not, a refusal where nothing follows.",
    request=RunoutConvertRequest,
    result=RunoutConvertResult,
    calculate=convert,
    relations=(
        "round section: TIR = 2 e, zone diameter = 2 e",
        "any section: |2 e - form| ≤ TIR ≤ 2 e + form, e ≤ 2 TIR/π",
        "median points: 2 e - form ≤ zone diameter ≤ 2 e + form",
    ),
    sources=(_STANDARDS, _BOUNDS),
    example={
        "units": "in",
        "value": 0.0004,
        "given": "tir",
        "wanted": "eccentricity",
        "form_error": 0.00005,
    },
)

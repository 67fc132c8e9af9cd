"""Terms of runout, and what a value of one says of another."""

from typing import Literal

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    UnitsField,
)
from halfangle_service.operation import Outcome, Source, operation, published_table
from halfangle_service.trade.runout.convert import Bounds, Conversion
from halfangle_service.trade.runout.convert import convert as convert_term
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.runout.terms import (
    Term,
    TermKey,
    TermScope,
    terms,
)

Relation = Literal["equal", "between", "at-least", "at-most"]
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


class RunoutConvertRequest(RequestModel):
    """A value of one term, and the term wanted."""

    units: UnitsField
    value: NonNegativeLength = Field(description="Value found, in `units`.", examples=[0.0004])
    given_term: TermKey = Field(description="Term of the value.", examples=["tir"])
    wanted_term: TermKey = Field(description="Term wanted.", examples=["eccentricity"])
    out_of_roundness: NonNegativeLength | None = Field(
        None,
        description="Departure from roundness about the least-squares center, peak to valley, in "
        "`units`; 0 for a round section. Of the section that is spoken of, or of the least round "
        "one where both terms speak of the whole feature. Absent, it is taken as unknown.",
    )
    every_section_alike: bool = Field(
        False,
        description="True where the section spoken of is the worst of all, or where all are alike: "
        "axis parallel to the datum and the form the same all along.",
    )


class RunoutTerm(ResultModel):
    """One term by its definition."""

    key: TermKey = Field(description="Key of the term.")
    name: str = Field(description="Its name.")
    definition: str = Field(description="Its definition, in this project's words.")
    scope: TermScope = Field(
        description="Whether a value speaks of one section or of the whole feature."
    )
    source: str = Field(description="Standard that defines it.")
    standing: Standing = Field(description="How the definition is had.")


class RunoutConvertResult(ResultModel):
    """What the value says of the other term, and why no more."""

    relation: Relation = Field(
        description="`equal`: convertible; else bounds only, and `reasons` says why."
    )
    value: LengthOut | None = Field(description="The value, where convertible; else null.")
    smallest: LengthOut = Field(description="It is not less than this.")
    largest: LengthOut | None = Field(description="It is not more than this; null for no bound.")
    reasons: list[str] = Field(description="Why it is not equal; empty where it is.")
    given_term: RunoutTerm = Field(description="The term sent.")
    wanted_term: RunoutTerm = Field(description="The term wanted.")


@published_table("runout.terms", singular="term", key="key")
def runout_terms() -> dict[str, RunoutTerm]:
    """Terms of runout.

    TIR, eccentricity, concentricity, coaxiality, circular and total run-out, each by the standard
    that defines it.
    """
    return {key: _shown(term) for key, term in terms().items()}


@operation(
    "runout.convert",
    relations=(
        "round section: TIR = 2 e, zone diameter = 2 e",
        "any section: |2 e - form| ≤ TIR ≤ 2 e + form, e ≤ 2 TIR/π",
        "median points: 2 e ≤ zone diameter ≤ 2 e + form, zone diameter ≤ TIR √(1 + (4/π)²)",
        "one section ≤ the whole feature",
    ),
    sources=(_STANDARDS, _BOUNDS),
    example={
        "units": "in",
        "value": 0.0004,
        "given_term": "tir",
        "wanted_term": "eccentricity",
        "out_of_roundness": 0.00005,
    },
    columns=True,
)
def convert(request: RunoutConvertRequest) -> Outcome[RunoutConvertResult]:
    """From one term of runout to another.

    TIR, eccentricity, concentricity, coaxiality, circular and total run-out: the value where it
    follows, bounds with the reason where it does not, a refusal where nothing follows.
    """
    given, wanted = terms()[request.given_term], terms()[request.wanted_term]
    found = convert_term(
        request.value,
        given,
        wanted,
        request.out_of_roundness,
        every_section_alike=request.every_section_alike,
    )
    bounds = found.bounds
    if not bounds.say_something:
        raise _nothing_follows(request, given, wanted, found)
    return Outcome(
        RunoutConvertResult(
            relation=_relation(bounds),
            value=bounds.most if bounds.exact else None,
            smallest=bounds.least,
            largest=bounds.most,
            reasons=[] if bounds.exact else list(found.reasons),
            given_term=_shown(given),
            wanted_term=_shown(wanted),
        )
    )


def _nothing_follows(
    request: RunoutConvertRequest, given: Term, wanted: Term, found: Conversion
) -> Impossible:
    """The refusal, with the fields that would let a bound follow."""
    ways = _ways_out(request, given, wanted)
    way = f" Send {' or '.join(ways)}: a bound follows then." if ways else ""
    return Impossible(
        f"{given.name} says nothing of {wanted.name} here. {' '.join(found.reasons)}{way}",
        fields={"wanted_term": "does not follow from what was sent", **ways},
        more={"reasons": list(found.reasons)},
    )


def _ways_out(request: RunoutConvertRequest, given: Term, wanted: Term) -> dict[str, str]:
    """Fields not sent by each of which a bound follows, and what they should say."""
    form, alike = request.out_of_roundness, request.every_section_alike
    trials = {
        "out_of_roundness": (0.0 if form is None else form, alike),
        "every_section_alike": (form, True),
    }
    words = {
        "out_of_roundness": "should be sent, where it is known",
        "every_section_alike": "should be true, where it is so",
    }
    return {
        name: words[name]
        for name, (round_to, sections) in trials.items()
        if convert_term(
            request.value, given, wanted, round_to, every_section_alike=sections
        ).bounds.say_something
    }


def _relation(bounds: Bounds) -> Relation:
    if bounds.exact:
        return "equal"
    if bounds.most is None:
        return "at-least"
    return "between" if bounds.least > 0.0 else "at-most"


def _shown(term: Term) -> RunoutTerm:
    return RunoutTerm(
        key=term.key,
        name=term.name,
        definition=term.definition,
        scope=term.scope,
        source=term.source,
        standing=term.standing,
    )

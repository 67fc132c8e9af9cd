"""What a curve asks and answers, as the contract describes it."""

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Discriminator, Field, Tag

from halfangle_service.fields.advisories import Advisory
from halfangle_service.http.problems import Problem
from halfangle_service.operation import Grounds

CURVES_PATH = "/v1/curves/{operation}"
#: Points of one curve or grid; fewer where each point's half-width of an estimate is searched for.
MOST_POINTS = 10_000
MOST_SEARCHED = 1_000
#: Turns of a key's pace that the most points take; fewer points take fewer in proportion.
MOST_TURNS = 100
MOST_COLUMNS = 40

_STRICT = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False)
CurveNumber = Annotated[float, Field(strict=True, allow_inf_nan=False)]


class CurveRange(BaseModel):
    """Numbers at even steps, both ends among them."""

    model_config = _STRICT

    from_: float = Field(alias="from", description="The first, less than the last.", examples=[1.0])
    to: float = Field(description="The last.", examples=[60.0])
    count: Annotated[int, Field(strict=True, ge=2, le=MOST_POINTS)] = Field(
        description="How many, the ends among them.", examples=[60]
    )


def _form(over: Any) -> str:
    """Which of the two was sent, so that what is wrong is said of that one."""
    return "range" if isinstance(over, dict | CurveRange) else "list"


CurveOver = Annotated[
    Annotated[CurveRange, Tag("range")]
    | Annotated[list[CurveNumber], Field(min_length=1, max_length=MOST_POINTS), Tag("list")],
    Discriminator(_form),
]


class CurveRequest(BaseModel):
    """One operation over a range, or a list, of one or two of its numbers."""

    model_config = _STRICT

    request: dict[str, Any] = Field(
        default={}, description="All other fields of the operation's request, as it takes them."
    )
    over: dict[str, CurveOver] = Field(
        description="One or two of its fields that are numbers, each with its range or its list. "
        f"Of two every pair is a point; at most {MOST_POINTS} points, {MOST_SEARCHED} of a result "
        "with an estimate.",
        min_length=1,
        max_length=2,
    )
    columns: Annotated[
        list[Annotated[str, Field(max_length=200)]], Field(min_length=1, max_length=MOST_COLUMNS)
    ] = Field(
        description="Values of the result by their paths: `height`, `angle.degrees`.",
        examples=[["height"]],
    )


class CurveAxis(BaseModel):
    """One of the numbers that run."""

    field: str = Field(description="The field of the request.")
    unit: str | None = Field(description="Its unit; `length` is in the request's `units`.")
    values: list[float] = Field(description="Its numbers, in order.")


class CurveColumn(BaseModel):
    """One value of the result at every point."""

    name: str = Field(description="Its path in the result.")
    unit: str | None = Field(
        description="Its unit; `length` is in the request's `units`; null where it has none."
    )
    values: list[float | int | str | bool | None] = Field(
        description="One a point, in the order of the points; null where the result says null, "
        "where the point is refused, and where its answer says stop (but a judgement that does "
        "not say yes stands)."
    )


Ranges = Annotated[
    list[list[int]],
    Field(description="The points, from 0: first and last of each unbroken run."),
]


class CurveRefusal(BaseModel):
    """Points that are refused alike."""

    count: int = Field(description="How many points.", ge=1)
    points: Ranges
    problem: Problem = Field(description="The problem document of the first.")


class CurveAdvisory(Advisory):
    """An advisory, and the points whose answer has it; its message is that of the first."""

    count: int = Field(description="How many points.", ge=1)
    points: Ranges


class CurveCounts(BaseModel):
    """How the points ended."""

    points: int = Field(description="Points asked for.", ge=1)
    ok: int = Field(description="Points with an answer that does not say stop.", ge=0)
    refused: int = Field(description="Points with a problem.", ge=0)
    with_stop: int = Field(description="Points whose answer says stop.", ge=0)


class CurveAnswer(BaseModel):
    """Values at every point. Of two axes the last one runs fastest (row-major)."""

    operation: str = Field(description="Name of the operation.", examples=["sine.setting"])
    shape: list[int] = Field(description="Numbers on each axis, in the order of `axes`.")
    axes: list[CurveAxis] = Field(description="What runs, in the order in which it was sent.")
    columns: list[CurveColumn] = Field(description="What was asked for, in its order.")
    counts: CurveCounts
    refusals: list[CurveRefusal] = Field(description="Points that are refused, by their problem.")
    advisories: list[CurveAdvisory] = Field(description="What answers advise, and where.")
    basis: Grounds = Field(description="Formulas, sources and release.")

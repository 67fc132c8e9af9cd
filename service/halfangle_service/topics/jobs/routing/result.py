"""How a routing answers: operations in order, each with what a planner's system asks of one."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import CountOut, ResultModel, Unit
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.numbers import MinutesOut
from halfangle_service.topics.jobs.plan.parts.feed import PlanAssumption
from halfangle_service.topics.jobs.plan.result import PlanWayName
from halfangle_service.trade.uncertainty import Forecast

OperationKind = Literal["set-up", "run", "inspect"]
TimedBy = Literal["batch", "piece", "inspected-piece", "dress"]
ToolKind = Literal[
    "wheel",
    "dresser",
    "spin-fixture",
    "workhead",
    "adapter",
    "test-bar",
    "angle-plate",
    "sine-plate",
    "compound-plate",
    "block-set",
    "indicator",
    "rolls",
    "balls",
    "gauges",
    "probe",
    "comparator",
    "master-and-blue",
]
#: Longest name of an operation.
LONGEST_NAME = 80

SecondsOut = Annotated[float, Unit("second")]


class RoutingTool(ResultModel):
    """What an operation takes."""

    tool: ToolKind = Field(description="What it is.")
    name: str | None = Field(description="What the shop calls it; null where it has no name.")
    detail: str | None = Field(
        description="Its size, or which blocks of it, in plain words; null where none was stated."
    )


class RoutingValue(ResultModel):
    """A figure of an operation."""

    name: str = Field(
        description="What it is, by the fields of `jobs.plan`, parts of the name apart by `/`.",
        examples=["plate/height"],
    )
    value: Annotated[float, Unit("stated")] = Field(description="The figure, not rounded.")
    unit: str = Field(
        description="Unit of the figure, as `x-unit` names units, a length in the unit that it "
        "has: `inch` or `millimetre`."
    )


class RoutingOperation(ResultModel):
    """An operation of a routing."""

    sequence: CountOut = Field(description="Its place in the order: 10, 20, 30.")
    code: str = Field(
        max_length=40,
        pattern=r"^HA(-[A-Z0-9]+)+$",
        description="Stable code of the operation, by its kind and its means and nothing of the "
        "job: operations of one code are one master operation.",
        examples=["HA-SET-SINE-PLATE"],
    )
    kind: OperationKind = Field(description="To set up, to run or to inspect.")
    name: str = Field(
        max_length=LONGEST_NAME, description="Name of the master operation, alike for every job."
    )
    text: str = Field(
        description="What to do for this job, a line a step, numbered as in the plan; stops first."
    )
    set_up_seconds: SecondsOut | None = Field(
        description="Time to set up; null of what is run or inspected, and where `timed_in` says "
        "which operation holds it."
    )
    run_seconds: SecondsOut | None = Field(
        description="Time to run or inspect once; null of a set-up, where `timed_in` says which "
        "operation holds it, and of finishing, of which a plan has no time."
    )
    timed_by: TimedBy = Field(description="What is done once in that time.")
    times_done: CountOut = Field(description="How often in the batch.")
    timed_in: CountOut | None = Field(
        description="`sequence` of the operation whose time holds this one's too; null where it "
        "has its own, or the plan has none."
    )
    assumptions: list[PlanAssumption] = Field(
        description="What is the usual in its time or its feed, stated so or not stated; common "
        "practice, no source."
    )
    tools: list[RoutingTool] = Field(description="What it takes.")
    values: list[RoutingValue] = Field(description="Its figures; what is not known is left out.")
    cautions: list[str] = Field(description="What to be careful of, of the plan's steps.")
    stops: list[str] = Field(
        description="What the answer says of severity `stop`: with any of it the operation is not "
        "to be run."
    )


class JobRoutingResult(ResultModel):
    """The routing of one way of a plan."""

    job: str = Field(description="Name of the job.")
    way: PlanWayName = Field(description="The way of the plan that it follows.")
    in_words: str = Field(description="That way in plain words, with its equipment.")
    forecast: Forecast = Field(description="Whether that way will keep every limit.")
    pieces: CountOut = Field(description="Pieces to grind.")
    plan_fingerprint: str = Field(
        description="`basis.fingerprint` of the answer of `jobs.plan` to the same request: another "
        "where the plan may be another, so that work planned before is seen to be stale.",
        examples=["2ff894bf4535a37a"],
    )
    first_piece_minutes: MinutesOut = Field(description="The plan's time to the first good piece.")
    total_minutes: MinutesOut = Field(
        description="The plan's time for all pieces: the seconds of all operations, each so often "
        "as it is done."
    )
    operations: list[RoutingOperation] = Field(description="The operations, in order.")
    not_stated: NotStated

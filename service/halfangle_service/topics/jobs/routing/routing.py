"""A plan as a routing, for a planner's system."""

from types import MappingProxyType
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Unreachable
from halfangle_service.operation import Outcome, Profiles, Source, operation
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest, plan, planned, shop_of
from halfangle_service.topics.jobs.plan.ranking import UnknownWay, place_of_way
from halfangle_service.topics.jobs.routing.result import JobRoutingResult
from halfangle_service.topics.jobs.routing.sequenced import operations_of


class JobRoutingRequest(JobPlanRequest):
    """The request of a plan, and which of its ways is wanted."""

    way: Annotated[str, Field(max_length=40)] = Field(
        "",
        description="Which of the plan's `ways`: its name, or its place counted from 1. Absent: "
        "the first.",
        examples=["2"],
    )


@operation(
    "jobs.routing",
    relations=(
        "total_minutes × 60 = sum of times_done × (set_up_seconds or run_seconds)",
        "first_piece_minutes × 60 = the same sum, each operation once, dressing again left out",
        "code = kind and means, of nothing of the job",
    ),
    sources=(
        Source(
            citation="The plan itself, `jobs.plan`, with all that it stands on.",
            standing="derived",
        ),
        Source(
            citation="What is an operation of its own, how it is named, and the usual times.",
            standing="common-practice-no-source",
        ),
    ),
    example={**plan.example, "job": "HL-0412 machine center"},
    largest_request=plan.largest_request,
    heavy=True,
)
def routing(
    request: JobRoutingRequest, profiles: Profiles = MappingProxyType({})
) -> Outcome[JobRoutingResult]:
    """Routing of a job.

    One way of its plan as operations for a planner's system: each with a stable code, so that jobs
    share one master operation, its text, seconds with what was taken as usual in them, tools and
    figures.
    """
    asked = _plan_request(request)
    try:
        outcome = planned(asked, profiles, shown=request.way)
    except UnknownWay as unknown:
        known = ", ".join(unknown.known)
        raise Unreachable(
            f"The plan has no way {request.way!r}; it has: {known}.",
            fields={"way": f"should be one of {known}"},
        ) from None
    found, advisories = outcome.result, outcome.advisories
    way = found.ways[place_of_way([each.way for each in found.ways], request.way)]
    missing = (
        *(name for angle in way.angles for name in angle.error_arcsec.not_stated),
        *way.feed_plan.not_stated,
        *way.batch.not_stated,
    )
    result = JobRoutingResult(
        job=found.job,
        way=way.way,
        in_words=way.in_words,
        forecast=way.forecast,
        pieces=request.pieces,
        plan_fingerprint=plan.fingerprint(asked, outcome),
        first_piece_minutes=way.first_piece_minutes,
        total_minutes=way.total_minutes,
        operations=operations_of(asked, found, way, shop_of(asked, profiles), advisories),
        not_stated=list(dict.fromkeys(missing)),
    )
    return Outcome(result, advisories, outcome.rows, outcome.stands_on)


def _plan_request(request: JobRoutingRequest) -> JobPlanRequest:
    """The plan's own request, without which way of it is wanted."""
    stated = {name: getattr(request, name) for name in JobPlanRequest.model_fields}
    return JobPlanRequest.model_construct(**stated)

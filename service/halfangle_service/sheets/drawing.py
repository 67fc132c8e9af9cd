"""The drawing of a set-up sheet: the one place that calls the drawings to scale."""

from halfangle_service.sheets.model import Drawing
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest
from halfangle_service.topics.jobs.plan.result import JobPlanResult


def set_up_drawing(
    request: JobPlanRequest,  # noqa: ARG001
    result: JobPlanResult,  # noqa: ARG001
    place: int,  # noqa: ARG001
) -> Drawing | None:
    """The set-up of one way to scale."""
    return None

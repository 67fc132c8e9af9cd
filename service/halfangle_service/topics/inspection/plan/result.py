"""How an inspection is planned: each means that reaches the part, and those that do not."""

from pydantic import Field

from halfangle_service.fields import ResultModel
from halfangle_service.fields.inspection.planned import PlannedInspection, RuledOutInspection
from halfangle_service.topics.inspection.plan.feature import InspectedPart
from halfangle_service.trade.inspection.means import MeansName


class InspectionPlanResult(ResultModel):
    """The inspection planned."""

    feature: InspectedPart = Field(description="The part as it was read.")
    best: MeansName | None = Field(
        description="Of the means that can prove the angle's tolerance the one with the least "
        "expanded uncertainty; null where none can."
    )
    inspections: list[PlannedInspection] = Field(
        description="Each means that reaches the part, in a fixed order."
    )
    ruled_out: list[RuledOutInspection] = Field(
        description="Each means that does not, with the reason and the nearest that works."
    )
    svg: str | None = Field(
        description="The part over its rolls or with its balls, as SVG; null where neither reaches "
        "it, and where `formats` did not ask for it."
    )

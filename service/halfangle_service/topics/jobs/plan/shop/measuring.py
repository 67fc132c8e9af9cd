"""What the shop measures with: the means of an inspection, and what checks a set-up."""

from pydantic import Field

from halfangle_service.fields.inspection.at_hand import MeansAtHandFields
from halfangle_service.fields.inspection.plate import InspectionPlate
from halfangle_service.fields.set_up_errors import Limit


class PlanMeasuring(MeansAtHandFields):
    """Means of measuring the ground feature and of checking the set-up that grinds it.

    A limit of error that is not sent is not stated, and no judgement comes out of it.
    """

    plate: InspectionPlate | None = Field(
        None, description="A sine bar or plate, with an indicator, to measure on."
    )
    stack_reading_error_limit: Limit = Field(
        None,
        description="Largest error ± of a wrung stack's height as measured, by micrometer or "
        "comparator, in `units`.",
    )
    comparison_error_limit: Limit = Field(
        None,
        description="Largest error ± of the difference of two stacks as an indicator compares "
        "them, in `units`.",
    )
    tir_error_limit: Limit = Field(
        None, description="Largest error ± of a TIR as read on the cone, in `units`."
    )

"""What is asked: a part with its tolerances, and the means of measuring that the shop has."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Count
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import SOURCES, BlockGradeFields
from halfangle_service.fields.drawings.asked import DrawnFields
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.fields.inspection.at_hand import MEANS_AT_HAND, MeansAtHandFields
from halfangle_service.fields.inspection.plate import InspectionPlate
from halfangle_service.topics.inspection.plan.feature import InspectedFeature

#: What there is to measure with, of which one at least is sent.
MEANS = (*MEANS_AT_HAND, "plate")


class InspectionPlanRequest(MeansAtHandFields, BlockGradeFields, DrawnFields):
    """A part with its tolerances, and the means of measuring that the shop has.

    Blocks are for the sine plate's stack, where they are sent.
    """

    rules = (Rule("at-least-one-of", MEANS), Rule("needs", SOURCES, needs="plate"))

    feature: InspectedFeature
    plate: InspectionPlate | None = Field(
        None, description="A sine bar or plate, with an indicator."
    )
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        5, description="Most blocks to wring in one stack."
    )
    decision_rule: DecisionRuleField = DECISION_RULE

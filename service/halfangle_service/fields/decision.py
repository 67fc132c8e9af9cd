"""The rule by which a request is judged, as every request that is judged states it."""

from typing import Annotated

from pydantic import Field

from halfangle_service.trade.uncertainty import DecisionRule

#: Default of the field: the edition in force.
DECISION_RULE: DecisionRule = "iso-14253-1-2017"
DecisionRuleField = Annotated[
    DecisionRule,
    Field(
        description="Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a "
        "probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard "
        "uncertainties at either limit."
    ),
]

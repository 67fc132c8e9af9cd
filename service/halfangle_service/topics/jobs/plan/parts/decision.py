"""What was not stated and would change which way is best, as the answer gives it."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import ResultModel, Unit


class PlanBest(ResultModel):
    """The way that would be best; null and empty where none would be fit."""

    way_number: Annotated[int, Unit("count")] | None = Field(
        description="Its place in `ways` as they are ranked now, the first being 1; null where no "
        "way would hold or might."
    )
    best_way: str | None = Field(description="It in plain words, with its equipment.")


class PlanThreshold(PlanBest):
    """A value above which another way is best."""

    above: Annotated[float, Unit("stated")] = Field(
        description="The value, in `input_unit`, to a half of a percent."
    )
    input_unit: str = Field(description="Unit of the value, as `x-unit` names units.")


class PlanDecision(ResultModel):
    """Statements that are missing and would change which way is best."""

    statements: list[str] = Field(
        description="Fields of the request to state, as paths; of several it takes all of them."
    )
    best_at_zero: PlanBest = Field(description="Best where they are stated as nothing at all.")
    thresholds: list[PlanThreshold] = Field(
        description="Values above which another way is best, rising; what else is missing stays so."
    )
    sentence: str = Field(description="The same in plain words.")

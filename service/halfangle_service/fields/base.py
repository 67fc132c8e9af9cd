"""The two base models: what a request may be, and what a result must be."""

from pydantic import BaseModel, ConfigDict


class RequestModel(BaseModel):
    """A request: immutable, no unknown fields, numbers never read from strings or booleans."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, allow_inf_nan=False)


class ResultModel(BaseModel):
    """A result: immutable, no unknown fields, every number finite."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

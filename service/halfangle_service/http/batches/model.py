"""What a batch asks and answers, as the contract describes it."""

from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field

from halfangle_service.http.batches.rows import LARGEST_REF, LONGEST_REF
from halfangle_service.http.problems import Problem

BATCHES_PATH = "/v1/batches"
#: Media type of a batch whose rows are lines.
LINES = "application/x-ndjson"

BatchRef = Annotated[
    Annotated[str, Field(min_length=1, max_length=LONGEST_REF)]
    | Annotated[int, Field(ge=-LARGEST_REF, le=LARGEST_REF)],
    Field(description="The caller's name of the row, given once in a batch.", examples=["T-0001"]),
]


class BatchRow(BaseModel):
    """One row of a batch: an operation and its request."""

    model_config = ConfigDict(extra="forbid")

    ref: BatchRef
    operation: str = Field(description="Name of an operation.", examples=["sine.setting"])
    request: dict[str, Any] = Field(description="Its request, as its own address takes it.")


class BatchRequest(BaseModel):
    """Rows of any operations."""

    model_config = ConfigDict(extra="forbid")

    rows: list[BatchRow] = Field(description="The rows.")


class BatchRowAnswer(BaseModel):
    """What came of one row: its answer, or its problem."""

    row: int = Field(description="Number of the row, from 1.", ge=1)
    ref: BatchRef | None = Field(
        description="The row's own, as it was sent; null where it could not be read."
    )
    status: Literal["ok", "refused"] = Field(
        description="`ok`: it is answered; `refused`: it has a problem in place of an answer."
    )
    stops: int | None = Field(
        None, description="Advisories of its answer that say stop: do not run this.", ge=0
    )
    cautions: int | None = Field(None, description="Those that say caution.", ge=0)
    answer: dict[str, Any] | None = Field(
        None, description="Where it is `ok`: the answer, to the byte as the operation's own."
    )
    problem: Problem | None = Field(
        None, description="Where it is `refused`: the problem document of the operation's own."
    )


class BatchCounts(BaseModel):
    """How the rows ended."""

    rows: int = Field(description="Rows that came.", ge=0)
    ok: int = Field(description="Rows with an answer.", ge=0)
    refused: int = Field(description="Rows with a problem.", ge=0)
    with_stop: int = Field(description="Rows whose answer says stop.", ge=0)
    with_caution: int = Field(description="Rows whose answer says caution.", ge=0)


class BatchAnswer(BaseModel):
    """What came of every row, in order."""

    rows: list[BatchRowAnswer] = Field(description="One entry a row, in the order of the rows.")
    counts: BatchCounts
    problem: Problem | None = Field(
        None, description="Why it ended before the last row; left out where it did not."
    )

"""The operation catalogue: what a front end needs to build its forms."""

from collections.abc import Mapping
from typing import Any

from pydantic import Field

from halfangle_service.fields import ResultModel
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.query import query_fields
from halfangle_service.operation import Operation, PublishedTable, Source


class OperationEntry(ResultModel):
    """One line of the catalogue."""

    name: str = Field(description="Dotted name.", examples=["sine.setting"])
    topic: str = Field(description="Topic that it belongs to.")
    title: str = Field(description="Title for a person.")
    summary: str = Field(description="What it answers, in a sentence.")
    path: str = Field(description="Path to POST a request to.", examples=["/v1/sine/setting"])
    query: bool = Field(description="Whether GET with a query string is offered too.")
    columns: bool = Field(description="Whether it works out columns, so that it has curves.")


class OperationDetail(OperationEntry):
    """One operation in full. Units, bounds and descriptions of fields stand in its schemas."""

    largest_request: str = Field(description="What bounds the work of one request.")
    relations: list[str] = Field(description="The formulas used, as text.")
    sources: list[Source] = Field(description="Where formulas and values come from.")
    example: dict[str, Any] = Field(description="A request that runs.")
    request_schema: dict[str, Any] = Field(
        description="JSON Schema (2020-12) of the request; `x-unit` names the unit of a number."
    )
    result_schema: dict[str, Any] = Field(description="JSON Schema (2020-12) of the result.")


AnyOperation = Operation[Any, Any]


def entry(operation: AnyOperation) -> OperationEntry:
    """Give an operation's line in the catalogue."""
    return OperationEntry(
        name=operation.name,
        topic=operation.topic,
        title=operation.title,
        summary=operation.summary,
        path=operation.path,
        query=query_fields(operation.request) is not None,
        columns=operation.columns,
    )


def detail(operation: AnyOperation) -> OperationDetail:
    """Give an operation in full."""
    return OperationDetail(
        **dict(entry(operation)),
        largest_request=operation.largest_request,
        relations=list(operation.relations),
        sources=list(operation.sources),
        example=dict(operation.example),
        request_schema=schema_of(operation.request),
        result_schema=schema_of(operation.result, "serialization"),
    )


def catalogue(operations: Mapping[str, AnyOperation]) -> PublishedTable[OperationDetail]:
    """Give the catalogue as a table of its own: `GET /v1/operations`, `…/{name}`."""
    return PublishedTable(
        topic="",
        name="operations",
        singular="operation",
        key="name",
        title="Operation catalogue",
        summary="Every calculation, with its schemas, formulas, sources and an example.",
        item=OperationDetail,
        rows=lambda: {name: detail(operation) for name, operation in operations.items()},
        in_short=_in_short,
    )


def _in_short(row: OperationDetail) -> OperationEntry:
    return OperationEntry(**{name: getattr(row, name) for name in OperationEntry.model_fields})

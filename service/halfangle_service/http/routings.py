"""A routing as CSV: a sub-address of the operation's own, for systems that take in files."""

from collections.abc import Mapping, Sequence

from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp
from pydantic import Field, ValidationError

from halfangle_service import __version__
from halfangle_service.fields import RequestModel
from halfangle_service.fields.advisories import Advisory
from halfangle_service.http.answers import (
    AnyRequest,
    answer_of,
    require_accepts,
    require_json_body,
)
from halfangle_service.http.calculating import AnyOperation, Calculator
from halfangle_service.http.finite import not_finite
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.picks import headed
from halfangle_service.http.problems import problem_of_validation
from halfangle_service.http.query import query_fields, read_query
from halfangle_service.http.requests import read_request
from halfangle_service.sheets.routing import Delimiter, routing_csv

#: The one operation whose answer is lines of a file.
ROUTING = "jobs.routing"
CSV_PATH = "{path}/csv"
CSV = "text/csv; charset=utf-8; header=present"


class CsvChoice(RequestModel):
    """How the lines are wanted, beside the request that they answer."""

    delimiter: Delimiter = Field(
        "comma", description="What parts the columns. Numbers have a decimal point with each."
    )


def csv_routes(
    operations: Mapping[str, AnyOperation], calculator: Calculator, bodies: Bodies
) -> list[HTTPRouteHandler]:
    """The route of the routing's lines; none where the routing is not served."""
    return [_route(operations[ROUTING], calculator, bodies)] if ROUTING in operations else []


def _route(operation: AnyOperation, calculator: Calculator, bodies: Bodies) -> HTTPRouteHandler:
    async def lines(request: AnyRequest) -> ASGIApp:
        chosen = _chosen(request.scope["query_string"])
        require_json_body(request)
        require_accepts(request, CSV.partition(";")[0])
        body = await bodies.read(request)
        try:
            content, advisories = await calculator.aside(
                operation, body, request, _made, operation, body, chosen
            )
            calculator.count_advice((one.severity, one.code) for one in advisories)
            return answer_of(content, CSV, headed(advisories))
        finally:
            bodies.release(body)

    return HTTPRouteHandler(
        CSV_PATH.format(path=operation.path),
        http_method=[HttpMethod.POST],
        name=f"{operation.name}.csv",
        status_code=200,
    )(lines)


def _chosen(query: bytes) -> CsvChoice:
    """What the query string chooses; the request goes into the body."""
    body = read_query(query, query_fields(CsvChoice) or {})
    try:
        return CsvChoice.model_validate_json(body)
    except ValidationError as error:
        raise problem_of_validation(error, body, CsvChoice.model_fields) from None


def _made(
    operation: AnyOperation, body: bytes, chosen: CsvChoice
) -> tuple[bytes, Sequence[Advisory]]:
    """The lines, and what the answer advises."""
    request = read_request(operation, body)
    try:
        outcome = operation.outcome(request)
        fingerprint = operation.fingerprint(request, outcome)
    except (ArithmeticError, ValidationError) as error:
        raise not_finite(operation, request) from error
    lines = routing_csv(
        outcome.result, outcome.advisories, fingerprint, __version__, chosen.delimiter
    )
    return lines.encode(), outcome.advisories

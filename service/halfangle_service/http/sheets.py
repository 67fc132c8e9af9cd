"""Sheets of answers: a sub-address of the operation's own, as a page of HTML or as PDF."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any, Literal

from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp
from pydantic import Field, ValidationError

from halfangle_service.fields import RequestModel
from halfangle_service.fields.advisories import Advisory
from halfangle_service.http.answers import (
    AnyRequest,
    Headers,
    answer_of,
    best_accepted,
    require_json_body,
    tag_of_request,
    tagged,
    unchanged,
)
from halfangle_service.http.calculating import Calculator
from halfangle_service.http.finite import not_finite
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.picks import headed
from halfangle_service.http.problems import ProblemError, pointer_to, problem_of_validation
from halfangle_service.http.query import parted, query_fields, read_pairs, read_query
from halfangle_service.http.requests import read_request
from halfangle_service.operation import Operation
from halfangle_service.settings import Settings
from halfangle_service.sheets.made import (
    PLAN,
    WITH_SHEET,
    Choice,
    SheetKind,
    page_for,
)
from halfangle_service.sheets.model import Paper
from halfangle_service.sheets.pdf import NoPdf, pdf_of, require_pdf
from halfangle_service.topics.jobs.plan.ranking import UnknownWay

AnyOperation = Operation[Any, Any]

SHEET_PATH = "{path}/sheet"
HTML, PDF = "text/html; charset=utf-8", "application/pdf"
_MEDIA_TYPES = {"html": HTML, "pdf": PDF}
#: A sheet runs nothing and fetches nothing; its style stands in it, drawings may be images in it.
_POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; "
    "form-action 'none'; frame-ancestors 'self'"
)
#: Form and thus bytes follow Accept, where no `format` is asked for.
_BY_ACCEPT: Headers = ((b"vary", b"Accept"),)
_OF_A_PAGE: Headers = (
    (b"content-security-policy", _POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
)


class SheetChoice(RequestModel):
    """How a sheet is wanted, beside the request that it answers."""

    paper: Paper = Field("a4", description="Paper that it is to be printed on.")
    format: Literal["html", "pdf"] | None = Field(
        None,
        description="Form of the sheet. Absent: what Accept asks for, `html` where it takes both.",
    )


class PlanSheetChoice(SheetChoice):
    """The same of a plan, which has several ways and two kinds of sheet."""

    way: Annotated[str, Field(max_length=40)] = Field(
        "",
        description="Which of `ways`: its name, or its place counted from 1. Absent: the first.",
        examples=["2"],
    )
    kind: SheetKind = Field(
        "set-up", description="For the hand at the machine, or for who inspects the pieces."
    )


def choice_of(operation: AnyOperation) -> type[SheetChoice]:
    """What may be chosen of an operation's sheet."""
    return PlanSheetChoice if operation.name == PLAN else SheetChoice


def sheet_routes(
    operations: Mapping[str, AnyOperation],
    calculator: Calculator,
    bodies: Bodies,
    settings: Settings,
) -> Iterator[HTTPRouteHandler]:
    """The route of each operation that has a sheet: POST, and GET where its request is flat."""
    for name in WITH_SHEET:
        if name in operations:
            yield _sheet_route(operations[name], calculator, bodies, settings)


def _sheet_route(
    operation: AnyOperation, calculator: Calculator, bodies: Bodies, settings: Settings
) -> HTTPRouteHandler:
    fields = query_fields(operation.request)
    methods = [HttpMethod.POST]
    if fields is not None:
        methods = [HttpMethod.GET, HttpMethod.HEAD, HttpMethod.POST]

    async def made(
        request: AnyRequest, body: bytes, chosen: SheetChoice, media_type: str
    ) -> tuple[bytes, Headers]:
        content, told = await calculator.aside(
            operation, body, request, _made, operation, body, chosen, media_type
        )
        calculator.count_advice((one.severity, one.code) for one in told)
        return content, (*headed(told), *_BY_ACCEPT, *_OF_A_PAGE)

    async def sheet(request: AnyRequest) -> ASGIApp:
        chosen, rest = _chosen(operation, request.scope["query_string"])
        media_types = (HTML, PDF) if chosen.format is None else (_MEDIA_TYPES[chosen.format],)
        if request.method != "POST" and fields is not None:
            media_type = best_accepted(request, media_types)
            body = read_query(rest, fields)
            tag = tag_of_request(request, media_type)
            if (known := unchanged(request, tag, settings, _BY_ACCEPT)) is not None:
                return known
            content, headers = await made(request, body, chosen, media_type)
            return tagged(request, content, tag, media_type, settings, headers)
        require_json_body(request)
        media_type = best_accepted(request, media_types)
        _refuse_more(rest)
        body = await bodies.read(request)
        try:
            content, headers = await made(request, body, chosen, media_type)
            return answer_of(content, media_type, headers)
        finally:
            bodies.release(body)

    return HTTPRouteHandler(
        SHEET_PATH.format(path=operation.path),
        http_method=methods,
        name=f"{operation.name}.sheet",
        status_code=200,
    )(sheet)


def _chosen(operation: AnyOperation, query: bytes) -> tuple[SheetChoice, bytes]:
    """What a query string chooses, and the rest of it, which is the request's."""
    model = choice_of(operation)
    of_choice, rest = parted(query, model.model_fields)
    body = read_query(of_choice, query_fields(model) or {})
    try:
        return model.model_validate_json(body), rest
    except ValidationError as error:
        raise problem_of_validation(error, body, model.model_fields) from None


def _refuse_more(query: bytes) -> None:
    """Refuse a field of the request in the query string of a POST: it belongs into the body."""
    for name, _ in read_pairs(query):
        raise ProblemError(
            "invalid-request",
            f"{name[:60]} is not a field of the query string; the request goes into the body.",
            errors=[{"pointer": pointer_to(name), "message": "is not a field of the query string"}],
        )


def _made(
    operation: AnyOperation, body: bytes, chosen: SheetChoice, media_type: str
) -> tuple[bytes, Sequence[Advisory]]:
    """Make a sheet: its bytes, and what it advises."""
    if media_type == PDF:
        _require_pdf()
    request = read_request(operation, body)
    choice = Choice(chosen.paper, getattr(chosen, "way", ""), getattr(chosen, "kind", "set-up"))
    try:
        page = page_for(operation, request, choice)
    except UnknownWay as error:
        raise _no_such_way(error) from None
    except (ArithmeticError, ValidationError) as error:
        raise not_finite(operation, request) from error
    content = page.html.encode() if media_type == HTML else pdf_of(page.html, page.request_json)
    return content, page.advisories


def _require_pdf() -> None:
    try:
        require_pdf()
    except NoPdf as error:
        raise ProblemError("not-installed", str(error)) from None


def _no_such_way(error: UnknownWay) -> ProblemError:
    return ProblemError(
        "invalid-request",
        f"The plan has no such way; it has: {', '.join(error.known)}.",
        errors=[{"pointer": "/way", "message": f"should be one of {', '.join(error.known)}"}],
    )

"""The route of curves: worked out in worker threads, since a grid takes more than a turn."""

from collections.abc import Mapping

from litestar import HttpMethod
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from halfangle_service.http.answers import (
    JSON,
    AnyRequest,
    answer_of,
    require_accepts,
    require_json_body,
)
from halfangle_service.http.calculating import AnyOperation, Calculator
from halfangle_service.http.curves.model import CURVES_PATH
from halfangle_service.http.curves.work import curve_json
from halfangle_service.http.guards.keys import allowance_of
from halfangle_service.http.problems import ProblemError, nearest


def curve_route(operations: Mapping[str, AnyOperation], calculator: Calculator) -> HTTPRouteHandler:
    """Make the route of one operation over a range of its numbers."""
    bodies = calculator.bodies
    with_columns = {name: o for name, o in operations.items() if o.columns}

    async def answer(request: AnyRequest) -> ASGIApp:
        name = request.path_params["operation"]
        operation = with_columns.get(name)
        if operation is None:
            raise _unknown(name, operations, with_columns)
        require_json_body(request)
        require_accepts(request, JSON)
        body = await bodies.read(request)
        allowance = allowance_of(request.scope)

        def take_turns(turns: int) -> None:
            # One was taken when the request was let in.
            if allowance is not None:
                allowance.owe(turns - 1)

        try:
            return answer_of(
                await calculator.aside(
                    operation, body, request, curve_json, operation, body, take_turns
                )
            )
        finally:
            bodies.release(body)

    return HTTPRouteHandler(
        CURVES_PATH.replace("{operation}", "{operation:str}"),
        http_method=[HttpMethod.POST],
        name="curves",
        status_code=200,
    )(answer)


def _unknown(
    name: str, operations: Mapping[str, AnyOperation], known: Mapping[str, AnyOperation]
) -> ProblemError:
    what = "has no closed form, so no curves" if name in operations else "is no operation"
    meant = nearest(name, known, most=3)
    said = f"{name[:80]!r} {what}{meant}{'?' if meant else '.'}"
    return ProblemError("not-found", said, more={"known": list(known)})

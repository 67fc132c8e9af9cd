"""A request of an operation answered, here or in a worker thread, and what is seen of that."""

import re
import time
from collections.abc import Callable, Iterable
from typing import Any, Self, TypeVar

import structlog
from pydantic import ValidationError

from halfangle_service.fields import RequestModel
from halfangle_service.http.answers import AnyRequest, advisories_of
from halfangle_service.http.finite import not_finite
from halfangle_service.http.guards.bodies import Bodies
from halfangle_service.http.guards.heavy import HeavyWork
from halfangle_service.http.requests import read_request
from halfangle_service.http.watch.hook import request_id
from halfangle_service.http.watch.metrics import ADVISORIES, SLOW, Metrics
from halfangle_service.http.watch.shapes import shape_of
from halfangle_service.operation import Operation
from halfangle_service.settings import Settings

AnyOperation = Operation[Any, Any]
MadeT = TypeVar("MadeT")

#: A stop or a caution as `operation.py` writes it; within a text its quotes are escaped.
#: What stands in an answer that advises nothing; found faster than the advisories are.
_NOTHING_ADVISED = b',"advisories":[],"basis":{"relations":'
_COUNTED = frozenset({"stop", "caution"})
_ADVICE = re.compile(rb'"code":"([a-z0-9-]+)","severity":"(stop|caution)"')


def answer(operation: AnyOperation, body: bytes) -> bytes:
    """Validate a JSON body and calculate.

    Raises ProblemError for a body that is wrong, Refusal for one that cannot be fulfilled.
    """
    return answer_request(operation, read_request(operation, body))


def answer_request(operation: AnyOperation, request: RequestModel) -> bytes:
    """Calculate; raises Refusal for a request that cannot be fulfilled."""
    try:
        return operation.answer_json(request)
    except (ArithmeticError, ValidationError) as error:
        # A result that is not finite: the request's numbers are each within bounds, yet together
        # they leave the range of floating point.
        raise not_finite(operation, request) from error


class Calculator:
    """Answers requests, counts the stops and cautions of answers, and notes what took long.

    `bodies` reads the bodies of all routes, since they are bounded together.
    `slow_milliseconds`: from when on the shape of a request is logged; 0: never.
    """

    def __init__(
        self, heavy: HeavyWork, bodies: Bodies, metrics: Metrics, slow_milliseconds: float
    ) -> None:
        self.heavy = heavy
        self.bodies = bodies
        self._metrics = metrics
        self._slow_seconds = slow_milliseconds / 1000.0 or float("inf")

    @classmethod
    def within(cls, settings: Settings, metrics: Metrics) -> Self:
        """Make one that keeps to these settings."""
        heavy = HeavyWork(settings.heavy_workers, settings.heavy_queue, metrics)
        bodies = Bodies(settings.body_seconds, settings.bodies_limit_bytes)
        return cls(heavy, bodies, metrics, settings.slow_milliseconds)

    async def answer(
        self, operation: AnyOperation, body: bytes, request: AnyRequest, *, row: bool = False
    ) -> bytes:
        """Answer a body, read already, of a request; `row` where it is one of a batch's rows."""
        started = time.perf_counter()
        try:
            if operation.heavy is False:
                found = answer(operation, body)
            else:
                found = await self._heavy(operation, body, None if row else request)
        finally:
            self._note_where_slow(operation, body, started, request, row)
        if _NOTHING_ADVISED not in found:
            found_there = _ADVICE.findall(advisories_of(found))
            self.count_advice((severity.decode(), code.decode()) for code, severity in found_there)
        return found

    async def aside(
        self,
        operation: AnyOperation,
        body: bytes,
        request: AnyRequest,
        work: Callable[..., MadeT],
        *arguments: object,
    ) -> MadeT:
        """Make another form of an operation's answers in a worker thread: a sheet, a curve."""
        started = time.perf_counter()
        try:
            return await self.heavy.run(request.receive, work, *arguments)
        finally:
            self._note_where_slow(operation, body, started, request)

    def count_advice(self, advice: Iterable[tuple[str, str]]) -> None:
        """Count the stops and cautions of an answer, by severity and code."""
        for severity, code in advice:
            if severity in _COUNTED:
                self._metrics.add(ADVISORIES, severity, code)

    async def _heavy(
        self, operation: AnyOperation, body: bytes, request: AnyRequest | None
    ) -> bytes:
        """Answer in a worker thread, or here where just this request is light."""
        receive = None if request is None else request.receive
        if operation.heavy is True:
            return await self.heavy.run(receive, answer, operation, body)
        read = read_request(operation, body)
        assert callable(operation.heavy)  # noqa: S101  neither True nor False
        if operation.heavy(read):
            return await self.heavy.run(receive, answer_request, operation, read)
        return answer_request(operation, read)

    def _note_where_slow(
        self,
        operation: AnyOperation,
        body: bytes,
        started: float,
        request: AnyRequest,
        row: bool = False,
    ) -> None:
        seconds = time.perf_counter() - started
        if seconds <= self._slow_seconds:
            return
        self._metrics.add(SLOW)
        try:
            shape = shape_of(body)
        except (ValueError, RecursionError):
            shape = {"bytes": len(body)}
        structlog.get_logger("halfangle.slow").warning(
            "slow",
            operation=operation.name,
            milliseconds=round(seconds * 1000.0, 1),
            row=row,
            request_id=request_id(request.scope),
            shape=shape,
        )

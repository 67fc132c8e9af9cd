"""Whose rows they are: the pace that his key allows, and what is counted of them."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from halfangle_service.http.answers import AnyRequest
from halfangle_service.http.calculating import AnyOperation, Calculator
from halfangle_service.http.guards.keys import allowance_of, key_of
from halfangle_service.http.problems import CallerGone
from halfangle_service.http.streams.arriving import left_by
from halfangle_service.http.watch.metrics import (
    ADVISORIES,
    REFUSALS,
    ROWS,
    ROWS_BY_KEY,
    Metrics,
)

AskedT = TypeVar("AskedT")
MadeT = TypeVar("MadeT")
#: Severity and code of an advisory.
Advice = tuple[str, str]


class Sender:
    """Who sends a request that holds rows, of a batch or of a table."""

    def __init__(self, calculator: Calculator, metrics: Metrics, request: AnyRequest) -> None:
        self._calculator = calculator
        self._metrics = metrics
        self._request = request
        self._allowance = allowance_of(request.scope)
        self._key = key_of(request.scope)
        self._has_left = left_by(request)
        #: Whether its rows wait for turns of a key.
        self.is_paced = self._allowance is not None

    async def calculate(self, operation: AnyOperation, body: bytes) -> bytes:
        """Answer one row, when the key allows it; its stops and cautions are counted."""
        await self.may_send()
        return await self._calculator.answer(operation, body, self._request, row=True)

    async def aside(self, work: Callable[[AskedT], MadeT], asked: AskedT) -> MadeT:
        """Do what answers many rows at once in a worker thread, as heavy work."""
        return await self._calculator.heavy.run(None, work, asked)

    async def may_send(self) -> None:
        """Wait until the key allows a row; raises CallerGone where the caller leaves meanwhile."""
        if self._allowance is not None:
            await self._allowance.row(self.refuse_gone)

    def refuse_gone(self) -> None:
        """Raise CallerGone where the caller has left: nobody would read what comes."""
        if self._has_left():
            raise CallerGone

    def note(self, refused: str | None = None) -> None:
        """Count a row that has ended, and the type of its problem where it is refused."""
        self._count("ok" if refused is None else "refused", 1)
        if refused is not None:
            self._metrics.add(REFUSALS, refused)

    def note_answered(self, rows: int, advice: Mapping[Advice, int]) -> None:
        """Count rows that were answered together, and in how many each stop or caution stands."""
        self._count("ok", rows)
        for (severity, code), count in advice.items():
            self._metrics.add(ADVISORIES, severity, code, amount=count)

    def _count(self, status: str, rows: int) -> None:
        self._metrics.add(ROWS, status, amount=rows)
        if self._key is not None:
            self._metrics.add(ROWS_BY_KEY, self._key, amount=rows)

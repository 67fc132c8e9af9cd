"""Connections of the server, held to time and number: it would wait for ever for who says nothing.

The server offers a time for idle connections only, and a number past which it answers in plain
text. Its documented place for more is a protocol class of one's own; this one adds to the server's.
"""

import asyncio
from http import HTTPStatus
from typing import Any, ClassVar

from uvicorn.protocols.http.httptools_impl import HttpToolsProtocol, RequestResponseCycle

from halfangle_service.http.problems import PROBLEM_MEDIA_TYPE, ProblemError, problem_body
from halfangle_service.http.watch.metrics import REFUSALS, Metrics
from halfangle_service.settings import Settings
from halfangle_service.trade.wording import plain

#: Extension of the scope (ASGI, 'Extensions'): tells at once whether the caller has left, which the
#: server else tells only who asks for more of the body.
CALLER_LEFT = "halfangle.caller_left"
#: And one that ends the connection without the end of its answer.
BREAK_OFF = "halfangle.break_off"
#: The body's own time ends with an answer; past it and this the connection ends without one.
_GRACE_SECONDS = 2.0
#: Bytes of an answer that a caller may leave untaken for ever, within what its socket holds.
_SMALL_ANSWER = 4_096
#: The log tells no oftener that connections are refused.
_SAID_SECONDS = 10.0


class BoundedConnection(HttpToolsProtocol):
    """One connection: its requests must arrive, and its answers be taken, in time.

    Two timers at most run: `_arriving` from the start of the connection, or the first byte of a
    request, to its last; `_leaving` from the last answer that was not taken at once.
    """

    limits: ClassVar[Settings]
    metrics: ClassVar[Metrics]
    full_said_next: ClassVar[float] = 0.0

    def __init__(self, *arguments: Any, **named: Any) -> None:
        super().__init__(*arguments, **named)
        self._arriving: asyncio.TimerHandle | None = None
        self._leaving: asyncio.TimerHandle | None = None
        self._in_request = False
        self._in_body = False
        self._unanswered: list[RequestResponseCycle] = []

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Take a connection, or refuse it where there are too many."""
        super().connection_made(transport)
        self.metrics.cells.numbers[self.metrics.connections] += 1.0
        most = self.limits.connection_limit
        if len(self.connections) > most:
            self._say_full(most)
            self._refuse(ProblemError("overloaded", f"{most} connections are open; try again."))
            return
        self._arm_arriving()

    def _say_full(self, most: int) -> None:
        """Log that connections are refused, now and then: there may be thousands."""
        now = self.loop.time()
        if now >= self.full_said_next:
            type(self).full_said_next = now + _SAID_SECONDS
            self.logger.warning("connections refused: %d are open", most)

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget the connection, and what it was to be answered."""
        waiting = sum(not cycle.response_complete for cycle in self._unanswered)
        self.metrics.cells.numbers[self.metrics.in_flight] -= waiting
        self.metrics.cells.numbers[self.metrics.connections] -= 1.0
        self._disarm_arriving()
        self._disarm_leaving()
        self._answer_nobody()
        super().connection_lost(exc)

    def data_received(self, data: bytes) -> None:
        """Read what came; if more must come, it must come in time."""
        self.metrics.cells.numbers[self.metrics.received] += len(data)
        super().data_received(data)
        if self._arriving is None and (self._in_request or self._is_idle()):
            self._arm_arriving()

    def on_message_begin(self) -> None:
        """Note the first byte of a request."""
        self._in_request = True
        super().on_message_begin()

    def on_headers_complete(self) -> None:
        """Give the body its own time."""
        self._in_body = True
        self._disarm_arriving()
        super().on_headers_complete()
        waiting = (cycle for cycle in self._unanswered if not cycle.response_complete)
        self._unanswered = [*waiting, self.cycle]
        self.metrics.cells.numbers[self.metrics.in_flight] += 1.0
        cycle = self.cycle
        told: Any = cycle.scope.setdefault("extensions", {})
        told[CALLER_LEFT] = lambda: cycle.disconnected
        told[BREAK_OFF] = lambda: self._break_off(cycle)

    def _break_off(self, cycle: RequestResponseCycle) -> None:
        """End the connection amid an answer; what was written of it is still sent."""
        cycle.disconnected = True
        self.transport.close()

    def on_body(self, body: bytes) -> None:
        """Give the next part of a body that is answered while it arrives its own time."""
        super().on_body(body)
        if self._arriving is not None and self._is_answered_meanwhile():
            self._disarm_arriving()
            self._arm_arriving()

    def _is_answered_meanwhile(self) -> bool:
        """True in a body to which an answer has begun: such a one may have no end."""
        return self._in_body and self.cycle is not None and self.cycle.response_started

    def on_message_complete(self) -> None:
        """Note the last byte of a request."""
        self._in_request = self._in_body = False
        self._disarm_arriving()
        super().on_message_complete()

    def on_response_complete(self) -> None:
        """An answer has been written; it must be taken in time."""
        super().on_response_complete()
        self.metrics.cells.numbers[self.metrics.in_flight] -= 1.0
        if self.transport.get_write_buffer_size() > _SMALL_ANSWER:
            self._arm_leaving()

    def pause_writing(self) -> None:
        """More is written than is taken; no further answer is written until it is."""
        super().pause_writing()
        self._arm_leaving()

    def send_400_response(self, msg: str) -> None:
        """Refuse what is no HTTP, as every error is refused.

        A request that came whole before it is answered first; the connection ends with that.
        """
        if not self._is_idle() and not self.cycle.more_body:
            self.cycle.keep_alive = False
            self.flow.pause_reading()
        else:
            self._refuse(ProblemError("bad-request", msg))

    def _is_idle(self) -> bool:
        """True between requests; stray line ends make the server forget the time of that."""
        return self.cycle is None or self.cycle.response_complete

    def _arm_arriving(self) -> None:
        limits = self.limits
        seconds = limits.body_seconds + _GRACE_SECONDS if self._in_body else limits.header_seconds
        self._arriving = self.loop.call_later(seconds, self._came_too_late)

    def _disarm_arriving(self) -> None:
        if self._arriving is not None:
            self._arriving.cancel()
            self._arriving = None

    def _came_too_late(self) -> None:
        """End a connection whose request has not arrived; say so where the caller began one."""
        self._arriving = None
        if self.transport.is_closing():
            return
        held_back = self._is_answered_meanwhile() and self.flow.read_paused
        if held_back or (not self._in_body and not self._is_idle()):
            # The caller is held back by us; or an earlier request's answer comes first.
            self._arm_arriving()
        elif self._in_request and not self._in_body:
            seconds = self.limits.header_seconds
            detail = f"The head of the request did not arrive within {plain(seconds)} s."
            self._refuse(ProblemError("too-slow", detail))
        else:
            self._end()

    def _arm_leaving(self) -> None:
        self._disarm_leaving()
        self._leaving = self.loop.call_later(self.limits.answer_seconds, self._left_too_late)

    def _disarm_leaving(self) -> None:
        if self._leaving is not None:
            self._leaving.cancel()
            self._leaving = None

    def _left_too_late(self) -> None:
        """End a connection whose answers are not taken."""
        self._leaving = None
        if self.transport.get_write_buffer_size() > _SMALL_ANSWER:
            self._answer_nobody()
            self.transport.abort()

    def _refuse(self, error: ProblemError) -> None:
        """Answer with a problem document before there is a request, and end the connection."""
        status, body = problem_body(error, "")
        self.metrics.add(REFUSALS, error.name)
        head = (
            f"HTTP/1.1 {status} {HTTPStatus(status).phrase}\r\n"
            f"content-type: {PROBLEM_MEDIA_TYPE}\r\ncontent-length: {len(body)}\r\n"
            "connection: close\r\n\r\n"
        )
        self.transport.write(head.encode() + body)
        self._end()

    def _end(self) -> None:
        """Close the connection."""
        self._answer_nobody()
        self.transport.close()

    def _answer_nobody(self) -> None:
        """Tell all work for this connection that its caller is gone.

        The server tells the last request only; of several sent at once the first would be answered
        into a closed socket, which is a failure in the log.
        """
        for cycle in self._unanswered:
            if not cycle.response_complete:
                cycle.disconnected = True
                cycle.message_event.set()


def connections_within(limits: Settings, metrics: Metrics) -> type[BoundedConnection]:
    """Make the protocol class that holds connections to these settings, and counts them."""
    return type("Connection", (BoundedConnection,), {"limits": limits, "metrics": metrics})

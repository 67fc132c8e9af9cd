"""Bounds what may have no end: the time of an exchange, the length of an answer."""

import contextvars
import time
from collections.abc import Callable
from queue import Empty, SimpleQueue
from threading import Thread

from halfangle_client.conversation import Fault
from halfangle_client.endpoint import Reply
from halfangle_client.errors import AnswerTooLarge


def within(deadline: float, exchange: Callable[[], Reply | Fault]) -> Reply | Fault:
    """Give the outcome of an exchange, or a fault once the deadline has passed.

    It runs in a thread of its own: a socket bounds each wait for the network, and nothing but a
    second thread bounds them all, a look-up of the host's name included. `deadline` is a time of
    `time.monotonic`.
    """
    outcome: SimpleQueue[Reply | Fault | BaseException] = SimpleQueue()

    def work() -> None:
        try:
            outcome.put(exchange())
        except BaseException as error:
            outcome.put(error)

    Thread(target=contextvars.copy_context().run, args=(work,), daemon=True).start()
    try:
        found = outcome.get(timeout=max(0.0, deadline - time.monotonic()))
    except Empty:
        # The thread ends at the next part of the answer, or when its own wait is over.
        return too_late("the answer was not whole")
    if isinstance(found, BaseException):
        raise found
    return found


def require_room(size: int, most_bytes: int) -> None:
    """Refuse to keep more of an answer than was allowed. Raises AnswerTooLarge."""
    if size > most_bytes:
        raise AnswerTooLarge(f"The answer is longer than {most_bytes} bytes (`largest_answer`).")


def too_late(why: str) -> Fault:
    """Say that the time was over."""
    return Fault(TimeoutError(why), late=True, worth_another_try=False)

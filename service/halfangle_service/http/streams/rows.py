"""One request among many of a caller: answered as by its own address, or refused by itself."""

from collections.abc import Awaitable, Callable, Mapping
from typing import Any

import structlog

from halfangle_service.errors import Refusal
from halfangle_service.http.problems import CallerGone, ProblemError, nearest, problem_of_refusal
from halfangle_service.operation import Operation

AnyOperation = Operation[Any, Any]
#: Answers one request of an operation, in a worker thread where the work is heavy.
Calculate = Callable[[AnyOperation, bytes], Awaitable[bytes]]


async def answer_of_row(operation: AnyOperation, request: bytes, calculate: Calculate) -> bytes:
    """Answer a row; whatever keeps it from an answer is a ProblemError of its own."""
    try:
        return await calculate(operation, request)
    except Refusal as refusal:
        raise problem_of_refusal(refusal) from None
    except (ProblemError, CallerGone):
        raise
    except Exception as error:
        structlog.get_logger("halfangle.error").error(
            "unforeseen", path=operation.path, exc_info=error
        )
        raise ProblemError("internal-error", "The service failed; the fault is logged.") from None


def names_no_operation(name: str, operations: Mapping[str, AnyOperation]) -> str:
    """What is said of a name that is no operation's, with the nearest that are."""
    meant = nearest(name, operations, most=3)
    return f"names no operation{meant}{'?' if meant else ''}"

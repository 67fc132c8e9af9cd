"""Typed client of Halfangle, the service of toolroom calculations.

    with Halfangle("http://127.0.0.1:8765") as client:
        answer = client.sine.setting(units="in", center_distance=5, angle=30)
        print(answer.result.height)

`AsyncHalfangle` is the same to be awaited. Errors are in `halfangle_client.errors`, the models of
answers, and of the parts of a request that are objects, in `halfangle_client.models`.
"""

__version__ = "0.2.0"

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from halfangle_client import errors, models
    from halfangle_client.errors import HalfangleError, ProblemError
    from halfangle_client.generated.client import AsyncHalfangle, Halfangle
    from halfangle_client.retry import Retries
    from halfangle_client.rows.outcomes import BatchOutcomes, Interrupted, Outcomes
    from halfangle_client.sheet import Sheet

__all__ = [
    "AsyncHalfangle",
    "BatchOutcomes",
    "Halfangle",
    "HalfangleError",
    "Interrupted",
    "Outcomes",
    "ProblemError",
    "Retries",
    "Sheet",
    "errors",
    "models",
]

#: Where each name is found. Read when it is first asked for: the models alone take longer to load
#: than a whole call of the command, which needs none of them.
_HOMES = {
    "AsyncHalfangle": "generated.client",
    "Halfangle": "generated.client",
    "HalfangleError": "errors",
    "ProblemError": "errors",
    "BatchOutcomes": "rows.outcomes",
    "Interrupted": "rows.outcomes",
    "Outcomes": "rows.outcomes",
    "Retries": "retry",
    "Sheet": "sheet",
}
_MODULES = frozenset({"errors", "models"})


def __getattr__(name: str) -> Any:
    if name in _MODULES:
        found: Any = import_module(f"{__name__}.{name}")
    elif name in _HOMES:
        found = getattr(import_module(f"{__name__}.{_HOMES[name]}"), name)
    else:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    globals()[name] = found
    return found


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})

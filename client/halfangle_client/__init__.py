"""Typed client of Halfangle, the service of toolroom calculations.

    with Halfangle("http://127.0.0.1:8765") as client:
        answer = client.sine.setting(units="in", center_distance=5, angle=30)
        print(answer.result.height)

`AsyncHalfangle` is the same to be awaited. Errors are in `halfangle_client.errors`, the models of
answers, and of the parts of a request that are objects, in `halfangle_client.models`.
"""

__version__ = "0.2.0"

from halfangle_client import errors
from halfangle_client.errors import HalfangleError, ProblemError
from halfangle_client.generated import models
from halfangle_client.generated.client import AsyncHalfangle, Halfangle
from halfangle_client.retry import Retries

__all__ = [
    "AsyncHalfangle",
    "Halfangle",
    "HalfangleError",
    "ProblemError",
    "Retries",
    "errors",
    "models",
]

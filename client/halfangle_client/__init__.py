"""Typed client of Halfangle, the service of toolroom calculations.

`Halfangle` and `AsyncHalfangle` are the clients, `models` the requests and answers, `errors` what
is raised.
"""

from halfangle_client import errors
from halfangle_client.client import AsyncHalfangle, Halfangle
from halfangle_client.errors import HalfangleError, ProblemError
from halfangle_client.generated import models
from halfangle_client.transport import CallOptions

__version__ = "0.1.0"

__all__ = [
    "AsyncHalfangle",
    "CallOptions",
    "Halfangle",
    "HalfangleError",
    "ProblemError",
    "errors",
    "models",
]

"""Every error of the client.

HalfangleError
├── ConnectionFailed          the service could not be reached, or did not answer in time
├── UnexpectedAnswer          it answered what the contract does not promise
└── ProblemError              it answered with a problem document (RFC 9457)
    ├── BadRequest            400
    ├── Unauthorized          401
    ├── NotFound              404
    ├── ContentTooLarge       413
    ├── Unprocessable         422
    │   ├── InvalidRequest    a field is wrong
    │   ├── Impossible        no geometry or physics fulfils it
    │   ├── Disagreement      values given together contradict one another
    │   ├── Unreachable       the means given do not reach it
    │   ├── BeyondBound       more work than one request may ask for
    │   └── NotFinite         the numbers leave the range of arithmetic
    ├── TooManyRequests       429
    └── ServiceFailed         5xx
"""

from collections.abc import Mapping
from typing import Any

from halfangle_client.generated.models import Problem


class HalfangleError(Exception):
    """The root of every error of this client."""


class ConnectionFailed(HalfangleError):
    """The service could not be reached, or did not answer in time."""


class UnexpectedAnswer(HalfangleError):
    """The service answered what the contract does not promise; another release, or no Halfangle."""


class ProblemError(HalfangleError):
    """The service answered with a problem document: `problem`, and `request_id` for its logs."""

    def __init__(self, problem: Problem, request_id: str | None) -> None:
        super().__init__(f"{problem.title}: {problem.detail}")
        self.problem = problem
        self.request_id = request_id

    @property
    def more(self) -> Mapping[str, Any]:
        """Further facts of the document, such as the nearest heights that can be built."""
        return self.problem.model_extra or {}


class BadRequest(ProblemError):
    """400: the request could not be read."""


class Unauthorized(ProblemError):
    """401: an API key is needed."""


class NotFound(ProblemError):
    """404: there is no such thing."""


class ContentTooLarge(ProblemError):
    """413: the request is larger than the service takes."""


class Unprocessable(ProblemError):
    """422: well formed, and still not to be answered."""


class InvalidRequest(Unprocessable):
    """A field of the request is wrong."""


class Impossible(Unprocessable):
    """No geometry or physics fulfils the request."""


class Disagreement(Unprocessable):
    """Values given together contradict one another."""


class Unreachable(Unprocessable):
    """The means given do not reach what is wanted."""


class BeyondBound(Unprocessable):
    """More work than one request may ask for."""


class NotFinite(Unprocessable):
    """The numbers lead out of the range of arithmetic."""


class TooManyRequests(ProblemError):
    """429: asked too often."""


class ServiceFailed(ProblemError):
    """5xx: the service failed, or is overloaded."""


_BY_TYPE: dict[str, type[ProblemError]] = {
    "/problems/invalid-request": InvalidRequest,
    "/problems/impossible": Impossible,
    "/problems/disagreement": Disagreement,
    "/problems/unreachable": Unreachable,
    "/problems/beyond-bound": BeyondBound,
    "/problems/not-finite": NotFinite,
}
_BY_STATUS: dict[int, type[ProblemError]] = {
    400: BadRequest,
    401: Unauthorized,
    404: NotFound,
    413: ContentTooLarge,
    422: Unprocessable,
    429: TooManyRequests,
}


def error_of(problem: Problem, request_id: str | None) -> ProblemError:
    """Give the error for a problem document: by its type, else by its status."""
    of_status = ServiceFailed if problem.status >= 500 else ProblemError
    kind = _BY_TYPE.get(problem.type) or _BY_STATUS.get(problem.status, of_status)
    return kind(problem, request_id)

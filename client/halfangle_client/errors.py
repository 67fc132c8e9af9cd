"""What can go wrong with a call.

HalfangleError
├── ConnectionFailed              no answer came: refused, cut off, unknown host
│   └── TimedOut                  … or none within the time allowed
├── Unsendable                    the request holds what JSON has no form for
├── NotCalled                     a row whose call was not made, or not ended, when work stopped
├── UnexpectedAnswer              an answer came that the contract does not promise
│   └── AnswerTooLarge            … or one longer than was allowed
└── ProblemError                  the service answered with a problem document
    ├── BadRequest                400
    ├── Unauthorized              401
    ├── NotFound                  404
    ├── MethodNotAllowed          405
    ├── NotAcceptable             406
    ├── TooSlow                   408
    ├── ContentTooLarge           413
    ├── UnsupportedMediaType      415
    ├── Unprocessable             422
    │   ├── InvalidRequest        /problems/invalid-request   a field is wrong
    │   ├── Impossible            /problems/impossible        no geometry or physics fulfils it
    │   ├── Disagreement          /problems/disagreement      values contradict one another
    │   ├── Unreachable           /problems/unreachable       not with the means given
    │   ├── BeyondBound           /problems/beyond-bound      more work than one request may ask
    │   ├── Stopped               /problems/stopped           do not run this
    │   ├── NotFinite             /problems/not-finite        out of the range of arithmetic
    │   └── NoSuchValue           /problems/no-such-value     the result holds no such value
    ├── TooManyRequests           429
    └── ServiceFailed             500 and every other 5xx
        ├── NotInstalled          501
        └── Overloaded            503
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from halfangle_client.generated.models import FieldProblem, Problem


class HalfangleError(Exception):
    """The root of every error that the client raises on purpose."""


class ConnectionFailed(HalfangleError):
    """No answer came. `request_id` is the id that the request was sent with."""

    def __init__(self, message: str, *, request_id: str = "") -> None:
        super().__init__(message)
        self.request_id: str = request_id


class TimedOut(ConnectionFailed):
    """No answer came within the time allowed."""


class Unsendable(HalfangleError):
    """The request holds a value that JSON has no form for; nothing was sent."""


class NotCalled(HalfangleError):
    """The row's call was not made, or had not ended, when the work on its rows was stopped."""


class UnexpectedAnswer(HalfangleError):
    """The contract does not promise such an answer: another release, or not the service."""


class AnswerTooLarge(UnexpectedAnswer):
    """The answer is longer than the client was told to take."""


class ProblemError(HalfangleError):
    """The service refused; `problem` is its problem document (RFC 9457)."""

    def __init__(self, problem: "Problem", *, request_id: str = "") -> None:
        super().__init__(f"{problem.title}: {problem.detail}")
        self.problem: Problem = problem
        self.request_id: str = request_id

    @property
    def status(self) -> int:
        """HTTP status."""
        return self.problem.status

    @property
    def detail(self) -> str:
        """What is wrong with this request, in a sentence."""
        return self.problem.detail

    @property
    def fields(self) -> "list[FieldProblem]":
        """Each field that is wrong, by JSON pointer."""
        return self.problem.errors

    @property
    def more(self) -> dict[str, Any]:
        """Further facts that help to mend the request, such as the nearest heights that exist."""
        return dict(self.problem.model_extra or {})


class BadRequest(ProblemError):
    """400: the request could not be read."""


class Unauthorized(ProblemError):
    """401: an API key is needed."""


class NotFound(ProblemError):
    """404: there is nothing at this address."""


class MethodNotAllowed(ProblemError):
    """405: this address does not take this method."""


class NotAcceptable(ProblemError):
    """406: the answer has no form that the request accepts."""


class TooSlow(ProblemError):
    """408: the request did not arrive in the time that the service allows."""


class ContentTooLarge(ProblemError):
    """413: the body is larger than the service takes."""


class UnsupportedMediaType(ProblemError):
    """415: the body is of a type that the service does not take."""


class Unprocessable(ProblemError):
    """422: the request was read, and cannot be fulfilled."""


class InvalidRequest(Unprocessable):
    """A field is wrong."""


class Impossible(Unprocessable):
    """No geometry or physics fulfils the request."""


class Disagreement(Unprocessable):
    """Values given together contradict one another."""


class Unreachable(Unprocessable):
    """Possible, but not with the means given; `more` may hold the nearest that is."""


class BeyondBound(Unprocessable):
    """More work than one request may ask for."""


class NotFinite(Unprocessable):
    """The numbers lead out of the range of arithmetic."""


class Stopped(Unprocessable):
    """The answer says stop, so that none of its values is given alone; `detail` says why."""


class NoSuchValue(Unprocessable):
    """The result holds no single value of the name asked for."""


class TooManyRequests(ProblemError):
    """429: too many requests in too short a time."""


class ServiceFailed(ProblemError):
    """5xx: the service failed, or something before it."""


class NotInstalled(ServiceFailed):
    """501: this installation lacks what makes the form asked for."""


class Overloaded(ServiceFailed):
    """503: the service has too much to do; try again later."""


_BY_STATUS: dict[int, type[ProblemError]] = {
    400: BadRequest,
    401: Unauthorized,
    404: NotFound,
    405: MethodNotAllowed,
    406: NotAcceptable,
    408: TooSlow,
    413: ContentTooLarge,
    415: UnsupportedMediaType,
    422: Unprocessable,
    429: TooManyRequests,
    501: NotInstalled,
    503: Overloaded,
}

_BY_TYPE: dict[str, type[ProblemError]] = {
    "/problems/invalid-request": InvalidRequest,
    "/problems/impossible": Impossible,
    "/problems/disagreement": Disagreement,
    "/problems/unreachable": Unreachable,
    "/problems/beyond-bound": BeyondBound,
    "/problems/stopped": Stopped,
    "/problems/not-finite": NotFinite,
    "/problems/no-such-value": NoSuchValue,
}


def error_of(problem: "Problem", *, request_id: str = "") -> ProblemError:
    """Give the error of the class that fits a problem best; a type not known here by its status."""
    otherwise = ServiceFailed if problem.status >= 500 else ProblemError
    by_status = _BY_STATUS.get(problem.status, otherwise)
    by_type = _BY_TYPE.get(problem.type, by_status)
    fitting = by_type if issubclass(by_type, by_status) else by_status
    return fitting(problem, request_id=request_id)

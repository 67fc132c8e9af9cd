"""One call from its first try to the outcome that stands, without the sending itself."""

import re
import time
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Generic

from halfangle_client import __version__
from halfangle_client.addresses import Addresses
from halfangle_client.endpoint import AnswerT, Endpoint, Message, Reply, message_of
from halfangle_client.errors import (
    ConnectionFailed,
    HalfangleError,
    TimedOut,
    UnexpectedAnswer,
    Unsendable,
)
from halfangle_client.retry import Retries, is_overloaded

_PLAIN_KEY = re.compile(r"[!-~]([ -~]*[!-~])?")
_PLAIN_ID = re.compile(r"[A-Za-z0-9._-]{1,64}")
#: No call is allowed more: a day, which every clock can wait for.
_LONGEST_SECONDS = 86_400.0
READY: Endpoint[bytes] = Endpoint("health.ready", "GET", "/health/ready", bytes)


@dataclass(frozen=True, slots=True)
class Fault:
    """Why no whole reply came, and whether it came to nothing for want of time.

    `part` is what had come of a reply by then, where its head had.
    """

    error: Exception
    late: bool
    worth_another_try: bool
    part: Reply | None = None


@dataclass(frozen=True, slots=True)
class Manners:
    """How a client calls: where, with which key, how patiently, how many calls at once.

    `largest_answer` is the most that an answer may hold, in bytes.
    """

    addresses: Addresses
    api_key: str | None
    timeout_seconds: float
    heavy_timeout_seconds: float
    retries: Retries
    calls_at_once: int
    largest_answer: int

    def __post_init__(self) -> None:
        if self.api_key is not None and not _PLAIN_KEY.fullmatch(self.api_key):
            raise ValueError("api_key: should be printable ASCII characters, no spaces around")
        require_seconds("timeout_seconds", self.timeout_seconds)
        require_seconds("heavy_timeout_seconds", self.heavy_timeout_seconds)
        for name in ("calls_at_once", "largest_answer"):
            if getattr(self, name) < 1:
                raise ValueError(f"{name}: should be at least 1")

    @property
    def base_url(self) -> str:
        """The address of the service, the first of several."""
        return self.addresses.first

    @property
    def headers(self) -> dict[str, str]:
        """Headers of every request."""
        key = {} if self.api_key is None else {"X-API-Key": self.api_key}
        return {"User-Agent": f"halfangle-client/{__version__}", **key}


def require_seconds(name: str, seconds: float) -> None:
    """Refuse a time limit that allows no time, or more than a day; raises ValueError."""
    if not 0.0 < seconds <= _LONGEST_SECONDS:
        raise ValueError(f"{name}: should be above 0, and at most {_LONGEST_SECONDS:g} s")


class Tries:
    """The tries of one exchange: to which address each goes, how long it waits before the next.

    Its time runs from here: every try and every wait between two of them is within `seconds`.
    """

    def __init__(self, manners: Manners, seconds: float) -> None:
        self._manners = manners
        self._made = 0
        self.seconds: float = seconds
        self.began: float = time.monotonic()
        self.address: str = manners.addresses.next()

    @property
    def seconds_left(self) -> float:
        """How much of the time is left."""
        return max(0.0, self.began + self.seconds - time.monotonic())

    def pause_after(self, outcome: Reply | Fault) -> float | None:
        """Seconds until the next try; None where this outcome stands, for want of time too."""
        self._made += 1
        overloaded = isinstance(outcome, Reply) and is_overloaded(outcome.status)
        late = isinstance(outcome, Fault) and outcome.late
        again = overloaded or (isinstance(outcome, Fault) and outcome.worth_another_try)
        addresses = self._manners.addresses
        (addresses.failed if again or late else addresses.answered)(self.address)
        pause = self._pause(outcome, elsewhere=addresses.some_awake) if again else None
        if pause is None or pause >= self.seconds_left:
            return None
        self.address = addresses.next()
        return pause

    def _pause(self, outcome: Reply | Fault, *, elsewhere: bool) -> float | None:
        """Seconds until the next try. Who asks for time is given it, unless another is there."""
        retries = self._manners.retries
        if isinstance(outcome, Fault) or elsewhere:
            return retries.after_fault(self._made)
        return retries.after_status(self._made, outcome.status, outcome.headers)

    def begin_anew(self) -> None:
        """Count from the first try again: the last one was of use."""
        self._made = 0

    def failure(self, outcome: Fault, name: str, request_id: str) -> HalfangleError:
        """The error that a fault comes to, where it stands."""
        if isinstance(outcome.error, UnexpectedAnswer):
            return type(outcome.error)(f"{name}: {outcome.error}")
        why = f"no answer within {self.seconds:g} s" if outcome.late else "no answer"
        said = str(outcome.error) or type(outcome.error).__name__
        kind = TimedOut if outcome.late else ConnectionFailed
        return kind(f"{self.address}: {why} ({said}).", request_id=request_id)


@dataclass
class Conversation(Generic[AnswerT]):
    """One call: what to send, when to send it again, and what its outcome means.

    Its time runs from here, when its turn has come. Raises Unsendable.
    """

    manners: Manners
    endpoint: Endpoint[AnswerT]
    fields: Mapping[str, Any]
    content: str | bytes | None = None
    timeout_seconds: float | None = None
    request_id: str | None = None
    sent_as: str = field(init=False)
    message: Message = field(init=False)

    def __post_init__(self) -> None:
        if self.request_id is not None and not _PLAIN_ID.fullmatch(self.request_id):
            # The service would put one of its own in its place, and the caller look in vain.
            raise ValueError("request_id: should be 1 to 64 letters, digits, '.', '_' or '-'")
        # Before the time begins: the first of many calls loads the models, while all others wait.
        _ = self.endpoint.answer_type
        seconds = seconds_of(self.manners, self.timeout_seconds, heavy=self.endpoint.heavy)
        self._tries = Tries(self.manners, seconds)
        self.sent_as = self.request_id or uuid.uuid4().hex
        try:
            self.message = message_of(
                self.endpoint, self.fields, content=self.content, request_id=self.sent_as
            )
        except (TypeError, ValueError) as error:
            raise Unsendable(f"{self.endpoint.name}: {error}") from error

    @property
    def address(self) -> str:
        """Where the next try goes."""
        return self._tries.address

    @property
    def seconds_left(self) -> float:
        """How much of the call's time is left."""
        return self._tries.seconds_left

    def pause_after(self, outcome: Reply | Fault) -> float | None:
        """Seconds until the next try; None where this outcome stands, for want of time too."""
        return self._tries.pause_after(outcome)

    def answer(self, outcome: Reply | Fault) -> AnswerT:
        """Read the outcome that stands; raises a HalfangleError where it is no answer."""
        if isinstance(outcome, Reply):
            # The command reads its answers itself, without the models, which take time to load.
            from halfangle_client.reading import answer_of  # noqa: PLC0415

            return answer_of(self.endpoint, outcome, self.sent_as)
        raise self.failure(outcome) from outcome.error

    def failure(self, outcome: Fault) -> HalfangleError:
        """The error that a fault comes to, where it stands."""
        return self._tries.failure(outcome, self.endpoint.name, self.sent_as)


def seconds_of(manners: Manners, timeout_seconds: float | None, *, heavy: bool) -> float:
    """How long a call may take: what it says itself, else what is usual. Raises ValueError."""
    if timeout_seconds is None:
        return manners.heavy_timeout_seconds if heavy else manners.timeout_seconds
    require_seconds("timeout_seconds", timeout_seconds)
    return timeout_seconds

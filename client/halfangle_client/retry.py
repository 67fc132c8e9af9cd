"""Whether to try again, and how long to wait before.

Every call is a pure calculation, so that sending it twice does no harm. Tried again are faults of
the connection, 429 and 503, within the time that the call was allowed; a timeout is not.
"""

import math
import random
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from email.utils import parsedate_to_datetime

_AGAIN = frozenset({429, 503})


@dataclass(frozen=True, slots=True)
class Retries:
    """How often to try again, and the shortest and the longest wait in seconds.

    The wait doubles with every try, less a random part, so that many callers who failed together
    do not come back together. A Retry-After longer than `longest` is not waited for, nor is a wait
    that leaves the call no time.
    """

    count: int = 2
    shortest: float = 0.2
    longest: float = 10.0

    def after_fault(self, tries: int) -> float | None:
        """Seconds to wait after so many tries that met no answer; None: give up."""
        if tries > self.count:
            return None
        wait = min(self.longest, self.shortest * 2.0 ** (tries - 1))
        return wait * random.uniform(0.5, 1.0)  # noqa: S311 -- spreads load, keeps no secret

    def after_status(self, tries: int, status: int, headers: Mapping[str, str]) -> float | None:
        """Seconds to wait after so many tries, the last answered so; None: the answer stands."""
        wait = self.after_fault(tries) if is_overloaded(status) else None
        if wait is None:
            return None
        asked = retry_after_seconds(headers.get("retry-after", ""))
        if asked is None:
            return wait
        return asked if asked <= self.longest else None


def is_overloaded(status: int) -> bool:
    """Whether an answer of this status means: not now, or not here."""
    return status in _AGAIN


def retry_after_seconds(value: str) -> float | None:
    """Seconds that a Retry-After header asks for (RFC 9110, 10.2.3); None where it says nothing.

    >>> retry_after_seconds("2"), retry_after_seconds("soon")
    (2.0, None)

    A date past all calendars is never reached: infinity.
    """
    if value.isdecimal() and value.isascii():
        return float(value)
    try:
        moment = parsedate_to_datetime(value)
    except ValueError:
        return None
    except OverflowError:
        return math.inf
    if moment.tzinfo is None:
        moment = moment.replace(tzinfo=UTC)
    return max(0.0, (moment - datetime.now(UTC)).total_seconds())

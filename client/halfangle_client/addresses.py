"""Where a service is: one address or several, each as good as another."""

import time
from collections.abc import Iterable
from threading import Lock

#: An address that gave no answer, or had too much to do, is not asked for so many seconds; twice as
#: long after each further fault, up to the longest.
_REST_SECONDS = 0.5
_LONGEST_REST_SECONDS = 10.0


class Addresses:
    """The addresses of one service, asked in turn; one that failed rests for a while.

    >>> at = Addresses(["http://a/", "http://b"])
    >>> at.first, at.next(), at.next(), at.next()
    ('http://a', 'http://a', 'http://b', 'http://a')
    >>> at.failed("http://b")
    >>> at.next(), at.next()
    ('http://a', 'http://a')
    """

    def __init__(self, base_urls: str | Iterable[str]) -> None:
        given = (base_urls,) if isinstance(base_urls, str) else tuple(base_urls)
        if not given:
            raise ValueError("base_url: should be an address, or several")
        self._rested_at = dict.fromkeys((url.rstrip("/") for url in given), 0.0)
        self._faults = dict.fromkeys(self._rested_at, 0)
        self._in_turn = list(self._rested_at)
        self._lock = Lock()

    @property
    def first(self) -> str:
        """The address named first."""
        return next(iter(self._rested_at))

    @property
    def some_awake(self) -> bool:
        """Whether an address does not rest."""
        return min(self._rested_at.values()) <= time.monotonic()

    def next(self) -> str:
        """The address whose turn it is, of those that do not rest; else the first to have done."""
        with self._lock:
            now = time.monotonic()
            awake = [url for url in self._in_turn if self._rested_at[url] <= now]
            chosen = awake[0] if awake else min(self._in_turn, key=self._rested_at.__getitem__)
            self._in_turn.remove(chosen)
            self._in_turn.append(chosen)
            return chosen

    def answered(self, url: str) -> None:
        """Note that an address answered: it need not rest."""
        with self._lock:
            self._faults[url], self._rested_at[url] = 0, 0.0

    def failed(self, url: str) -> None:
        """Note that an address gave no answer, or had too much to do."""
        with self._lock:
            rest = min(_LONGEST_REST_SECONDS, _REST_SECONDS * 2.0 ** self._faults[url])
            self._faults[url] = min(self._faults[url] + 1, 10)
            self._rested_at[url] = time.monotonic() + rest

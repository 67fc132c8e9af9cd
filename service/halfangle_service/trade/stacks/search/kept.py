"""What was made for one request and may serve the next: kept while it is not too much in all."""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar
from weakref import WeakValueDictionary

K = TypeVar("K", bound=Hashable)
V = TypeVar("V")


class Kept(Generic[K, V]):
    """Values made by `make`, the latest used last; dropped from the oldest on.

    `weigh` gives the weight of a value, a pure number such as a count of entries, and `most` is how
    much they may weigh together; what weighs more by itself is made anew each time. What somebody
    still has is not made a second time beside it, so values must bear weak references.
    """

    def __init__(self, make: Callable[[K], V], weigh: Callable[[V], int], most: int) -> None:
        self._make = make
        self._weigh = weigh
        self._most = most
        self._values: OrderedDict[K, V] = OrderedDict()
        self._in_use: WeakValueDictionary[K, V] = WeakValueDictionary()
        self._lock = Lock()

    def get(self, key: K) -> V:
        """Give the value for a key, made if it is not kept."""
        with self._lock:
            if key in self._values:
                self._values.move_to_end(key)
                return self._values[key]
            value = self._in_use.get(key) or self._make(key)
            self._in_use[key] = value
            if self._weigh(value) <= self._most:
                self._values[key] = value
            weight = sum(map(self._weigh, self._values.values()))
            while weight > self._most:
                weight -= self._weigh(self._values.popitem(last=False)[1])
            return value

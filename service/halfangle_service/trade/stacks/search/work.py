"""Work of a search, counted and not timed, so that the same request ends at the same place."""

from dataclasses import dataclass


@dataclass
class Left:
    """Part of the work of one request that is left for several searches."""

    share: float

    @property
    def for_one(self) -> float:
        """What the next search may take: no more than a request for it alone."""
        return min(self.share, 1.0)


@dataclass
class Work:
    """Work that is left to a search; `exhausted` once it asked for more."""

    left: int
    exhausted: bool = False

    def take(self, amount: int) -> bool:
        """Take so much work; False, and nothing is taken, where so much is not left."""
        if amount > self.left:
            self.exhausted = True
            return False
        self.left -= amount
        return True

"""Work of a search, counted and not timed, so that the same request ends at the same place."""

from dataclasses import dataclass


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

"""Outcomes kept as they come, with the progress said after each row."""

from collections.abc import Callable, Iterable
from typing import Generic

from halfangle_client.endpoint import AnswerT
from halfangle_client.rows.chunk import Ended
from halfangle_client.rows.outcomes import Outcomes

Progress = Callable[[int, int], object]


class Keeping(Generic[AnswerT]):
    """Keeps outcomes in the place of their rows."""

    def __init__(self, outcomes: Outcomes[AnswerT], progress: Progress | None) -> None:
        self._progress = progress
        self._count = 0
        self.outcomes: Outcomes[AnswerT] = outcomes

    def keep(self, ended: Iterable[Ended[AnswerT]]) -> None:
        """Keep what came of rows, then say how many are done, row by row."""
        kept = self.keep_unsaid(ended)
        for _ in range(kept):
            self._count += 1
            if self._progress is not None:
                self._progress(self._count, len(self.outcomes))

    def keep_unsaid(self, ended: Iterable[Ended[AnswerT]]) -> int:
        """Keep what came of rows; give how many they are."""
        kept = 0
        for number, outcome in ended:
            self.outcomes.put(number, outcome)
            kept += 1
        return kept

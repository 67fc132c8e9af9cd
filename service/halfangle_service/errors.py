"""The errors of the trade. They know nothing of HTTP; `http.problems` maps them, once.

HalfangleError
└── Refusal              a request that is well formed and still cannot be answered
    ├── Impossible       no geometry or physics fulfils it
    ├── Disagreement     values given together contradict one another
    ├── Unreachable      possible, but not with the means given (blocks, range, rating)
    └── BeyondBound      would take more work than one request may ask for

This module imports nothing of the project, so that the maths may raise these errors too.
"""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from typing import ClassVar, Self


class HalfangleError(Exception):
    """The root of every error that this project raises on purpose."""


class Refusal(HalfangleError):
    """A refusal with its reason, the fields it concerns, and facts that help to mend the request.

    `fields` maps a field, written as a path in the request (`"height"`, `"sizes/3"`), to a message
    that says what was wanted and what came. `more` holds further facts as plain JSON values, such
    as the nearest heights that can be built; they become members of the problem document.
    """

    kind: ClassVar[str] = "refused"

    def __init__(
        self,
        detail: str,
        *,
        fields: Mapping[str, str] | None = None,
        more: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(detail)
        self.detail = detail
        self.fields: dict[str, str] = dict(fields or {})
        self.more: dict[str, object] = dict(more or {})

    def reworded(self, write: Callable[[str], str]) -> Self:
        """Give the same refusal with each of its sentences written anew."""
        fields = {field: write(message) for field, message in self.fields.items()}
        return type(self)(write(self.detail), fields=fields, more=self.more)

    def renamed(self, place: Callable[[str], str]) -> Self:
        """Give the same refusal with each of its fields at another place of the request."""
        fields = {place(field): message for field, message in self.fields.items()}
        return type(self)(self.detail, fields=fields, more=self.more)


@contextmanager
def refused_at(path: str, **renamed: str) -> Iterator[None]:
    """Name the fields of a refusal by their places in a request: within `path`, or renamed too."""
    try:
        yield
    except Refusal as refusal:
        raise refusal.renamed(lambda field: f"{path}{renamed.get(field, field)}") from None


class Impossible(Refusal):
    """No geometry or physics fulfils the request."""

    kind = "impossible"


class Disagreement(Refusal):
    """Values given together contradict one another."""

    kind = "disagreement"


class Unreachable(Refusal):
    """Possible, but not with the means given: these blocks, this plate's range, this rating."""

    kind = "unreachable"


class BeyondBound(Refusal):
    """Would take more work than one request may ask for; the bound is named."""

    kind = "beyond-bound"

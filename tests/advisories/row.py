"""One row of the table of advisories."""

import copy
from dataclasses import dataclass
from typing import Any

from halfangle_service.fields.advisories import Severity
from halfangle_service.registry import load_registry
from support import changed

Request = dict[str, Any]


@dataclass(frozen=True, slots=True, eq=False)
class Row:
    """A request that raises an advisory, and one just short of it.

    `raises` are changes of the operation's example, `short_of` the one change of that request after
    which the advisory is gone: a value on the other side of the limit, as near to it as 1 % or one
    step, or the circumstance that is no more. A key as `fixture__stick_out` reaches into the
    request; None is null. Without `short_of` every answer of the operation carries the advisory.
    `says` is what its message must name, of a stop the value and the limit.
    """

    code: str
    severity: Severity
    operation: str
    raises: Request
    short_of: Request | None
    says: tuple[str, ...] = ()

    @property
    def name(self) -> tuple[str, str, str]:
        """Operation, code and severity."""
        return self.operation, self.code, self.severity

    @property
    def raising(self) -> Request:
        """The request that raises it."""
        example = copy.deepcopy(dict(load_registry().operations[self.operation].example))
        return changed(example, **self.raises)

    @property
    def falling_short(self) -> Request:
        """The same request, just short of it."""
        return changed(self.raising, **(self.short_of or {}))

    def __str__(self) -> str:
        """Name of the row among the tests."""
        return f"{self.operation}:{self.code}:{','.join(self.short_of or ('always',))}"


def note(code: str, operation: str, raises: Request, short_of: Request | None, *says: str) -> Row:
    """A row of a note."""
    return Row(code, "note", operation, raises, short_of, says)


def caution(
    code: str, operation: str, raises: Request, short_of: Request | None, *says: str
) -> Row:
    """A row of a caution."""
    return Row(code, "caution", operation, raises, short_of, says)


def stop(code: str, operation: str, raises: Request, short_of: Request | None, *says: str) -> Row:
    """A row of a stop."""
    return Row(code, "stop", operation, raises, short_of, says)

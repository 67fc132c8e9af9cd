"""One row of a batch: how it is read, and what is said of it where it cannot be."""

import json
import re
from collections import deque
from dataclasses import dataclass
from typing import Any, TypeGuard

from pydantic_core import from_json

from halfangle_service.http.batches.lines import Line, TooLong
from halfangle_service.http.problems import ProblemError, nearest, pointer_to
from halfangle_service.http.repeated import Place, Repeating, noting_repetition, repetition

#: A reference is the caller's: a short text or a whole number; it comes back as it was sent.
Ref = str | int
LONGEST_REF = 200
LARGEST_REF = 2**53 - 1

#: A row as most programs write it: what stands last is the request, if it is one JSON value.
_AS_MOST_WRITE_IT = re.compile(
    rb'\s*\{\s*"ref"\s*:\s*("(?:[^"\\\x00-\x1f]){1,200}"|-?(?:0|[1-9][0-9]{0,14}))\s*,'
    rb'\s*"operation"\s*:\s*"([a-z0-9.-]{1,80})"\s*,'
    rb'\s*"request"\s*:\s*(\{.*\})\s*\}\s*',
    re.DOTALL,
)
_TOO_LONG = "The row is longer than a request's body may be; send it by itself."
_MEMBERS = ("ref", "operation", "request")


@dataclass(frozen=True, slots=True)
class Row:
    """What is asked of one row: an operation by name, and its request as JSON.

    `repeated`: where a name stands twice in the request, known where that is seen there no longer.
    """

    ref: Ref
    operation: str
    request: bytes
    repeated: Place | None = None


class WrongRow(Exception):
    """A row that names no work to do: its reference where that could be read, and the problem."""

    def __init__(self, ref: Ref | None, problem: ProblemError) -> None:
        super().__init__(problem.detail)
        self.ref = ref
        self.problem = problem


def row_at_a_glance(line: bytes) -> Row | None:
    """Read a row that is written as most are; None where the parser must look at it.

    >>> row_at_a_glance(b'{"ref":"a","operation":"sine.angle","request":{"units":"in"}}')
    Row(ref='a', operation='sine.angle', request=b'{"units":"in"}', repeated=None)
    """
    found = _AS_MOST_WRITE_IT.fullmatch(line)
    if found is None:
        return None
    ref, operation, request = found.groups()
    try:
        from_json(request)
        return Row(from_json(ref), operation.decode(), request)
    except ValueError:
        return None


def row_of_line(line: Line) -> Row:
    """Read a row, whatever the order of its members; raises WrongRow."""
    if isinstance(line, TooLong):
        raise WrongRow(None, ProblemError("content-too-large", _TOO_LONG))
    row = row_at_a_glance(line)
    if row is not None:
        return row
    try:
        sent = json.loads(line, object_pairs_hook=noting_repetition)
    except (ValueError, RecursionError):
        raise WrongRow(None, ProblemError("not-json", _no_json(line))) from None
    return row_of_value(sent)


def _no_json(sent: bytes) -> str:
    """Say what keeps it from being JSON, where that can be said in a few words."""
    try:
        sent.decode()
    except UnicodeDecodeError as error:
        return f"Not UTF-8: byte {error.start + 1} cannot be read."
    try:
        json.loads(sent)
    except (ValueError, RecursionError) as error:
        return f"Not one JSON value: {str(error)[:200]}."
    return "Not JSON."


def rows_of_body(body: bytes) -> list[Any]:
    """Rows of a body that holds them all; raises ProblemError where it does not."""
    try:
        sent = json.loads(body, object_pairs_hook=noting_repetition)
    except (ValueError, RecursionError):
        raise ProblemError("not-json", _no_json(body)) from None
    rows = sent.get("rows") if isinstance(sent, dict) else None
    if not isinstance(rows, list) or len(sent) > 1:
        message = "should be an object with the one member `rows`, a list"
        errors = [{"pointer": "/rows" if isinstance(sent, dict) else "", "message": message}]
        raise ProblemError("invalid-request", f"The body {message}.", errors=errors)
    return rows


def row_of_value(sent: Any) -> Row:
    """Check what was read as a row; raises WrongRow."""
    if not isinstance(sent, dict):
        raise _wrong(None, "", "should be an object of `ref`, `operation` and `request`")
    ref = sent.get("ref")
    if not _is_ref(ref):
        words = f"a text of 1 to {LONGEST_REF} characters, or a whole number"
        raise _wrong(None, "/ref", f"{'should be' if 'ref' in sent else 'is required:'} {words}")
    if isinstance(sent, Repeating):
        raise _wrong(ref, pointer_to(sent.name), "should be given once")
    unknown = [name for name in sent if name not in _MEMBERS]
    if unknown:
        meant = nearest(unknown[0], _MEMBERS, most=1)
        said = f"is not part of a row{meant}{'?' if meant else ''}"
        raise _wrong(ref, pointer_to(unknown[0]), said)
    operation, request = sent.get("operation"), sent.get("request")
    if not isinstance(operation, str):
        raise _wrong(ref, "/operation", "should be the name of an operation: `sine.setting`")
    if not isinstance(request, dict):
        raise _wrong(ref, "/request", "should be the operation's request, an object")
    return Row(ref, operation, json.dumps(request).encode(), repetition(request, ()))


def _is_ref(ref: object) -> TypeGuard[Ref]:
    if isinstance(ref, str):
        return 1 <= len(ref) <= LONGEST_REF
    return isinstance(ref, int) and not isinstance(ref, bool) and abs(ref) <= LARGEST_REF


def _wrong(ref: Ref | None, pointer: str, message: str) -> WrongRow:
    errors = [{"pointer": pointer, "message": message}]
    detail = f"{pointer or 'The row'}: {message}."
    return WrongRow(ref, ProblemError("invalid-request", detail, errors=errors))


class Refs:
    """References seen: of a body that may have no end the last ones, so that memory is bounded."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._seen: set[int] = set()
        self._in_order: deque[int] = deque()

    def __contains__(self, ref: Ref) -> bool:
        """True where a reference was noted, among as many as are kept."""
        return hash((type(ref), ref)) in self._seen

    def note(self, ref: Ref) -> None:
        """Note a reference.

        >>> refs = Refs(most=2)
        >>> for ref in ("a", 1, "1"):
        ...     refs.note(ref)
        >>> "a" in refs, 1 in refs, "1" in refs
        (False, True, True)
        """
        key = hash((type(ref), ref))
        if key not in self._seen:
            self._seen.add(key)
            self._in_order.append(key)
            if len(self._in_order) > self._most:
                self._seen.discard(self._in_order.popleft())

"""What each row asks: a call and its fields, and the line of a batch that asks the same."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any, Generic

from halfangle_client.endpoint import AnswerT, Endpoint, line_of
from halfangle_client.errors import HalfangleError, Unsendable
from halfangle_client.rows.outcomes import Ref

Row = Mapping[str, Any]
Endpoints = Mapping[str, Endpoint[Any]]
_MEMBERS = ("ref", "operation", "request")
_NO_CALL: Endpoint[Any] = Endpoint("", "GET", "", bytes)


@dataclass(frozen=True, slots=True)
class Asked(Generic[AnswerT]):
    """One row: its number from 0, its call, and what keeps it from being sent, if anything does.

    `line` is empty where no row of a batch can ask the same.
    """

    number: int
    endpoint: Endpoint[AnswerT]
    fields: Row
    line: bytes = b""
    error: HalfangleError | None = None


def endpoint_of(call: object, endpoints: Endpoints) -> Endpoint[Any]:
    """Give the endpoint of a generated call, or of a dotted name. Raises KeyError."""
    if isinstance(call, str):
        name = call
    else:
        topic = str(getattr(call, "__module__", "")).rpartition(".")[2]
        name = f"{topic}.{getattr(call, '__name__', call)}"
    if name not in endpoints:
        raise KeyError(f"{name}: no call of the service that this release knows")
    return endpoints[name]


def asked_alike(endpoint: Endpoint[AnswerT], rows: Iterable[Any]) -> Iterator[Asked[AnswerT]]:
    """What rows of one call ask."""
    for number, row in enumerate(rows):
        yield _asked(number, endpoint, row)


def asked_of_batch(rows: Iterable[Any], endpoints: Endpoints) -> Iterator[Asked[Any]]:
    """What rows of a batch ask, each `{ref, operation, request}`; every `ref` once."""
    seen: set[Ref] = set()
    for number, row in enumerate(rows):
        wrong = _wrong(row, seen)
        if wrong:
            yield Asked(number, _NO_CALL, {}, error=Unsendable(f"A row of a batch {wrong}"))
            continue
        seen.add(row["ref"])
        # The service's names of operations hold hyphens, the client's calls underscores.
        endpoint = endpoints.get(row["operation"].replace("-", "_"))
        if endpoint is None or endpoint.operation is None:
            error = Unsendable(f"operation: {_unknown(row['operation'], endpoints)}")
            yield Asked(number, _NO_CALL, {}, error=error)
        else:
            yield _asked(number, endpoint, row["request"])


def ref_of(row: object) -> Ref | None:
    """The `ref` of a row of a batch; None where it has none that could be one."""
    ref = row.get("ref") if isinstance(row, Mapping) else None
    return ref if isinstance(ref, str | int) and not isinstance(ref, bool) else None


def _asked(number: int, endpoint: Endpoint[AnswerT], row: object) -> Asked[AnswerT]:
    if not isinstance(row, Mapping):
        error = f"{endpoint.name}: a row should be a mapping of fields, not {row!r:.60}"
        return Asked(number, endpoint, {}, error=Unsendable(error))
    if endpoint.operation is None:
        return Asked(number, endpoint, row)
    try:
        return Asked(number, endpoint, row, line_of(endpoint, number, row))
    except (TypeError, ValueError) as error:
        return Asked(number, endpoint, row, error=Unsendable(f"{endpoint.name}: {error}"))


def _wrong(row: object, seen: set[Ref]) -> str:
    """Say what is wrong with a row of a batch; nothing where nothing is."""
    if not isinstance(row, Mapping):
        return f"should be a mapping of ref, operation and request, not {row!r:.60}"
    unknown = [name for name in row if name not in _MEMBERS]
    if unknown:
        return f"has no member {unknown[0]!r:.60}: it has ref, operation and request"
    ref = ref_of(row)
    if ref is None:
        return f"should have a ref, a text or a whole number, not {row.get('ref')!r:.60}"
    if ref in seen:
        return f"has the ref {ref!r:.60} of an earlier row; which is meant cannot be told"
    if not isinstance(row.get("operation"), str):
        return "should have an operation, a name such as 'sine.setting'"
    return "" if isinstance(row.get("request"), Mapping) else "should have a request, a mapping"


def _unknown(name: str, endpoints: Endpoints) -> str:
    known = [found.operation for found in endpoints.values() if found.operation]
    near = get_close_matches(name, known, n=3)
    meant = f"; did you mean {' or '.join(near)}?" if near else ""
    return f"{name!r:.80} names no operation that this release knows{meant}"

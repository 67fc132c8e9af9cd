"""Tables of one operation as tests send and read them."""

import csv
import io
import json
from collections.abc import Iterable, Iterator, Mapping
from typing import Any
from urllib.parse import urlencode

from http_support import Service

CSV = "text/csv"
#: What every answered table has beside its results.
SAID = ("advisories", "problem")


def as_csv(rows: Iterable[Iterable[Any]], *, delimiter: str = ",", line_end: str = "\r\n") -> bytes:
    """Rows as Python's own module writes them."""
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=delimiter, lineterminator=line_end).writerows(rows)
    return out.getvalue().encode()


def read_csv(content: bytes, *, delimiter: str = ",") -> list[list[str]]:
    """Rows as Python's own module reads them, strictly."""
    text = io.StringIO(content.decode("utf-8-sig"), newline="")
    return [*csv.reader(text, delimiter=delimiter, strict=True)]


def address(operation: str, **query: Any) -> str:
    """Address of an operation's tables with a query string."""
    return f"/v1/tables/{operation}?{urlencode(query, doseq=True)}"


def send(service: Service, operation: str, content: bytes, **query: Any) -> Any:
    """Send a table; give the response."""
    return service.post(address(operation, **query), content=content, headers={"content-type": CSV})


def answered(service: Service, operation: str, content: bytes, **query: Any) -> bytes:
    """Send a table that is taken; give the answered one."""
    answer = send(service, operation, content, **query)
    assert answer.status_code == 200, answer.text
    assert answer.headers["content-type"] == "text/csv; charset=utf-8; header=present"
    found: bytes = answer.content
    return found


def records(content: bytes, *, delimiter: str = ",") -> list[dict[str, str]]:
    """Rows by the names of their columns, units left out."""
    head, *rows = read_csv(content, delimiter=delimiter)
    names = [name.partition(" [")[0] for name in head]
    assert len(set(names)) == len(names)
    return [dict(zip(names, row, strict=True)) for row in rows]


def flat_request(value: Any, prefix: str = "") -> Iterator[tuple[str, str]]:
    """Cells of a request, each with the name of its column."""
    if isinstance(value, Mapping):
        for name, part in value.items():
            yield from flat_request(part, f"{prefix}{name}.")
    elif isinstance(value, list | tuple) and value and isinstance(value[0], Mapping):
        for place, part in enumerate(value):
            yield from flat_request(part, f"{prefix}{place}.")
    elif isinstance(value, list | tuple):
        yield prefix[:-1], ";".join(map(_cell, value))
    else:
        yield prefix[:-1], _cell(value)


def _cell(value: Any) -> str:
    return value if isinstance(value, str) else json.dumps(value)


def flat_result(value: Any, prefix: str = "") -> Iterator[tuple[str, Any]]:
    """Values of a result that have a column, by name: written apart from how the service does."""
    for name, part in value.items():
        path = f"{prefix}{name}"
        if isinstance(part, Mapping):
            yield from flat_result(part, f"{path}.")
        elif isinstance(part, list) and part and isinstance(part[0], Mapping):
            continue
        elif name not in {"svg", "dxf", "csv"}:
            yield path, part

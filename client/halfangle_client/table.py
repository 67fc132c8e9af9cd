"""A table of requests as CSV: sent in pieces of whole rows, each piece a call of its own.

The service answers a table while it arrives. An HTTP client sends all of a body before it reads,
though, so that a long one would wait for itself; pieces do not, are tried again each by itself, and
need no more memory however long the table is.
"""

import re
from collections.abc import AsyncIterator, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, BinaryIO, TypeAlias

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender, plain

#: A table: its bytes, the path of its file, an open file, or its bytes in pieces.
TableSource: TypeAlias = bytes | str | Path | BinaryIO | Iterable[bytes]

_CSV = "text/csv"
#: So many rows of a piece are answered well within the time of a call.
_LIGHT_ROWS, _HEAVY_ROWS = 5_000, 50
_PIECE_BYTES = 500_000
#: A quote that is open for longer than this was never closed; the service says so of its row.
_LONGEST_RECORD = 1_000_000
_DELIMITERS = {"tab": b"\t"}


def table_endpoint(operation: Endpoint[Any], query: Iterable[str]) -> Endpoint[bytes]:
    """The route of an operation's tables, with these parameters."""
    return replace(
        operation.untyped(),
        path=f"/v1/tables/{operation.path.removeprefix('/v1/').replace('/', '.')}",
        accept=_CSV,
        sends=_CSV,
        query=tuple(query),
        nulls=(),
    )


def table_query(
    fields: Mapping[str, Any],
    *,
    columns: Sequence[str],
    keep: Sequence[str],
    delimiter: str,
    decimal: str,
    list_separator: str,
) -> dict[str, str]:
    """The query string: how the table is written, and what all of its rows have alike.

    Raises ValueError where a field is an object: its parts are stated by their paths.
    """
    said = {
        "columns": ",".join(columns),
        "keep": ",".join(keep),
        "delimiter": delimiter,
        "decimal": decimal,
        "list_separator": list_separator,
    }
    alike = {name: _stated(name, plain(value), list_separator) for name, value in fields.items()}
    return {name: text for name, text in {**alike, **said}.items() if text}


def _stated(name: str, value: Any, separator: str) -> str:
    if isinstance(value, list) and not any(isinstance(entry, dict | list) for entry in value):
        return separator.join(_stated(name, entry, separator) for entry in value)
    if isinstance(value, dict | list):
        raise ValueError(f"{name}: state its parts by their paths, as `{name}.…`")
    if isinstance(value, bool):
        return str(value).lower()
    return "" if value is None else str(value)


def table_rows(
    sender: Sender,
    endpoint: Endpoint[bytes],
    source: TableSource,
    query: Mapping[str, str],
    timeout_seconds: float | None,
) -> Iterator[bytes]:
    """Send a table and give the answered one, a piece at a time; raises HalfangleError."""
    header = _record_of(query)
    for number, piece in enumerate(_pieces(source, query, endpoint)):
        answer = sender.send(endpoint, query, content=piece, timeout_seconds=timeout_seconds)
        yield header.sub(b"", answer, count=1) if number else answer


async def table_rows_async(
    sender: AsyncSender,
    endpoint: Endpoint[bytes],
    source: TableSource,
    query: Mapping[str, str],
    timeout_seconds: float | None,
) -> AsyncIterator[bytes]:
    """The same, to be awaited."""
    header = _record_of(query)
    for number, piece in enumerate(_pieces(source, query, endpoint)):
        answer = await sender.send(endpoint, query, content=piece, timeout_seconds=timeout_seconds)
        yield header.sub(b"", answer, count=1) if number else answer


def _pieces(
    source: TableSource, query: Mapping[str, str], endpoint: Endpoint[Any]
) -> Iterator[bytes]:
    """The table in pieces of whole rows, each under the table's header."""
    records = _records(_lines(source), _record_of(query))
    header = next(records, b"")
    most = _HEAVY_ROWS if endpoint.heavy else _LIGHT_ROWS
    piece, rows = bytearray(header), 0
    sent = False
    for record in records:
        if rows and (rows == most or len(piece) + len(record) > _PIECE_BYTES):
            yield bytes(piece)
            sent = True
            piece, rows = bytearray(header), 0
        piece += record
        rows += 1
    if rows or not sent:
        yield bytes(piece)


def _lines(source: TableSource) -> Iterator[bytes]:
    """The lines of a table, each with its end."""
    if isinstance(source, bytes):
        yield from _cut([source])
    elif isinstance(source, str | Path):
        with Path(source).open("rb") as file:
            yield from file
    else:
        yield from _cut(source)


def _cut(pieces: Iterable[bytes]) -> Iterator[bytes]:
    begun = b""
    for piece in pieces:
        *whole, begun = (begun + piece).split(b"\n")
        yield from (line + b"\n" for line in whole)
    if begun:
        yield begun


def _records(lines: Iterable[bytes], whole: "re.Pattern[bytes]") -> Iterator[bytes]:
    """Rows: lines, put together where a quoted cell goes over the end of one."""
    begun = b""
    for line in lines:
        if not begun and b'"' not in line:
            yield line
            continue
        begun += line
        if (b'"' in line and whole.fullmatch(begun)) or len(begun) > _LONGEST_RECORD:
            yield begun
            begun = b""
    if begun:
        yield begun


def _record_of(query: Mapping[str, str]) -> "re.Pattern[bytes]":
    """What a whole row looks like (RFC 4180); a quote opens a cell only where the cell begins."""
    named = query["delimiter"]
    d = re.escape(_DELIMITERS.get(named, named.encode()))
    cell = rb'(?:"(?:[^"]|"")*"[^%b\n]*|[^%b"\n][^%b\n]*)?' % (d, d, d)
    return re.compile(rb"(?:\xef\xbb\xbf)?%b(?:%b%b)*\n?" % (cell, d, cell))

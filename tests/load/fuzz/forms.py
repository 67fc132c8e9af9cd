"""Tables as CSV and cells of a sheet, read as the routes read them."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import suppress
from functools import cache
from typing import Any

from csv_support import read_csv
from halfangle_service.errors import Refusal
from halfangle_service.http.answers import AnyRequest
from halfangle_service.http.calculating import Calculator
from halfangle_service.http.cells import cell_at, cell_of
from halfangle_service.http.picks import pick_values
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.query import body_of, query_fields, read_pairs
from halfangle_service.http.requests import read_request
from halfangle_service.http.streams.sender import Sender
from halfangle_service.http.tables.asked import request_fields
from halfangle_service.http.tables.declared import read_declared
from halfangle_service.http.tables.flat import columns_of
from halfangle_service.http.tables.run import Answering
from halfangle_service.http.watch.metrics import Metrics
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

#: How a table may be declared; the first byte of an input says which is meant.
DECLARED = (
    b"units=in&center_distance=5&keep=*",
    b"units=in&center_distance=5&keep=*&delimiter=%3B&decimal=,",
    b"keep=*&delimiter=tab&columns=height",
    b"",
)
LONGEST_ROW = 400


class Chunks:
    """A body that comes in these pieces, of a caller who stays."""

    def __init__(self, *chunks: bytes) -> None:
        self._chunks = chunks

    async def chunks(self) -> AsyncIterator[bytes | None]:
        """Each piece, then None."""
        for chunk in self._chunks:
            yield chunk
        yield None

    def refuse_gone(self) -> None:
        """Nobody goes."""


def _request() -> AnyRequest:
    scope: Any = {"type": "http", "headers": [], "state": {}}
    return AnyRequest(scope)


@cache
def _calculator() -> tuple[Calculator, Metrics]:
    metrics = Metrics()
    return Calculator.within(Settings(), metrics), metrics


async def _answered(query: bytes, *chunks: bytes) -> bytes:
    operation = load_registry().operations["sine.setting"]
    declared = read_declared(query, request_fields(operation.request))
    sender = Sender(*_calculator(), _request())
    columns = columns_of(operation.result)
    table = Answering(operation, declared, columns, sender, LONGEST_ROW)
    return b"".join([piece async for piece in table.pieces(Chunks(*chunks))])


def read_table(data: bytes) -> None:
    """A table: the same answer however the network cuts it; what is answered is a table again."""
    if not data:
        return
    query, rows = DECLARED[data[0] % len(DECLARED)], data[1:]
    middle = len(rows) // 2
    try:
        whole = asyncio.run(_answered(query, rows))
    except ProblemError:
        return
    assert whole == asyncio.run(_answered(query, rows[:middle], rows[middle:])), data
    between = ";" if b"%3B" in query else "\t" if b"tab" in query else ","
    head, *answered = read_csv(whole, delimiter=between)
    # Lines without a word are no rows, and pass as they are.
    rows_of_words = (row for row in answered if "".join(row).strip())
    assert all(len(row) == len(head) for row in rows_of_words), data


def read_cell(data: bytes) -> None:
    """What a cell of a sheet asks for: its address, its parameters and its paths."""
    text = data.decode("utf-8", "ignore")
    paths, _, query = text.partition("?")
    operation = load_registry().operations["runout.indicate"]
    fields = query_fields(operation.request) or {}
    with suppress(ProblemError, Refusal):
        pairs = read_pairs(query.encode())
        cell_of(pairs, fields)
        cell, asked = cell_at(paths, pairs, fields)
        answer = operation.answer_json(read_request(operation, body_of(asked, fields)))
        assert isinstance(pick_values(answer, cell.paths, cell.asked_as, cell.separator)[0], bytes)

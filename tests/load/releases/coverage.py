"""How much of the operations a set of requests reaches: fields, options, advisories, refusals."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from releases.paths import Json, general
from releases.schemas import Node, request_schemas
from releases.translation import Answer

_NUMBER = re.compile(r"[-+]?[0-9.]+(?:e[-+]?[0-9]+)?")
#: A field that is sent in fewer answered requests than this is named.
FEW = 5

Row = tuple[str, Json, Answer]


def coverage_lines(contract: Mapping[str, Any], rows: Sequence[Row]) -> Iterator[str]:
    """Say what was reached, and what was not."""
    schemas = request_schemas(contract)
    answered = [row for row in rows if row[2].status == 200]
    by_operation = Counter(name for name, _, _ in answered)
    fewest = min(schemas, key=lambda name: by_operation[name])
    yield f"{len(rows)} requests to {len(schemas)} operations, {len(answered)} answered"
    yield f"fewest answered: {by_operation[fewest]} of {fewest}"
    yield from _fields(schemas, answered)
    codes = Counter(a["code"] for _, _, answer in answered for a in answer.advisories)
    yield f"{len(codes)} advisory codes: {', '.join(sorted(codes))}"
    refused = [answer for _, _, answer in rows if answer.status != 200]
    kinds = Counter(answer.kind for answer in refused)
    yield f"{len(refused)} refused: " + ", ".join(f"{k} {n}" for k, n in kinds.most_common())
    yield f"{len({(a.kind, _NUMBER.sub('#', a.detail)[:60]) for a in refused})} kinds of details"


def _fields(schemas: Mapping[str, tuple[Node, Json]], answered: Sequence[Row]) -> Iterator[str]:
    """Say how often fields and options were sent in requests that were answered."""
    sent: Counter[tuple[str, str]] = Counter()
    options: set[tuple[str, str, str]] = set()
    for name, body, _ in answered:
        found = list(schemas[name][0].sent(body))
        sent.update({(name, general(one.place)) for one in found})
        options |= {
            (name, general(o.place), str(o.value)) for o in found if o.schema.kind == "option"
        }
    fields = {(n, path): node for n in schemas for path, node, _ in schemas[n][0].all_fields()}
    few = [f"{name} {path} ({sent[name, path]})" for name, path in fields if sent[name, path] < FEW]
    yield f"{len(fields)} fields, {len(few)} of them sent in fewer than {FEW} answered requests"
    yield from (f"    {one}" for one in few)
    known = {
        (name, path, str(option))
        for (name, path), node in fields.items()
        if node.kind == "option"
        for option in node.options
    }
    yield f"{len(known)} options, {len(known - options)} of them in no answered request"
    yield from (f"    {' '.join(one)}" for one in sorted(known - options))

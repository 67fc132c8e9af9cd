"""Known requests of every operation, in the words of this release. Not collected.

Those that `seeded_requests.py` starts from are kept as the release before the newest in the
changelog took them; the changelog says what each is called since.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any

from compare_releases import newest
from generated.nulls import with_null_as_left_out
from halfangle_service.app import all_tables
from halfangle_service.http.contract.document import contract
from halfangle_service.operation import Operation
from halfangle_service.registry import load_registry
from releases.changelog import load_changelog
from releases.mutations import Pools
from releases.paths import Json
from releases.schemas import Node, request_schemas
from releases.translation import translated_request
from seeded_requests import STARTING

AnyOperation = Operation[Any, Any]

CHANGELOG = Path(__file__).parents[3] / "openapi" / "changelog"


class Known:
    """Schemas, known requests and values of every operation, by its dotted name."""

    def __init__(self) -> None:
        self.operations: dict[str, AnyOperation] = load_registry().operations
        document = with_null_as_left_out(contract(self.operations, all_tables()))
        schemas = request_schemas(document)
        self.nodes: dict[str, Node] = {name: node for name, (node, _) in schemas.items()}
        self.requests: dict[str, list[Json]] = {n: [e] for n, (_, e) in schemas.items()}
        self._learn_starting_requests()
        self.pools = Pools()
        for name, requests in self.requests.items():
            for request in requests:
                self.pools.learn(name, self.nodes[name], request)

    def _learn_starting_requests(self) -> None:
        """Add each starting request that this release takes, in its own words or translated."""
        lines = [json.loads(text) for text in STARTING.read_text(encoding="utf-8").splitlines()]
        changelog = load_changelog(newest(CHANGELOG), {line["operation"] for line in lines})
        names = {entry.name: entry.to for entry in changelog.operation if entry.to}
        of = {line["operation"]: changelog.of(line["operation"]) for line in lines}
        for line in lines:
            name = names.get(line["operation"], line["operation"])
            body = line.get("request", line.get("refused"))
            for request in (body, translated_request(body, of[line["operation"]])):
                if name in self.operations and self._is_taken(name, request):
                    self.requests[name].append(request)
                    break

    def _is_taken(self, name: str, request: Json) -> bool:
        try:
            self.operations[name].request.model_validate_json(json.dumps(request))
        except ValueError:
            return False
        return True


@cache
def known() -> Known:
    """The same for whoever only reads: made once a process, since it takes a second or two."""
    return Known()

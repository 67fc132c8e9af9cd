"""What every answer to a generated request must be; told as text where it is not."""

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, NoReturn

import jsonschema_rs

from generated.angles import with_formats_by_bounds
from generated.judging import contradicts, stops
from generated.nulls import with_null_as_left_out
from halfangle_service.http.problems import PROBLEM_TYPES
from releases.paths import Json
from releases.schemas import Node, path_of

#: A request can be well formed, as the schema promises, and still ask for what no geometry, no box
#: of blocks or no bounded amount of work can give. JSON Schema cannot say so; these types do.
REFUSALS_OF_THE_TRADE = frozenset(
    f"/problems/{name}"
    for name in ("impossible", "disagreement", "unreachable", "beyond-bound", "not-finite")
)
#: Whatever is no request of the schema is refused as one of these.
REFUSALS_OF_THE_FORM = frozenset({"/problems/invalid-request", "/problems/beyond-bound"})
_EXPONENT = re.compile(r"\d[eE][-+]?\d")


@dataclass(frozen=True)
class Answered:
    """An answer to a generated request: its status, its body, and the body as read."""

    status: int
    content: bytes

    @cached_property
    def document(self) -> Json:
        """The body as JSON; raises ValueError where it is none, or holds NaN or an infinity."""
        return json.loads(self.content, parse_constant=_no_number)


def _no_number(text: str) -> NoReturn:
    raise ValueError(f"{text} is no JSON")


class Checks:
    """Checks of requests and answers against a contract."""

    def __init__(self, contract: dict[str, Any]) -> None:
        by_bounds, bounds = with_formats_by_bounds(with_null_as_left_out(contract))
        self._schemas = by_bounds["components"]["schemas"]
        self._paths = by_bounds["paths"]
        self._formats = {one.format: one.holds for one in bounds}
        self._validators: dict[str, jsonschema_rs.Validator] = {}

    def _validator(self, reference: str) -> jsonschema_rs.Validator:
        if reference not in self._validators:
            self._validators[reference] = jsonschema_rs.Draft202012Validator(
                {"$ref": reference, "components": {"schemas": self._schemas}},
                formats=self._formats,
                validate_formats=True,
            )
        return self._validators[reference]

    def fits(self, operation: str, body: Json) -> bool:
        """True where a body fits the schema of the operation's request, angle strings included."""
        content = self._paths[path_of(operation)]["post"]["requestBody"]["content"]
        reference = content["application/json"]["schema"]["$ref"]
        return bool(self._validator(reference).is_valid(body))

    def wrong(
        self, operation: str, node: Node, body: Json, answered: Answered, *, fits: bool
    ) -> str:
        """Say what is wrong with an answer; empty where nothing is."""
        if answered.status not in {200, 422}:
            return f"status {answered.status}"
        try:
            document = answered.document
        except ValueError as error:
            return f"not JSON: {error}"
        if answered.status == 200:
            found = self._wrong_answer(operation, document, fits=fits)
        else:
            found = self._wrong_refusal(node, body, document, fits=fits)
        return next(found, "")

    def _wrong_answer(self, operation: str, document: Json, *, fits: bool) -> Iterator[str]:
        if not fits:
            yield "answered, though the request does not fit its schema"
        yield from self._misfit(_answer_reference(self._paths[path_of(operation)]), document)
        if contradicts(document):
            yield f"a judgement says yes beside {stops(document)}"
        for advisory in document["advisories"]:
            yield from _exponent(advisory["message"])

    def _wrong_refusal(
        self, node: Node, body: Json, document: Json, *, fits: bool
    ) -> Iterator[str]:
        yield from self._misfit("#/components/schemas/Problem", document)
        allowed = REFUSALS_OF_THE_TRADE if fits else REFUSALS_OF_THE_FORM
        if document["type"].removeprefix("/problems/") not in PROBLEM_TYPES:
            yield f"{document['type']} is no problem type"
        if document["type"] not in allowed:
            yield f"{document['type']} of a request that {'fits' if fits else 'does not fit'}"
        if not document["errors"]:
            yield "no field is named"
        for error in document["errors"]:
            if not names_a_field(node, body, error["pointer"], fits=fits):
                yield f"{error['pointer']!r} names no field"
            if fits:
                yield from _exponent(error["message"])
        if fits:
            yield from _exponent(document["detail"])

    def _misfit(self, reference: str, document: Json) -> Iterator[str]:
        validator = self._validator(reference)
        if not validator.is_valid(document):
            error = next(validator.iter_errors(document))
            yield f"does not fit its schema at {error.instance_path}: {error.message[:200]}"


def _answer_reference(item: Mapping[str, Any]) -> str:
    content = item["post"]["responses"]["200"]["content"]
    return str(content["application/json"]["schema"]["$ref"])


def _exponent(text: str) -> Iterator[str]:
    if _EXPONENT.search(text):
        yield f"an exponent in {text[:300]!r}"


def names_a_field(node: Node, body: Json, pointer: str, *, fits: bool = True) -> bool:
    """True where a pointer leads to a field that was sent, or to one that could have been."""
    parts = [part.replace("~1", "/").replace("~0", "~") for part in pointer.split("/")[1:]]
    if not parts:
        return not fits
    for part in parts:
        if isinstance(body, list):
            if not part.isdecimal() or int(part) >= len(body):
                return False
            node, body = node.items, body[int(part)]
            continue
        fields = node.fields(body) if node.kind == "object" else {}
        if part not in fields:
            return not fits and isinstance(body, dict) and part in body
        node, _ = fields[part]
        body = body.get(part) if isinstance(body, dict) else None
    return True

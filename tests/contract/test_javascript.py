"""The contract as front ends read it: JavaScript's own expressions, and its well-known programs."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.app import contract_bytes
from node_support import node

_COMPILE = """
const [patterns] = process.argv.slice(1).map(p => JSON.parse(require("fs").readFileSync(p)));
const refused = [];
for (const pattern of patterns) for (const flag of ["u", "v"]) {
  try { new RegExp(pattern, flag) } catch (error) { refused.push(error.message) }
}
console.log(JSON.stringify(refused));
"""


def patterns_of(value: Any) -> Iterator[str]:
    """Every pattern of a document."""
    if isinstance(value, list):
        for part in value:
            yield from patterns_of(part)
    elif isinstance(value, dict):
        if isinstance(value.get("pattern"), str):
            yield value["pattern"]
        for part in value.values():
            yield from patterns_of(part)


def refused_by_javascript(patterns: list[str], folder: Path) -> list[str]:
    """What JavaScript says against patterns, with its flag `u` and with `v`."""
    written = folder / "patterns.json"
    written.write_text(json.dumps(patterns), "utf-8")
    refused: list[str] = json.loads(node(_COMPILE, str(written)))
    return refused


def test_every_pattern_is_one_of_javascript(tmp_path: Path) -> None:
    """Each pattern of the contract is an expression under the flags that validators and forms set.

    Validators of JSON Schema compile with `u`, a browser the pattern of an input with `v`.
    """
    patterns = sorted(set(patterns_of(json.loads(contract_bytes()))))
    assert len(patterns) >= 2
    assert refused_by_javascript(patterns, tmp_path) == []


@pytest.mark.parametrize("pattern", [r"[\"″”]", r"\°", r"[a-z&&[aeiou]"])
def test_a_pattern_that_javascript_refuses_would_be_seen(pattern: str, tmp_path: Path) -> None:
    """A sign escaped for nothing, or marks of sets of signs, are refused under a flag."""
    assert refused_by_javascript([pattern], tmp_path) != []

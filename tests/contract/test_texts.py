"""Texts of the contract name operations one way: dotted, and only such as there are."""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from halfangle_service.app import contract_bytes
from halfangle_service.registry import load_registry

ROOT = Path(__file__).parents[2]
REGISTRY = load_registry()
OPERATIONS = sorted(REGISTRY.operations)
TABLES = sorted(f"{table.topic}.{table.name}" for table in REGISTRY.tables)
TOPICS = sorted({operation.topic for operation in REGISTRY.operations.values()})

#: `sine.setting` in a sentence: a topic, and a name that no file's or field's name goes on from.
DOTTED = re.compile(rf"(?<![\w./-])({'|'.join(TOPICS)})\.([a-z][a-z0-9-]*)(?![\w./(-]|\.\w)")
#: `sine/setting`, unless it stands in an address.
SLASHED = re.compile(
    rf"(?<![\w./-])({'|'.join(re.escape(n.replace('.', '/')) for n in OPERATIONS)})(?![\w/-])"
)


def texts_in(document: Any) -> Iterator[str]:
    """Every text of a document, however deep; names of fields and paths are none."""
    if isinstance(document, str):
        yield document
    elif isinstance(document, dict | list):
        for part in document.values() if isinstance(document, dict) else document:
            yield from texts_in(part)


def misnamed(text: str) -> list[str]:
    """Operations that a text names with a slash, or that do not exist."""
    unknown = [".".join(found) for found in DOTTED.findall(text)]
    known = {*OPERATIONS, *TABLES}
    files = ("toml", "py", "md", "json")
    return [
        *SLASHED.findall(text),
        *(name for name in unknown if name not in known and not name.endswith(files)),
    ]


def test_a_misnamed_operation_would_be_seen() -> None:
    """The checks below see a slash and a name that is no operation's; an address is neither."""
    assert misnamed("Ask runout/indicate, or `sine.low-stack`.") == ["runout/indicate"]
    assert misnamed("Ask `sine.low-stacks`.") == ["sine.low-stacks"]
    assert misnamed("POST /v1/sine/setting answers `sine.setting`. See sine.toml.") == []


def test_the_contract_names_operations_as_they_are_called() -> None:
    """Each operation that a text of the contract names exists, and none has a slash."""
    found = {name for text in texts_in(json.loads(contract_bytes())) for name in misnamed(text)}
    assert found == set()


def test_the_guides_name_operations_as_they_are_called() -> None:
    """The same holds for the guides and for every text of the service's source."""
    paths = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *(ROOT / "service").rglob("*.py")]
    found = {
        f"{path.relative_to(ROOT)}: {name}"
        for path in paths
        for name in SLASHED.findall(path.read_text("utf-8"))
    }
    assert found == set()

"""Every operation fills a row: its example, written as a sheet holds it."""

import csv
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_client import Halfangle
from halfangle_client.cli.contract import Operation, dotted_names, named
from halfangle_client.fill import FillMap, fill


def operations() -> Iterator[Operation]:
    """All that take a request, and are worked out in little time."""
    for name in dotted_names():
        found = named(name)
        if found is not None and found.sends and found.example and not found.heavy:
            yield found


def written(operation: Operation) -> dict[str, str]:
    """The example as a row: a column a field, dotted within objects; what is deeper as JSON."""
    known = {field.name for field in operation.fields}
    row: dict[str, str] = {}

    def put(name: str, value: Any) -> None:
        inside = [f"{name}.{part}" for part in value] if isinstance(value, dict) else []
        if inside and known.issuperset(inside):
            for part, inner in value.items():
                put(f"{name}.{part}", inner)
        else:
            row[name] = cell(value)

    for name, value in operation.example.items():
        put(name, value)
    return row


def cell(value: Any) -> str:
    """A value as it is typed into a cell."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict):
        return json.dumps(value)
    if isinstance(value, list):
        deep = any(isinstance(entry, dict | list) for entry in value)
        return json.dumps(value) if deep else ";".join(map(str, value))
    return str(value)


def test_every_light_operation_fills_its_example(shop: Halfangle, tmp_path: Path) -> None:
    """Each is answered, by the usual results of its answer, numbers as the service gives them."""
    wrong = []
    for operation in operations():
        row = written(operation)
        with (tmp_path / "in.csv").open("w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows([row.keys(), row.values()])
        said = FillMap(operation.name, delimiter=",", decimal=".")
        filled = fill(shop, tmp_path / "in.csv", tmp_path / "out.csv", said, overwrite=True)
        with (tmp_path / "out.csv").open(encoding="utf-8", newline="") as file:
            heads, values = csv.reader(file)
        found = dict(zip(heads, values, strict=True))
        answer = shop.map(operation.name, [operation.example])[0].result.model_dump()
        numbers = {
            name: value for name, value in answer.items()
            if isinstance(value, float) and name not in row
        }  # fmt: skip
        for name, value in numbers.items():
            names = (head.partition(" [")[0].removeprefix("result.") for head in found)
            by_name = dict(zip(names, found.values(), strict=True))
            there = [by_name.get(name)]
            if there != [repr(value)]:
                wrong.append(f"{operation.name} {name}: {there}, {value}")
        if filled.answered != 1 or filled.stopped:
            wrong.append(f"{operation.name}: {found['problem']}")
    assert wrong == []


@pytest.mark.parametrize("name", ["sine.list_bar_tolerances", "no.such"])
def test_what_takes_no_request_is_refused(shop: Halfangle, tmp_path: Path, name: str) -> None:
    """What is looked up, or is no operation, is refused by its name."""
    (tmp_path / "in.csv").write_text("a\n1\n")
    with pytest.raises(Exception, match=name):
        fill(shop, tmp_path / "in.csv", tmp_path / "out.csv", FillMap(name))

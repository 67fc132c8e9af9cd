"""A routing as lines of a file: what the answer holds, read back by a reader of CSV."""

import csv
import io
from typing import Any

import pytest

from halfangle_service import __version__
from halfangle_service.registry import load_registry
from halfangle_service.sheets.routing import COLUMNS, routing_csv
from routing_support import CENTER, JOBS, routings, sent
from sheets_support import plan_operation


def rows_of(job: str, way: int = 0, **choice: Any) -> list[dict[str, str]]:
    """The lines of a routing, read back by a reader of CSV."""
    operation = load_registry().operations["jobs.routing"].in_shop(plan_operation().profiles)
    request = operation.request.model_validate(sent(job) | {"way": str(way + 1)})
    outcome = operation.outcome(request)
    text = routing_csv(outcome.result, outcome.advisories, "abc", __version__, **choice)
    delimiter = {"semicolon": ";", "tab": "\t"}.get(choice.get("delimiter", ""), ",")
    return list(csv.DictReader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True))


def test_lines_hold_what_the_answer_does() -> None:
    """Each operation is a line; its numbers, texts and figures come back as they are."""
    for job in JOBS:
        rows, result = rows_of(job), routings(job)[0]["result"]
        assert tuple(rows[0]) == COLUMNS
        assert len(rows) == len(result["operations"])
        for row, each in zip(rows, result["operations"], strict=True):
            for name in ("code", "kind", "name", "text"):
                assert row[name] == each[name]
            assert (row["job"], row["sequence"]) == (job, str(each["sequence"]))
            for name in ("set_up_seconds", "run_seconds"):
                assert (row[name] == "") == (each[name] is None)
                assert float(row[name] or 0) == pytest.approx(each[name] or 0, rel=1e-11)
            told_values = [one for one in row["values"].split("; ") if one]
            for cell, one in zip(told_values, each["values"], strict=True):
                name, _, figure = cell.partition("=")
                number, unit = figure.split()
                assert (name, unit) == (one["name"], one["unit"])
                assert float(number) == pytest.approx(one["value"], rel=1e-11, abs=1e-15)
            assert row["cautions"].split("\n") == (each["cautions"] or [""])


@pytest.mark.parametrize("delimiter", ["comma", "semicolon", "tab"])
def test_lines_are_parted_as_asked(delimiter: str) -> None:
    """Whatever parts the columns, they are the same."""
    assert rows_of(CENTER, delimiter=delimiter) == rows_of(CENTER)

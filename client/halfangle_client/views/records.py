"""Flattens an answer into records, one line of a table each."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

Data = Mapping[str, Any]
Record = dict[str, Any]
_ANGLE = {"degrees", "dms"}
_DOCUMENTS = frozenset({"svg", "dxf", "csv"})
#: Worst first; a word of a later release is shown before the notes.
_SEVERITIES = ("stop", "caution", "", "note")


def records_of(answer: Data, rows: str | None = None) -> list[Record]:
    """Give the records of an answer; raises KeyError where `rows` names no list of its result."""
    result = answer["result"]
    path = _usual_rows(result) if rows is None else rows
    about = _about(answer)
    if path is None:
        return [{**about, **dict(flat(result))}]
    entries = _list_at(result, path)
    beside = dict(flat({k: v for k, v in result.items() if k == path or _is_plain(v)}))
    return [{**about, **beside, **dict(flat(entry))} for entry in entries]


def with_same_columns(records: Sequence[Record]) -> list[Record]:
    """Give every record every column, None where it has nothing to say.

    An object that is null in one record has no column of its own where it has parts in another.
    """
    columns = dict.fromkeys(column for record in records for column in record)
    prefixes = {column[:n] for column in columns for n, c in enumerate(column) if c == "."}
    kept = [column for column in columns if column not in prefixes]
    return [{column: record.get(column) for column in kept} for record in records]


def flat(value: Data, prefix: str = "") -> Iterator[tuple[str, Any]]:
    """Give each value of an object by its path, as `pick` and the columns of a table name it.

    Lists of objects have no place in one line, nor documents, such as a drawing.
    """
    for name, part in value.items():
        path = f"{prefix}{name}"
        if isinstance(part, Mapping):
            yield from flat(part, f"{path}.")
        elif not is_list_of_objects(part) and name not in _DOCUMENTS:
            yield path, part


def sorted_advisories(answer: Data) -> list[Data]:
    """The advisories of an answer, the worst first."""
    return sorted(answer.get("advisories") or (), key=lambda advisory: _rank(advisory["severity"]))


def is_angle(value: object) -> bool:
    """Whether it is an angle in its two forms."""
    return isinstance(value, Mapping) and set(value) == _ANGLE


def is_list_of_objects(value: object) -> bool:
    """Whether it is a list whose entries have fields."""
    return isinstance(value, list) and any(isinstance(entry, Mapping) for entry in value)


def is_drawing(value: object) -> bool:
    """Whether it is a drawing."""
    return isinstance(value, str) and value.lstrip().startswith("<svg")


def _about(answer: Data) -> Record:
    advisories = sorted_advisories(answer)
    said: Iterable[str] = (f"{each['severity']} {each['code']}" for each in advisories)
    return {
        "stop": any(each["severity"] == "stop" for each in advisories),
        "advisories": ", ".join(said),
    }


def _rank(severity: str) -> int:
    return _SEVERITIES.index(severity if severity in _SEVERITIES else "")


def _usual_rows(result: Data) -> str | None:
    """Name of the list that a result is, or that it calls its rows."""
    names = ["rows", *(result if len(result) == 1 else ())]
    return next((name for name in names if is_list_of_objects(result.get(name))), None)


def _list_at(result: Data, path: str) -> list[Data]:
    found: Any = result
    for name in path.split("."):
        found = found.get(name) if isinstance(found, Mapping) else None
    if not isinstance(found, list) or not all(isinstance(entry, Mapping) for entry in found):
        raise KeyError(f"{path}: no list of objects in the result")
    return found


def _is_plain(value: object) -> bool:
    return is_angle(value) or not isinstance(value, Mapping | list)

"""Which column is which field: what the user says of a file, kept beside it as TOML."""

import json
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from pathlib import Path
from typing import Any

from halfangle_client.cli.contract import hint
from halfangle_client.fill.errors import MapRefused

_ABOUT = "# Which column is which field, for `halfangle fill`.\n"


@dataclass(frozen=True, slots=True)
class FillMap:
    """What is said of a file; what is left out is read from its headers, or not wanted.

    `columns` gives for a field the letters or the header of its column, or several of a list's;
    other columns are known by their headers, save those `ignored` (header or letters);
    `fixed` values of fields that are the same in every row; `results` the path of each result by
    the header of its column; `rows` the first and the last row that are filled; `decimal` the
    decimal sign of numbers that are text, `delimiter` that of a .csv.
    """

    operation: str = ""
    sheet: str | None = None
    header_row: int | None = None
    rows: str | None = None
    columns: Mapping[str, str | Sequence[str]] = field(default_factory=dict)
    fixed: Mapping[str, Any] = field(default_factory=dict)
    results: Mapping[str, str] = field(default_factory=dict)
    ignored: Sequence[str] = ()
    decimal: str | None = None
    delimiter: str | None = None

    def with_more(self, **said: Any) -> "FillMap":
        """The same with what is said later, which wins; None and what is empty say nothing."""
        told = {name: value for name, value in said.items() if value not in (None, "", {}, ())}
        for name in ("columns", "fixed"):
            if name in told:
                told[name] = {**getattr(self, name), **told[name]}
        return replace(self, **told)

    def row_bounds(self) -> tuple[int, int]:
        """The first and the last row that are filled. Raises MapRefused."""
        first, dash, last = (self.rows or "1-").replace(" ", "").partition("-")
        last = last if dash else first
        if not (first.isascii() and first.isdigit() and (not last or last.isdigit())):
            raise MapRefused(f"rows {self.rows!r}: say '2-51', '2-' or '7'.")
        bounds = int(first[:9]), int(last[:9]) if last else 2**31
        if bounds[0] > bounds[1] or bounds[0] < 1:
            raise MapRefused(f"rows {self.rows!r}: the first is 1 or more, and not past the last.")
        return bounds


_KINDS: Mapping[str, tuple[type, str]] = {
    "operation": (str, "text"),
    "sheet": (str, "text"),
    "header_row": (int, "a whole number"),
    "rows": (str, "text such as '2-51'"),
    "columns": (dict, "a table of fields"),
    "fixed": (dict, "a table of fields"),
    "results": (dict, "a table of headers"),
    "ignored": (list, "a list of headers or letters"),
    "decimal": (str, "'.' or ','"),
    "delimiter": (str, "',', ';' or a tab"),
}


def read_map(path: Path) -> FillMap:
    """Read what a file of TOML says. Raises MapRefused."""
    try:
        found = tomllib.loads(path.read_text("utf-8-sig"))
    except OSError as error:
        raise MapRefused(f"{path}: {error.strerror}.") from error
    except (ValueError, RecursionError) as error:
        raise MapRefused(f"{path} is no TOML: {error}.") from error
    known = [each.name for each in fields(FillMap)]
    for name, value in found.items():
        if name not in known:
            raise MapRefused(f"{path}: it knows no {name!r}{hint(name, known)}.")
        kind, said = _KINDS[name]
        if not isinstance(value, kind) or isinstance(value, bool):
            raise MapRefused(f"{path}: {name} should be {said}, not {value!r:.60}.")
    _require_texts(path, "columns", found.get("columns", {}), lists=True)
    _require_texts(path, "ignored", {"ignored": found.get("ignored") or ["-"]}, lists=True)
    _require_texts(path, "results", found.get("results", {}), lists=False)
    return FillMap(**found)


def _require_texts(path: Path, name: str, table: Mapping[str, Any], *, lists: bool) -> None:
    for key, value in table.items():
        texts = value if lists and isinstance(value, list) and value else [value]
        if not all(isinstance(text, str) and text.strip() for text in texts):
            raise MapRefused(f"{path}: {name}: {key!r} should be text, not {value!r:.60}.")


def written_map(said: FillMap) -> str:
    """The same as TOML.

    >>> print(written_map(FillMap("sine.setting", columns={"angle": "B"})), end="")
    # Which column is which field, for `halfangle fill`.
    operation = "sine.setting"
    columns.angle = "B"
    """
    lines = []
    for each in fields(FillMap):
        value = getattr(said, each.name)
        if isinstance(value, Mapping):
            lines += [f"{each.name}.{_key(key)} = {_toml(part)}" for key, part in value.items()]
        elif value not in (None, "", ()):
            lines.append(f"{each.name} = {_toml(value)}")
    return _ABOUT + "\n".join(lines) + "\n"


def _key(name: str) -> str:
    bare = name.isascii() and name.replace("_", "").replace("-", "").isalnum()
    return name if bare else _toml(name)


def _toml(value: Any) -> str:
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{_key(key)} = {_toml(part)}" for key, part in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(_toml, value)) + "]"
    # What JSON escapes in a text TOML reads alike, save what is past the first plane, and DEL.
    text = json.dumps(value, ensure_ascii=False)
    return text.replace("\x7f", "\\u007f")

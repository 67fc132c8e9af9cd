"""Which values of an answer have a column, and which of those are wanted.

The one rule by which an answer becomes one line is that of `columns/flat.py`: a column is named by
the path of its value in the result, the parts joined by dots, as `pick` has it (`height`,
`angle.degrees`, `angle.dms`); a list of single values is one cell. Here a line has no document
besides, such as a drawing, and a list of objects is left out, unless one value of it is asked for
by its place (`checks.0.verdict`). The client's `to_records` follows the same rule
(`views/records.py`), and a test holds the two alike.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any

from halfangle_service.columns import flat_fields
from halfangle_service.fields import ResultModel
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.tables.schemas import Shape

#: Fields that hold a document: a drawing, a table.
DOCUMENTS = frozenset({"svg", "dxf", "csv"})


class NoColumn(Exception):
    """A name that is no column of a result, and why."""


@dataclass(frozen=True, slots=True)
class ResultColumn:
    """A value of a result that has a column: its path, and the unit of its numbers."""

    path: tuple[str | int, ...]
    units: frozenset[str]

    @property
    def name(self) -> str:
        """The path as it is written."""
        return ".".join(map(str, self.path))

    def value(self, result: Any) -> Any:
        """The value in a result; None where there is none."""
        for part in self.path:
            if isinstance(result, dict):
                result = result.get(part)
            elif isinstance(result, list) and isinstance(part, int) and part < len(result):
                result = result[part]
            else:
                return None
        return result


def columns_of(result: type[ResultModel]) -> list[ResultColumn]:
    """The columns of a result, in the order of its fields."""
    return [
        ResultColumn(field.path, frozenset([field.unit] if field.unit else []))
        for field in flat_fields(result).values()
        if field.path[-1] not in DOCUMENTS
    ]


def chosen_columns(result: type[ResultModel], names: Iterable[str]) -> list[ResultColumn]:
    """The columns of these names, in their order; an object's name stands for all below it.

    Raises NoColumn.
    """
    usual = columns_of(result)
    found: dict[str, ResultColumn] = {}
    for name in names:
        below = [c for c in usual if c.name == name or c.name.startswith(f"{name}.")]
        for column in below or _by_place(result, name, usual):
            found[column.name] = column
    return [*found.values()]


def _by_place(
    result: type[ResultModel], name: str, usual: Iterable[ResultColumn]
) -> list[ResultColumn]:
    """Columns of what stands in a list of objects, or of a document; raises NoColumn."""
    shape = Shape.of_whole(schema_of(result, "serialization"))
    path: list[str | int] = []
    for part in name.split("."):
        if part in shape.fields:
            path.append(part)
            shape = shape.fields[part]
        elif part.isascii() and part.isdigit() and shape.entries.alternatives:
            path.append(int(part[:6]))
            shape = shape.entries
        else:
            raise NoColumn(
                f"{name[:80]} is no column of the result{_offered(name, usual, path, shape)}"
            )
    found = _below(shape, tuple(path))
    if not found:
        raise NoColumn(f"{name[:80]} is a list of objects: name an entry by its place, {name}.0")
    return found


def _below(shape: Shape, path: tuple[str | int, ...]) -> list[ResultColumn]:
    own = [ResultColumn(path, shape.units | shape.entries.units)]
    is_single = shape.scalars or shape.entries.scalars
    inside = [c for name, field in shape.fields.items() for c in _below(field, (*path, name))]
    return [*(own if is_single else []), *inside]


def _offered(
    name: str, usual: Iterable[ResultColumn], path: Sequence[str | int], shape: Shape
) -> str:
    """What there is in place of a name that is none."""
    if path and not shape.fields and shape.entries.fields:
        inside = ", ".join([*shape.entries.fields][:8])
        return (
            f"; of a list an entry is named by its place: {'.'.join(map(str, path))}.0 ({inside})"
        )
    near = get_close_matches(name, [column.name for column in usual], n=3)
    return f"; did you mean {' or '.join(near)}?" if near else ""

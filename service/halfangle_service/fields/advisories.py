"""Advisories: what an experienced hand would add to an answer, and say of how it was read."""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Annotated, Any, Literal, get_args

from pydantic import Field

from halfangle_service.fields.angles import AngleInput, Sexagesimal
from halfangle_service.fields.base import RequestModel, ResultModel
from halfangle_service.fields.slopes import TaperName
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import format_dms
from halfangle_service.trade.columns import Column, TextColumn
from halfangle_service.trade.tables.tapers.designations import Row, rows_named
from halfangle_service.trade.wording import plain

Severity = Literal["note", "caution", "stop"]
#: Most angles of one request that are noted as perhaps meant otherwise.
MOST_READING_NOTES = 5


class Advisory(ResultModel):
    """The voice of an experienced hand."""

    code: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$")] = Field(
        description="Stable code of the advisory.", examples=["steep-angle"]
    )
    severity: Severity = Field(
        description="`note`: a better way exists; `caution`: mind this; `stop`: do not run this."
    )
    message: str = Field(description="What to mind, in plain words.")


def note(code: str, message: str) -> Advisory:
    """Make an advisory of severity `note`."""
    return Advisory(code=code, severity="note", message=message)


def caution(code: str, message: str) -> Advisory:
    """Make an advisory of severity `caution`."""
    return Advisory(code=code, severity="caution", message=message)


def stop(code: str, message: str) -> Advisory:
    """Make an advisory of severity `stop`."""
    return Advisory(code=code, severity="stop", message=message)


# How a request was read -----------------------------------------------------------------------
def reading_notes(request: RequestModel) -> Iterator[Advisory]:
    """Note what a request says that was read in one way and may have been meant in another."""
    yield from _angle_notes(request)
    for path, name in _marked(request, TaperName, ""):
        rows = rows_named(name)
        if rows and name not in {row.designation for row in rows}:
            yield designation_note(path, name, rows)


def rows_read(request: RequestModel) -> list[Row]:
    """Rows of the tables of tapers that a request names."""
    return [row for _, name in _marked(request, TaperName, "") for row in rows_named(name)]


def designation_note(path: str, name: str, rows: Sequence[Row]) -> Advisory:
    """Say which standard taper a name was read as; its lengths have one slope where it has more."""
    names = " and ".join(f"{row.designation} ({row.name})" for row in rows)
    return note("designation-read", f"{path} {name!r} was read as {names}.")


def decimal_note(path: str, degrees: float, others: str = "") -> Advisory | None:
    """Note a decimal angle that may have been meant as degrees and minutes; None for another.

    `8.18` is read as 8.18°, which is 8°10'48"; a drawing's 8°18' typed with a point looks the same.
    """
    if not _looks_like_minutes(degrees):
        return None
    whole, minutes = divmod(round(abs(degrees) * 100), 100)
    return note(
        "decimal-degrees-read",
        f"{path} {plain(degrees)} was read as decimal degrees, {format_dms(degrees)}. If "
        f'{whole}°{minutes:02d}\' was meant, send "{whole} {minutes:02d}".{others}',
    )


def _angle_notes(request: RequestModel) -> Iterator[Advisory]:
    doubtful = [
        (path, value)
        for path, value in _marked(request, AngleInput, "")
        if _looks_like_minutes(value)
    ]
    more = len(doubtful) - MOST_READING_NOTES
    for place, (path, value) in enumerate(doubtful[:MOST_READING_NOTES]):
        others = f" So were {more} more." if more > 0 and place == 0 else ""
        if found := decimal_note(path, value, others):
            yield found


def _marked(request: RequestModel, marker: type, path: str) -> Iterator[tuple[str, Any]]:
    """Values of a request, and of what it holds, whose fields bear a marker, with their paths."""
    own, nested = _fields_marked(type(request), marker)
    for name in own:
        value = getattr(request, name)
        for place, entry in enumerate(value) if isinstance(value, list) else ((None, value),):
            if isinstance(entry, float | str | Column):
                yield f"{path}{name}" if place is None else f"{path}{name}/{place}", entry
    for name in nested:
        value = getattr(request, name)
        if isinstance(value, RequestModel):
            yield from _marked(value, marker, f"{path}{name}/")
        elif isinstance(value, list):
            for place, entry in enumerate(value):
                if isinstance(entry, RequestModel):
                    yield from _marked(entry, marker, f"{path}{name}/{place}/")


@cache
def _fields_marked(
    model: type[RequestModel], marker: type
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Names of a request's own fields that bear a marker, and of those that hold such models."""
    fields = model.model_fields.items()
    own = tuple(n for n, info in fields if _bears((*info.metadata, info.annotation), marker))
    nested = tuple(n for n, info in fields if _holds_marked(info.annotation, marker))
    return own, nested


def _bears(annotations: Sequence[Any], marker: type) -> bool:
    """True where one of these, or what it is made of, is the marker; a measured angle is none."""
    return any(
        (isinstance(a, marker) and not (isinstance(a, AngleInput) and a.measured))
        or _bears(get_args(a), marker)
        for a in annotations
    )


def _holds_marked(annotation: Any, marker: type) -> bool:
    """True where a field's value may be a request model, or a list of them, with marked fields."""
    if isinstance(annotation, type) and issubclass(annotation, RequestModel):
        return any(_fields_marked(annotation, marker))
    return any(_holds_marked(part, marker) for part in get_args(annotation))


def _looks_like_minutes(value: float) -> bool:
    """True for a decimal angle whose two decimals could be minutes: .01 to .59, quarters aside."""
    if isinstance(value, Sexagesimal | TextColumn):
        return False
    hundredths = abs(value) * 100.0
    minutes = round(hundredths) % 100
    return (
        elementary.isclose(hundredths, round(hundredths), abs_tol=1e-7)
        and 0 < minutes < 60
        and minutes % 25 != 0
    )

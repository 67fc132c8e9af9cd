"""An answer as HTML, for a notebook: its advisories, a small table, its drawings."""

from base64 import b64encode
from collections.abc import Iterator, Mapping, Sequence
from html import escape
from typing import Any

from halfangle_client.views.records import (
    Data,
    Record,
    flat,
    is_angle,
    is_drawing,
    is_list_of_objects,
    sorted_advisories,
)
from halfangle_client.views.text import label_of, words_of

#: Colours that stand on a light ground and on a dark one; the word says it too.
_COLOURS = {"stop": "#d1242f", "caution": "#bf8700"}
_OTHER_COLOUR = "#6e7781"
_MOST_ROWS = 50
_LEFT = ' style="text-align:left"'


class Drawing(str):
    """A drawing, as SVG, that a notebook shows."""

    __slots__ = ()

    def _repr_svg_(self) -> str:
        return str(self)


def drawings_of(answer: Data) -> list[Drawing]:
    """Every drawing in a result, whichever part holds it."""
    return [Drawing(text) for text in _drawings(answer["result"])]


def answer_as_html(answer: Data) -> str:
    """Write a whole answer: advisories, the result's own values, then its parts, folded up."""
    result = answer["result"]
    parts = [*map(_advisory, sorted_advisories(answer)), _values(result), *_folded(result)]
    return f"<div>{''.join([*parts, *map(_image, drawings_of(answer))])}</div>"


def records_as_html(records: Sequence[Record]) -> str:
    """Write records as a table, the first fifty of them."""
    columns = list(dict.fromkeys(column for record in records for column in record))
    head = "".join(f"<th{_LEFT}>{escape(column)}</th>" for column in columns)
    lines = [
        "".join(f"<td{_LEFT}>{escape(words_of(record.get(c)))}</td>" for c in columns)
        for record in records[:_MOST_ROWS]
    ]
    rest = len(records) - _MOST_ROWS
    more = f"<p>… and {rest} more</p>" if rest > 0 else ""
    return f"<table><tr>{head}</tr>{''.join(f'<tr>{one}</tr>' for one in lines)}</table>{more}"


def _advisory(advisory: Data) -> str:
    severity = advisory["severity"]
    style = f"border-left:4px solid {_COLOURS.get(severity, _OTHER_COLOUR)};padding-left:8px"
    words = f"<b>{escape(label_of(severity))}</b> {escape(advisory['message'])}"
    return f'<p style="{style}">{words}</p>'


def _values(value: Data) -> str:
    """A table of the values that an object holds itself."""
    own = {k: v for k, v in value.items() if not _has_parts(v) and not is_drawing(v)}
    rows = [
        f"<tr><th{_LEFT}>{escape(name)}</th><td{_LEFT}>{escape(words_of(part))}</td></tr>"
        for name, part in own.items()
    ]
    return f"<table>{''.join(rows)}</table>" if rows else ""


def _folded(value: Data) -> Iterator[str]:
    """Each object of an object, and each list of objects, under its name."""
    for name, part in value.items():
        if is_list_of_objects(part):
            table = records_as_html([dict(flat(entry)) for entry in part])
            yield _details(f"{name} ({len(part)})", table)
        elif _has_parts(part):
            yield _details(name, "".join([_values(part), *_folded(part)]))


def _has_parts(value: object) -> bool:
    return is_list_of_objects(value) or (isinstance(value, Mapping) and not is_angle(value))


def _details(title: str, inside: str) -> str:
    return f"<details><summary>{escape(title)}</summary>{inside}</details>"


def _image(drawing: str) -> str:
    # As an image, so that nothing in it can act on the page.
    coded = b64encode(drawing.encode()).decode()
    return f'<img alt="drawing" src="data:image/svg+xml;base64,{coded}" />'


def _drawings(value: Any) -> Iterator[str]:
    if is_drawing(value):
        yield value
    elif isinstance(value, Mapping):
        for part in value.values():
            yield from _drawings(part)
    elif isinstance(value, list):
        for part in value:
            yield from _drawings(part)

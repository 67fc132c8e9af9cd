"""The pages, written from the operations: an overview, one of each operation, one of forms."""

import json
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from halfangle_service import __version__
from halfangle_service.fields.glossary import advisory_meanings, glossary, title_of
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.cells import VALUE_PATH
from halfangle_service.http.contract.common import EXAMPLE_PATH, described_tags
from halfangle_service.http.contract.document import operation_id
from halfangle_service.http.contract.forms import form_hints
from halfangle_service.http.contract.samples import sample_answer
from halfangle_service.http.page.fields import (
    Row,
    Section,
    grouped,
    rows_of,
    rules_of,
    unit_in_words,
)
from halfangle_service.http.page.files import (
    PACKAGED,
    as_address,
    drawings_in,
    without_drawings,
)
from halfangle_service.http.page.plots import plot_of
from halfangle_service.http.page.samples import ORIGIN, samples_of, shown_json
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.query import query_fields
from halfangle_service.http.routings import ROUTING
from halfangle_service.http.sheets import SHEET_PATH
from halfangle_service.http.tables.model import TABLES_PATH
from halfangle_service.operation import FIXED_SIZE, Operation, PublishedTable
from halfangle_service.sheets.code import query_of
from halfangle_service.sheets.made import OVERLAY, WITH_SHEET

AnyOperation = Operation[Any, Any]

PAGES_PATH = "/docs"
#: Operation that the overview calls with, as the README does.
_SHOWN = "sine.setting"
_INDICATED = "runout.indicate"
_OF_A_CELL = 'ENCODEURL(SUBSTITUTE(A1;",";"."))'
#: One number from a cell; several values, and what is refused, as text; a list of cells.
FORMULAS_OF_CELLS = (
    f'=NUMBERVALUE(WEBSERVICE("{ORIGIN}{VALUE_PATH.format(operation=_SHOWN, field="height")}'
    f'?units=mm&center_distance=100&angle="&{_OF_A_CELL});".")',
    f'=WEBSERVICE("{ORIGIN}{VALUE_PATH.format(operation=_SHOWN, field="height,angle.dms")}'
    f'?units=mm&center_distance=100&on_error=text&angle="&{_OF_A_CELL})',
    f'=WEBSERVICE("{ORIGIN}{VALUE_PATH.format(operation=_INDICATED, field="tap_distance")}'
    '?units=in&surface=external&indicator_resolution=0.0001&readings="'
    '&ENCODEURL(SUBSTITUTE(TEXTJOIN(";";0;F1:I1);",";".")))',
)
_TABLE_CALL = (
    f"curl -s '{ORIGIN}{TABLES_PATH.format(operation=_SHOWN)}"
    "?units=in&center_distance=5&keep=*' \\\n"
    "  -H 'Content-Type: text/csv' --data-binary @angles.csv -o settings.csv"
)
_STANDINGS = {
    "published": "published",
    "from-memory": "from memory, not read again",
    "derived": "derived and cross-checked here",
    "common-practice-no-source": "common practice, no source",
}


@dataclass(frozen=True, slots=True)
class Listed:
    """An operation in the index: `words` are what a search finds it by, beside what is shown."""

    operation: AnyOperation
    words: str


def reference_page(
    operations: Mapping[str, AnyOperation], tables: Iterable[PublishedTable[Any]]
) -> bytes:
    """The overview: index, how to call, tables, problem types, advisories, glossary."""
    topics: dict[str, list[Listed]] = {}
    for operation in operations.values():
        topics.setdefault(operation.topic, []).append(Listed(operation, _words(operation)))
    about = {tag["name"]: tag["description"] for tag in described_tags(topics)}
    shown = operations.get(_SHOWN) or next(iter(operations.values()))
    return _written(
        "reference.html.jinja",
        topics=topics,
        about=about,
        tables=tuple(tables),
        glossary=glossary().values(),
        title_of=title_of,
        problems=PROBLEM_TYPES,
        advisories=advisory_meanings(),
        shown=shown,
        samples=samples_of(shown, json.loads(sample_answer(shown))),
        origin=ORIGIN,
        table_call=_TABLE_CALL,
        formulas_of_cells=FORMULAS_OF_CELLS,
        unit_in_words=unit_in_words,
    )


def operation_page(operation: AnyOperation, order: Sequence[AnyOperation]) -> bytes:
    """The page of one operation; `order` is that of the index, for the next one and the last."""
    answer = json.loads(sample_answer(operation))
    place = order.index(operation)
    request = schema_of(operation.request)
    drawings = [operation.drawing] if operation.drawing else []
    return _written(
        "operation.html.jinja",
        operation=operation,
        query=query_fields(operation.request) is not None,
        sheet=operation.name in WITH_SHEET,
        lines=operation.name == ROUTING,
        sheet_of_example=_sheet_of_example(operation),
        drawings=[as_address(d) for d in drawings],
        answer_drawings=[as_address(d) for d in drawings_in(answer["result"])],
        request=grouped(rows_of(request), form_hints(o.request for o in order)["groups"]),
        rules=rules_of(request),
        plot=plot_of(operation),
        result=[Section(rows_of(schema_of(operation.result, "serialization")))],
        example=shown_json(dict(operation.example)),
        answer=shown_json(without_drawings(answer)),
        advised=answer["advisories"],
        answer_path=EXAMPLE_PATH.format(operation=operation.name),
        samples=samples_of(operation, answer),
        try_path=f"{PAGES_PATH}/try#/{operation.topic}/{operation_id(operation)}",
        before=order[place - 1] if place else None,
        after=order[place + 1] if place + 1 < len(order) else None,
        standings=_STANDINGS,
        fixed_size=FIXED_SIZE,
    )


def _sheet_of_example(operation: AnyOperation) -> str:
    """Address of the sheet of the example; empty where it has none that a link can ask."""
    # That of an overlay is larger than a page.
    flat = query_fields(operation.request) is not None
    if operation.name not in WITH_SHEET or operation.name == OVERLAY or not flat:
        return ""
    query = query_of(operation.request.model_validate(dict(operation.example)))
    return "" if query is None else f"{SHEET_PATH.format(path=operation.path)}?{query}"


def try_page() -> bytes:
    """The page of forms: the packaged one, which reads the contract."""
    return _written("try.html.jinja", digests=PACKAGED)


def _written(template: str, **values: Any) -> bytes:
    common = {"release": __version__, "pages": PAGES_PATH}
    return _environment().get_template(template).render(**common, **values).encode()


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("halfangle_service.http.page"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters["code"] = _code
    environment.filters["origin"] = _origin
    environment.filters["breakable"] = _breakable
    return environment


def _code(text: str) -> Markup:
    """Escape a text and set what stands between backticks as code.

    As plain text in between: `Markup` would escape the marks that are put in.
    """
    escaped = str(escape(text))
    return Markup(re.sub(r"`([^`]+)`", r"<code>\1</code>", escaped))  # noqa: S704  escaped


def _origin(text: str) -> Markup:
    """Escape a call and mark the origin in it, which the page's script replaces by its own."""
    escaped = str(escape(text))
    marked = escaped.replace(ORIGIN, f'<span class="origin">{ORIGIN}</span>')
    return Markup(marked)  # noqa: S704  escaped


def _breakable(name: str) -> Markup:
    """Escape a name and let it go on in the next line after each of its words."""
    return Markup(re.sub(r"([_.])", r"\1<wbr>", str(escape(name))))  # noqa: S704  escaped


def _words(operation: AnyOperation) -> str:
    """Names and titles of all fields of an operation, each once."""
    rows: list[Row] = [
        *rows_of(schema_of(operation.request)),
        *rows_of(schema_of(operation.result, "serialization")),
    ]
    names = dict.fromkeys(re.split(r"[.\s]", row.path)[-1] for row in rows)
    return " ".join(dict.fromkeys(word for n in names for word in (n, title_of(n))))

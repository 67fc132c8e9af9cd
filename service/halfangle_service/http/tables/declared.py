"""What the query string declares of a table: how it is written, and what all rows state alike."""

from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any
from urllib.parse import parse_qsl

from pydantic import ValidationError

from halfangle_service.fields.base import UNITS
from halfangle_service.http.problems import ProblemError, pointer_to, problem_of_validation
from halfangle_service.http.query import parted, query_fields, read_query
from halfangle_service.http.tables.asked import Claims, Filling, NoField, RequestFields
from halfangle_service.http.tables.cells import WrongCell, value_of, values_of
from halfangle_service.http.tables.model import TableForm

#: More parameters than any request has fields.
_MOST_PARAMETERS = 2_000


@dataclass(frozen=True, slots=True)
class Declared:
    """A table's form, and what its rows state alike: as a request, and by which names."""

    form: TableForm
    alike: Filling
    claims: Claims

    @property
    def units(self) -> str:
        """The unit of all lengths, where it is stated for all rows; else empty."""
        units = self.alike.value().get(UNITS)
        return units if isinstance(units, str) else ""


def read_declared(query: bytes, fields: RequestFields) -> Declared:
    """Read the query string; raises ProblemError. Numbers in an address have a decimal point."""
    of_form, rest = parted(query, TableForm.model_fields)
    form = _form(of_form)
    in_address = form.model_copy(update={"decimal": "."})
    filling = Filling({})
    lists: dict[str, list[Any]] = {}
    claims = Claims()
    for name, text in _pairs(rest):
        try:
            field = fields.find(name)
            if name not in lists:
                claims.claim(name, field)
            if field.is_list:
                lists.setdefault(name, []).extend(values_of(text, field.types, in_address))
                filling.put(field, lists[name])
            else:
                filling.put(field, value_of(text, field.types, in_address))
        except (NoField, WrongCell) as error:
            raise _wrong(name, f"{error}{_meant(name)}") from None
    return Declared(form, filling, claims)


def _meant(name: str) -> str:
    """Names the parameter of the form that another one may have meant."""
    found = get_close_matches(name, TableForm.model_fields, n=1)
    return f"; or the parameter {found[0]}?" if found else ""


def _form(query: bytes) -> TableForm:
    body = read_query(query, query_fields(TableForm) or {})
    try:
        return TableForm.model_validate_json(body)
    except ValidationError as error:
        raise problem_of_validation(error, body, TableForm.model_fields) from None


def _pairs(query: bytes) -> list[tuple[str, str]]:
    try:
        return parse_qsl(
            query.decode("ascii"),
            keep_blank_values=True,
            errors="strict",
            max_num_fields=_MOST_PARAMETERS,
        )
    except ValueError as error:
        raise ProblemError("bad-request", f"The query string cannot be read: {error}.") from None


def _wrong(name: str, message: str) -> ProblemError:
    return ProblemError(
        "invalid-request",
        f"{name[:60]} {message.rstrip('?')}.",
        errors=[{"pointer": pointer_to(name), "message": message}],
    )

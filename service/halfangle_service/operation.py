"""One calculation is one Operation: a plain value from which everything else is derived.

A file of `topics` declares one with the decorator `operation`, a published table with
`published_table`. The routes, the contract, the catalogue and the client all follow from them.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from inspect import getdoc
from typing import Any, Generic, TypeVar, cast, get_args, get_type_hints

from pydantic import BaseModel, Field, TypeAdapter, create_model

from halfangle_service.basis import (
    Basis,
    Grounds,
    NamedRow,
    Source,
    grounds_json,
    sources_of_rows,
    sources_of_table,
)
from halfangle_service.errors import Refusal
from halfangle_service.fields import RequestModel, ResultModel
from halfangle_service.fields.advisories import Advisory, reading_notes, rows_read
from halfangle_service.fingerprint import fingerprint_of
from halfangle_service.trade.decimals import without_noise
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import said_in

__all__ = [
    "FIXED_SIZE",
    "Basis",
    "Grounds",
    "NamedRow",
    "Operation",
    "Outcome",
    "Profiles",
    "PublishedTable",
    "Source",
    "answer_model",
    "operation",
    "published_table",
]

#: What bounds the work of most requests.
FIXED_SIZE = "one calculation of fixed size"
#: Named profiles of a shop's equipment, as the subject that reads them has them.
Profiles = Mapping[str, Any]

RequestT = TypeVar("RequestT", bound=RequestModel)
ResultT = TypeVar("ResultT", bound=ResultModel)


@dataclass(frozen=True, slots=True)
class Outcome(Generic[ResultT]):
    """What a calculation gives back: the result, and what an experienced hand would add.

    `rows` are the rows of published tables that it used, beyond those that the request names;
    `stands_on` digests of what the answer depends on besides the request, as a shop's profile.
    """

    result: ResultT
    advisories: tuple[Advisory, ...] = ()
    rows: Sequence[NamedRow] = ()
    stands_on: tuple[str, ...] = ()


@dataclass(frozen=True)
class Operation(Generic[RequestT, ResultT]):
    """One calculation.

    Declared by the decorator `operation`. `verb` may hold hyphens. `example` is a request that
    must run. `largest_request` says in plain words what bounds the work. `heavy` marks what may
    take more than some milliseconds: it runs in a worker thread and counts against the limit of
    concurrent heavy requests; a function tells of each request whether it is heavy. `columns` marks
    a closed form: its function works out columns too. `drawing` is SVG on the reference page, such
    as its sign conventions. `in_a_shop` calculates with profiles that the service has of a shop.
    """

    topic: str
    verb: str
    title: str
    summary: str
    request: type[RequestT]
    result: type[ResultT]
    calculate: Callable[[RequestT], Outcome[ResultT]]
    relations: tuple[str, ...]
    sources: tuple[Source, ...]
    example: Mapping[str, Any]
    largest_request: str = FIXED_SIZE
    heavy: bool | Callable[[RequestT], bool] = False
    columns: bool = False
    drawing: str = ""
    in_a_shop: Callable[[RequestT, Profiles], Outcome[ResultT]] | None = None
    profiles: Profiles = field(default_factory=dict)

    def in_shop(self, profiles: Profiles) -> "Operation[RequestT, ResultT]":
        """The same with these profiles of a shop to choose from; as it is where it takes none."""
        in_a_shop = self.in_a_shop
        if in_a_shop is None:
            return self
        return replace(
            self, calculate=lambda request: in_a_shop(request, profiles), profiles=profiles
        )

    @property
    def name(self) -> str:
        """Dotted name, such as `sine.setting`."""
        return f"{self.topic}.{self.verb}"

    @property
    def path(self) -> str:
        """Path of its route, such as `/v1/sine/setting`."""
        return f"/v1/{self.topic}/{self.verb}"

    @cached_property
    def answer(self) -> type[BaseModel]:
        """Model of the whole answer, for the contract."""
        return answer_model(self.result)

    @cached_property
    def grounds(self) -> bytes:
        """What every answer stands on, as JSON."""
        return grounds_json(self.relations, self.sources)

    def answer_json(self, request: RequestT) -> bytes:
        """Calculate, and write the answer as JSON; raises as `outcome` does."""
        return self.written(request, self.outcome(request))

    def outcome(self, request: RequestT) -> Outcome[ResultT]:
        """Calculate; to the outcome is added what the reading of the request says.

        Raises Refusal where the request cannot be fulfilled.
        """
        try:
            outcome = self.calculate(request)
        except Refusal as refusal:
            units: Units | None = getattr(request, "units", None)
            if units is None:
                raise
            raise refusal.reworded(lambda sentence: said_in(sentence, units)) from refusal
        notes, rows = list(reading_notes(request)), rows_read(request)
        if not notes and not rows:
            return outcome
        return replace(
            outcome, advisories=(*notes, *outcome.advisories), rows=(*rows, *outcome.rows)
        )

    def written(self, request: RequestT, outcome: Outcome[ResultT]) -> bytes:
        """Write an outcome as the answer to its request.

        The result is written by pydantic's serializer for its own class; what the answer stands on
        was written before, but for an answer that used rows of published tables: then it names
        these rows too.
        """
        advisories, rows = outcome.advisories, outcome.rows
        grounds = self.grounds
        if rows:
            grounds = grounds_json(self.relations, (*self.sources, *sources_of_rows(rows)))
        return _envelope(
            without_noise(self.result.__pydantic_serializer__.to_json(outcome.result)),
            _ADVISORIES.dump_json(advisories) if advisories else b"[]",
            grounds,
            self.fingerprint(request, outcome),
        )

    def fingerprint(self, request: RequestT, outcome: Outcome[ResultT]) -> str:
        """Digest of the request as it was read, the release, and what else the answer stands on."""
        asked = self.request.__pydantic_serializer__.to_json(request)
        return fingerprint_of(self.name, asked, outcome.stands_on)


@dataclass(frozen=True)
class PublishedTable(Generic[ResultT]):
    """A published table: `GET /v1/<topic>/<name>` and, with its key, one row of it.

    `rows` gives every row by its key, in the table's order; `in_short` what the listing shows of a
    row (the row itself where it is None); `key` the field that holds a row's key. An answer stands
    on the sources of the rows that it shows.
    """

    topic: str
    name: str
    singular: str
    key: str
    title: str
    summary: str
    item: type[ResultT]
    rows: Callable[[], Mapping[str, ResultT]]
    in_short: Callable[[ResultT], ResultModel] | None = None

    @property
    def path(self) -> str:
        """Path of its listing, such as `/v1/blocks/sets`; the catalogue's own has no topic."""
        return f"/v1/{self.topic}/{self.name}" if self.topic else f"/v1/{self.name}"

    @property
    def dotted_name(self) -> str:
        """Topic and name, such as `blocks.sets`."""
        return f"{self.topic}.{self.name}"

    @cached_property
    def listing(self) -> type[ResultModel]:
        """Model of the listing: one list, called as the table is."""
        entry: Any = get_type_hints(self.in_short)["return"] if self.in_short else self.item
        rows: Any = (list[entry], Field(description="The rows, in order."))
        return create_model(
            f"{entry.__name__.removesuffix('Entry').removesuffix('Row')}List",
            __base__=ResultModel,
            __doc__=f"{self.title}: every row.",
            **{self._list_name: rows},
        )

    @property
    def _list_name(self) -> str:
        return self.name.replace("-", "_")

    @cached_property
    def _rows(self) -> Mapping[str, ResultT]:
        return self.rows()

    def keys(self) -> tuple[str, ...]:
        """The keys that it knows."""
        return tuple(self._rows)

    def list_rows(self) -> ResultModel:
        """The whole table."""
        rows = [row if self.in_short is None else self.in_short(row) for row in self._rows.values()]
        return self.listing(**{self._list_name: rows})

    def get(self, key: str) -> ResultT | None:
        """One row by its key, or None where there is none."""
        return self._rows.get(key)

    @cached_property
    def listing_answer(self) -> type[BaseModel]:
        """Model of the whole answer to the listing, for the contract."""
        return answer_model(self.listing)

    @cached_property
    def item_answer(self) -> type[BaseModel]:
        """Model of the whole answer for one row, for the contract."""
        return answer_model(self.item)

    def answer_json(self, result: ResultModel) -> bytes:
        """Write a row, or the listing, as an answer."""
        shown = [result] if isinstance(result, self.item) else self._rows.values()
        written = result.model_dump_json().encode()
        fingerprint = fingerprint_of(self.dotted_name, written)
        return _envelope(written, b"[]", grounds_json((), sources_of_table(shown)), fingerprint)


def operation(
    name: str,
    *,
    relations: tuple[str, ...],
    sources: tuple[Source, ...],
    example: Mapping[str, Any],
    largest_request: str = FIXED_SIZE,
    heavy: bool | Callable[[Any], bool] = False,
    columns: bool = False,
    drawing: str = "",
) -> Callable[[Callable[[RequestT], Outcome[ResultT]]], Operation[RequestT, ResultT]]:
    """Declare the function below as the operation of this dotted name, such as `sine.setting`.

    Its annotations give request and result; its docstring's first line is the title, the rest the
    summary that a caller reads. One that takes `profiles` is given those of the service's shop.
    """
    topic, _, verb = name.partition(".")

    def declare(calculate: Callable[[RequestT], Outcome[ResultT]]) -> Operation[RequestT, ResultT]:
        hints = get_type_hints(calculate)
        request, *_, outcome = hints.values()
        title, summary = _title_and_summary(calculate)
        return Operation(
            topic=topic,
            verb=verb,
            title=title,
            summary=summary,
            request=request,
            result=get_args(outcome)[0],
            calculate=calculate,
            relations=relations,
            sources=sources,
            example=example,
            largest_request=largest_request,
            heavy=heavy,
            columns=columns,
            drawing=drawing,
            in_a_shop=cast("Any", calculate) if "profiles" in hints else None,
        )

    return declare


def published_table(
    name: str,
    *,
    singular: str,
    key: str,
    in_short: Callable[[Any], ResultModel] | None = None,
) -> Callable[[Callable[[], Mapping[str, ResultT]]], PublishedTable[ResultT]]:
    """Declare the function below, which gives each row by its key, as a published table.

    `name` is dotted (`blocks.sets`); the docstring's first line is the title, the rest the summary.
    """
    topic, _, plural = name.partition(".")

    def declare(rows: Callable[[], Mapping[str, ResultT]]) -> PublishedTable[ResultT]:
        title, summary = _title_and_summary(rows)
        return PublishedTable(
            topic=topic,
            name=plural,
            singular=singular,
            key=key,
            title=title,
            summary=summary,
            item=get_args(get_type_hints(rows)["return"])[1],
            rows=rows,
            in_short=in_short,
        )

    return declare


def _title_and_summary(described: Callable[..., object]) -> tuple[str, str]:
    """First line of a docstring without its full stop, and the rest as one paragraph."""
    title, _, rest = (getdoc(described) or "").partition("\n")
    return title.removesuffix("."), " ".join(rest.split())


_ADVISORIES: TypeAdapter[tuple[Advisory, ...]] = TypeAdapter(tuple[Advisory, ...])


def _envelope(result: bytes, advisories: bytes, grounds: bytes, fingerprint: str) -> bytes:
    """Put the parts of an answer together, each written as JSON already."""
    parts = (result, advisories, grounds[:-1], fingerprint.encode())
    return b'{"result":%b,"advisories":%b,"basis":%b,"fingerprint":"%b"}}' % parts


def answer_model(result: type[ResultModel]) -> type[BaseModel]:
    """Give the model of an answer that carries this result: `XResult` makes `XAnswer`."""
    name = result.__name__.removesuffix("Result") + "Answer"
    return create_model(
        name,
        __base__=ResultModel,
        __doc__=f"An answer: {result.__name__}, advisories, and what it stands on.",
        result=(result, ...),
        advisories=(list[Advisory], Field(description="What an experienced hand would add.")),
        basis=(Basis, Field(description="Formulas, sources, release and fingerprint.")),
    )

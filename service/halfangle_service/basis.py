"""What an answer stands on: its formulas, its sources, its release."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import Any, Protocol

from pydantic import Field

from halfangle_service import __version__
from halfangle_service.fields import ResultModel
from halfangle_service.trade.tables.loader import Standing


class Source(ResultModel):
    """Where a relation or a value comes from."""

    citation: str = Field(
        description="Author, title, edition, year, clause or page; or the derivation."
    )
    standing: Standing = Field(
        description="`published`: read in the text cited or its reprint; `from-memory`: recalled, "
        "not read again; `derived`: worked out and cross-checked by this project; "
        "`common-practice-no-source`: what the trade does, with no source."
    )


class Grounds(ResultModel):
    """What answers of one kind stand on, whatever was asked."""

    relations: list[str] = Field(description="The formulas used, as text.")
    sources: list[Source] = Field(description="Where formulas and values come from.")
    release: str = Field(
        description="Release of the calculations: on one installation the same request at the same "
        "release gives the same bytes.",
        examples=[__version__],
    )


class Basis(Grounds):
    """What an answer stands on."""

    fingerprint: str = Field(
        description="Digest of the request, as it was read, and the release: the same for the same "
        "request however it is written, another where the answer may be another.",
        examples=["2ff894bf4535a37a"],
    )


class NamedRow(Protocol):
    """A row of a published table: its designation, where it comes from, and how it is had."""

    @property
    def designation(self) -> str: ...  # noqa: D102  said by the class

    @property
    def source(self) -> str: ...  # noqa: D102

    @property
    def standing(self) -> Standing: ...  # noqa: D102


def sources_of_rows(rows: Iterable[NamedRow]) -> list[Source]:
    """Each source that rows come from, once for each standing, with the rows' designations."""
    named: dict[tuple[str, Standing], dict[str, None]] = defaultdict(dict)
    for row in rows:
        named[row.source, row.standing][row.designation] = None
    return [
        Source(citation=f"{source}: {', '.join(names)}", standing=standing)
        for (source, standing), names in named.items()
    ]


def sources_of_table(rows: Iterable[Any]) -> list[Source]:
    """Each source that rows of a table as served name, once for each standing."""
    cited = dict.fromkeys((row.source, row.standing) for row in rows if hasattr(row, "source"))
    return [Source(citation=source, standing=standing) for source, standing in cited]


def grounds_json(relations: Sequence[str], sources: Sequence[Source]) -> bytes:
    """Write what answers stand on at this release."""
    grounds = Grounds(relations=list(relations), sources=list(sources), release=__version__)
    return grounds.model_dump_json().encode()

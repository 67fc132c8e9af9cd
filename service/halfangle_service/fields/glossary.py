"""The glossary: every field of every request and result, and every option, each with one meaning.

`glossary.toml` holds the names of fields, `options.toml` the labels of options. A test fails on any
field or option of the contract that is not in them, and on any entry that nothing uses.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from halfangle_service.trade.tables.loader import read_toml


@dataclass(frozen=True, slots=True)
class Term:
    """A name of a field: its symbol in the formulas, unit, datum and meaning; empty where none.

    `unit` is the token of `x-unit`; several are joined by a bar where a quantity is a length here
    and an angle there by its nature, as in an estimate. `title` is what a form writes beside the
    field, where that is not the name itself in words.
    """

    name: str
    symbol: str
    unit: str
    datum: str
    meaning: str
    title: str = ""


#: Units at the end of a name: a form writes them after the value, not in the title.
_UNIT_AT_END = re.compile(r"_(arcsec|celsius|percent|seconds|m_per_s|ft_per_min)$")
_WRITTEN_LARGE = {"tir": "TIR", "rpm": "RPM"}


@cache
def title_of(name: str) -> str:
    """What a form writes beside a field of this name: `center_distance` is 'Center distance'."""
    term = glossary().get(name)
    if term is not None and term.title:
        return term.title
    words = _UNIT_AT_END.sub("", name).split("_")
    title = " ".join(_WRITTEN_LARGE.get(word, word) for word in words)
    return title[:1].upper() + title[1:]


@cache
def glossary() -> dict[str, Term]:
    """Every field's term by its name, in the order of the alphabet."""
    rows: Mapping[str, Mapping[str, str]] = read_toml(__name__, "glossary.toml")
    return {name: Term(name, **rows[name]) for name in sorted(rows)}


@cache
def option_labels() -> dict[str, str]:
    """The label of every option by its token."""
    return dict(read_toml(__name__, "options.toml"))

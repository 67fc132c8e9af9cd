"""Standard tapers and rates by what a toolmaker calls them: `morse-3` as well as `MT3` or `3 MT`.

A name that is not a designation itself is read by the series and number in it. Nothing is guessed:
a name that may mean rows of different slopes is refused with those rows, an unknown one with those
that look alike.
"""

import re
from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from functools import cache, lru_cache

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.trade.tables.tapers.rates import Rate, standard_rates
from halfangle_service.trade.tables.tapers.standard import StandardTaper, standard_tapers

Row = StandardTaper | Rate

#: Words for a series and the designations that its number makes; `{}` is the number. A number of
#: Brown & Sharpe has several lengths, which share rate and small end.
_SERIES: Mapping[str, tuple[str, ...]] = {
    "morse-{}": ("mt", "mk", "morse", "morse taper"),
    "brown-sharpe-{}-*": ("bs", "b s", "b and s", "brown sharpe", "brown and sharpe"),
    "drill-chuck-{}": ("jt", "drill chuck", "drill chuck taper"),
    "jarno-{}": ("jarno", "jarno taper"),
    "metric-{}": ("me", "metric", "metric taper"),
    "7-24-{}": ("nt", "nmt", "nmtb", "7/24", "7:24", "7 24", "steep taper"),
    "7-24-{}-iso": ("iso", "sk", "int", "bt", "7/24 iso", "iso 7/24"),
}
#: Only before the number: CM3 is a Morse taper in French and Italian, 3 cm is a length.
_BEFORE_NUMBER: Mapping[str, str] = {"cm": "morse-{}"}
_RATES: Mapping[str, tuple[str, ...]] = {
    "pipe-taper": ("pipe", "pipe taper", "npt", "bspt"),
    "taper-pin-*": ("pin", "taper pin"),
    "iso-7:24": ("7/24",),
}
#: No name of a row is longer; what follows says nothing of which row was meant.
LONGEST_NAME = 24
_PATTERN_OF = {word: pattern for pattern, words in _SERIES.items() for word in words}
_RATE_OF = {word: pattern for pattern, words in _RATES.items() for word in words}
_NUMBER = r"[0-9]{1,3}(?:\.[0-9])?(?: short)?"
_AFTER = re.compile(rf"(?P<word>.*?)\s*(?P<number>{_NUMBER})")
_BEFORE = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<word>[a-z].*)")
_RATIO = re.compile(
    r"(?:(?:iso|c|taper) ?)?([0-9]{1,3})(?: ?: ?| in )([0-9]{1,3}(?:\.[0-9]{1,3})?)"
)


def rows_named(text: str) -> tuple[Row, ...]:
    """Rows that a name means: its own, or those of a series' number; none where it is unknown."""
    row = all_rows().get(text)
    return (row,) if row is not None else _rows_called(text)


def rate_of(designation: str, *, field: str = "designation") -> float:
    """Rate of taper C, a pure number on the diameter, of a standard taper or rate.

    Raises Unreachable, naming `field` and the designations that look alike, or Disagreement where
    the name means rows of different rates.
    """
    rows = rows_named(designation) or _unknown(designation, field)
    if len({row.rate for row in rows}) > 1:
        raise _ambiguous(designation, field, rows)
    return rows[0].rate


def find_standard(designation: str, *, field: str = "designation") -> StandardTaper:
    """Give a standard taper with its sizes; raises as `rate_of` does, and at a mere rate.

    `field` is the request's field that named it.
    """
    rows = rows_named(designation) or _unknown(designation, field)
    if len(rows) > 1:
        raise _ambiguous(designation, field, rows)
    if isinstance(rows[0], Rate):
        raise Unreachable(
            f"{rows[0].designation} is a rate of taper and has no sizes of its own.",
            fields={field: "should be one that GET /v1/tapers/standard lists"},
        )
    return rows[0]


def one_standard(designation: str | None) -> StandardTaper | None:
    """The standard taper that a name means, None where it means none or more than one."""
    rows = rows_named(designation) if designation else ()
    return rows[0] if len(rows) == 1 and isinstance(rows[0], StandardTaper) else None


def similar(text: str) -> list[str]:
    """Designations like a name: the nearest rates, those of its series, or those spelled alike."""
    spelled = _plain_spelling(text)
    if found := _RATIO.fullmatch(spelled):
        return _nearest_rates(float(found[1]), float(found[2]))
    word, number = _parts(spelled)
    pattern = _PATTERN_OF.get(word)
    if pattern is None:
        return _alike(text.casefold(), list(all_rows()), 0.6)
    series = _matching(pattern.replace("{}", "*"))
    return _alike(pattern.format(number).removesuffix("-*"), series, 0.4) or series[:5]


def _nearest_rates(top: float, bottom: float) -> list[str]:
    """The five rates of the standard nearest to a ratio, top:bottom."""
    rates = [row for row in standard_rates().values() if row.designation.startswith("iso-")]
    rates.sort(key=lambda row: abs(row.rate * bottom - top))
    return [row.designation for row in rates[:5]]


def _alike(wanted: str, known: list[str], cutoff: float) -> list[str]:
    return get_close_matches(wanted[:LONGEST_NAME], known, n=5, cutoff=cutoff)


@cache
def all_rows() -> dict[str, Row]:
    """Every standard taper and rate by its designation."""
    return {**standard_tapers(), **standard_rates()}


@cache
def _rows_by_any_case() -> dict[str, Row]:
    return {designation.casefold(): row for designation, row in all_rows().items()}


@lru_cache(maxsize=512)
def _rows_called(text: str) -> tuple[Row, ...]:
    spelled = _plain_spelling(text)
    row = _rows_by_any_case().get(text.strip().casefold())
    if row is not None:
        return (row,)
    if found := _RATIO.fullmatch(spelled):
        return _of((f"iso-{found[1]}:{found[2]}",))
    if spelled in _RATE_OF:
        return _of(_matching(_RATE_OF[spelled]))
    word, number = _parts(spelled)
    pattern = _PATTERN_OF.get(word)
    if pattern is None and spelled.startswith(word):
        pattern = _BEFORE_NUMBER.get(word)
    return _of(_matching(pattern.format(number))) if pattern else ()


def _of(designations: Iterable[str]) -> tuple[Row, ...]:
    return tuple(all_rows()[name] for name in designations if name in all_rows())


def _parts(spelled: str) -> tuple[str, str]:
    """Word and number of a name in plain spelling, whichever comes first; empty where neither."""
    found = _AFTER.fullmatch(spelled) or _BEFORE.fullmatch(spelled)
    return (found["word"].strip(), found["number"].replace(" ", "-")) if found else ("", "")


def _plain_spelling(text: str) -> str:
    """One spelling of a name: small letters, no 'No.' or '#', halves as decimals."""
    spelled = text.casefold().replace("½", " 1/2").replace("&", " ")
    spelled = re.sub(r"(?<=[0-9])[ -]+1/2", ".5", spelled)
    spelled = re.sub(r"#|\b(?:no|number|size)\b\.?", " ", spelled)
    spelled = re.sub(r"[=()_-]", " ", spelled)
    spelled = re.sub(r"(?<=[0-9])s\b", " short", spelled)
    return " ".join(spelled.split())


def _matching(pattern: str) -> list[str]:
    """Designations of a pattern in which `*` stands for anything."""
    wanted = re.compile(re.escape(pattern).replace(r"\*", ".*"))
    return [name for name in all_rows() if wanted.fullmatch(name)]


def _unknown(designation: str, field: str) -> tuple[Row, ...]:
    raise Unreachable(
        f"There is no standard taper or rate {designation[:60]!r}.",
        fields={field: "should be one that GET /v1/tapers/standard or GET /v1/tapers/rates lists"},
        more={"similar": similar(designation)},
    )


def _ambiguous(designation: str, field: str, rows: tuple[Row, ...]) -> Disagreement:
    names = [row.designation for row in rows]
    return Disagreement(
        f"{designation[:60]!r} may mean {' or '.join(names)}.",
        fields={field: f"should be one of {', '.join(names)}"},
        more={"similar": names},
    )

"""Units in the headers of a table, in brackets after the name: `height [in]`."""

import re
from collections.abc import Iterable

#: How a unit may be written, the first as it is written here; `{u}` is the request's `units`.
_SPELLINGS: dict[str, tuple[str, ...]] = {
    "length": ("{u}",),
    "volume": ("{u}³", "{u}3", "{u}^3"),
    "length_per_minute": ("{u}/min",),
    "arcsecond_per_length": ("arcsec/{u}",),
    "length_per_length": ("{u}/{u}",),
    "degree": ("°", "deg", "degree", "degrees"),
    "arcsecond": ("arcsec", "″", '"', "arc-seconds"),
    "celsius": ("°C", "degC", "celsius"),
    "per_kelvin": ("1/K",),
    "percent": ("%", "percent"),
    "micrometre": ("µm", "\N{GREEK SMALL LETTER MU}m", "um"),
    "nanometre": ("nm",),
    "millimetre": ("mm",),
    "inch": ("in",),
    "inch_per_foot": ("in/ft",),
    "per_minute": ("1/min", "rpm"),
    "metre_per_second": ("m/s",),
    "foot_per_minute": ("ft/min",),
    "second": ("s",),
    "minute": ("min",),
    "newton": ("N",),
    "kilogram": ("kg",),
    "year": ("a", "year", "years"),
    "microradian": ("µrad", "urad"),
}
_HEADER = re.compile(r"(.*?)\s*\[([^\[\]]*)\]", re.DOTALL)
#: What stands for the unit of lengths where each row states its own.
OF_THE_ROW = "units"


def name_and_unit(header: str) -> tuple[str, str | None]:
    """Part a header cell into the name and the unit in brackets, if there is one.

    >>> name_and_unit("height [in]"), name_and_unit(" angle ")
    (('height', 'in'), ('angle', None))
    """
    found = _HEADER.fullmatch(header.strip())
    if found is None:
        return header.strip(), None
    return found[1], found[2].strip()


def spellings(units: Iterable[str], lengths_in: str) -> tuple[str, ...]:
    """How the unit of a field may be written; nothing where it has none, or one of its own row.

    `units` are the tokens of `x-unit` in its alternatives.
    """
    tokens = set(units)
    if len(tokens) != 1:
        return ()
    return tuple(one.format(u=lengths_in) for one in _SPELLINGS.get(tokens.pop(), ()))

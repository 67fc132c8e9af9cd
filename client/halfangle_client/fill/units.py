"""Units in headers, in brackets after the name, written as the tables of the service write them."""

import re
from collections.abc import Mapping

_BRACKETED = re.compile(r"(.*\S)\s*[\[(]([^\[\]()]*)[\])]\s*", re.DOTALL)
#: How a unit is written, first as it is written here; `{u}` is the request's `units`.
_SPELLINGS: Mapping[str, tuple[str, ...]] = {
    "length": ("{u}",),
    "volume": ("{u}³", "{u}3", "{u}^3"),
    "length_per_minute": ("{u}/min",),
    "arcsecond_per_length": ("arcsec/{u}", "″/{u}"),
    "length_per_length": ("{u}/{u}",),
    "degree": ("°", "deg", "degree", "degrees", "grad", "dms", "°′″"),
    "arcsecond": ("arcsec", "″", '"', "arc-seconds", "arcseconds"),
    "celsius": ("°C", "degC", "celsius"),
    "per_kelvin": ("1/K", "/K"),
    "percent": ("%", "percent"),
    "micrometre": ("µm", "\N{GREEK SMALL LETTER MU}m", "um"),
    "nanometre": ("nm",),
    "millimetre": ("mm", "millimetre", "millimetres", "millimeters"),
    "inch": ("in", "inch", "inches", '"', "in."),
    "inch_per_foot": ("in/ft",),
    "per_minute": ("1/min", "rpm"),
    "metre_per_second": ("m/s",),
    "foot_per_minute": ("ft/min",),
    "second": ("s", "sec", "seconds"),
    "minute": ("min", "minutes"),
    "newton": ("N",),
    "kilogram": ("kg",),
    "year": ("a", "year", "years"),
    "microradian": ("µrad", "urad"),
}
#: Units that no field is in, so that a header in one is not taken for a name.
_FOREIGN = (
    "rad",
    "mrad",
    "cm",
    "m",
    "ft",
    "foot",
    "feet",
    "thou",
    "mil",
    "µin",
    "°F",
    "arcmin",
    "′",
)
_LENGTHS = {"in": "inch", "mm": "millimetre"}
#: What stands for the unit of lengths where each row states its own.
OF_THE_ROW = "units"


def name_and_unit(header: str) -> tuple[str, str]:
    """Part a header into its name and the unit in brackets; of no unit all of it is the name.

    >>> name_and_unit("Height [in]"), name_and_unit("Angle (drawing)"), name_and_unit("Angle")
    (('Height', 'in'), ('Angle (drawing)', ''), ('Angle', ''))
    """
    found = _BRACKETED.fullmatch(header)
    if found and found[2].strip().casefold() in _KNOWN:
        return found[1], found[2].strip()
    return header.strip(), ""


def sign_of(unit: str, lengths_in: str) -> str:
    """How a unit is written in a header; nothing where there is none, or one of several."""
    spellings = _SPELLINGS.get(unit, ("",))
    return spellings[0].format(u=lengths_in or OF_THE_ROW)


def length_unit_of(written: str) -> str:
    """`in` or `mm` of a unit in a header; nothing where it is another."""
    for unit, name in _LENGTHS.items():
        if written.casefold() in map(str.casefold, _SPELLINGS[name]):
            return unit
    return ""


def fits(written: str, unit: str, lengths_in: str) -> bool:
    """Whether a unit in a header is that of a field; `unit` may name several, parted by `|`.

    >>> fits("mm", "length", "in"), fits("mm", "length", ""), fits("deg", "degree", "in")
    (False, True, True)
    """
    return any(_fits_one(written, one, lengths_in) for one in unit.split("|"))


def _fits_one(written: str, unit: str, lengths_in: str) -> bool:
    if unit == "length" and length_unit_of(written):
        return lengths_in in {"", OF_THE_ROW, length_unit_of(written)}
    if unit not in _SPELLINGS:
        return True
    known = [spelling.format(u=lengths_in or OF_THE_ROW) for spelling in _SPELLINGS[unit]]
    return written.casefold() in map(str.casefold, known)


_KNOWN = frozenset(
    spelling.format(u=u).casefold()
    for spellings in (*_SPELLINGS.values(), _FOREIGN, (OF_THE_ROW,))
    for spelling in spellings
    for u in (*_LENGTHS, OF_THE_ROW)
)

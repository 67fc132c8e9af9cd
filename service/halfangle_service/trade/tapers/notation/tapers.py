"""Notations of a taper: diameter over length, in the ways that drawings write it.

Each form is a pattern and a reader. A reader gives the rate as an exact number and says how it was
read, or refuses a text that has two meanings. Whether the rate is on the diameter or on the radius
is said by the words beside it.
"""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from halfangle_service.errors import Disagreement
from halfangle_service.trade.tapers.notation.amounts import (
    AMOUNT,
    FRACTION,
    NUMBER,
    UNIT,
    amount,
    in_inches,
    over,
    unit_of,
)
from halfangle_service.trade.tapers.notation.refusals import ambiguous, unread
from halfangle_service.trade.tapers.notation.senses import Sense

#: Ratios of standards that could be taken for degrees and minutes.
_STANDARD_RATIOS = {("7", "24")}
#: Denominators of the inch rule: a fraction with one is as often inches a foot as a ratio.
_INCH_RULE = frozenset({2, 4, 8, 16, 32, 64})
#: Words after which two whole numbers are a ratio, not degrees and minutes.
_SURELY = frozenset({Sense.TAPER, Sense.RATE, Sense.DIAMETER})


@dataclass(frozen=True, slots=True)
class Taper:
    """A taper as written: change of width for one unit of length, and how it was read."""

    rate: Fraction
    read_as: str


@dataclass(frozen=True, slots=True)
class _Written:
    """A figure that has a form: its parts, the whole text, and what the words beside it say."""

    found: re.Match[str]
    said: str
    senses: frozenset[Sense]

    def __getitem__(self, part: str) -> str:
        return self.found[part] or ""

    def may_mean(self, rates: dict[str, Fraction], angles: dict[str, float]) -> Disagreement:
        """Refuse it with its meanings: rates, and angles as written in degrees."""
        side = " per side" if Sense.SIDE in self.senses else ""
        on = 1 if side else 2
        tapers = {f"{text}{side}": math.atan(float(rate / on)) for text, rate in rates.items()}
        return ambiguous(self.said, {**tapers, **angles})


def read_taper(text: str, said: str, senses: frozenset[Sense]) -> Taper | None:
    """Read a figure as a taper, None where it is none.

    `said` is the whole text, for refusals; `senses` what the words beside the figure say.
    """
    for pattern, reader in _FORMS:
        if found := pattern.fullmatch(text):
            return reader(_Written(found, said, senses))
    return None


def _sizes(text: _Written) -> Taper:
    parts = _SIZE.findall(text.found[0])
    sizes = {"L" if name in "Ll" else name: Fraction(size) for name, size, _ in parts}
    units = {unit_of(unit) for _, _, unit in parts if unit}
    if len(sizes) < len(parts) or len(units) > 1:
        raise unread(text.said, "One each of D, d and L is needed, in one unit.")
    return Taper(over(sizes["D"] - sizes["d"], sizes["L"]), "two diameters and a length")


def _across(text: _Written) -> Taper:
    """Ø20-Ø18 x 40: both diameters, and the length between them."""
    units = {unit_of(unit) for unit in text.found.groups()[1::2] if unit}
    if len(units) > 1:
        raise unread(text.said, "Both diameters and the length are needed in one unit.")
    first, second, length = (Fraction(size) for size in text.found.groups()[::2])
    return Taper(over(abs(first - second), length), "two diameters and a length")


def _percent(text: _Written) -> Taper:
    if text["sign"] in ("‰", "per mille"):
        return Taper(amount(text["amount"]) / 1000, "per mille of taper")
    return Taper(amount(text["amount"]) / 100, "percent of taper")


def _named(text: _Written) -> Taper:
    """Taper per foot or per inch by its name."""
    if text["name"] in ("tpf", "t.p.f.", "taper per foot"):
        return _per_foot(amount(text["amount"]))
    return Taper(amount(text["amount"]), "inches for one inch of length")


def _per(text: _Written) -> Taper | None:
    """An amount for a length, with the unit of one of them at least."""
    if not text["of"] and not text["per"]:
        return None
    if not text["per"]:
        raise unread(text.said, f"{text.said!r} does not say the unit of the length.")
    per = unit_of(text["per"])
    if not text["of"] and (per == "m" or (per == "ft" and text["length"])):
        raise unread(text.said, f"{text.said!r} does not say the unit of the diameter.")
    # Alone, `per foot` means inches for a foot; beside any other unit the amount has that unit.
    of = unit_of(text["of"]) if text["of"] else "in" if per == "ft" else per
    rise, run = amount(text["amount"]), amount(text["length"] or "1")
    if (of, per) == ("in", "ft") and run == 1:
        return _per_foot(rise)
    return Taper(over(rise * in_inches(of), run * in_inches(per)), "amount for a length")


def _per_foot(inches: Fraction) -> Taper:
    return Taper(inches / 12, "inches for one foot of length")


def _ratio(text: _Written) -> Taper:
    """a:b, a in b: a for b of length."""
    top, bottom = text["top"], text["bottom"]
    a, b = amount(top), amount(bottom)
    rate = over(a, b)
    if a > b and a != 1:
        raise text.may_mean({f"{bottom} in {top}": 1 / rate, _one_in(rate): rate}, {})
    whole = top.isdigit() and bottom.isdigit() and ":" in text["sign"]
    minutes = whole and a > 1 and b < 60 and (top, bottom) not in _STANDARD_RATIOS
    if minutes and not text.senses & _SURELY:
        raise text.may_mean({f"{top} in {bottom}": rate}, _as_minutes(top, bottom, text.senses))
    return Taper(rate, "ratio of taper")


def _as_minutes(degrees: str, minutes: str, senses: frozenset[Sense]) -> dict[str, float]:
    """Two whole numbers as degrees and minutes: the half angle in radians as the words allow."""
    angle = math.radians(int(degrees) + int(minutes) / 60.0)
    written = f"{degrees}°{int(minutes):02d}'"
    both = {f"{written} included": angle / 2.0, f"{written} half": angle}
    if senses & {Sense.SIDE, Sense.HALF}:
        both.pop(f"{written} included")
    elif Sense.INCLUDED in senses:
        both.pop(f"{written} half")
    return both


def _fraction(text: _Written) -> Taper:
    """A fraction alone: inches a foot, or a ratio, as often the one as the other."""
    value = amount(text["amount"])
    whole, _, rest = text["amount"].replace("-", " ").rpartition(" ")
    top, bottom = rest.split("/")
    if text["unit"] and unit_of(text["unit"]) != "in":
        raise unread(text.said, f"{text.said!r} does not say for what length.")
    if Sense.RATE in text.senses and not text["unit"]:
        return Taper(value, "rate of taper")
    if text["unit"] or whole or int(bottom) in _INCH_RULE:
        ratio = _one_in(value) if whole or value > 1 else f"{top} in {bottom}"
        raise text.may_mean({f"{text['amount']} per foot": value / 12, ratio: value}, {})
    if value > 1:
        raise text.may_mean({f"{bottom} in {top}": 1 / value, _one_in(value): value}, {})
    return Taper(value, "ratio of taper")


def _number(text: _Written) -> Taper | None:
    """A number alone is a rate where a word says so."""
    return Taper(amount(text.found[0]), "rate of taper") if Sense.RATE in text.senses else None


def _one_in(rate: Fraction) -> str:
    """A rate written 1:x with a decimal x."""
    return f"1:{float(1 / rate):.12f}".rstrip("0").rstrip(".")


_SIZE = re.compile(rf"([DdLl]) ?=? ?Ø? ?({NUMBER}) ?({UNIT})?[ ,;]*")
_DIAMETER = rf"[Øø] ?({NUMBER}) ?({UNIT})?"
_AMOUNT = rf"(?P<amount>{AMOUNT})"
_NAME = r"(?P<name>tpf|t\.p\.f\.|taper per foot|tpi|t\.p\.i\.|taper per inch)"
_FORMS: tuple[tuple[re.Pattern[str], Callable[[_Written], Taper | None]], ...] = (
    (re.compile(rf"(?:[DdLl] ?=? ?Ø? ?{NUMBER} ?{UNIT}?[ ,;]*){{3}}"), _sizes),
    (re.compile(rf"{_DIAMETER} ?(?:-|/|to) ?{_DIAMETER} ?x ?({NUMBER}) ?({UNIT})?"), _across),
    (re.compile(rf"{_AMOUNT} ?(?P<sign>%|percent|per cent|pct|‰|per mille)"), _percent),
    (re.compile(rf'{_AMOUNT} ?(?:in\.?|inch|")? ?{_NAME}'), _named),
    (re.compile(rf"{_NAME} ?[=:]? ?{_AMOUNT}"), _named),
    (re.compile(rf"(?P<amount>{FRACTION}) ?(?P<unit>{UNIT})?"), _fraction),
    (re.compile(rf"(?P<top>{AMOUNT})(?P<sign> ?: ?| in | on )(?P<bottom>{NUMBER})"), _ratio),
    (re.compile(rf"(?P<top>{NUMBER})(?P<sign> ?/ ?)(?P<bottom>{NUMBER})"), _ratio),
    (re.compile(NUMBER), _number),
    (
        re.compile(
            rf"{_AMOUNT} ?(?P<of>{UNIT})?(?: ?/ ?| ?per | ?in | ?on | ?over )"
            rf"(?P<length>{AMOUNT})? ?(?P<per>{UNIT})?"
        ),
        _per,
    ),
)

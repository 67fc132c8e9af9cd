"""Angle strings: `format: angle` of the contract by the bounds it is held to, and their spellings.

The contract has one format for all angle strings: the value of each is held to the bounds of its
field. A generator and a validator know a format by its name alone,
so here each gets a name of its own bounds.
"""

import copy
import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from halfangle_service.fields.angles import ANGLE_FORMAT, LONGEST_ANGLE
from halfangle_service.http.contract.shared import ANGLE_COMPONENT, REFERENCE
from halfangle_service.trade.angles import DMS_PATTERN, parse_dms

TENTHS_PER_DEGREE = 36_000
#: Degrees, minutes and seconds by their signs, by blanks, by colons; parts left out, signs before.
SPELLINGS = (
    "{sign}{degrees}°{minutes}'{seconds}\"",
    "{sign}{degrees}° {minutes}′ {seconds}″",
    "{sign}{degrees}°{minutes:02d}’{seconds}”",
    "{sign}{degrees} {minutes} {seconds}",
    "{sign}{degrees}:{minutes:02d}:{seconds}",
    "{plus}{degrees}°{decimal_minutes}'",
    "{plus}{degrees} {decimal_minutes}",
    "{sign}{degrees}:{minutes:02d}",
    "{plus}{degrees}°",
)


@dataclass(frozen=True)
class AngleBounds:
    """Bounds of an angle in degrees, as its field has them."""

    low: float
    high: float
    without_low: bool
    without_high: bool

    @classmethod
    def of(cls, number: Mapping[str, Any]) -> "AngleBounds":
        """Read the bounds that stand beside both forms of an angle."""
        low = number.get("exclusiveMinimum", number.get("minimum"))
        high = number.get("exclusiveMaximum", number.get("maximum"))
        if low is None or high is None:
            raise ValueError(f"an angle without bounds: {number}")
        return cls(low, high, "exclusiveMinimum" in number, "exclusiveMaximum" in number)

    @property
    def format(self) -> str:
        """Name of the format that is held to these bounds."""
        low = f"{'over' if self.without_low else 'from'} {self.low}"
        return f"{ANGLE_FORMAT} {low} {'below' if self.without_high else 'to'} {self.high}"

    @property
    def tenths(self) -> tuple[int, int]:
        """First and last tenth of an arc-second that can lie within."""
        low, high = self.low * TENTHS_PER_DEGREE, self.high * TENTHS_PER_DEGREE
        return math.floor(low) + 1 if self.without_low else math.ceil(low), math.ceil(high) - (
            1 if self.without_high else 0
        )

    def holds(self, text: str) -> bool:
        """True where the text is an angle, and its value lies within."""
        if len(text) > LONGEST_ANGLE or not re.fullmatch(DMS_PATTERN, text):
            return False
        degrees = parse_dms(text)
        above = degrees > self.low if self.without_low else degrees >= self.low
        return above and (degrees < self.high if self.without_high else degrees <= self.high)


def spelled(tenths: int, spelling: str) -> str:
    r"""Spell an angle of so many tenths of an arc-second.

    >>> spelled(1089200, SPELLINGS[0]), spelled(-3_005, SPELLINGS[3]), spelled(36_300, SPELLINGS[5])
    ('30°15\'20"', '-0 5 0.5', "+1°0.5'")
    """
    degrees, rest = divmod(abs(tenths), TENTHS_PER_DEGREE)
    sign = "-" if tenths < 0 else ""
    return spelling.format(
        sign=sign,
        plus=sign or "+",
        degrees=degrees,
        minutes=rest // 600,
        seconds=f"{rest % 600 / 10:g}",
        decimal_minutes=f"{round(rest / 600, 9):.9g}",
    )


def with_formats_by_bounds(contract: dict[str, Any]) -> tuple[dict[str, Any], set[AngleBounds]]:
    """Give a contract whose angle strings each have the format of their bounds, and all bounds.

    Pattern and length are part of the format then: a generator that reads them makes strings of
    them, and not by the format.
    """
    made = copy.deepcopy(contract)
    found = set()
    for angle in _angles(made):
        bounds = AngleBounds.of(angle)
        del angle["$ref"]
        angle["anyOf"] = [{"type": "number"}, {"type": "string", "format": bounds.format}]
        found.add(bounds)
    del made["components"]["schemas"][ANGLE_COMPONENT]
    return made, found


def _angles(schema: Any) -> Iterator[dict[str, Any]]:
    """Give every angle of a request in a document."""
    if isinstance(schema, list):
        for inside in schema:
            yield from _angles(inside)
    elif isinstance(schema, dict):
        if schema.get("$ref") == REFERENCE.format(model=ANGLE_COMPONENT):
            yield schema
        for inside in schema.values():
            yield from _angles(inside)

"""Makes one request out of another: other numbers, other options, fields more or fewer."""

import copy
import random
import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from releases.paths import Json, Place, general
from releases.schemas import FieldAt, Node

MM_PER_INCH = 25.4
_DIGITS = re.compile(r"\d+(?:\.\d+)?")
#: Names in plain requests: nothing of a person's, all of the shop in the tests.
WORDS = ("HL-0412", "HL-0413", "grinder 1", "grinder 2", "base", "top", "second op")


@dataclass
class Pools:
    """Values that fields have had in known requests, by what they are asked in."""

    _values: dict[tuple[str, str, str], list[Json]] = field(default_factory=dict)

    def learn(self, operation: str, node: Node, request: Json) -> None:
        """Take the values of a request."""
        units = units_of(request)
        for sent in node.sent(request):
            for key in self._keys(operation, sent.place, units):
                values = self._values.setdefault(key, [])
                if sent.value not in values:
                    values.append(sent.value)

    def values(self, operation: str, place: Place, units: str) -> list[Json]:
        """Give the values known for a field: of this operation, else of the same name elsewhere."""
        found = (self._values.get(key) for key in self._keys(operation, place, units))
        return next((values for values in found if values), [])

    @staticmethod
    def _keys(operation: str, place: Place, units: str) -> list[tuple[str, str, str]]:
        names = [position for position, part in enumerate(place) if isinstance(part, str)]
        return [(operation, general(place), units), ("", general(place[names[-1] :]), units)]


def units_of(request: Json) -> str:
    """Units of a request; empty where it has none."""
    return str(request.get("units", "")) if isinstance(request, dict) else ""


def value_at(request: Json, place: Place) -> Json:
    """Give the value at a place."""
    for part in place:
        request = request[part]
    return request


def with_value(request: Json, place: Place, value: Json) -> Json:
    """Give a request with another value at a place."""
    made = copy.deepcopy(request)
    value_at(made, place[:-1])[place[-1]] = value
    return made


def without(request: Json, place: Place) -> Json:
    """Give a request without what is at a place."""
    made = copy.deepcopy(request)
    del value_at(made, place[:-1])[place[-1]]
    return made


class Mutator:
    """Changes requests of one operation, by chance and within their schema."""

    def __init__(self, operation: str, node: Node, pools: Pools, chance: random.Random) -> None:
        self._operation = operation
        self._node = node
        self._pools = pools
        self._chance = chance

    def changed(self, request: Json) -> Json:
        """Give a request with one thing changed."""
        ways: list[tuple[Callable[[Json], Json], int]] = [
            (self._other_number, 40),
            (self._added, 22),
            (self._left_out, 8),
            (self._swapped, 12),
            (self._other_option, 12),
            (self._other_list, 10),
            (self._as_text, 4),
            (self._scaled, 5),
            (self._other_units, 5),
        ]
        way = self._chance.choices([w for w, _ in ways], [weight for _, weight in ways])[0]
        return way(request)

    def _pick(self, found: Iterable[Any]) -> Any:
        rows = list(found)
        return self._chance.choice(rows) if rows else None

    def _other_number(self, request: Json) -> Json:
        numeric = (
            s
            for s in self._node.sent(request)
            if s.schema.kind in {"number", "angle", "integer"}
            and isinstance(s.value, int | float | str)
        )
        sent: FieldAt | None = self._pick(numeric)
        if sent is None:
            return self._other_text(request)
        known = self._pools.values(self._operation, sent.place, units_of(request))
        entry_of_list = isinstance(sent.place[-1], int)
        if known and self._chance.random() < (0.85 if entry_of_list else 0.25):
            return with_value(request, sent.place, self._chance.choice(known))
        if isinstance(sent.value, str | bool):
            return with_value(request, sent.place, _other_digits(sent.value, self._chance))
        return with_value(request, sent.place, self.near(sent.value, sent.schema))

    def near(self, value: float, node: Node) -> float:
        """Give a number near another, within the bounds, as a person would write it."""
        if node.kind == "integer":
            low, high = node.bounds
            return int(min(max(value + self._chance.choice((-2, -1, 1, 2, 3)), low), high))
        spread = self._chance.choice((0.01, 0.05, 0.2, 0.2, 0.6))
        made = value * (1 + self._chance.uniform(-spread, spread))
        if value == 0:
            made = self._chance.choice((0.0, 0.001, 0.01, 0.5))
        made = written_plainly(made, self._chance.choice((2, 3, 4, 5)))
        low, high = node.bounds
        made = min(max(made, low), high)
        return value if made in node.exclusive else made

    def _other_text(self, request: Json) -> Json:
        text = self._pick(s for s in self._node.sent(request) if s.schema.kind == "text")
        if text is None or not isinstance(text.value, str):
            return request
        known = self._pools.values(self._operation, text.place, units_of(request))
        value = self._chance.choice(known) if known else text.value
        return with_value(request, text.place, _other_digits(value, self._chance))

    def _added(self, request: Json) -> Json:
        """Send one more field, nested ones included."""
        found = self._pick(self._node.absent(request))
        if found is None:
            return request
        place, node = found
        value = self.value_for(place, node, request)
        return request if value is None else with_value(request, place, value)

    def value_for(self, place: Place, node: Node, request: Json) -> Json:
        """Give a value that a field may have: one known, or one in proportion to the others."""
        units = units_of(request)
        known = self._pools.values(self._operation, place, units)
        if known:
            value = copy.deepcopy(self._chance.choice(known))
            if node.kind in {"number", "angle"} and isinstance(value, int | float):
                return self.near(value, node) if self._chance.random() < 0.5 else value
            return value
        other = self._pools.values(self._operation, place, "mm" if units == "in" else "in")
        if other and node.kind not in {"text"}:
            factor = MM_PER_INCH if units == "mm" else 1 / MM_PER_INCH
            return scaled(copy.deepcopy(self._chance.choice(other)), node, factor)
        return self._made_up(place, node, request)

    def _made_up(self, place: Place, node: Node, request: Json) -> Json:
        if node.kind == "option":
            return self._chance.choice(node.options)
        if node.kind == "boolean":
            return self._chance.random() < 0.5
        if node.kind == "text":
            return self._chance.choice(WORDS)
        if node.kind == "list":
            count = self._chance.randint(max(node.lengths[0], 1), 3)
            return [self._made_up((*place, i), node.items, request) for i in range(count)]
        if node.kind == "object":
            return {
                name: self.value_for((*place, name), inside, request)
                for name, (inside, required) in node.fields({}).items()
                if required
            }
        return self._number_for(node, request)

    def _number_for(self, node: Node, request: Json) -> float:
        low, high = node.bounds
        if node.kind == "integer":
            return self._chance.randint(int(low), int(min(high, low + 5)))
        if node.unit == "length":
            return min(max(written_plainly(self._length(request), 3), low), high)
        typical = {"arcsecond": 20.0, "degree": 20.0, "celsius": 21.5, "percent": 40.0}
        made = typical.get(node.unit, 0.5) * self._chance.uniform(0.2, 2)
        return min(max(written_plainly(made, 3), low + (high - low) * 1e-6), high)

    def _length(self, request: Json) -> float:
        """Give a length between a thousandth of those sent and as much as they are."""
        sent = [
            abs(s.value)
            for s in self._node.sent(request)
            if s.schema.unit == "length" and isinstance(s.value, int | float) and s.value
        ]
        return self._chance.choice(sent or [1.0]) * 10 ** self._chance.uniform(-2.5, 0.1)

    def _left_out(self, request: Json) -> Json:
        sent = self._pick(s for s in self._node.sent(request) if not s.required)
        return request if sent is None else without(request, sent.place)

    def _swapped(self, request: Json) -> Json:
        """Send one field in place of another: many exclude one another."""
        return self._added(self._left_out(request))

    def _other_option(self, request: Json) -> Json:
        """Send another option, or another form of an object that has several."""
        sent = self._pick(
            s for s in self._node.sent(request) if _has_options(s.schema) and s.place != ("units",)
        )
        if sent is None:
            return self._other_text(request)
        if sent.schema.kind == "object":
            return with_value(request, sent.place, self.value_for(sent.place, sent.schema, request))
        if sent.schema.kind == "boolean":
            return with_value(request, sent.place, not sent.value)
        return with_value(request, sent.place, self._chance.choice(sent.schema.options))

    def _other_list(self, request: Json) -> Json:
        """Leave an entry of a list out, send one twice, another order, or another known list."""
        sent = self._pick(
            s for s in self._node.sent(request) if isinstance(s.value, list) and len(s.value) < 40
        )
        if sent is None:
            return self._other_number(request)
        entries = copy.deepcopy(sent.value)
        fewest, most = sent.schema.lengths
        way = self._chance.randrange(4)
        if way == 0 and len(entries) > max(fewest, 1):
            del entries[self._chance.randrange(len(entries))]
        elif way == 1 and entries and len(entries) < most:
            entries.append(self._entry_like(self._chance.choice(entries), sent))
        elif way == 2:
            self._chance.shuffle(entries)
        else:
            known = self._pools.values(self._operation, sent.place, units_of(request))
            entries = copy.deepcopy(self._chance.choice(known)) if known else entries
        return with_value(request, sent.place, entries)

    def _entry_like(self, entry: Json, sent: FieldAt) -> Json:
        """Give another entry much as this one."""
        made = copy.deepcopy(entry)
        if isinstance(made, dict):
            for inside in list(sent.schema.items.sent(made)):
                if isinstance(inside.value, float) and self._chance.random() < 0.7:
                    near = self.near(inside.value, inside.schema)
                    made = with_value(made, inside.place, near)
                elif inside.schema.kind == "text":
                    made = with_value(made, inside.place, f"{inside.value} b"[:30])
        elif isinstance(made, int | float) and not isinstance(made, bool):
            made = self.near(made, sent.schema.items)
        return made

    def _as_text(self, request: Json) -> Json:
        """Write an angle in degrees, minutes and seconds."""
        sent = self._pick(
            s
            for s in self._node.sent(request)
            if s.schema.kind == "angle" and isinstance(s.value, int | float)
        )
        if sent is None:
            return self._other_number(request)
        sign = "-" if sent.value < 0 else ""
        seconds = round(abs(sent.value) * 3600)
        parts = (seconds // 3600, seconds // 60 % 60, seconds % 60)
        form = self._chance.choice(("{}{}°{:02d}'{:02d}\"", "{}{} {} {}", "{}{}:{:02d}:{:02d}"))
        return with_value(request, sent.place, form.format(sign, *parts))

    def _scaled(self, request: Json) -> Json:
        """Make everything larger or smaller by one factor."""
        return scaled(request, self._node, self._chance.choice((0.5, 0.8, 1.25, 2.0)))

    def _other_units(self, request: Json) -> Json:
        """Ask the same in the other unit; names of what comes in units are drawn anew."""
        units = units_of(request)
        if not units:
            return request
        other = "mm" if units == "in" else "in"
        factor = MM_PER_INCH if other == "mm" else 1 / MM_PER_INCH
        made = {**scaled(request, self._node, factor), "units": other}
        for sent in list(self._node.sent(made)):
            if sent.schema.kind != "text":
                continue
            here = self._pools.values(self._operation, sent.place, units)
            there = self._pools.values(self._operation, sent.place, other)
            if there and not set(map(str, here)) & set(map(str, there)):
                made = with_value(made, sent.place, self._chance.choice(there))
        return made


def _has_options(node: Node) -> bool:
    return node.kind in {"option", "boolean"} or (
        node.kind == "object" and len(node.alternatives) > 1
    )


def written_plainly(number: float, digits: int) -> float:
    """Round to so many significant digits, and to no more than seven decimals."""
    return round(float(f"{number:.{digits}g}"), 7)


def scaled(value: Json, node: Node, factor: float) -> Json:
    """Give a value with every length in it multiplied."""
    if node.kind == "object" and isinstance(value, dict):
        fields = node.fields(value)
        return {
            name: scaled(inside, fields[name][0], factor) if name in fields else inside
            for name, inside in value.items()
        }
    if node.kind == "list" and isinstance(value, list):
        return [scaled(inside, node.items, factor) for inside in value]
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return written_plainly(value * factor, 6) if is_number and node.unit == "length" else value


def _other_digits(value: Json, chance: random.Random) -> Json:
    """Change one number in a text a little."""
    if not isinstance(value, str):
        return value
    found = list(_DIGITS.finditer(value))
    if not found:
        return value
    number = chance.choice(found)
    made = float(number[0]) * chance.choice((0.5, 0.9, 1.1, 1.5))
    decimals = len(number[0].partition(".")[2])
    return f"{value[: number.start()]}{made:.{decimals}f}{value[number.end() :]}"

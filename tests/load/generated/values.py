"""Values and requests made from a schema alone: its bounds, its options, its strings and lists."""

import math
import random
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from generated.angles import SPELLINGS, TENTHS_PER_DEGREE, AngleBounds, spelled
from halfangle_service.fields.angles import ANGLE_FORMAT
from releases.mutations import WORDS, with_value, without
from releases.paths import Json
from releases.schemas import FieldAt, Node

Schema = Mapping[str, Any]
#: Share of angles that are sent as text, of optional fields that are sent, and sent as null.
TEXT, SENT, NULL = 0.5, 0.3, 0.1
#: Most entries more than the fewest in a list that is made up, and most depth of optional fields.
MORE_ENTRIES, DEPTH = 3, 3
#: Share of texts that keep their words and get other figures.
OTHER_FIGURES = 0.7
_FIGURE = re.compile(r"[0-9]+(?:\.[0-9]+)?")


@dataclass(frozen=True)
class Values:
    """Makes values of schemas of a contract, by chance."""

    chance: random.Random

    def value(self, node: Node, depth: int = 0) -> Json:
        """Give a value that fits a schema; null now and then, where that fits."""
        if self._takes_null(node.raw) and self.chance.random() < NULL:
            return None
        forms = node.alternatives
        texts = [form for form in forms if form.get("format") == ANGLE_FORMAT]
        if texts and self.chance.random() < TEXT:
            return self.angle(next(form for form in forms if form.get("type") == "number"))
        form = self.chance.choice([form for form in forms if form not in texts])
        return self._of_form(form, node, depth)

    @staticmethod
    def _takes_null(schema: Schema) -> bool:
        return any(form.get("type") == "null" for form in schema.get("anyOf", ()))

    def _of_form(self, form: Schema, node: Node, depth: int) -> Json:
        if "const" in form or "enum" in form:
            return self.chance.choice(form.get("enum", [form.get("const")]))
        kind = form["type"]
        if kind == "object":
            return self._object(form, node, depth)
        if kind == "array":
            fewest, most = form.get("minItems", 0), form.get("maxItems", MORE_ENTRIES)
            count = min(fewest + self.chance.randint(0, MORE_ENTRIES), most)
            items = Node(node.contract, form["items"])
            return [self.value(items, depth + 1) for _ in range(count)]
        if kind == "boolean":
            return self.chance.random() < 0.5
        if kind == "string":
            return self._text(form)
        return self.whole(form) if kind == "integer" else self.number(form)

    def _object(self, form: Schema, node: Node, depth: int) -> Json:
        required = form.get("required", ())
        share = SENT if depth < DEPTH else 0.0
        return {
            name: self.value(Node(node.contract, part), depth + 1)
            for name, part in form["properties"].items()
            if name in required or self.chance.random() < share
        }

    def _text(self, form: Schema) -> str:
        if "pattern" in form:
            return self.chance.choice(WORDS).lower().replace(" ", "-")
        fewest: int = form.get("minLength", 0)
        most: int = form.get("maxLength", 60)
        text = self.chance.choice((*WORDS, "é°½ \"\\'", "=1+1", "½ per foot", " "))
        filled = text * (most // len(text) + 1)
        lengths = (len(text), len(text), fewest, most)
        return filled[: min(max(self.chance.choice(lengths), fewest), most)]

    def whole(self, form: Schema) -> float:
        """Give a whole number within its bounds; as 3.0 now and then, which JSON Schema allows."""
        low, high = form["minimum"], form["maximum"]
        few = self.chance.randint(low, min(high, low + 6))
        made = self.chance.choice((low, high, few, few, few, self.chance.randint(low, high)))
        return float(made) if self.chance.random() < 0.1 else made

    def number(self, form: Schema) -> float:
        """Give a number within its bounds: at them, close to them, or anywhere, in any digits."""
        low: float = form.get("minimum", form.get("exclusiveMinimum"))
        high: float = form.get("maximum", form.get("exclusiveMaximum"))
        if "exclusiveMinimum" in form:
            low = math.nextafter(low, math.inf)
        if "exclusiveMaximum" in form:
            high = math.nextafter(high, -math.inf)
        size = 10 ** self.chance.uniform(-6, math.log10(max(abs(low), abs(high), 1e-5)))
        made = self.chance.choice(
            (
                low,
                high,
                0,
                -0.0,
                self.chance.uniform(low, high),
                size,
                -size,
                low + size,
                high - size,
                round(size, 4),
                float(f"{size:.2g}"),
                self.chance.randint(0, 100),
                self.chance.uniform(0, 10),
            )
        )
        return min(max(made, low), high)

    def angle(self, number: Schema) -> str:
        """Give an angle string whose value is within the bounds of the number."""
        bounds = AngleBounds.of(number)
        first, last = bounds.tenths
        while True:
            tenths = self.chance.choice(
                (
                    first,
                    last,
                    self.chance.randint(first, last),
                    self.chance.randint(first, last) // TENTHS_PER_DEGREE * TENTHS_PER_DEGREE,
                    self.chance.randint(first, last) // 600 * 600,
                )
            )
            text = spelled(tenths, self.chance.choice(SPELLINGS))
            if bounds.holds(text):
                return text

    def changed(self, request: Json, node: Node) -> Json:
        """Give a request with one field made anew, one more, one less, or one null."""
        sent: list[FieldAt] = list(node.sent(request))
        absent = list(node.absent(request))
        way = self.chance.random()
        optional = [s for s in sent if not s.required]
        if way < 0.2 and absent:
            place, inside = self.chance.choice(absent)
            return with_value(request, place, self.value(inside))
        if way < 0.3 and optional:
            return without(request, self.chance.choice(optional).place)
        if not sent:
            return request
        one = self.chance.choice(sent)
        if one.schema.kind == "text" and self.chance.random() < OTHER_FIGURES:
            return with_value(request, one.place, self._other_figures(one))
        return with_value(request, one.place, self.value(one.schema))

    def _other_figures(self, sent: FieldAt) -> str:
        """Give a text with other figures in it, as long as the field may be."""

        def figure(found: re.Match[str]) -> str:
            near = float(found[0]) * self.chance.uniform(0.5, 1.5)
            return f"{near:.{self.chance.randint(0, 4)}f}"

        longest: int = sent.schema.alternatives[0].get("maxLength", 60)
        return _FIGURE.sub(figure, sent.value)[:longest]

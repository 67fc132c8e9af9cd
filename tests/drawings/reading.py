"""Drawings read back from their SVG: where words lie and what they touch; millimetres on paper.

By shapely, apart from the kit's own search for room; only the widths of words are the kit's.
"""

import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from shapely import LineString, Polygon, STRtree, affinity, box
from shapely.geometry.base import BaseGeometry

from halfangle_service.trade.drawing.metrics import ABOVE, BELOW, text_width

#: The file's unit, in millimetres of paper.
UNIT = 0.1
SVG = "{http://www.w3.org/2000/svg}"
#: Touching by less is rounding.
_LEAST = 0.05
_STEP = re.compile(r"([MLAaZ])([^MLAaZ]*)")


@dataclass(frozen=True)
class Text:
    """A line of text, and the box around it."""

    words: str
    bold: bool
    size: float
    turned: float
    shape: Polygon


@dataclass(frozen=True)
class Drawn:
    """A drawing as it was read."""

    sheet: Polygon
    texts: list[Text]
    lines: list[LineString]
    inks: list[Polygon]

    @cached_property
    def _marks(self) -> list[BaseGeometry]:
        return [*self.lines, *self.inks]

    def faults(self) -> list[str]:
        """What is wrong with its words."""
        return [*self._off_sheet(), *self._over_words(), *self._over_marks()]

    def _off_sheet(self) -> Iterator[str]:
        for text in self.texts:
            if not self.sheet.covers(text.shape):
                yield f"leaves the sheet: {text.words}"

    def _over_words(self) -> Iterator[str]:
        tree = STRtree([text.shape for text in self.texts])
        for first, text in enumerate(self.texts):
            for second in tree.query(text.shape):
                other = self.texts[int(second)]
                if first < second and text.shape.intersection(other.shape).area > _LEAST:
                    yield f"over each other: {text.words} | {other.words}"

    def _over_marks(self) -> Iterator[str]:
        tree = STRtree(self._marks)
        for text in self.texts:
            within = text.shape.buffer(-_LEAST)
            met = [int(place) for place in tree.query(within, predicate="intersects")]
            for kind in sorted({"a line" if p < len(self.lines) else "an arrowhead" for p in met}):
                yield f"over {kind}: {text.words}"


def read(svg: str) -> Drawn:
    """Read a drawing."""
    root = ET.fromstring(svg)  # noqa: S314  our own drawing
    left, top, width, height = (UNIT * float(n) for n in root.attrib["viewBox"].split())
    lines, inks = [], []
    for group in root.iter(f"{SVG}g"):
        for path in group.findall(f"{SVG}path"):
            points = list(_points(path.attrib["d"]))
            if group.get("stroke"):
                lines.append(LineString(points))
            elif group.get("fill") == "#14202b":
                inks.append(Polygon(points))
    texts = [_text(text) for text in root.iter(f"{SVG}text")]
    return Drawn(box(left, top, left + width, top + height), texts, lines, inks)


def _text(element: ET.Element) -> Text:
    words, bold = element.text or "", element.get("font-weight") == "bold"
    x, y, size = (UNIT * float(element.attrib[name]) for name in ("x", "y", "font-size"))
    wide = text_width(words, size, bold=bold)
    shape = box(x, y - ABOVE * size, x + wide, y + BELOW * size)
    found = re.match(r"rotate\((\S+) ", element.get("transform", ""))
    turned = float(found[1]) if found else 0.0
    shape = affinity.rotate(shape, turned, origin=(x, y))
    return Text(words, bold, size, turned, shape)


def _points(d: str) -> Iterator[tuple[float, float]]:
    """Points along a path of straight lines and circular arcs."""
    first = at = (0.0, 0.0)
    for kind, rest in _STEP.findall(d):
        numbers = [UNIT * float(n) for n in rest.split()]
        if kind in "ML":
            at = (numbers[0], numbers[1])
            first = at if kind == "M" else first
            yield at
        elif kind in "Aa":
            end = (numbers[-2], numbers[-1])
            end = (at[0] + end[0], at[1] + end[1]) if kind == "a" else end
            yield from _arc(at, end, numbers[0], large=numbers[3] > 0.0)
            at = end
        else:
            yield first


def _arc(
    start: tuple[float, float], end: tuple[float, float], radius: float, *, large: bool
) -> Iterator[tuple[float, float]]:
    """Points along an arc that turns counter-clockwise on the sheet (sweep 0)."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    half = math.hypot(dx, dy) / 2.0
    off = math.sqrt(max(radius**2 - half**2, 0.0)) / (2.0 * half)
    off = -off if large else off
    center = (start[0] + dx / 2.0 + off * dy, start[1] + dy / 2.0 - off * dx)
    begin = math.atan2(center[1] - start[1], start[0] - center[0])
    finish = math.atan2(center[1] - end[1], end[0] - center[0])
    turn = (finish - begin) % (2.0 * math.pi)
    steps = max(4, math.ceil(turn / math.radians(2.0)))
    for step in range(1, steps + 1):
        angle = begin + turn * step / steps
        yield center[0] + radius * math.cos(angle), center[1] - radius * math.sin(angle)

"""Reads the cells of a workbook of ECMA-376."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from lxml import etree

from halfangle_client.fill.books.cells import Cell, no_stored_value, time_problem
from halfangle_client.fill.books.formats import DATE, PERCENT
from halfangle_client.fill.errors import FileRefused

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
YES = frozenset({"1", "true"})
_V, _F, _IS, _T, _R = (f"{{{MAIN}}}{name}" for name in ("v", "f", "is", "t", "r"))


@dataclass(frozen=True, slots=True)
class CellReader:
    """Reads cells of one sheet; `said` names it, `texts` and `kinds` are what cells refer to."""

    said: str
    texts: Sequence[str]
    kinds: Sequence[str]

    def read(self, cell: etree._Element) -> Cell | None:
        """A cell, its formula's value as it was stored; None where it is blank."""
        has_formula = cell.find(_F) is not None
        stored = cell.findtext(_V)
        kind = cell.get("t", "n")
        if kind in {"inlineStr", "s", "str"}:
            text = self._text(cell, kind, stored)
            return Cell(text, has_formula=has_formula) if text.strip() or has_formula else None
        if stored is None or not stored.strip():
            return no_stored_value() if has_formula else None
        if kind == "e":
            return Cell(None, f"holds the error {stored}", has_formula=has_formula)
        if kind == "b":
            return Cell(stored.strip() in YES, has_formula=has_formula)
        if kind == "d":
            return Cell(None, f"holds a date ({stored})", has_formula=has_formula)
        return self._number(cell, stored, has_formula)

    def _text(self, cell: etree._Element, kind: str, stored: str | None) -> str:
        if kind == "inlineStr":
            inline = cell.find(_IS)
            return "" if inline is None else whole_text(inline)
        if kind == "str":
            return stored or ""
        place = whole(stored)
        if place is None or place >= len(self.texts):
            raise FileRefused(f"{self.said}, {cell.get('r')}: it names no text of the file.")
        return self.texts[place]

    def _number(self, cell: etree._Element, stored: str, has_formula: bool) -> Cell:
        try:
            number = float(stored)
        except ValueError as error:
            raise FileRefused(f"{self.said}, {cell.get('r')}: {stored!r} is no number.") from error
        if not math.isfinite(number):
            return Cell(None, f"holds {stored}, which is no finite number", has_formula=has_formula)
        style = whole(cell.get("s")) or 0
        shows = self.kinds[style] if style < len(self.kinds) else ""
        if shows == DATE:
            is_time = 0.0 < number < 1.0
            why = time_problem(f"{number:g}") if is_time else f"holds a date ({number:g})"
            return Cell(number, why, has_formula=has_formula)
        return Cell(number, is_percent=shows == PERCENT, has_formula=has_formula)


def whole_text(item: etree._Element) -> str:
    """A text of one piece or of several runs; how it is spoken is left out."""
    runs = [run.findtext(_T) or "" for run in item.iterchildren(_R)]
    return "".join([item.findtext(_T) or "", *runs])


def whole(text: str | None) -> int | None:
    """A whole number of a file; None where it is none."""
    return int(text) if text and text.isascii() and text.isdigit() and len(text) < 10 else None

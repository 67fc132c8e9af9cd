"""Workbooks of ECMA-376, `.xlsx` and `.xlsm`: one sheet is changed, every other part is copied."""

from functools import cached_property
from typing import BinaryIO

from lxml import etree

from halfangle_client.fill._books.archive import Archive
from halfangle_client.fill._books.formats import format_kind
from halfangle_client.fill._books.markup import local, parsed, relations, written
from halfangle_client.fill._books.xlsx_cells import MAIN, whole, whole_text
from halfangle_client.fill._books.xlsx_sheet import Surroundings, XlsxSheet, forget_values
from halfangle_client.fill.errors import FileRefused

_STRICT = "http://purl.oclc.org/ooxml/spreadsheetml/main"
_LINKED = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
_BEFORE_CALC = (
    "fileVersion", "fileSharing", "workbookPr", "workbookProtection", "bookViews", "sheets",
    "functionGroups", "externalReferences", "definedNames",
)  # fmt: skip
_FORMULA = (b"<f>", b"<f ", b"<f/", b":f>", b":f ")


class XlsxBook:
    """An open workbook."""

    is_text = False

    def __init__(self, name: str, content: bytes) -> None:
        self._archive = Archive(name, content)
        self._part = self._workbook_part()
        self._root = parsed(self._archive, self._part)
        if self._root.tag != f"{{{MAIN}}}workbook":
            strict = self._root.tag == f"{{{_STRICT}}}workbook"
            form = "of the strict form; save it as an ordinary workbook" if strict else "none"
            raise FileRefused(f"{name}: the workbook is {form}.")
        self._relations = {r.id: r for r in relations(self._archive, self._part)}
        self._open: XlsxSheet | None = None

    def _workbook_part(self) -> str:
        for relation in relations(self._archive, ""):
            if relation.kind.endswith("/officeDocument"):
                part = self._archive.named(relation.target)
                if part is not None:
                    return part
        raise FileRefused(f"{self._archive.name}: it holds no workbook.")

    def sheets(self) -> list[str]:
        """Names of its sheets, those of charts left out."""
        return list(self._places)

    @cached_property
    def _places(self) -> dict[str, str]:
        """The part of each sheet by its name."""
        found = {}
        for sheet in self._root.iter(f"{{{MAIN}}}sheet"):
            relation = self._relations.get(sheet.get(_LINKED, ""))
            if relation is not None and relation.kind.endswith("/worksheet"):
                part = self._archive.named(relation.target)
                if part is not None:
                    found[sheet.get("name", "")] = part
        return found

    def sheet(self, name: str) -> XlsxSheet:
        """Open one. Raises FileRefused where it may not be changed."""
        part = self._places[name]
        around = Surroundings(self._texts, self._kinds, self._plain_styles, self._archive, part)
        self._open = XlsxSheet(name, parsed(self._archive, part), around, self._notes())
        return self._open

    def _related(self, kind: str) -> str | None:
        for relation in self._relations.values():
            if relation.kind.endswith(f"/{kind}"):
                return self._archive.named(relation.target)
        return None

    @cached_property
    def _texts(self) -> list[str]:
        """Texts that cells name by number."""
        part = self._related("sharedStrings")
        if part is None:
            return []
        root = parsed(self._archive, part)
        return [whole_text(item) for item in root.iterchildren(f"{{{MAIN}}}si")]

    @cached_property
    def _formats(self) -> list[etree._Element]:
        """The format of each style that cells name by number."""
        part = self._related("styles")
        if part is None:
            return []
        self._styles = parsed(self._archive, part)
        formats = self._styles.find(f"{{{MAIN}}}cellXfs")
        return [] if formats is None else list(formats.iterchildren(f"{{{MAIN}}}xf"))

    @cached_property
    def _kinds(self) -> list[str]:
        """What each style shows: dates, percentages or neither."""
        formats = self._formats
        if not formats:
            return []
        codes = {
            whole(code.get("numFmtId")) or 0: code.get("formatCode", "")
            for code in self._styles.iter(f"{{{MAIN}}}numFmt")
        }
        return [
            format_kind(n, codes.get(n)) for n in (whole(f.get("numFmtId")) or 0 for f in formats)
        ]

    @cached_property
    def _plain_styles(self) -> dict[str, str]:
        """Of each style the one of like look, its numbers shown with all their digits.

        What a neighbour rounds to two decimals, a height would lose. No style is added: where the
        workbook has none that looks alike, the first one is taken.
        """
        looks: dict[tuple[str | None, ...], str] = {}
        for place, each in enumerate(self._formats):
            if not whole(each.get("numFmtId")):
                looks.setdefault(_look(each), str(place))
        return {str(n): looks.get(_look(each), "0") for n, each in enumerate(self._formats)}

    def _notes(self) -> list[str]:
        """What filling cannot keep, apart from the sheet itself."""
        notes = []
        archive = self._archive
        with_formulas = [n for n, p in self._places.items() if archive.holds(p, _FORMULA)]
        if with_formulas:
            notes.append(
                f"the stored values of formulas are dropped ({_few(with_formulas)}), since they "
                "may not hold any more; a spreadsheet program works them out when it opens the "
                "file, what reads stored values sees none until it was saved there."
            )
        if any(name.lower().startswith("_xmlsignatures/") for name in archive):
            notes.append("the digital signature no longer fits the file once it is filled.")
        if any("pivotcache" in name.lower() for name in archive):
            notes.append("pivot tables show what they hold until they are refreshed.")
        return notes

    def save(self, target: BinaryIO) -> None:
        """Write the whole file."""
        changed = {}
        if self._open is not None:
            changed[self._places[self._open.name]] = self._open.content()
            others = [p for name, p in self._places.items() if name != self._open.name]
            others = [part for part in others if self._archive.holds(part, _FORMULA)]
            for part in others:
                root = parsed(self._archive, part)
                forget_values(root)
                changed[part] = written(root)
            if (others or self._open.has_formulas) and self._recalculate():
                changed[self._part] = written(self._root)
        self._archive.save(target, changed)

    def _recalculate(self) -> bool:
        """Tell programs to recalculate when they open the file; False where they are told so."""
        calc = self._root.find(f"{{{MAIN}}}calcPr")
        if calc is None:
            before = [child for child in self._root if local(child) in _BEFORE_CALC]
            calc = etree.Element(f"{{{MAIN}}}calcPr")
            before[-1].addnext(calc)
        if calc.get("fullCalcOnLoad") in {"1", "true"}:
            return False
        calc.set("fullCalcOnLoad", "1")
        return True


def _look(style: etree._Element) -> tuple[str | None, ...]:
    """Font, fill, border and how it stands in the cell."""
    return (*(style.get(name) for name in ("fontId", "fillId", "borderId")), *(
        etree.tostring(child).decode() for child in style
    ))  # fmt: skip


def _few(names: list[str]) -> str:
    shown = ", ".join(repr(name) for name in names[:4])
    return shown if len(names) <= 4 else f"{shown} and {len(names) - 4} more"

"""Workbooks of OpenDocument, `.ods`: the content is changed, every other part is copied."""

from typing import BinaryIO

from lxml import etree

from halfangle_client.fill._books.archive import Archive
from halfangle_client.fill._books.markup import parsed, written
from halfangle_client.fill._books.ods_sheet import OFFICE, TABLE, OdsSheet, forget_values
from halfangle_client.fill.errors import FileRefused

_CONTENT, _MANIFEST = "content.xml", "META-INF/manifest.xml"
_SIGNATURES = "META-INF/documentsignatures.xml"
_TYPE = b"application/vnd.oasis.opendocument.spreadsheet"


class OdsBook:
    """An open workbook."""

    is_text = False

    def __init__(self, name: str, content: bytes) -> None:
        self._archive = Archive(name, content)
        if "mimetype" in self._archive and self._archive.read("mimetype").strip() != _TYPE:
            raise FileRefused(f"{name}: no workbook of OpenDocument.")
        if _MANIFEST in self._archive and b"encryption-data" in self._archive.read(_MANIFEST):
            raise FileRefused(f"{name}: it is encrypted: take the password off first.")
        self._root = parsed(self._archive, _CONTENT)
        body = self._root.find(f"{{{OFFICE}}}body/{{{OFFICE}}}spreadsheet")
        if body is None:
            raise FileRefused(f"{name}: it holds no sheets.")
        self._body = body
        self._open: OdsSheet | None = None

    def _tables(self) -> dict[str, etree._Element]:
        tables = self._body.iterchildren(f"{{{TABLE}}}table")
        return {table.get(f"{{{TABLE}}}name", ""): table for table in tables}

    def sheets(self) -> list[str]:
        """Names of its sheets."""
        return list(self._tables())

    def sheet(self, name: str) -> OdsSheet:
        """Open one. Raises FileRefused where it may not be changed."""
        notes = []
        if self._body.find(f".//*[@{{{TABLE}}}formula]") is not None:
            notes.append(
                "the stored values of formulas, of all sheets, are dropped; a spreadsheet program "
                "works them out when it opens the file, what reads stored values sees none until "
                "it was saved there."
            )
        if _SIGNATURES in self._archive:
            notes.append("the digital signature no longer fits the file once it is filled.")
        filters = self._body.iter(f"{{{TABLE}}}database-range")
        for span in filters:
            address = span.get(f"{{{TABLE}}}target-range-address", "")
            if address.startswith((f"{name}.", f"'{name}'.", f"$'{name}'.", f"${name}.")):
                notes.append(
                    f"the range {span.get(f'{{{TABLE}}}name', '')!r} ({address}) is not made "
                    "wider: sorting by it does not move new columns."
                )
        self._open = OdsSheet(name, self._tables()[name], self._archive.name, notes)
        return self._open

    def save(self, target: BinaryIO) -> None:
        """Write the whole file."""
        changed = {}
        if self._open is not None:
            forget_values(self._body)
            changed[_CONTENT] = written(self._root)
        self._archive.save(target, changed)

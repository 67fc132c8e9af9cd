"""Invented workbooks of the invented shop, and their parts and cells read by others than we."""

import io
import struct
import zipfile
import zlib
from pathlib import Path
from typing import Any

import xlsxwriter
from python_calamine import CalamineWorkbook

HEADERS = ["Job", "Center distance [in]", "Angle [°]", "Area"]
#: Angles as a shop writes them: numbers and texts; one that no plate reaches.
ANGLES: list[Any] = [30, "8°18'", 12.5, "45°00'30\"", 95, 22.5]


def picture() -> bytes:
    """A PNG of one pixel."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    head = struct.pack(">IIBBBBB", 1, 1, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(b"\0\xb0\x20\x20"))
        + chunk(b"IEND", b"")
    )


def rich_workbook(path: Path, rows: int = 50) -> Path:
    """A workbook that holds what workbooks hold: its sheet `Plates` has headers in row 3."""
    book = xlsxwriter.Workbook(str(path))
    bold = book.add_format({"bold": True, "bg_color": "#DDE8F0", "border": 1})
    cell = book.add_format({"border": 1, "num_format": "0.00"})
    plain = book.add_format({"border": 1})
    sheet = book.add_worksheet("Plates")
    sheet.merge_range("A1:D1", "Harrow Lane Tool & Gauge: sine plates", bold)
    sheet.write_row("A3", HEADERS, bold)
    for n in range(rows):
        row = 3 + n
        sheet.write(row, 0, f"HL-{n + 1:04d}", plain)
        sheet.write(row, 1, 5, cell)
        sheet.write(row, 2, ANGLES[n % len(ANGLES)] if n < len(ANGLES) else 1 + 0.75 * n, cell)
        sheet.write_formula(row, 3, f"=B{row + 1}*2", cell, 10)
    end = rows + 3
    sheet.write_array_formula("A2:B2", "{=TRANSPOSE(B4:B5)}", cell, 5)
    sheet.write_rich_string("C2", "rich ", bold, "bold", " text")
    sheet.conditional_format(f"B4:B{end}", {"type": "3_color_scale"})
    sheet.conditional_format(f"D4:D{end}", {"type": "data_bar", "data_bar_2010": True})
    sheet.conditional_format(
        f"C4:C{end}", {"type": "cell", "criteria": ">", "value": 45, "format": bold}
    )
    sheet.data_validation(f"B4:B{end}", {"validate": "decimal", "criteria": ">", "value": 0})
    sheet.data_validation(f"A4:A{end}", {"validate": "list", "source": ["HL-0001", "HL-0002"]})
    sheet.write_comment("A4", "first plate")
    sheet.freeze_panes(3, 1)
    sheet.add_sparkline("D2", {"range": f"Plates!B4:B{end}"})
    chart = book.add_chart({"type": "scatter"})
    chart.add_series({
        "categories": f"=Plates!$B$4:$B${end}", "values": f"=Plates!$D$4:$D${end}",
        "trendline": {"type": "linear"},
    })  # fmt: skip
    other = book.add_worksheet("Charts")
    other.insert_chart("B2", chart)
    other.insert_image("B20", "dot.png", {"image_data": io.BytesIO(picture())})
    other.insert_textbox("H2", "A text box")
    other.write_formula("A1", f"=SUM(Plates!D4:D{end})", None, 10 * rows)
    table = book.add_worksheet("Table")
    table.add_table("A1:B4", {"name": "Sizes", "data": [[1, 2], [3, 4], [5, 6]]})
    locked = book.add_worksheet("Locked")
    locked.write("A1", "angle")
    locked.protect("secret")
    book.define_name("Largest", f"=MAX(Plates!$C$4:$C${end})")
    book.set_properties({"company": "Harrow Lane Tool & Gauge"})
    book.close()
    return path


def parts_of(path: Path) -> dict[str, bytes]:
    """Every part of a packed file."""
    with zipfile.ZipFile(path) as packed:
        return {name: packed.read(name) for name in packed.namelist()}


def cells_of(path: Path, sheet: str | int = 0) -> list[list[Any]]:
    """The cells of a sheet as another library reads them, from its first row and column on."""
    book = CalamineWorkbook.from_path(str(path))
    read = (
        book.get_sheet_by_index(sheet) if isinstance(sheet, int) else book.get_sheet_by_name(sheet)
    )
    return read.to_python(skip_empty_area=False)


def rewritten(path: Path, target: Path, changes: dict[str, bytes]) -> Path:
    """A packed file with the bytes of some parts replaced, or parts added; the rest as it is."""
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in {**parts_of(path), **changes}.items():
            packed.writestr(name, content)
    return target


_ODS_SPACES = " ".join(
    f'xmlns:{name}="urn:oasis:names:tc:opendocument:xmlns:{name}:1.0"'
    for name in ("office", "table", "text", "style")
)


def ods_workbook(path: Path, body: str, manifest: str = "") -> Path:
    """A workbook of OpenDocument of these sheets, as XML."""
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content {_ODS_SPACES} '
        'office:version="1.3"><office:body><office:spreadsheet>'
        f"{body}</office:spreadsheet></office:body></office:document-content>"
    )
    listed = (
        '<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0" '
        'manifest:version="1.3"><manifest:file-entry manifest:full-path="/" manifest:media-type='
        '"application/vnd.oasis.opendocument.spreadsheet"/><manifest:file-entry '
        f'manifest:full-path="content.xml" manifest:media-type="text/xml"/>{manifest}'
        "</manifest:manifest>"
    )
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as packed:
        kind = "application/vnd.oasis.opendocument.spreadsheet"
        packed.writestr("mimetype", kind, zipfile.ZIP_STORED)
        packed.writestr("content.xml", content)
        packed.writestr("Configurations2/keep.bin", b"\0\1\2")
        packed.writestr("META-INF/manifest.xml", listed)
    return path


def ods_cell(value: Any, **attributes: str) -> str:
    """A cell of OpenDocument; `formula`, `repeated` and the like as attributes of the table."""
    names = {"repeated": "number-columns-repeated", "style": "style-name"}
    more = "".join(f' table:{names.get(n, n)}="{v}"' for n, v in attributes.items())
    if value is None:
        return f"<table:table-cell{more}/>"
    if isinstance(value, str):
        return (
            f'<table:table-cell{more} office:value-type="string"><text:p>{value}</text:p>'
            "</table:table-cell>"
        )
    return (
        f'<table:table-cell{more} office:value-type="float" office:value="{value}">'
        f"<text:p>{value}</text:p></table:table-cell>"
    )


def ods_row(*cells: str, repeated: int = 1) -> str:
    """A row of OpenDocument."""
    more = f' table:number-rows-repeated="{repeated}"' if repeated > 1 else ""
    return f"<table:table-row{more}>{''.join(cells)}</table:table-row>"

"""Files of rows: workbooks of two kinds and delimited text, behind one form.

Each kind is loaded where a file of it is opened:

    cells       a cell as it is read, and the letters of its column
    form        what every kind offers
    archive     the packed file of a workbook, its parts copied byte for byte
    markup      XML read without harm
    xlsx        .xlsx and .xlsm
    formats     which number formats show dates
    ods         .ods
    delimited   .csv
"""

from pathlib import Path

from halfangle_client.fill._books.form import Book
from halfangle_client.fill.errors import FileRefused

#: The kinds that are filled, by the ending of their names.
ENDINGS = (".xlsx", ".xlsm", ".ods", ".csv")
_LARGEST_FILE = 256 * 1024 * 1024
_OTHERS = {
    ".xls": "the old binary form; save it as .xlsx",
    ".xlsb": "the binary form; save it as .xlsx",
    ".fods": "the flat form; save it as .ods",
    ".xltx": "a template; save it as .xlsx",
    ".xltm": "a template; save it as .xlsm",
    ".tsv": "save it as .csv, and declare its delimiter",
}


def kind_of(path: Path) -> str:
    """The ending that says what a file is. Raises FileRefused where it is none that is filled."""
    ending = path.suffix.lower()
    if ending in ENDINGS:
        return ending
    why = _OTHERS.get(ending, f"what is filled ends in {', '.join(ENDINGS)}")
    raise FileRefused(f"{path.name or path}: {ending or 'no ending'}: {why}.")


def content_of(path: Path) -> bytes:
    """All bytes of a file. Raises FileRefused."""
    try:
        if path.stat().st_size > _LARGEST_FILE:
            raise FileRefused(f"{path.name}: larger than {_LARGEST_FILE >> 20} MB; divide it.")
        return path.read_bytes()
    except OSError as error:
        raise FileRefused(f"{path}: {error.strerror or error}.") from error


def open_book(path: Path, content: bytes, *, delimiter: str | None, decimal: str | None) -> Book:
    """Open a file by its ending, from its bytes. Raises FileRefused."""
    kind = kind_of(path)
    if kind == ".csv":
        from halfangle_client.fill._books.delimited import DelimitedBook  # noqa: PLC0415

        return DelimitedBook(path.name, content, delimiter=delimiter, decimal=decimal)
    try:
        import lxml.etree  # noqa: F401, PLC0415 -- an extra, loaded where a workbook is filled
    except ImportError as error:
        raise FileRefused(
            f"{path.name}: workbooks need the package lxml: pip install 'halfangle-client[fill]'."
        ) from error
    if kind == ".ods":
        from halfangle_client.fill._books.ods import OdsBook  # noqa: PLC0415

        return OdsBook(path.name, content)
    from halfangle_client.fill._books.xlsx import XlsxBook  # noqa: PLC0415

    return XlsxBook(path.name, content)

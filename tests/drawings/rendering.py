"""Drawings as two renderers show them: a browser, and a PDF turned into pixels and words."""

import base64
import io
import re
import shutil
import subprocess
from collections.abc import Sequence
from ctypes.util import find_library
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from shapely import Polygon, box

from browser.support import Browser
from drawings.reading import UNIT, Drawn
from support import need_program

Grey = NDArray[np.float64]
#: Pixels for a millimetre in both.
DENSITY = 5.0
_PIXEL_PER_MM = 96.0 / 25.4
_POINT_MM = 25.4 / 72.0
#: A pixel darker than this (0 to 1) is ink that can be read.
_DARK = 0.25
_WORD = re.compile(r'<word xMin="(\S+)" yMin="(\S+)" xMax="(\S+)" yMax="(\S+)">([^<]*)</word>')


@dataclass(frozen=True)
class Word:
    """A word of a page, and its box."""

    text: str
    shape: Polygon


@dataclass(frozen=True)
class Picture:
    """A drawing in grey, 0 black and 1 white, of a sheet whose upper left corner is `corner`."""

    grey: Grey
    corner: tuple[float, float]

    def dark_share(self, shape: Polygon) -> float:
        """Share of the pixels in the box around a shape that can be read."""
        left, top, right, bottom = shape.bounds
        (x, y), (to_x, to_y) = self._at(left, top), self._at(right, bottom)
        return float((self.grey[y:to_y, x:to_x] < _DARK).mean())

    def _at(self, x: float, y: float) -> tuple[int, int]:
        column, row = (x - self.corner[0]) * DENSITY, (y - self.corner[1]) * DENSITY
        return max(0, round(column)), max(0, round(row))

    def cells(self, millimetres: float = 6.0) -> Grey:
        """Mean grey of each square cell."""
        size = round(millimetres * DENSITY)
        rows, columns = (n // size for n in self.grey.shape)
        cut = self.grey[: rows * size, : columns * size]
        cells: Grey = cut.reshape(rows, size, columns, size).mean(axis=(1, 3))
        return cells


def corner_of(drawn: Drawn) -> tuple[float, float]:
    """Upper left corner of a sheet."""
    left, top, _, _ = drawn.sheet.bounds
    return left, top


def as_pdf(svgs: Sequence[str], sheets: Sequence[Drawn], folder: Path) -> Path:
    """A PDF of the drawings, each on a page of its own size."""
    need_program(find_library("pango-1.0"), "Pango is not installed")
    import weasyprint  # noqa: PLC0415  it loads Pango

    sizes = []
    for place, sheet in enumerate(sheets):
        left, top, right, bottom = sheet.sheet.bounds
        sizes.append(f"@page d{place} {{ size: {right - left:.3f}mm {bottom - top:.3f}mm }}")
    style = "@page { margin: 0 } body { margin: 0 } svg { display: block } " + " ".join(sizes)
    pages = "".join(
        f'<div style="page: d{place}; break-after: page">{svg}</div>'
        for place, svg in enumerate(svgs)
    )
    file = folder / "drawings.pdf"
    weasyprint.HTML(string=f"<style>{style}</style>{pages}").write_pdf(file)
    return file


def pages_of(pdf: Path, sheets: Sequence[Drawn]) -> list[Picture]:
    """The pages of a PDF in grey."""
    program = shutil.which("pdftoppm")
    need_program(program, "pdftoppm is not installed")
    density = DENSITY * 25.4
    subprocess.run(
        [str(program), "-gray", "-r", f"{density:.4f}", pdf, pdf.with_suffix("")], check=True
    )
    files = sorted(pdf.parent.glob("drawings-*.pgm"))
    return [
        Picture(_grey(file.read_bytes()), corner_of(sheet))
        for file, sheet in zip(files, sheets, strict=True)
    ]


def words_of(pdf: Path, sheets: Sequence[Drawn]) -> list[list[Word]]:
    """The words of each page, on the sheet."""
    program = shutil.which("pdftotext")
    need_program(program, "pdftotext is not installed")
    found = subprocess.run(
        [str(program), "-bbox", pdf, "-"], check=True, capture_output=True, text=True
    ).stdout
    pages = found.split("<page ")[1:]
    return [list(_words(page, corner_of(sheet))) for page, sheet in zip(pages, sheets, strict=True)]


def _words(page: str, corner: tuple[float, float]) -> list[Word]:
    words = []
    for *sides, text in _WORD.findall(page):
        left, top, right, bottom = (_POINT_MM * float(side) for side in sides)
        x, y = corner
        words.append(Word(text, box(x + left, y + top, x + right, y + bottom)))
    return words


def shown(browser: Browser, svgs: Sequence[str], sheets: Sequence[Drawn]) -> list[Picture]:
    """The drawings as the browser shows them, in grey."""
    _show(browser, svgs)
    boxes: list[list[float]] = browser.run(
        "return [...document.querySelectorAll('svg')].map(svg => {"
        "const box = svg.getBoundingClientRect();"
        "return [box.left + scrollX, box.top + scrollY, box.width, box.height]; })"
    )
    pictures = []
    for (x, y, width, height), sheet in zip(boxes, sheets, strict=True):
        clip = {"x": x, "y": y, "width": width, "height": height}
        png: dict[str, Any] = browser.driver.execute_cdp_cmd(
            "Page.captureScreenshot",
            {"clip": {**clip, "scale": DENSITY / _PIXEL_PER_MM}, "captureBeyondViewport": True},
        )
        grey = _grey(base64.b64decode(png["data"]))
        pictures.append(Picture(grey, corner_of(sheet)))
    return pictures


def widths_shown(browser: Browser) -> list[list[float]]:
    """Widths of the texts of each drawing that the browser shows, in millimetres of paper."""
    found: list[list[float]] = browser.run(
        "return [...document.querySelectorAll('svg')].map(svg =>"
        "[...svg.querySelectorAll('text')].map(text => text.getComputedTextLength()))"
    )
    return [[UNIT * width for width in widths] for widths in found]


def _show(browser: Browser, svgs: Sequence[str]) -> None:
    """Put the drawings into an empty page, one under the other."""
    browser.driver.get("about:blank")
    browser.run(
        "document.body.style.margin = 0;"
        "document.body.innerHTML = arguments[0];"
        "document.querySelectorAll('svg').forEach(svg => { svg.style.display = 'block'; });",
        "".join(svgs),
    )


def _grey(image: bytes) -> Grey:
    grey: Grey = np.asarray(Image.open(io.BytesIO(image)).convert("L"), dtype=float) / 255.0
    return grey

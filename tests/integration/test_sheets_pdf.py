"""Sheets as PDF, taken apart by other programs: what is printed can be read, and read back."""

import json
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from halfangle_service.registry import load_registry
from halfangle_service.sheets.made import Choice, Page, page_for
from halfangle_service.sheets.pdf import pdf_of
from http_support import service_with
from sheets_support import (
    FEATURES,
    center_job,
    need_pdf,
    pages_in,
    plan_page,
    program,
    run,
    shop_job,
    words_of,
)

pytestmark = pytest.mark.program

#: As pages are looked at: dots an inch, and how dark ink is at least.
_DPI, _INK = 200, 140
#: Share of a word's box that is ink at least; words in grey have less than black ones.
_LEAST_INK = 0.02
_CASES = ("HL-0412 machine center", *FEATURES)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the PDFs of a run lie."""
    need_pdf()
    return tmp_path_factory.mktemp("sheets")


def page_named(name: str, paper: str) -> Page:
    """The page of a named case."""
    sent = shop_job(name, FEATURES[name]) if name in FEATURES else center_job()
    return plan_page(sent, paper=paper)


def written(folder: Path, name: str, paper: str) -> Path:
    """The PDF of a named case, made once."""
    path = folder / f"{_CASES.index(name)}-{paper}.pdf"
    if not path.exists():
        page = page_named(name, paper)
        path.write_bytes(pdf_of(page.html, page.request_json))
    return path


def raster(pdf: Path) -> NDArray[np.uint8]:
    """The first page in grey."""
    made = pdf.with_suffix("")
    run(program("pdftoppm"), "-r", str(_DPI), "-gray", "-singlefile", str(pdf), str(made))
    head, size, _, rest = made.with_suffix(".pgm").read_bytes().split(b"\n", 3)
    assert head == b"P5"
    width, height = map(int, size.split())
    return np.frombuffer(rest, np.uint8).reshape(height, width)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", _CASES)
def test_a_plan_is_one_page(folder: Path, name: str, paper: str) -> None:
    """Each of the named jobs fits a page of either paper."""
    assert pages_in(written(folder, name, paper)) == 1


@pytest.mark.parametrize("name", [_CASES[0], _CASES[5]])
def test_every_word_can_be_read(folder: Path, name: str) -> None:
    """Each word has ink where it stands, and lies on the page; a text that is white has none."""
    pdf = written(folder, name, "a4")
    page, unread = raster(pdf), []
    for word in words_of(pdf):
        if not any(sign.isalnum() for sign in word.text):
            continue
        left, top, right, bottom = (round(edge * _DPI / 72.0) for edge in word.box)
        box = page[top:bottom, left:right]
        assert 0 <= left < right <= page.shape[1], word
        if not box.size or (box < _INK).mean() < _LEAST_INK:
            unread.append(word.text)
    assert unread == []
    assert len(list(words_of(pdf))) > 400


def test_the_code_is_read_back_from_a_grey_page(folder: Path) -> None:
    """At 200 dots an inch, as a copier gives it, the square code still says whose answer it is."""
    for name in (_CASES[0], _CASES[5]):
        pdf = written(folder, name, "a4")
        raster(pdf)
        read = run(program("zbarimg"), "-q", "--raw", str(pdf.with_suffix(".pgm")))
        assert read.startswith("Halfangle 0.2.0 ")
        assert name in read
        assert read.split()[2] in page_named(name, "a4").html


def test_the_same_sheet_is_the_same_bytes(folder: Path) -> None:
    """Made twice, also by the service, a PDF is the same to the byte."""
    page = page_named(_CASES[0], "a4")
    first = written(folder, _CASES[0], "a4").read_bytes()
    assert pdf_of(page.html, page.request_json) == first
    with service_with() as service:
        made = service.post("/v1/jobs/plan/sheet?format=pdf", json=center_job())
        assert made.headers["content-type"] == "application/pdf"
        assert made.content == first


def test_the_request_goes_with_the_sheet(folder: Path) -> None:
    """The PDF carries the request, so that the same can be asked again."""
    pdf, out = written(folder, _CASES[0], "a4"), folder / "request.json"
    run(program("pdfdetach"), "-save", "1", "-o", str(out), str(pdf))
    sent = json.loads(out.read_text("utf-8"))
    request = load_registry().operations["jobs.plan"].request
    assert request.model_validate(sent) == request.model_validate(center_job())


def test_names_of_any_script_are_drawn(folder: Path) -> None:
    """A name that no font has, or that runs from right to left, spoils no page."""
    for place, job in enumerate(("שלום עולם", "👩‍🏭🔧 e\u0301\u0302", "x" * 60, "a\u0000\u0007b")):
        page = plan_page(center_job(job=job))
        path = folder / f"name{place}.pdf"
        path.write_bytes(pdf_of(page.html, page.request_json))
        assert pages_in(path) == 1


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_an_overlay_is_printed_at_its_size(folder: Path, paper: str) -> None:
    """The profile's large end, 0.5 in at 8 to 1, is 4 in long on paper."""
    operation = load_registry().operations["inspection.overlay"]
    request = operation.request.model_validate({**operation.example, "magnification": 8})
    page = page_for(operation, request, Choice(paper="a4" if paper == "a4" else "letter"))
    pdf = folder / f"overlay-{paper}.pdf"
    pdf.write_bytes(pdf_of(page.html, page.request_json))
    assert pages_in(pdf) == 1
    size = "595.276 x 841.89" if paper == "a4" else "612 x 792"
    assert size in run(program("pdfinfo"), str(pdf))
    dark = raster(pdf) < 160
    tallest = max(_longest_run(dark[:, column]) for column in range(dark.shape[1]))
    assert tallest / _DPI == pytest.approx(4.004, abs=0.02)  # with its band, 0.002 in either side


def _longest_run(column: NDArray[np.bool_]) -> int:
    """Longest run of dark dots in a column."""
    edges = np.flatnonzero(np.diff(np.concatenate(([0], column.astype(np.int8), [0]))))
    return int((edges[1::2] - edges[::2]).max(initial=0))

"""A sheet as a browser prints it: the page that the service draws as PDF."""

from collections import Counter
from pathlib import Path

import pytest

from browser.support import Browser
from halfangle_service.sheets.pdf import pdf_of
from sheets_support import center_job, need_pdf, pages_in, plan_page, words_of

pytestmark = pytest.mark.program

#: Paper in inches, as a browser is told it.
PAPERS = {"a4": (8.27, 11.69), "letter": (8.5, 11.0)}


@pytest.mark.parametrize("paper", PAPERS)
def test_a_browser_prints_the_same_page(browser: Browser, tmp_path: Path, paper: str) -> None:
    """On its paper it is one page, and has every word of the PDF and no other."""
    need_pdf()
    page = plan_page(center_job(), paper=paper)
    shown, drawn, printed = (tmp_path / name for name in ("sheet.html", "drawn.pdf", "printed.pdf"))
    shown.write_text(page.html, "utf-8")
    drawn.write_bytes(pdf_of(page.html, page.request_json))
    width, height = PAPERS[paper]
    printed.write_bytes(browser.printed(shown.as_uri(), width, height))
    assert pages_in(drawn) == pages_in(printed) == 1
    assert words(printed) == words(drawn)


def words(pdf: Path) -> Counter[str]:
    """How often each letter stands on a page: renderers part words and figures differently."""
    return Counter("".join(word.text for word in words_of(pdf)))

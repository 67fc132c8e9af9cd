"""A page of HTML as PDF, where the extra `sheets` is installed."""

import logging
from datetime import UTC, datetime
from functools import cache
from threading import Lock
from typing import Any

#: What makes the PDF, and how it is had.
MISSING = (
    "This installation makes no PDF: the package weasyprint, or the library Pango that it draws "
    "with, is not there. Install halfangle-service[sheets], and on Debian libpango-1.0-0, "
    "libpangoft2-1.0-0, libharfbuzz-subset0 and a font; or take the sheet as text/html and print "
    "that."
)
#: The engine's fonts and text layouts are not made for several threads; it holds Python's lock for
#: most of its time in any case.
_ONE_AT_A_TIME = Lock()
#: When an attached request was made: the same bytes each time.
_NO_TIME = datetime(2000, 1, 1, tzinfo=UTC)


class NoPdf(Exception):
    """What makes a PDF is not installed."""


def require_pdf() -> None:
    """Refuse where no PDF can be made; raises NoPdf."""
    _engine()


def pdf_of(html: str, request_json: str) -> bytes:
    """Draw a page; the request that it answers is attached. Raises NoPdf.

    Nothing is fetched but what the page itself holds.
    """
    engine = _engine()
    with _ONE_AT_A_TIME:
        within = engine.urls.URLFetcher(allowed_protocols=("data",))
        attached = engine.Attachment(
            string=request_json,
            url_fetcher=within,
            name="request.json",
            description="The request that this sheet answers",
            created=_NO_TIME,
            modified=_NO_TIME,
        )
        page = engine.HTML(string=html, url_fetcher=within)
        made: bytes = page.write_pdf(attachments=[attached], font_config=_fonts())
    return made


@cache
def _fonts() -> Any:
    """The fonts, found once: found anew for each sheet, 0.2 MB of each stay behind."""
    from weasyprint.text.fonts import FontConfiguration  # noqa: PLC0415

    return FontConfiguration()


def _engine() -> Any:
    """The engine, loaded when the first PDF is asked for: that takes half a second."""
    try:
        import weasyprint  # noqa: PLC0415
    except (ImportError, OSError) as error:
        raise NoPdf(MISSING) from error
    logging.getLogger("weasyprint").setLevel(logging.ERROR)
    return weasyprint

"""The square code of a sheet: a short text by which its answer is found again, and doubted.

28 mm of it are read back from a grey page of 200 dots an inch as long as the text stays near a
hundred characters, so that it cannot hold a whole plan's request. It holds what an answer is known
by: release and fingerprint, and where it was asked. A request that a query string says in so few
characters stands behind the address whole; any other goes with the sheet itself, whose fingerprint
says that it is the one.
"""

from typing import Any
from urllib.parse import urlencode

import segno
from pydantic import BaseModel

from halfangle_service import __version__
from halfangle_service.sheets.model import Code

LONGEST_TEXT = 120


def code_of(path: str, request: BaseModel, fingerprint: str, title: str) -> Code:
    """The code of an answer asked at a path; `title` names what has no query string."""
    text = code_text(path, request, fingerprint, title)
    made = segno.make(text, error="m", micro=False)
    return Code(made.svg_inline(border=4, omitsize=True, svgclass=None, lineclass=None), text)


def code_text(path: str, request: BaseModel, fingerprint: str, title: str) -> str:
    """What the code says: release, fingerprint, address with the query, or the title."""
    known_by = f"Halfangle {__version__} {fingerprint} {path}"
    query = query_of(request)
    if query is not None and len(known_by) + 1 + len(query) <= LONGEST_TEXT:
        return f"{known_by}?{query}"
    room = LONGEST_TEXT - len(known_by) - 1
    return f"{known_by} {title if len(title) <= room else title[: room - 1] + '…'}"


def query_of(request: BaseModel) -> str | None:
    """The query string that asks the same; None where none can."""
    sent: dict[str, Any] = request.model_dump(mode="json", exclude_defaults=True)
    if any(isinstance(part, dict) for value in sent.values() for part in _parts(value)):
        return None
    written = {name: [_text(part) for part in _parts(value)] for name, value in sent.items()}
    return urlencode(written, doseq=True)


def _parts(value: Any) -> list[Any]:
    return value if isinstance(value, list) else [value]


def _text(value: Any) -> str:
    """A value as a query string has it.

    >>> _text(5.0), _text(True), _text("in")
    ('5', 'true', 'in')
    """
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(int(value)) if isinstance(value, float) and value.is_integer() else str(value)

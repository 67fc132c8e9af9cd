"""What the pages refer to: our own files, those of the packaged form page, and drawings."""

from collections.abc import Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Any
from urllib.parse import quote

from swagger_ui_bundle import swagger_ui_path

_TYPES = {
    "css": "text/css; charset=utf-8",
    "js": "text/javascript; charset=utf-8",
    "svg": "image/svg+xml",
}
_OWN = ("page.css", "page.js", "curve.js", "try.css", "try.js", "icon.svg")
#: The two files of swagger-ui-dist 5.31.0 that its page needs, with the digests of its maker's own
#: package: a browser takes no other bytes, whoever packed them for Python.
PACKAGED = {
    "swagger-ui-bundle.js": "sha384-"
    "cxafBeQ+zYROeFafGFxtFbnp1ICqeS9mG7+f0WWSHzhnrUvwg9Za5CCw6wgrHA7K",
    "swagger-ui.css": "sha384-KX9Rx9vM1AmUNAn07bPAiZhFD4C8jdNgG6f5MRNvR+EfAxs2PmMFtUUazui7ryZQ",
}
_FIRST_OF_SVG = "<svg"


def static_files() -> Iterator[tuple[str, str]]:
    """Name and media type of every file beside the pages."""
    for name in (*_OWN, *PACKAGED):
        yield name, _TYPES[name.rpartition(".")[2]]


def read_file(name: str) -> bytes:
    """Content of one of them."""
    folder: Traversable = swagger_ui_path if name in PACKAGED else files(__package__) / "static"
    return (folder / name).read_bytes()


def drawings_in(value: Any) -> Iterator[str]:
    """Every drawing within a result."""
    if isinstance(value, str):
        if value.startswith(_FIRST_OF_SVG):
            yield value
    elif isinstance(value, dict | list):
        for part in value.values() if isinstance(value, dict) else value:
            yield from drawings_in(part)


def as_address(drawing: str) -> str:
    """A drawing as the address of an image, so that its own style stays within it."""
    return "data:image/svg+xml," + quote(drawing)


def without_drawings(value: Any) -> Any:
    """A result with the text of each drawing left out: it is shown as what it draws."""
    if isinstance(value, dict):
        return {name: without_drawings(part) for name, part in value.items()}
    if isinstance(value, list):
        return [without_drawings(part) for part in value]
    if isinstance(value, str) and value.startswith(_FIRST_OF_SVG):
        return f"<svg … the drawing above, {len(value)} characters"
    return value

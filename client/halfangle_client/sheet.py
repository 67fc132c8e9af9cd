"""A sheet as it came: a page of HTML, or the same as PDF."""

from base64 import b64encode
from dataclasses import dataclass
from html import escape
from pathlib import Path

_HTML = "text/html"
#: Height of a sheet that a notebook shows, as CSS has it.
_SHOWN_HEIGHT = "297mm"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of an answer; a notebook shows it as it is printed.

    `advisories` are the codes of what the answer advises, each with its severity. `stops` are
    those that say stop: the sheet has their words on top.
    """

    content: bytes
    media_type: str
    advisories: tuple[tuple[str, str], ...] = ()

    @property
    def is_pdf(self) -> bool:
        """Whether it is a PDF, not a page of HTML."""
        return not self.media_type.startswith(_HTML)

    @property
    def stops(self) -> tuple[str, ...]:
        """Codes of what says stop: do not run this."""
        return tuple(code for code, severity in self.advisories if severity == "stop")

    @property
    def text(self) -> str:
        """The page; raises ValueError where it is a PDF."""
        if self.is_pdf:
            raise ValueError('a PDF is no text; ask for format="html", or take `content`')
        return self.content.decode()

    def save(self, path: str | Path) -> Path:
        """Write it into a file; give the file's path."""
        written = Path(path)
        written.write_bytes(self.content)
        return written

    def _repr_html_(self) -> str:
        """The sheet in a frame of its own, so that its style stays within it."""
        style = f"width: 100%; height: {_SHOWN_HEIGHT}; border: 0"
        if self.is_pdf:
            data = b64encode(self.content).decode()
            source = f"data:application/pdf;base64,{data}"
            return f'<embed type="application/pdf" style="{style}" src="{source}">'
        return f'<iframe sandbox style="{style}" srcdoc="{escape(self.text)}"></iframe>'


def advisories_in(header: str) -> tuple[tuple[str, str], ...]:
    """Codes and severities of the header `Advisories`.

    >>> advisories_in("wheel-safety;severity=caution, steep-angle;severity=note")
    (('wheel-safety', 'caution'), ('steep-angle', 'note'))
    """
    told = []
    for entry in header.split(","):
        code, _, severity = entry.strip().partition(";severity=")
        if code:
            told.append((code, severity))
    return tuple(told)

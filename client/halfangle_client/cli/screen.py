"""Streams that may lack colour or characters: what is printed stays readable, and JSON is JSON."""

import codecs
import io
import os
import sys
from collections.abc import Iterable

import click

_PLAIN_ERRORS = "halfangle-plain"
#: Characters of the trade, as a terminal without Unicode shows them.
_PLAIN = {
    "°": "deg", "′": "'", "’": "'", "″": '"', "”": '"', "“": '"', "±": "+/-", "×": "x", "−": "-",
    "–": "-", "—": "-", "µ": "u", "…": "...", "√": "sqrt", "²": "^2", "≤": "<=", "≥": ">=",
    "·": "*", "π": "pi", "θ": "theta", "→": "->", "½": "1/2",
}  # fmt: skip


def prepare() -> None:
    """Let both streams print whatever comes."""
    codecs.register_error(_PLAIN_ERRORS, _plainly)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors=_PLAIN_ERRORS)


def has_unicode() -> bool:
    """Whether standard output takes every character."""
    return (sys.stdout.encoding or "ascii").lower().startswith("utf")


def shown(text: str) -> str:
    """A text as standard output will show it, so that its width is known before it is printed."""
    encoding = sys.stdout.encoding or "ascii"
    return text.encode(encoding, _PLAIN_ERRORS).decode(encoding)


def wants_colour() -> bool | None:
    """False where the environment wants none (no-color.org); None: as the stream is a terminal."""
    return False if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb" else None


def say(text: str) -> None:
    """Print; a closed pipe is no fault."""
    try:
        # Named, for click puts another stream in place of one that is ASCII.
        click.echo(text, file=sys.stdout, color=wants_colour())
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def complain(lines: Iterable[str], colour: str | None = None) -> None:
    """Print on standard error."""
    for line in lines:
        styled = click.style(line, fg=colour, bold=True) if colour else line
        click.echo(styled, file=sys.stderr, color=wants_colour())


def _plainly(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    lost = error.object[error.start : error.end]
    return "".join(_PLAIN.get(character, "?") for character in lost), error.end

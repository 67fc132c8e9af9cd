"""A request out of a file, of options and of `name=value` words; the later ones win.

Numbers are taken as people write them; angles, options and JSON as what they are.
"""

import json
import re
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

import click

from halfangle_client.cli.contract import Field, hint

#: Numbers, those that are none in JSON among them: `.375`, `5.`, `+5`.
_NUMBER = re.compile(r"[+-]?(?:(?:0|[1-9][0-9]*)(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_INTEGER = re.compile(r"[+-]?(?:0|[1-9][0-9]*)")
_COMMA = re.compile(r"[+-]?[0-9]*,[0-9]+")


def from_file(file: str | None) -> dict[str, Any]:
    """Read the JSON object in a file, or on standard input for `-`; nothing where none is named."""
    if file is None:
        return {}
    shown = "standard input" if file == "-" else file
    try:
        text = sys.stdin.read() if file == "-" else Path(file).read_text("utf-8")
        content = json.loads(text)
    except OSError as error:
        raise click.UsageError(f"{shown}: {error.strerror}") from error
    except (ValueError, RecursionError) as error:
        raise click.UsageError(f"{shown} holds no JSON: {error}") from error
    if not isinstance(content, dict):
        raise click.UsageError(f"{shown} holds JSON, but no object")
    return content


def from_words(words: Iterable[str]) -> list[tuple[str, Any]]:
    """Read `name=value` words."""
    found = []
    for word in words:
        name, equals, text = word.partition("=")
        if not equals or word.startswith("-") or not _is_text(word):
            raise click.UsageError(
                f"{word!a} is not of the form name=value, in UTF-8 (a request in a file: --input)"
            )
        found.append((name, free_value(text)))
    return found


def put(request: dict[str, Any], values: Sequence[tuple[str, Any]]) -> dict[str, Any]:
    """Put values into a request by their names; a dot reaches into an object."""
    for name, value in values:
        *outer, last = name.split(".")
        target = request
        for part in outer:
            inner = target.get(part)
            target[part] = {} if inner is None else inner
            target = target[part]
            if not isinstance(target, dict):
                raise click.UsageError(f"{name}: {part} is a value already, not an object")
        target[last] = value
    return request


def number_of(text: str) -> int | float | None:
    """The number that a text is; None where it is none.

    >>> number_of(".375"), number_of("-5"), number_of("5,5"), number_of("007")
    (0.375, -5, None, None)
    """
    if _INTEGER.fullmatch(text):
        return int(text)
    return float(text) if _NUMBER.fullmatch(text) else None


def free_value(text: str) -> Any:
    """Read a value of which nothing is known: as JSON, or as a number; else it is text."""
    try:
        return json.loads(text)
    except (ValueError, RecursionError):
        found = number_of(text)
        return text if found is None else found


class Word(click.ParamType[Any]):
    """Reads the words of one field."""

    def __init__(self, field: Field) -> None:
        self.field = field
        self.name: str = field.kind

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        """Give the value; of a list the entries that this one word brings."""
        if not isinstance(value, str):
            return value
        if not _is_text(value):
            self.fail(f"{value!a} is no text in UTF-8", param, ctx)
        try:
            return _entries(self.field, value) if self.field.many else _value(self.field, value)
        except ValueError as error:
            self.fail(str(error), param, ctx)


def _entries(field: Field, text: str) -> list[Any]:
    """Entries of a list: a JSON list, or words with spaces between. A comma is no separator."""
    if text.lstrip().startswith("["):
        found = _json(text)
        return list(found)
    if field.kind == "json":
        return [_json(text)]
    if field.kind in {"text", "angle"}:
        return [_value(field, text)]
    return [_value(field, word) for word in text.split()]


def _value(field: Field, text: str) -> Any:
    """One value. Raises ValueError with the reason."""
    match field.kind:
        case "number" | "integer":
            return _number(text, whole=field.kind == "integer")
        case "angle":
            return _angle(text)
        case "choice":
            if text not in field.choices:
                raise ValueError(f"{text!r} is no choice here{hint(text, list(field.choices))}")
            return text
        case "json":
            return _json(text)
        case _:
            return text


def _number(text: str, whole: bool) -> int | float:
    found = number_of(text)
    if found is None:
        why = "; its decimal sign is a point" if _COMMA.fullmatch(text) else ""
        raise ValueError(f"{text!r} is no number{why}")
    if not whole:
        return found
    if found != int(found):
        raise ValueError(f"{text!r} is no whole number")
    return int(found)


def _angle(text: str) -> int | float | str:
    """Decimal degrees go as a number; the service takes only degrees, minutes, seconds as text."""
    found = number_of(text)
    if found is not None:
        return found
    if "," in text or not any(c.isdigit() for c in text):
        raise ValueError(
            f"{text!r} is no angle: decimal degrees with a point (8.3), or degrees, minutes and "
            "seconds (8°18', 8 18 0)"
        )
    return text


def _json(text: str) -> Any:
    try:
        return json.loads(text)
    except (ValueError, RecursionError) as error:
        raise ValueError(f"{text[:40]!r} is no JSON: {error}") from error


def _is_text(word: str) -> bool:
    """False where the shell handed over bytes that are no UTF-8."""
    try:
        word.encode()
    except UnicodeEncodeError:
        return False
    return True

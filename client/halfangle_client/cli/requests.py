"""A request out of a file, of options and of `name=value` words; the later ones win."""

import json
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

import click

from halfangle_client.cli.words import free_value


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
        if not equals or word.startswith("-") or not _is_utf8(word):
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


def _is_utf8(word: str) -> bool:
    try:
        word.encode()
    except UnicodeEncodeError:
        return False
    return True

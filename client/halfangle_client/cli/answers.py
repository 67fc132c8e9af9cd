"""An answer as a table, as JSON, or one value of it; and what it says that stops."""

import json
import sys
from collections.abc import Mapping
from typing import Any

from halfangle_client.cli import screen
from halfangle_client.cli.contract import Operation
from halfangle_client.cli.status import DONE, REFUSED, STOPPED
from halfangle_client.sheet import Sheet

_ADVISORIES = "advisories"
#: Fields that judge: they may be picked though the answer says stop, where they say so themselves.
_JUDGEMENTS = ("forecast", "verdict")
#: Judgements that say yes: of a part only, where the answer says stop.
_YES = ("conforming", "holds")


class NoSuchValue(Exception):
    """The result holds no single value of the name picked."""


def give(
    operation: Operation,
    request: Mapping[str, Any],
    answer: Any,
    *,
    as_json: bool,
    pick: str | None,
) -> int:
    """Print an answer in the form asked for; give the exit status."""
    if isinstance(answer, Sheet):
        sys.stdout.buffer.write(answer.content)
        sys.stdout.flush()
        return told_of_stops(
            [f"{code}: do not run this; its lines say why" for code in answer.stops]
        )
    stops = stops_of(answer)
    if pick is not None:
        try:
            text = picked(answer, pick)
        except NoSuchValue as error:
            screen.complain([f"halfangle: --pick {error}"])
            return REFUSED
        if text is not None:
            screen.say(text)
    elif as_json:
        screen.say(as_data(answer))
    else:
        _show(operation, request, answer)
    return told_of_stops(stops)


def told_of_stops(stops: list[str]) -> int:
    """Repeat on standard error what says stop; give the exit status."""
    screen.complain((f"halfangle: stop: {message}" for message in stops), "red")
    return STOPPED if stops else DONE


def stops_of(answer: Mapping[str, Any]) -> list[str]:
    """What an answer says of severity stop, for whoever reads no more than that."""
    return [a["message"] for a in answer[_ADVISORIES] if a["severity"] == "stop"]


def as_data(answer: Any) -> str:
    """JSON that every terminal takes: escaped where it lacks characters."""
    return json.dumps(answer, indent=2, ensure_ascii=not screen.has_unicode())


def picked(answer: Mapping[str, Any], path: str) -> str | None:
    """One value of the result as the service's own `pick` writes it.

    Field names and list positions joined by dots, `advisories` for these. None where the answer
    says stop, unless the value is a judgement that does not say yes: nobody would read beside a
    bare value that the answer must not be used. Raises NoSuchValue.
    """
    if path == _ADVISORIES:
        lines = [f"{a['severity']} {a['code']}: {a['message']}" for a in answer[_ADVISORIES]]
        return "\n".join(lines or ["none"])
    value = _value_at(answer["result"], path)
    last = path.replace("-", "_").rpartition(".")[2]
    judges = any(last == word or last.endswith(f"_{word}") for word in _JUDGEMENTS)
    if stops_of(answer) and (not judges or value in _YES):
        return None
    return value if isinstance(value, str) else json.dumps(value)


def _value_at(value: Any, path: str) -> Any:
    for part in path.split("."):
        name = part.replace("-", "_")
        if isinstance(value, dict) and (part in value or name in value):
            value = value[part if part in value else name]
        elif isinstance(value, list) and part.isascii() and part.isdigit():
            if int(part[:9]) >= len(value):
                raise NoSuchValue(f"has no {part!r}; there are {len(value)} entries, from 0")
            value = value[int(part)]
        else:
            offered = ", ".join(value) if isinstance(value, dict) else "a single value"
            offered = f"entries 0 to {len(value) - 1}" if isinstance(value, list) else offered
            raise NoSuchValue(f"has no {part[:60]!r}; there is: {offered}")
    if isinstance(value, dict | list):
        raise NoSuchValue("names several values, not one")
    return value


def _show(operation: Operation, request: Mapping[str, Any], answer: Mapping[str, Any]) -> None:
    from halfangle_client.cli.tables import Page  # noqa: PLC0415 -- Rich, for tables alone

    units = request.get("units")
    page = Page(operation.shapes, units if isinstance(units, str) else "")
    page.show(operation.title, operation.answer, answer)

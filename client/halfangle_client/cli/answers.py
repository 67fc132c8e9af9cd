"""An answer as a table, as JSON, or values of it; and what it says that stops."""

import json
import sys
from collections.abc import Mapping
from typing import Any

from halfangle_client.cli import screen
from halfangle_client.cli.contract import Operation
from halfangle_client.cli.picks import ADVISORIES, NoSuchValue, picked, stops_of
from halfangle_client.cli.status import DONE, REFUSED, STOPPED
from halfangle_client.sheet import Sheet


def give(
    operation: Operation,
    request: Mapping[str, Any],
    answer: Any,
    *,
    as_json: bool,
    pick: str | None,
    separator: str | None = None,
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
            text = picked(_with_result(answer), pick, separator)
        except NoSuchValue as error:
            screen.complain([f"halfangle: --pick {error}"])
            return REFUSED
        if text is not None:
            screen.say(text)
    elif as_json:
        screen.say(as_data(answer))
    else:
        _show(operation, request, _with_result(answer))
    return told_of_stops(stops)


def told_of_stops(stops: list[str]) -> int:
    """Repeat on standard error what says stop; give the exit status."""
    screen.complain((f"halfangle: stop: {message}" for message in stops), "red")
    return STOPPED if stops else DONE


def as_data(answer: Any) -> str:
    """JSON that every terminal takes: escaped where it lacks characters."""
    return json.dumps(answer, indent=2, ensure_ascii=not screen.has_unicode())


def _with_result(answer: Mapping[str, Any]) -> Mapping[str, Any]:
    """An answer in the form of most: its values, what it advises, and what it is based on."""
    if "result" in answer:
        return answer
    beside = {ADVISORIES, "basis"}
    values = {name: value for name, value in answer.items() if name not in beside}
    return {"result": values, **{name: answer[name] for name in beside if name in answer}}


def _show(operation: Operation, request: Mapping[str, Any], answer: Mapping[str, Any]) -> None:
    from halfangle_client.cli.tables import Page  # noqa: PLC0415 -- Rich, for tables alone

    units = request.get("units")
    page = Page(operation.shapes, units if isinstance(units, str) else "")
    page.show(operation.title, operation.answer, answer)

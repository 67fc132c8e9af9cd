"""An answer as lines of text, for a terminal."""

import textwrap
from collections.abc import Iterator
from typing import Any

from halfangle_client.views.records import (
    Data,
    flat,
    is_angle,
    is_drawing,
    is_list_of_objects,
    sorted_advisories,
)

_WIDTH = 100
_LONGEST_LINE = 160


def lines(answer: Data) -> str:
    """Write a whole answer: its advisories, the worst first, then each value by its path."""
    said = [_advisory(each) for each in sorted_advisories(answer)]
    entries = list(shown(answer["result"]))
    wide = max((len(path) for path, _ in entries), default=0)
    return "\n".join([*said, *(f"{path:{wide}}  {words}" for path, words in entries)])


def line(name: str, answer: Data) -> str:
    """Write an answer in one line: stops and cautions by their codes, then its first values."""
    warned = [
        f"{each['severity']} {each['code']}"
        for each in sorted_advisories(answer)
        if each["severity"] != "note"
    ]
    values = [f"{path}={value!r}" for path, value in flat(answer["result"])]
    whole = f"{name}: {', '.join([*warned, *values])}"
    return f"<{textwrap.shorten(whole, _LONGEST_LINE, placeholder=' …')}>"


def shown(value: Data, prefix: str = "") -> Iterator[tuple[str, str]]:
    """Give each value of an object as text, by its path; of a list of objects how many it has."""
    for name, part in value.items():
        path = f"{prefix}{name}"
        if isinstance(part, dict) and not is_angle(part):
            yield from shown(part, f"{path}.")
        elif is_drawing(part):
            yield path, "a drawing (SVG)"
        elif is_list_of_objects(part):
            yield path, f"{len(part)} entries"
        else:
            yield path, words_of(part)


def words_of(value: Any) -> str:
    """Write a value for a person: numbers to ten digits."""
    if is_angle(value):
        return f"{words_of(value['degrees'])}° = {value['dms']}"
    if isinstance(value, list):
        return ", ".join(map(words_of, value)) or "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None:
        return "–"
    return f"{value:.10g}" if isinstance(value, float) else str(value)


def label_of(severity: str) -> str:
    """Write a severity as a person should meet it."""
    return severity.upper() if severity == "stop" else severity


def _advisory(advisory: Data) -> str:
    words = f"{label_of(advisory['severity'])}: {advisory['message']}"
    return textwrap.fill(words, _WIDTH, subsequent_indent="  ")

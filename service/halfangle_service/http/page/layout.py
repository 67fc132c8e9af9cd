"""Lays a value out as code: on one line where it fits, else one part a line."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, TypeAlias


@dataclass(frozen=True, slots=True)
class Group:
    """What opens, its parts with what stands before each, and what closes."""

    opening: str
    parts: Sequence[tuple[str, "Code"]]
    closing: str


Code: TypeAlias = str | Group


@dataclass(frozen=True, slots=True)
class Layout:
    """How code of a language is laid out: its indent in characters, and its last comma."""

    indent: int
    last_comma: bool
    width: int = 88

    def lines(self, code: Code, before: str = "", depth: int = 0) -> str:
        """The code from `depth` indents on; `before` stands on its first line already.

        >>> layout = Layout(indent=2, last_comma=False, width=12)
        >>> print(layout.lines(Group("[", [("", "1000"), ("", "2000"), ("", "3000")], "]")))
        [
          1000,
          2000,
          3000
        ]
        """
        if isinstance(code, str):
            return code
        flat = flat_line(code)
        room = self.width - self.indent * depth - len(before) - 1
        if len(flat) <= room or not code.parts:
            return flat
        inner = " " * self.indent * (depth + 1)
        parts = [inner + label + self.lines(part, label, depth + 1) for label, part in code.parts]
        end = "," if self.last_comma else ""
        body = ",\n".join(parts) + end
        return f"{code.opening.rstrip()}\n{body}\n{inner[self.indent :]}{code.closing.lstrip()}"


def flat_line(code: Code) -> str:
    """The code on one line."""
    if isinstance(code, str):
        return code
    parts = ", ".join(label + flat_line(part) for label, part in code.parts)
    return f"{code.opening}{parts}{code.closing}" if parts else (code.opening + code.closing)


def json_code(value: Any, write: Any) -> Code:
    """A JSON value as code; `write` gives a single value or a name."""
    if isinstance(value, dict):
        parts = [(f"{write(name)}: ", json_code(part, write)) for name, part in value.items()]
        return Group("{", parts, "}")
    if isinstance(value, list | tuple):
        return Group("[", [("", json_code(part, write)) for part in value], "]")
    return str(write(value))

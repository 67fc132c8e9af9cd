"""A mutant: one small change of one file."""

from dataclasses import dataclass
from typing import Literal, get_args

Kind = Literal[
    "operator",
    "comparison",
    "condition",
    "constant",
    "dropped",
    "function",
    "severity",
    "bound",
    "default",
    "digit",
]
KINDS: tuple[Kind, ...] = get_args(Kind)


@dataclass(frozen=True, slots=True)
class Mutant:
    """A change of the bytes `start` to `end` of a file.

    `first_line` to `last_line` is the statement that it is in. `made_at_import` names what holds it
    where it runs when the module is loaded, and in no test: a constant, a class, a function whose
    default it is; empty for what stands in a function's body, which `function` names.
    """

    file: str
    line: int
    kind: Kind
    start: int
    end: int
    after: str
    shown_before: str
    shown_after: str
    first_line: int
    last_line: int
    made_at_import: tuple[str, ...] = ()
    function: str = ""

    def applied(self, content: bytes) -> bytes:
        """Content of the file with the change."""
        return content[: self.start] + self.after.encode() + content[self.end :]

    def __str__(self) -> str:
        return f"{self.file}:{self.line} {self.kind}: {self.shown_before} → {self.shown_after}"

"""What the contract says of each operation, read from its topic's file when it is asked for."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from functools import cache
from pkgutil import get_data
from typing import Any

from halfangle_client.endpoint import Endpoint

_FEW = 20
Shapes = Mapping[str, Mapping[str, str]]


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a request; a dotted name reaches into an object.

    `kind` says how a word becomes its value: number, integer, angle, text, choice, switch or json.
    """

    name: str
    kind: str
    help: str
    metavar: str = ""
    many: bool = False
    required: bool = False
    choices: Mapping[str, str] = field(default_factory=dict)
    default: str | float | bool | None = None
    place: str = "body"

    @property
    def option(self) -> str:
        """The option's name."""
        return f"--{hyphens(self.name)}"


@dataclass(frozen=True, slots=True)
class Operation:
    """One operation: where it is sent, what it takes, and the units of what it answers."""

    name: str
    title: str
    description: str
    method: str
    path: str
    accept: str
    sends: str
    heavy: bool
    answer: str
    example: Mapping[str, Any]
    fields: tuple[Field, ...]
    shapes: Shapes

    @property
    def endpoint(self) -> Endpoint[bytes]:
        """The route, its answer left as it comes."""
        query = tuple(f.name for f in self.fields if f.place == "query")
        return Endpoint(
            self.name, self.method, self.path, bytes, self.accept, self.sends, query, (), self.heavy
        )

    @property
    def has_result(self) -> bool:
        """False where the values stand beside what is said of them, as those of a curve."""
        return "result" in self.shapes.get(self.answer, {})

    @property
    def command(self) -> str:
        """The words that call it."""
        return "halfangle " + hyphens(self.name).replace(".", " ")


@dataclass(frozen=True, slots=True)
class SheetPlace:
    """Where the sheet of an operation is asked, and what may be chosen of it."""

    path: str
    accept: str
    query: tuple[str, ...]

    @property
    def endpoint(self) -> Endpoint[bytes]:
        """The route; a sheet takes its time."""
        sends = "application/json"
        return Endpoint(
            "sheet", "POST", self.path, bytes, self.accept, sends, self.query, heavy=True
        )


def sheets() -> dict[str, SheetPlace]:
    """Of each operation that has a sheet, by its name, where that is asked."""
    found = _read("_sheets")["sheets"]
    return {
        name: SheetPlace(place["path"], place["accept"], tuple(place["query"]))
        for name, place in found.items()
    }


def topics() -> dict[str, dict[str, str]]:
    """Every topic with its operations, each with its title."""
    found: dict[str, dict[str, str]] = _read("_topics")["topics"]
    return found


def operation(topic: str, verb: str) -> Operation:
    """Give one operation of a topic. Raises KeyError for one that is not known here."""
    document = _read(topic)
    data = dict(document["operations"][verb])
    fields = tuple(Field(**part) for part in data.pop("fields"))
    return Operation(**data, fields=fields, shapes=document["shapes"])


def named(text: str) -> Operation | None:
    """The operation of a dotted name, written with hyphens or underscores; None: there is none."""
    topic, _, verb = hyphens(text).partition(".")
    return operation(topic, verb) if verb in topics().get(topic, {}) else None


def dotted_names() -> list[str]:
    """Names of all operations, as `call` takes them."""
    return [f"{topic}.{verb}" for topic, verbs in topics().items() for verb in verbs]


def hyphens(name: str) -> str:
    """A name of the contract as the command line has it."""
    return name.replace("_", "-")


def hint(word: str, known: list[str]) -> str:
    """What may have been meant, as the end of a sentence; where nothing is near, what there is."""
    near = get_close_matches(word, known, n=3)
    if near:
        return f"; did you mean {' or '.join(near)}?"
    return f"; there is: {', '.join(known)}" if len(known) <= _FEW else ""


@cache
def _read(name: str) -> dict[str, Any]:
    content = get_data("halfangle_client", f"generated/commands/{name}.json")
    found: dict[str, Any] = json.loads(content or b"{}")
    return found

"""What stands on a sheet of paper, as words and figures that are ready to be read."""

from dataclasses import dataclass, field
from typing import Literal

Paper = Literal["a4", "letter"]
#: How well a judgement bodes: said in words, and by the weight of its frame.
Tone = Literal["yes", "perhaps", "no"]


@dataclass(frozen=True, slots=True)
class Fact:
    """A quantity by its name, with its value."""

    name: str
    value: str


@dataclass(frozen=True, slots=True)
class Block:
    """A block to tick: its size, and the mark on it where it has one."""

    size: str
    mark: str = ""


@dataclass(frozen=True, slots=True)
class Stack:
    """A stack to wring: where it goes, its blocks, its height over all.

    A `spare` one goes under no roll: it is there to compare another one with.
    """

    place: str
    blocks: tuple[Block, ...]
    height: str
    spare: bool = False


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do, and what to be careful of."""

    action: str
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Reading:
    """A figure to read: what to expect, and its limits; empty where there are none.

    `proved` are the readings that prove the tolerance, narrower than the limits.
    """

    name: str
    expected: str = ""
    limits: str = ""
    proved: str = ""


@dataclass(frozen=True, slots=True)
class Check:
    """A check: what to read, and how it is made where that takes words.

    `each_piece`: it is made of each piece that is measured, not once of the set-up.
    """

    name: str
    readings: tuple[Reading, ...]
    how: str = ""
    each_piece: bool = False


@dataclass(frozen=True, slots=True)
class Log:
    """Lines to write in, one a piece: its number, empty where it is not known, and its readings."""

    title: str
    readings: tuple[Reading, ...]
    pieces: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing as SVG that says its own scale, or that it has none; its height in millimetres."""

    svg: str
    height: float
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Code:
    """The square code: its SVG and the text that it holds."""

    svg: str
    text: str


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a sheet comes from: what was asked, by whose release, and the code that says so."""

    operation: str
    release: str
    fingerprint: str
    request_json: str
    code: Code


@dataclass(frozen=True, slots=True)
class Text:
    """A heading with its lines: cautions, notes, what was not stated."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet. What comes first matters most: what finds no room goes to the next page.

    `pieces` are the numbers of the pieces of a batch that are measured: a column each to write in.
    """

    kind: str
    title: str
    about: str = ""
    judgement: str = ""
    tone: Tone = "perhaps"
    stops: tuple[str, ...] = ()
    figures: tuple[Fact, ...] = ()
    drawing: Drawing | None = None
    stacks: tuple[Stack, ...] = ()
    facts: tuple[Fact, ...] = ()
    steps: tuple[Step, ...] = ()
    checks: tuple[Check, ...] = ()
    pieces: tuple[int, ...] = ()
    log: Log | None = None
    cautions: tuple[str, ...] = ()
    blanks: tuple[str, ...] = ()
    rest: tuple[Text, ...] = field(default=())

"""Numbers that several processes count, each in its own part of memory that all of them read.

The memory has no name and no file, so it needs no place to write to and leaves nothing behind. It
is made before the processes are: whoever counts writes to its own part alone, so no lock is needed,
and what a process counted outlives it.
"""

import mmap
import os
from collections import defaultdict
from collections.abc import Iterator, Sequence

from pydantic_core import from_json, to_json

#: Bytes of a part: a head, names, and numbers. What is never used takes no memory.
_HEAD, _NAMES, _NUMBERS = 4_096, 1 << 20, 1 << 20
_PART = _HEAD + _NAMES + _NUMBERS
#: Places in the head: bytes of names written, numbers given away, the process that counts.
_WRITTEN, _GIVEN, _PROCESS = 0, 1, 2
#: Each name is written as its length, the place of its first number, and how many there are.
_RECORD = 12
#: Numbers of what found no room; nobody reads them.
_SPARE = 64

#: Name of a number: what is counted, then the values of its labels.
Name = tuple[str, ...]


class Cells:
    """Numbers by name: those of this process to be changed, those of all to be read together."""

    def __init__(self, parts: int = 1) -> None:
        self.parts = parts
        self._memory = mmap.mmap(-1, parts * _PART)
        self._known: dict[Name, tuple[int, int]] = {}
        self.take(0)

    def take(self, part: int) -> None:
        """Count in a part from here on: where another process ended, its numbers stand."""
        self.part = part
        begin = part * _PART
        whole = memoryview(self._memory)
        self._head = whole[begin : begin + _HEAD].cast("Q")
        self.numbers = whole[begin + _HEAD + _NAMES : begin + _PART].cast("d")
        self._head[_PROCESS] = os.getpid()
        self._head[_GIVEN] = max(self._head[_GIVEN], _SPARE)
        self._known = {name: (first, count) for name, first, count in self._named(part)}

    def first_of(self, name: Name, count: int = 1) -> int:
        """Place in `numbers` of the first number of a name, made at 0 where it is new."""
        found = self._known.get(name)
        if found is not None:
            return found[0]
        written, first = self._head[_WRITTEN], self._head[_GIVEN]
        text = to_json(name)
        if written + _RECORD + len(text) > _NAMES or first + count > len(self.numbers):
            return 0
        begin = self.part * _PART + _HEAD + written
        head = b"".join(n.to_bytes(4, "little") for n in (len(text), first, count))
        self._memory[begin : begin + _RECORD + len(text)] = head + text
        self._head[_GIVEN] = first + count
        # Last, so that who reads meanwhile finds it whole or not at all.
        self._head[_WRITTEN] = written + _RECORD + len(text)
        self._known[name] = (first, count)
        return first

    def together(self) -> dict[Name, list[float]]:
        """The numbers of every name, those of all processes added."""
        added: dict[Name, list[float]] = defaultdict(list)
        for part in range(self.parts):
            for name, numbers in self._read(part):
                held = added[name] or [0.0] * len(numbers)
                added[name] = [a + b for a, b in zip(held, numbers, strict=True)]
        return added

    def processes(self) -> dict[int, int]:
        """Process that counts, or counted, in each part that was taken."""
        heads = {p: self._head_of(p)[_PROCESS] for p in range(self.parts)}
        return {part: process for part, process in heads.items() if process}

    def _head_of(self, part: int) -> memoryview:
        begin = part * _PART
        return memoryview(self._memory)[begin : begin + _HEAD].cast("Q")

    def _read(self, part: int) -> Iterator[tuple[Name, Sequence[float]]]:
        begin = part * _PART + _HEAD + _NAMES
        numbers = memoryview(self._memory)[begin : begin + _NUMBERS].cast("d")
        for name, first, count in self._named(part):
            yield name, numbers[first : first + count].tolist()

    def _named(self, part: int) -> Iterator[tuple[Name, int, int]]:
        begin = part * _PART + _HEAD
        names = self._memory[begin : begin + self._head_of(part)[_WRITTEN]]
        at = 0
        while at < len(names):
            length, first, count = (
                int.from_bytes(names[at + place : at + place + 4], "little") for place in (0, 4, 8)
            )
            text = names[at + _RECORD : at + _RECORD + length]
            yield tuple(from_json(text)), first, count
            at += _RECORD + length

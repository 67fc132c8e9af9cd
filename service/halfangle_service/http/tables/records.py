r"""Cuts a table into its records, as they came, while it arrives.

A record ends at a line feed that is not within quotes (RFC 4180); a quote opens a cell only where
the cell begins, so that an angle such as `8°18'20"` may stand bare. Never more is held than one
record may be long.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass


class TooLong:
    """What stands in place of a record that is longer than one may be."""


TOO_LONG = TooLong()
Record = bytes | TooLong


@dataclass(frozen=True, slots=True)
class Block:
    """Records of a line each, none of which has a quote."""

    text: bytes

    def count(self) -> int:
        """How many they are."""
        return self.text.count(b"\n")

    def records(self) -> list[Record]:
        """Each of them, with its line end."""
        return [line + b"\n" for line in self.text.split(b"\n")[:-1]]

    def without_first(self) -> "tuple[Record, list[Block]]":
        """The first of them, and what follows it."""
        end = self.text.index(b"\n") + 1
        return self.text[:end], [Block(self.text[end:])] if end < len(self.text) else []

    def parts(self, most: int) -> "Iterator[Block]":
        """The same in blocks of about so many records at most."""
        size = len(self.text) * most // self.count()
        at = 0
        while at < len(self.text):
            end = self.text.find(b"\n", at + size) + 1 or len(self.text)
            yield Block(self.text[at:end])
            at = end


@dataclass(frozen=True, slots=True)
class Loose:
    """Records of any kind."""

    found: list[Record]

    def count(self) -> int:
        """How many they are."""
        return len(self.found)

    def records(self) -> list[Record]:
        """Each of them, with the line end that it came with."""
        return self.found

    def without_first(self) -> "tuple[Record, list[Loose]]":
        """The first of them, and what follows it."""
        first, *rest = self.found
        return first, [Loose(rest)] if rest else []

    def parts(self, most: int) -> "Iterator[Loose]":
        """The same, so many at most together."""
        for first in range(0, len(self.found), most):
            yield Loose(self.found[first : first + most])


Rows = Block | Loose

#: A quoted record that is still open is looked through again only when it has grown by so much:
#: whoever sends it byte by byte would have all of it read each time.
_SHORT, _GROWN = 4_096, 1.25
#: Quotes left open of one table that are looked through for their end.
_MOST_LEFT_OPEN = 50


class Records:
    """Cuts what arrives into records, each with the line end that it came with."""

    def __init__(self, delimiter: str, most_bytes: int) -> None:
        d = re.escape(delimiter.encode())
        cell = rb'(?:"(?:[^"]++|"")*+"%b|[^%b"\n][^%b\n]*+)?'
        lenient, strict = (cell % (after, d, d) for after in (rb"[^%b\n]*+" % d, rb"\r?"))
        self._record = re.compile(rb"%b(?:%b%b)*+\n" % (lenient, d, lenient))
        self._well_made = re.compile(rb"%b(?:%b%b)*+\n" % (strict, d, strict))
        self._most = most_bytes
        self._begun = bytearray()
        self._passing_over = False
        self._look_again_at = 0
        self._left_open = 0

    def of(self, chunk: bytes) -> list[Rows]:
        r"""Give the records that this piece of the table ends.

        >>> records = Records(",", most_bytes=8)
        >>> records.of(b'a,b\r\n1,"'), records.of(b'\n"\n2,3'), records.end()
        ([Loose(found=[b'a,b\r\n'])], [Loose(found=[b'1,"\n"\n'])], [Loose(found=[b'2,3'])])
        >>> records.of(b"1,2\n3,4\n5")
        [Block(text=b'1,2\n3,4\n')]
        """
        self._begun += chunk
        if b"\n" not in chunk and len(self._begun) <= self._most:
            return []
        return self._cut()

    def end(self) -> list[Rows]:
        """Give the last record, where no line feed ends it."""
        self._look_again_at = 0
        rows = self._cut(ended=True)
        if self._begun:
            rows.append(Loose([self._whole(bytes(self._begun))]))
            self._begun.clear()
        return rows

    def _cut(self, *, ended: bool = False) -> list[Rows]:
        whole = bytes(self._begun)
        quoted = b'"' in whole
        if quoted and len(whole) < self._look_again_at:
            return []
        rows: list[Rows] = []
        at = 0
        if self._passing_over:
            at = whole.find(b"\n") + 1
            if at == 0:
                self._begun.clear()
                return []
            rows.append(Loose([self._whole(b"")]))
        if quoted:
            loose, at = self._loose(whole, at, ended=ended)
            rows.append(loose)
        elif (end := whole.rfind(b"\n") + 1) > at:
            block = Block(whole[at:end])
            if end - at <= self._most:
                rows.append(block)
            else:
                lines = (line + b"\n" for line in block.text.split(b"\n")[:-1])
                rows.append(Loose([self._whole(line) for line in lines]))
            at = end
        self._keep(whole[at:])
        return [one for one in rows if one != Loose([])]

    def _loose(self, whole: bytes, at: int, *, ended: bool) -> tuple[Loose, int]:
        """Records from a place on, some of them quoted, and where the last of them ends."""
        found: list[Record] = []
        while at < len(whole):
            end = self._record_end(whole, at, ended=ended)
            if end < 0:
                break
            found.append(self._whole(whole[at:end]))
            at = end
        return Loose(found), at

    def _record_end(self, whole: bytes, at: int, *, ended: bool) -> int:
        """Where the record that begins here ends; below 0 where its end may still come.

        A quote that nothing closes, or that another row's closes, would swallow the rows between:
        then its line stands by itself. That is looked for so often, then no quote reaches over the
        end of a line.
        """
        line_end = whole.find(b"\n", at) + 1 or (len(whole) if ended else -1)
        if self._left_open >= _MOST_LEFT_OPEN or line_end - at > self._most:
            return line_end
        found = self._record.match(whole, at, at + self._most)
        if found is None:
            if not ended and len(whole) - at <= self._most:
                return -1
        elif found.end() == line_end or self._well_made.fullmatch(whole, at, found.end()):
            return found.end()
        self._left_open += 1
        return line_end

    def _keep(self, rest: bytes) -> None:
        self._begun[:] = rest
        size = len(rest)
        if size > self._most:
            self._begun.clear()
            self._passing_over = True
        self._look_again_at = 0 if size < _SHORT else min(int(size * _GROWN), self._most + 1)

    def _whole(self, record: bytes) -> Record:
        too_long = self._passing_over or len(record) > self._most
        self._passing_over = False
        return TOO_LONG if too_long else record

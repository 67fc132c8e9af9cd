"""Lines of a body that may have no end: never more of it is held than one line may be long."""

from collections.abc import Iterator


class TooLong:
    """What stands in place of a line that is longer than one may be."""


TOO_LONG = TooLong()
Line = bytes | TooLong


class Lines:
    """Cuts what arrives at line feeds; a line that is too long is passed over as it arrives."""

    def __init__(self, most_bytes: int) -> None:
        self._most = most_bytes
        self._begun = b""
        self._passing_over = False

    def of(self, chunk: bytes) -> Iterator[Line]:
        r"""Give each line that this piece of the body ends; blank ones are left out.

        >>> lines = Lines(most_bytes=4)
        >>> [*lines.of(b"ab")], [*lines.of(b"c\n\nd")], [*lines.end()]
        ([], [b'abc'], [b'd'])
        >>> [type(line).__name__ for line in lines.of(b"abcdef\ng\n")]
        ['TooLong', 'bytes']
        """
        *ended, rest = chunk.split(b"\n")
        for part in ended:
            yield from self._whole(part)
        self._begin(rest)

    def end(self) -> Iterator[Line]:
        """Give the last line, where no line feed ends it."""
        yield from self._whole(b"")

    def _whole(self, part: bytes) -> Iterator[Line]:
        """The line that ends with this part."""
        line = self._begun + part
        too_long = self._passing_over or len(line) > self._most
        self._begun, self._passing_over = b"", False
        if too_long:
            yield TOO_LONG
        elif line.strip():
            yield line

    def _begin(self, part: bytes) -> None:
        """Keep the beginning of a line, unless it is too long already."""
        if self._passing_over or len(self._begun) + len(part) > self._most:
            self._begun, self._passing_over = b"", True
        else:
            self._begun += part

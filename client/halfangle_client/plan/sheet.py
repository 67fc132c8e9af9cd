"""Lines of plain text in no more than so many columns: titles, sentences, lists, tables."""

import textwrap
from collections.abc import Callable, Iterable, Iterator, Sequence

WIDTH = 100
_GAP = "  "

#: How a text will look where it is printed: a terminal may lack characters.
Shown = Callable[[str], str]


class Sheet:
    """A text that grows by sections; each text is written as it will be shown, then laid out."""

    def __init__(self, shown: Shown = str) -> None:
        self._shown = shown
        self._lines: list[str] = []

    def text(self) -> str:
        """The whole of it."""
        return "\n".join([*self._lines, ""])

    def title(self, words: str) -> None:
        """The title of the sheet."""
        self._underlined(words, "=")

    def section(self, words: str) -> None:
        """A section's title, a line apart from what is above."""
        self._lines.append("")
        self._underlined(words, "-")

    def say(self, words: str, first: str = "", rest: str | None = None) -> None:
        """A sentence or two; `first` stands before the first line, `rest` before the others."""
        first, words = self._shown(first), self._shown(words)
        rest = " " * len(first) if rest is None else rest
        self._lines += textwrap.wrap(
            words,
            WIDTH,
            initial_indent=first,
            subsequent_indent=rest,
            break_on_hyphens=False,
        ) or [first.rstrip()]

    def points(self, every: Iterable[str], mark: str = "- ") -> None:
        """A list."""
        for each in every:
            self.say(each, mark)

    def table(self, rows: Iterable[Sequence[str]], align: str, heads: Sequence[str] = ()) -> None:
        """Columns side by side, `align` a letter each: l, r; the last of l takes what is left.

        What is too long for the last column goes on below it.
        """
        cells = [[self._shown(cell) for cell in row] for row in rows]
        titles = [[self._shown(head) for head in heads]] if heads and cells else []
        wide = [max(map(len, column)) for column in zip(*titles, *cells, strict=True)]
        for row in (*titles, *cells):
            self._lines += _row(row, wide, align)

    def _underlined(self, words: str, with_: str) -> None:
        self.say(words)
        self._lines.append(with_ * max(map(len, self._lines[-1:])))


def _row(row: Sequence[str], wide: Sequence[int], align: str) -> Iterator[str]:
    """The lines of one row."""
    padded = [
        cell.rjust(width) if side == "r" else cell.ljust(width)
        for cell, width, side in zip(row[:-1], wide, align, strict=False)
    ]
    before = "".join(f"{cell}{_GAP}" for cell in padded)
    last = row[-1].rjust(wide[-1]) if align[-1] == "r" else row[-1]
    room = max(20, WIDTH - len(before))
    lines = textwrap.wrap(last, room, break_on_hyphens=False, drop_whitespace=True) or [""]
    if align[-1] == "r":
        lines = [last]
    yield f"{before}{lines[0]}".rstrip()
    yield from (f"{' ' * len(before)}{line}" for line in lines[1:])

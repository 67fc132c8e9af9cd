"""Mutants of the published tables: one digit of one value."""

import random
import re
from collections.abc import Iterator

from mutation.mutants import Mutant

_LINE = re.compile(rb"^\s*([A-Za-z_0-9]+)\s*=\s*(.*?)\s*(?:#.*)?$")
_ARRAY_LINE = re.compile(rb"^\s*[\[\]{}\d\"'.,\s+-]+(?:#.*)?$")
#: What a row says of itself; not a value of the trade.
_SAID = re.compile(
    r"title|series|unit|source|clause|edition|standing|name|designation|key|note|what|how|\w+_standing"
    r"|\w+_source|description|text"
)
_NUMBER = re.compile(rb"(?<![\w.])\d+(?:\.\d+)?(?:e-?\d+)?(?![\w])")


def mutants_of_table(file: str, content: bytes, seed: int) -> list[Mutant]:
    """One mutant for each number of a table: one of its digits, by the seed, is another."""
    found: list[Mutant] = []
    offset = 0
    for line, text in enumerate(content.splitlines(keepends=True), start=1):
        for start, end in _values(text):
            found += _of_number(file, line, text, offset, start, end, seed)
        offset += len(text)
    return found


def _values(text: bytes) -> Iterator[tuple[int, int]]:
    """Where the numbers of a line stand."""
    line = _LINE.match(text)
    if line and not _SAID.fullmatch(line[1].decode()):
        first, last = line.span(2)
    elif _ARRAY_LINE.match(text) and not text.lstrip().startswith(b"[["):
        first, last = 0, len(text.split(b"#")[0])
    else:
        return
    for number in _NUMBER.finditer(text, first, last):
        yield number.span()


def _of_number(
    file: str, line: int, text: bytes, offset: int, start: int, end: int, seed: int
) -> Iterator[Mutant]:
    chance = random.Random(f"{seed} {file} {line} {start}")  # noqa: S311  not secret
    places = [place for place in range(start, end) if text[place : place + 1].isdigit()]
    place = chance.choice(places)
    digit = int(text[place : place + 1])
    others = [other for other in range(10) if other != digit and (other or place > start)]
    after = text[:place] + str(chance.choice(others)).encode() + text[place + 1 :]
    yield Mutant(
        file,
        line,
        "digit",
        offset + place,
        offset + place + 1,
        after[place : place + 1].decode(),
        _named(text, text[start:end]),
        _named(text, after[start:end]),
        line,
        line,
        (file.rpartition("/")[2],),
    )


def _named(text: bytes, number: bytes) -> str:
    """A number with the name of its line, where the line has one."""
    line = _LINE.match(text)
    return (b"%b = %b" % (line[1], number) if line else number).decode()

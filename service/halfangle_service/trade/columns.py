"""A number of which every row has its own: with it a calculation on floats works out a column.

A function of the trade is written for floats. Called with a `Column` in place of a float it does
the same arithmetic on every row at once, by NumPy, whose sums, products, quotients and roots are to
the last bit Python's own. Sines and the like are not, so these are Python's own for both
(`elementary.py`). Where the rows differ in a decision (`if`, `max`, `and`), the calculation stops
with `Parting`, and whoever began it begins it anew for each part of the rows: every row takes just
the path that it takes by itself, so that no formula and no limit is written twice.

A `Column` is no float on purpose: what is not made for columns raises TypeError, and never takes a
part of them for the whole.

Where a column is written into a sentence a mark stands in it, for the text that the row form's own
function gives of each row's number (`in_words`); `Tape.sentences` puts the texts in.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from itertools import repeat
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]

_PIECE = 8_192
#: Stands for a figure in a sentence that is said of many rows. No UTF-8 holds these signs, so that
#: nothing in a request or in a sentence of ours can be taken for one.
_MARK = "\udc00{}\udfff"
_MARKS = re.compile(_MARK.format("([0-9]+)"))


class Parting(BaseException):
    """The rows differ in a decision: `where` it is true, they take one path, else the other.

    No Exception, so that nothing on the way takes it for an error of the calculation.
    """

    def __init__(self, where: Bools) -> None:
        super().__init__(f"{int(where.sum())} of {len(where)} rows part from the others")
        self.where = where


class Tape:
    """What was costly on the path so far: rows that part later are not worked out twice."""

    def __init__(self, kept: list[Floats]) -> None:
        self.kept: Final = kept
        self._at = 0
        self._figures: list[_Figure] = []

    def of(self, rows: NDArray[np.intp]) -> "Tape":
        """A tape for a part of the rows, from its beginning."""
        return Tape([values.take(rows) for values in self.kept])

    def recall(self, work: Callable[[], Floats]) -> Floats:
        """The next of what was kept, or else what the work gives."""
        if self._at == len(self.kept):
            self.kept.append(work())
        self._at += 1
        return self.kept[self._at - 1]

    def mark(self, function: Callable[..., str], values: tuple[Any, ...]) -> str:
        """What stands in a sentence for the text that a function gives of each row's numbers."""
        self._figures.append(_Figure(function, values))
        return _MARK.format(len(self._figures) - 1)

    def sentences(self, said: str, rows: NDArray[np.intp]) -> list[str] | None:
        """What is said of each of these rows; None where it is the same of all.

        Raises ArithmeticError or ValueError where a row's number cannot be written.
        """
        between, figures = _MARKS.split(said)[::2], _MARKS.findall(said)
        if not figures:
            return None
        texts = [self._figures[int(figure)].texts(rows) for figure in figures]
        form = "%s".join(part.replace("%", "%%") for part in between)
        return [form % row for row in zip(*texts, strict=True)]


@dataclass(frozen=True, slots=True)
class _Figure:
    """What a function writes of each row's numbers."""

    function: Callable[..., str]
    values: tuple[Any, ...]

    def texts(self, rows: NDArray[np.intp]) -> list[str]:
        """The texts of these rows."""
        each = (v.numbers(rows) if isinstance(v, Column) else repeat(v) for v in self.values)
        return [*map(self.function, *each)]


class Mask:
    """What a comparison says of every row; taken as one truth where all rows agree."""

    __slots__ = ("where",)
    __hash__ = None  # type: ignore[assignment]  # what is found by a truth is not found by rows

    def __init__(self, where: Bools) -> None:
        self.where = where

    def __bool__(self) -> bool:
        """The one truth of all rows; raises Parting where there is none."""
        if self.where.all():
            return True
        if not self.where.any():
            return False
        raise Parting(self.where)

    def __eq__(self, other: object) -> bool:
        """As one truth: two comparisons are alike where both say the same."""
        return bool(self) == (bool(other) if isinstance(other, Mask) else other)


class Column:
    """A number of any unit of which every row has its own; reckons and compares as a float does."""

    __slots__ = ("tape", "values")
    __array_ufunc__ = None
    __hash__ = None  # type: ignore[assignment]  # nothing may keep what it gave for a column

    def __init__(self, values: Floats, tape: Tape) -> None:
        self.values = values
        self.tape = tape

    def __repr__(self) -> str:
        return f"Column of {len(self.values)} rows"

    def __str__(self) -> str:
        return in_words(str, self)

    def __format__(self, form: str) -> str:
        return in_words(format, self, form)

    def numbers(self, rows: NDArray[np.intp]) -> list[Any]:
        """The numbers of these rows, as the row form has them."""
        numbers: list[Any] = self.values.take(rows).tolist()
        return numbers

    def __bool__(self) -> bool:
        return bool(Mask(self.values != 0.0))

    def _made(self, values: Floats) -> "Column":
        return Column(values, self.tape)

    def __add__(self, other: Any) -> Any:
        return _reckoned(np.add, self, other)

    def __radd__(self, other: Any) -> Any:
        return _reckoned(np.add, other, self)

    def __sub__(self, other: Any) -> Any:
        return _reckoned(np.subtract, self, other)

    def __rsub__(self, other: Any) -> Any:
        return _reckoned(np.subtract, other, self)

    def __mul__(self, other: Any) -> Any:
        return _reckoned(np.multiply, self, other)

    def __rmul__(self, other: Any) -> Any:
        return _reckoned(np.multiply, other, self)

    def __truediv__(self, other: Any) -> Any:
        return _divided(np.divide, self, other)

    def __rtruediv__(self, other: Any) -> Any:
        return _divided(np.divide, other, self)

    def __floordiv__(self, other: Any) -> Any:
        return _divided(np.floor_divide, self, other)

    def __mod__(self, other: Any) -> Any:
        return _divided(np.mod, self, other)

    def __divmod__(self, other: Any) -> Any:
        return self // other, self % other

    def __pow__(self, other: Any) -> Any:
        return mapped(pow, self, other)

    def __neg__(self) -> "Column":
        return self._made(-self.values)

    def __pos__(self) -> "Column":
        return self

    def __abs__(self) -> "Column":
        return self._made(np.abs(self.values))

    def __round__(self, digits: int | None = None) -> "Column":
        if digits is not None:
            return mapped(round, self, digits)
        return self._whole(np.rint)

    def __floor__(self) -> "Column":
        return self._whole(np.floor)

    def __ceil__(self) -> "Column":
        return self._whole(np.ceil)

    def _whole(self, function: Callable[[Floats], Floats]) -> "Column":
        """Whole numbers, which have no -0; rows that are not finite have none, and part."""
        finite: Any = np.isfinite(self.values)
        if not bool(Mask(finite)):
            raise OverflowError("cannot convert what is not finite to an integer")
        return WholeColumn(function(self.values) + 0.0, self.tape)

    def __lt__(self, other: Any) -> Any:
        return _compared(np.less, self, other)

    def __le__(self, other: Any) -> Any:
        return _compared(np.less_equal, self, other)

    def __gt__(self, other: Any) -> Any:
        return _compared(np.greater, self, other)

    def __ge__(self, other: Any) -> Any:
        return _compared(np.greater_equal, self, other)

    def __eq__(self, other: object) -> Any:
        return _compared(np.equal, self, other)

    def __ne__(self, other: object) -> Any:
        return _compared(np.not_equal, self, other)


class WholeColumn(Column):
    """Numbers that are Python's int in the row form, which writes 8 where a float is 8.0."""

    __slots__ = ()

    def _made(self, values: Floats) -> "Column":
        return WholeColumn(values + 0.0, self.tape)

    def numbers(self, rows: NDArray[np.intp]) -> list[Any]:
        """The numbers of these rows, as the row form has them."""
        return [*map(int, super().numbers(rows))]


class TextColumn(Column):
    """Angles that came in as degrees, minutes and seconds, so that no reading note is due."""

    __slots__ = ()


def is_column(value: object) -> bool:
    """True for a number of which every row has its own."""
    return isinstance(value, Column)


def mapped(function: Callable[..., Any], *values: Any) -> Column:
    """A function on floats, row for row; rows for which it raises an error part from the others."""
    columns = [value for value in values if isinstance(value, Column)]
    tape, rows = columns[0].tape, len(columns[0].values)
    each: list[Any] = [
        np.ascontiguousarray(v.values).data if isinstance(v, Column) else (v,) * rows
        for v in values
    ]

    def work() -> Floats:
        try:
            return np.fromiter(map(function, *each), np.float64, rows)
        except (ArithmeticError, ValueError):
            fails = np.fromiter((_fails(function, *row) for row in zip(*each, strict=True)), bool)
            if fails.all():
                raise
            raise Parting(fails) from None

    return Column(tape.recall(work), tape)


def in_rows(function: Callable[..., float], *values: Any) -> float:
    """A function that is not made for columns, of numbers of any unit or of columns of them."""
    if any(isinstance(value, Column) for value in values):
        return mapped(function, *values)  # type: ignore[return-value]
    return function(*values)


def in_words(function: Callable[..., str], *values: Any) -> str:
    """What a function writes of numbers, some of them columns: a mark for the text of each row."""
    tape = next(value.tape for value in values if isinstance(value, Column))
    return tape.mark(function, values)


def worked_out(work: Callable[[Floats], Floats], value: Column) -> Column:
    """What a function on arrays gives for a column, once for the rows that part later too."""
    return Column(value.tape.recall(lambda: work(value.values)), value.tape)


def in_pieces(work: Callable[[Floats], NDArray[Any]], values: Floats) -> NDArray[Any]:
    """Work of many steps on an array, piece by piece, which stay in the cache: twice as fast.

    The work takes every number by itself.
    """
    if len(values) <= _PIECE:
        return work(values)
    starts = range(0, len(values), _PIECE)
    return np.concatenate([work(values[at : at + _PIECE]) for at in starts])


def _fails(function: Callable[..., Any], *values: Any) -> bool:
    try:
        function(*values)
    except (ArithmeticError, ValueError):
        return True
    return False


def _of(value: Any) -> Any:
    """Numbers of a column, or the one of all rows; NotImplemented for what is no number."""
    if isinstance(value, Column):
        return value.values
    return value if isinstance(value, int | float) else NotImplemented


def _reckoned(function: Callable[..., Floats], one: Any, other: Any) -> Any:
    left, right = _of(one), _of(other)
    if left is NotImplemented or right is NotImplemented:
        return NotImplemented
    tape = (one if isinstance(one, Column) else other).tape
    if function is not np.divide and isinstance(one, _WHOLE) and isinstance(other, _WHOLE):
        return WholeColumn(function(left, right) + 0.0, tape)
    return Column(function(left, right), tape)


_WHOLE = (WholeColumn, int)


def _divided(function: Callable[..., Floats], one: Any, other: Any) -> Any:
    """A quotient; rows that divide by nothing part from the others, and raise as floats do."""
    right = _of(other)
    if right is not NotImplemented and not np.all(right):
        if isinstance(other, Column) and np.any(right):
            raise Parting(right == 0.0)
        raise ZeroDivisionError("division by zero")
    return _reckoned(function, one, other)


def _compared(function: Callable[..., Bools], one: Column, other: object) -> Any:
    right = _of(other)
    return NotImplemented if right is NotImplemented else Mask(function(one.values, right))

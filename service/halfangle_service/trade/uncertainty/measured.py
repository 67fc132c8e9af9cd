"""The budget of a quantity that is worked out from measured ones (JCGM 100:2008, 5.1).

Each input carries the largest error of its value, plus or minus, as a rectangular half-width, or
None where nothing was stated of it.
"""

import math
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple

from halfangle_service.errors import Impossible
from halfangle_service.trade.uncertainty.budget import Budget, Contribution
from halfangle_service.trade.wording import of_any_unit, plain

#: Step over which the sensitivity to an error of 0 is taken, relative to the largest input.
_SMALL = 1e-6


class LargestError(NamedTuple):
    """The largest error of an input, plus or minus, and the request's field that states it."""

    field: str
    value: float | None


@dataclass(frozen=True, slots=True)
class Measured:
    """A measured input: its value and the largest error of it, both in `unit`.

    A value stands `above` and `below` these, or it means nothing.
    """

    name: str
    value: float
    error: LargestError
    unit: str = "length"
    above: float = -math.inf
    below: float = math.inf


def budget_of(function: Callable[..., float], *inputs: Measured) -> Budget:
    """Budget of a function of measured inputs, in the function's unit.

    Each contribution has the name of the field that states the error, and says which input it is
    of where several share that field.

    Each sensitivity is half the change over the whole error, so that it holds over it. Raises
    Impossible where an error leaves the function nothing to work with.
    """
    sharing = Counter(i.error.field for i in inputs)
    return Budget(
        tuple(
            Contribution(
                i.error.field,
                i.error.value,
                sensitivity=_slope(function, inputs, i),
                unit=i.unit,
                of=i.name if sharing[i.error.field] > 1 else None,
            )
            for i in inputs
            if i.error.value is not None
        ),
        not_stated=tuple(dict.fromkeys(i.error.field for i in inputs if i.error.value is None)),
    )


def _slope(function: Callable[..., float], inputs: tuple[Measured, ...], moved: Measured) -> float:
    """Half the change of the function over an input's error, per unit of the error."""
    largest = max(abs(i.value) for i in inputs if i.unit == moved.unit)
    step = moved.error.value or _SMALL * (largest or 1.0)
    if not moved.above < moved.value - step <= moved.value + step < moved.below:
        raise _swallowed(moved, step)
    try:
        low, high = (
            function(*(i.value + sign * step if i is moved else i.value for i in inputs))
            for sign in (-1.0, 1.0)
        )
    except Impossible as nothing:
        raise _swallowed(moved, step) from nothing
    return (high - low) / (2.0 * step)


def _swallowed(moved: Measured, step: float) -> Impossible:
    error = f"{plain(step)}″" if moved.unit == "arcsecond" else of_any_unit(step)
    return Impossible(
        f"An error of {error} in {moved.name} swallows what is measured: nothing can be had "
        "from these figures.",
        fields={moved.error.field: f"should be less than {error}"},
    )

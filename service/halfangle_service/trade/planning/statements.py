"""Which statement that is missing would decide between the ways, and from what value on.

Who ranks the ways gives a function: which of them is best where one missing thing is stated as so
much. Nothing is known of the value, so every value from none at all up to the largest is looked at:
at `_PLACES` of them, and between two with different answers the range is halved. The work is
counted, so that the same question has the same answer.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from halfangle_service.trade.uncertainty import Budget, Contribution

#: Values looked at between nothing and the largest: each so many times the one before.
_PLACES, _TIMES = 5, 2.5
#: How near a value is found, as a part of itself, in no more than so many halvings.
_NEAR_ENOUGH, _HALVINGS = 5e-3, 24
#: Turns looked for between two of the places.
_MOST_TURNS = 3
#: Nobody sets up with an error that by itself takes this many times the tolerance.
_BEYOND_USE = 2.0
#: Many times that: of a rectangle as wide not 1 part in 20 lies within the tolerance.
FAR_BEYOND_USE = 20.0


@dataclass(frozen=True, slots=True)
class Missing:
    """What was not stated: its name, and the largest value to look at, in its own unit.

    `ways` are the names of the ways whose budget or time it acts on. Where nothing is found up to
    there, though what is best is one of those ways, it is looked for up to `farthest`.
    """

    name: str
    largest: float
    ways: tuple[str, ...]
    farthest: float = 0.0


@dataclass(frozen=True, slots=True)
class Turn:
    """A value above which another way is best; None where none is fit."""

    above: float
    best: str | None


@dataclass(frozen=True, slots=True)
class Deciding:
    """Missing statements that would change which way is best.

    `best_at_zero` is best where they are stated as nothing at all, and then `turns` in rising order
    of the value. Several names are those that only together would change it: they have no turns.
    """

    names: tuple[str, ...]
    best_now: str | None
    best_at_zero: str | None
    turns: tuple[Turn, ...] = ()


def stated(budget: Budget, contribution: Contribution) -> Budget:
    """A budget with a contribution that it named as not stated."""
    left = tuple(name for name in budget.not_stated if name != contribution.name)
    return replace(budget, contributions=(*budget.contributions, contribution), not_stated=left)


def beyond_use(at_one: Contribution, tolerance: float) -> float:
    """A value of an input that no set-up of this tolerance has; `at_one` is the input at 1."""
    return _BEYOND_USE * tolerance / abs(at_one.at_limit) if at_one.at_limit else 0.0


def deciding(
    missing: Sequence[Missing],
    best: Callable[[str, float], str | None],
    best_now: str | None,
) -> tuple[Deciding, ...]:
    """Those of the missing statements that would, each by itself, change which way is best.

    What acts on one way alone can only take the first place from it, and only as it grows: then the
    two ends of the range say whether it does.
    """
    found = []
    for each in missing:

        def at(value: float, name: str = each.name) -> str | None:
            return best(name, value)

        at_zero = at(0.0)
        places = 1 if len(each.ways) == 1 else _PLACES
        unmoved = len(each.ways) == 1 and at_zero not in each.ways
        turns = () if unmoved else _turns(at, at_zero, each.largest, places)
        if not turns and at_zero != best_now and each.farthest > each.largest:
            # What is stated to win has to lose somewhere, or it is not said up to where it wins.
            turns = _turns(at, at_zero, each.farthest, 1)
        if turns or at_zero != best_now:
            found.append(Deciding((each.name,), best_now, at_zero, turns))
    return tuple(found)


def deciding_together(
    missing: Sequence[Missing],
    best_with_all: Callable[[Sequence[str]], str | None],
    best_now: str | None,
    alone: Sequence[Deciding],
) -> tuple[Deciding, ...]:
    """For each way, all that it lacks, where only all of it, stated as nothing, changes the best.

    `alone` are those that do so each by itself: what one of them changes is not said again.
    """
    told = {each.best_at_zero for each in alone} | {best_now}
    found = []
    for way in sorted({way for each in missing for way in each.ways}):
        names = tuple(each.name for each in missing if way in each.ways)
        if len(names) > 1 and (winner := best_with_all(names)) not in told:
            found.append(Deciding(names, best_now, winner))
            told.add(winner)
    return tuple(found)


def _turns(
    best: Callable[[float], str | None], at_zero: str | None, largest: float, places: int
) -> tuple[Turn, ...]:
    """Where the best way changes, from nothing up to the largest value."""
    found = []
    low, before = 0.0, at_zero
    for place in range(places):
        high = largest / _TIMES ** (places - 1 - place)
        after = best(high)
        for _ in range(_MOST_TURNS):
            if after == before:
                break
            turn, low = _turn(best, low, high, before, after)
            found.append(turn)
            before = turn.best
        low, before = high, after
    return tuple(found)


def _turn(
    best: Callable[[float], str | None],
    low: float,
    high: float,
    before: str | None,
    after: str | None,
) -> tuple[Turn, float]:
    """Up to which value between two with different answers the first of them holds.

    And the value just above it at which that was found.
    """
    for _ in range(_HALVINGS):
        if high - low <= _NEAR_ENOUGH * high:
            break
        middle = (low + high) / 2.0
        found = best(middle)
        if found == before:
            low = middle
        else:
            high, after = middle, found
    return Turn(low, after), high


def sentence(
    found: Deciding,
    what: str,
    figure: Callable[[float], str],
    way: Callable[[str], str],
) -> str:
    """Say what to state and what it decides; `what` names it, `figure` writes a value.

    >>> turn = Turn(70.0, "wheel-side")
    >>> decides = Deciding(("wheel_breakdown",), "sine-plate", "sine-plate", (turn,))
    >>> sentence(decides, "the breakdown of the wheel", lambda v: f"{v:g}″ a piece", str)
    'State the breakdown of the wheel: above 70″ a piece wheel-side is best.'
    """

    def wins(name: str | None) -> str:
        return "no way is fit" if name is None else f"{way(name)} is best"

    parts = [f"above {figure(turn.above)} {wins(turn.best)}" for turn in found.turns]
    if found.best_at_zero != found.best_now:
        if found.turns:
            first = f"up to {figure(found.turns[0].above)} {wins(found.best_at_zero)}"
        elif len(found.names) > 1:
            first = f"if all of it is small, {wins(found.best_at_zero)}"
        else:
            first = f"then {wins(found.best_at_zero)}"
        parts.insert(0, first)
    return f"State {what}: {', '.join(parts)}."

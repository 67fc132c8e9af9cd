"""Which missing statement decides between ways, against a scan of every value and by hand."""

import numpy as np
import pytest

from halfangle_service.trade.planning.statements import (
    Deciding,
    Missing,
    Turn,
    beyond_use,
    deciding,
    deciding_together,
    sentence,
    stated,
)
from halfangle_service.trade.uncertainty import Budget, Contribution, forecast_of

TOLERANCE = 100.0
#: Two ways: budgets in arc-seconds with what they lack, and the minutes that they take.
WAYS = {
    "sine-plate": (Budget((Contribution("stack", 30.0),), not_stated=("breakdown",)), 30.0),
    "wheel-side": (Budget((Contribution("swivel", 70.0),)), 40.0),
}
ORDER = ("holds", "may-not-hold", "not-stated", "does-not-hold")


def best(changes: dict[str, float]) -> str | None:
    """The first way by forecast, then by time, with what was missing stated so."""
    rank = []
    for name, (budget, minutes) in WAYS.items():
        known = budget
        for missing in budget.not_stated:
            if missing in changes:
                known = stated(known, Contribution(missing, changes[missing]))
        forecast = forecast_of(known, -TOLERANCE, TOLERANCE)
        rank.append((ORDER.index(forecast), minutes, name))
    first = min(rank)
    return None if first[0] == ORDER.index("does-not-hold") else first[2]


def asked(missing: list[Missing]) -> tuple[Deciding, ...]:
    """What decides between these ways."""
    return deciding(missing, lambda name, value: best({name: value}), best({}))


def test_breakdown_decides_between_plate_and_side() -> None:
    """Up to a breakdown the plate holds and is quicker; above it the wheel's side is best."""
    largest = beyond_use(Contribution("breakdown", 1.0), TOLERANCE)
    (found,) = asked([Missing("breakdown", largest, ("sine-plate",))])
    assert (found.best_now, found.best_at_zero) == ("wheel-side", "sine-plate")
    (turn,) = found.turns
    assert turn.best == "wheel-side"
    # By hand: of 30″ and b, both rectangular, the density t from its end is t / (4 · 30 · b); both
    # corners beyond ±100″ hold (30 + b − 100)² / (4 · 30 · b) = 0.05, so that (b − 70)² = 6 b.
    exact = 73.0 + np.sqrt(73.0**2 - 4900.0)
    assert turn.above == pytest.approx(exact, rel=5e-3)


def test_every_value_scanned_finds_the_same_turn() -> None:
    """A dense scan of values changes its best way just where the turn is, and nowhere else."""
    largest = beyond_use(Contribution("breakdown", 1.0), TOLERANCE)
    (found,) = asked([Missing("breakdown", largest, ("sine-plate",))])
    values = np.geomspace(0.01, largest, 1500)
    names = [best({"breakdown": float(value)}) for value in values]
    changes = [i for i in range(1, len(names)) if names[i] != names[i - 1]]
    assert len(changes) == 1
    at = changes[0]
    assert values[at - 1] * 0.995 <= found.turns[0].above <= values[at]


def test_a_statement_that_changes_nothing_is_not_asked_for() -> None:
    """What acts on a way that comes second whatever its value is not named."""

    def second(name: str, value: float) -> str | None:
        assert (name, value >= 0.0) == ("flank_wear", True)
        return "sine-plate"

    missing = [Missing("flank_wear", 10.0, ("dressed-wheel",))]
    assert deciding(missing, second, "sine-plate") == ()


def test_several_turns_of_a_shared_statement_are_all_found() -> None:
    """A value that acts on several ways may turn the order more than once; each turn is told."""

    def shared(_name: str, value: float) -> str | None:
        return "a" if value < 0.3 else "b" if value < 2.0 else "c" if value < 7.7 else None

    (found,) = deciding([Missing("wear", 20.0, ("a", "b", "c"))], shared, "a")
    assert [turn.best for turn in found.turns] == ["b", "c", None]
    assert [turn.above for turn in found.turns] == pytest.approx([0.3, 2.0, 7.7], rel=5e-3)
    assert found.best_at_zero == "a"


def test_questions_are_bounded_and_the_same_each_time() -> None:
    """No more values are asked for than counted, and the same ones each time."""
    calls: list[float] = []

    def counting(_name: str, value: float) -> str | None:
        calls.append(value)
        return "a" if value < 1.0 else "b"

    missing = [Missing("wear", 1e3, ("a", "b"))]
    first, made = deciding(missing, counting, "a"), list(calls)
    assert len(made) <= 1 + 5 + 3 * 24
    calls.clear()
    assert deciding(missing, counting, "a") == first
    assert calls == made


def test_what_only_all_of_it_together_would_change_is_told_once() -> None:
    """A way that lacks two statements is best only with both, so that both are named together."""
    missing = [Missing("pitch", 9.0, ("plate",)), Missing("yaw", 9.0, ("plate",))]

    def with_all(names: object) -> str | None:
        return "plate" if names == ("pitch", "yaw") else "side"

    found = deciding_together(missing, with_all, "side", ())
    assert found == (Deciding(("pitch", "yaw"), "side", "plate"),)
    alone = (Deciding(("pitch",), "side", "plate"),)
    assert deciding_together(missing, with_all, "side", alone) == ()


def test_stated_contribution_is_no_longer_missing() -> None:
    """A budget with a contribution stated names it no more, and counts it."""
    budget = Budget((), not_stated=("stack", "yaw"))
    known = stated(budget, Contribution("stack", 3.0))
    assert known.not_stated == ("yaw",)
    assert [part.name for part in known.contributions] == ["stack"]
    # By hand: twice what fills the tolerance by itself, 100 / 2.
    assert beyond_use(Contribution("stack", 1.0, sensitivity=2.0), 100.0) == 100.0


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (
            Deciding(("b",), "plate", "plate", (Turn(70.0, "side"),)),
            "State b: above 70″ side is best.",
        ),
        (
            Deciding(("b",), "side", "plate", (Turn(70.0, "side"), Turn(900.0, None))),
            "State b: up to 70″ plate is best, above 70″ side is best, above 900″ no way is fit.",
        ),
        (Deciding(("b",), None, "plate"), "State b: then plate is best."),
        (Deciding(("b", "c"), "side", "plate"), "State b: if all of it is small, plate is best."),
    ],
)
def test_sentence_says_what_wins_and_from_where(found: Deciding, words: str) -> None:
    """The sentence names what to state, the values and the ways."""
    assert sentence(found, "b", lambda value: f"{value:g}″", str) == words

"""No error to expect passes the worst: of every estimate of every operation."""

import copy
import math
import random
from collections.abc import Iterable, Iterator
from typing import Any

import pytest
from scipy import stats

from halfangle_service.errors import Refusal
from releases.mutations import Mutator
from sent.known import Known, known
from support import Call

SEEDED = 60
#: Operations that answer estimates are more than these.
LEAST_OPERATIONS = 20
#: Larger than what the probability of a sum is worked out to.
ROUNDING = 1e-6
#: Four readings of a section, in inches: one of them is to spare.
FOUR_READINGS = {
    "units": "in",
    "surface": "external",
    "indicator_resolution": 0.00005,
    "readings": [
        {"angular_position": angle, "reading": reading}
        for angle, reading in ((0, 0.0003), (90, 0.0004), (180, -0.0003), (270, -0.0005))
    ],
}


def estimates_in(document: Any) -> Iterator[dict[str, Any]]:
    """Every estimate of an answer, however deep, that something was stated of."""
    if isinstance(document, dict):
        if document.get("contributions") and "worst_case" in document:
            yield document
        document = list(document.values())
    if isinstance(document, list):
        for part in document:
            yield from estimates_in(part)


def fault_of(found: dict[str, Any]) -> str | None:
    """What is wrong with the worst case of an estimate; None where nothing is."""
    worst, expanded = found["worst_case"], found["expanded_uncertainty"]
    without = [part["worst_case"] is None for part in found["contributions"]]
    if worst is None:
        return None if any(without) else "no worst case, though each contribution has one"
    if any(without) and worst != 180:
        return "a worst case, though a contribution has none"
    if worst < expanded * (1 - ROUNDING):
        return f"worst case {worst}, and {expanded} is covered"
    return None


def test_a_worst_case_that_is_too_small_would_be_seen() -> None:
    """The check below sees a worst case below what is covered, and one that nothing bears out."""
    found = {"worst_case": 1.0, "expanded_uncertainty": 2.0, "contributions": [{"worst_case": 1.0}]}
    assert fault_of(found) == "worst case 1.0, and 2.0 is covered"
    no_limit = [{"worst_case": None}]
    assert fault_of(found | {"contributions": no_limit}) is not None
    assert fault_of(found | {"worst_case": None}) is not None
    assert fault_of(found | {"worst_case": None, "contributions": no_limit}) is None


@pytest.mark.outside("runout.indicate", source="scipy: Student's t; least squares by hand")
def test_the_spread_of_few_readings_has_no_worst_case(call: Call) -> None:
    """Of four readings one is to spare, and Student's factor of 12.7 passes three deviations.

    By hand: half of what opposed readings differ is 0.0003 along 0° and 0.00045 along 90°, and
    what the fit of a circle leaves is ∓0.000025 at each, 0.00005 in all: the standard deviation of
    one reading with one degree of freedom; an eccentricity of four has √(2/4) of it. None at all
    would show as much often enough, so that what is covered reaches down to nothing.
    """
    found = call("runout.indicate", **FOUR_READINGS)["result"]["eccentricity"]
    student = float(stats.t.ppf(0.975, 1))
    spread = 0.00005 * (2 / 4) ** 0.5
    assert found["standard_uncertainty"] == pytest.approx(spread)
    assert found["expanded_uncertainty"] == pytest.approx(math.hypot(0.0003, 0.00045))
    assert found["expanded_uncertainty"] > student * spread > 3 * spread
    assert found["worst_case"] is None
    [scatter] = found["contributions"]
    assert (scatter["name"], scatter["worst_case"]) == ("scatter", None)


def without_factor(body: dict[str, Any]) -> dict[str, Any]:
    """A request that leaves the coverage factor to the service."""
    return {field: value for field, value in body.items() if field != "coverage_factor"}


def by_chance(known: Known, name: str) -> Iterator[dict[str, Any]]:
    """Requests of one operation near the known ones, from a seed."""
    chance = random.Random(f"worst {name}")  # noqa: S311  reproducible, not secret
    mutator = Mutator(name, known.nodes[name], known.pools, chance)
    for _ in range(SEEDED):
        body = copy.deepcopy(chance.choice(known.requests[name]))
        for _ in range(chance.choice((1, 2, 3))):
            body = mutator.changed(body)
        yield body


def checked(call: Call, name: str, bodies: Iterable[dict[str, Any]]) -> int:
    """How many estimates the answers to these requests hold; fails where one is at fault."""
    told = 0
    for body in map(without_factor, bodies):
        try:
            found = list(estimates_in(call(name, **body)))
        except (Refusal, ValueError):
            continue
        assert [fault for one in found if (fault := fault_of(one))] == [], (name, body)
        told += len(found)
    return told


def test_what_is_covered_never_passes_the_worst_case(call: Call) -> None:
    """In every answer the expanded uncertainty is within the worst case, or there is none.

    Only where the caller sends a coverage factor of his own may it be otherwise.
    """
    every = known()
    told = {name: checked(call, name, every.requests[name]) for name in every.operations}
    with_estimates = [name for name, count in told.items() if count]
    assert len(with_estimates) > LEAST_OPERATIONS
    assert sum(checked(call, name, by_chance(every, name)) for name in with_estimates) > 10 * SEEDED

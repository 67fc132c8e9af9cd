"""Socket told from part by seating the work again, and the clocking that leaves least."""

import math
from dataclasses import dataclass

from halfangle_service.fields import Direction
from halfangle_service.fields.runout import budget_of_found, length_estimate
from halfangle_service.topics.jobs.correction.request import CorrectionReseating
from halfangle_service.topics.jobs.correction.result import CorrectionSeats
from halfangle_service.trade.correction.causes import Evidence
from halfangle_service.trade.runout import vectors
from halfangle_service.trade.runout.doubt import length_half_width
from halfangle_service.trade.runout.true_up import verdict_within
from halfangle_service.trade.tables.correction.causes import CauseName
from halfangle_service.trade.uncertainty import Budget, Forecast, forecast_by


@dataclass(frozen=True, slots=True)
class Reseated:
    """Both readings told apart, what to do, and what they say of their causes."""

    seats: CorrectionSeats
    leave_it: bool | None
    forecast: Forecast | None
    found: dict[CauseName, Evidence]


def reseated(measured: CorrectionReseating) -> Reseated:
    """Tell socket from part, and say whether clocking the work anew is worth it."""
    surface = measured.surface
    first = measured.at_0.center(surface, path="measured/at_0/")
    second = measured.at_180.center(surface, path="measured/at_180/")
    halves = {"measured/at_0": (measured.at_0, 0.5), "measured/at_180": (measured.at_180, 0.5)}
    budget = budget_of_found(halves)
    socket, part = vectors.split(first, second)
    best = abs(vectors.difference(abs(socket), abs(part)))
    told = {name: _told(vector, budget) for name, vector in (("socket", socket), ("part", part))}
    seats = CorrectionSeats(
        socket_tir=length_estimate(socket, budget, per_eccentricity=2.0),
        socket_off_toward=Direction.of(vectors.direction(socket)),
        part_tir=length_estimate(part, budget, per_eccentricity=2.0),
        part_off_toward=Direction.of(vectors.direction(part)),
        best_clocking=Direction.of(vectors.best_clocking(socket, part)),
        best_clocking_tir=2.0 * best,
    )
    now = budget_of_found({"measured/at_0": (measured.at_0, 1.0)})
    kept = _kept(first, now, measured.limit_tir)
    leave = True if kept == "holds" else _leave(told)
    turned = vectors.best_clocking(socket, part)
    clocked = _kept(complex(best), _clocked(measured, turned), measured.limit_tir)
    return Reseated(
        seats, leave, kept if leave else clocked, _found(told, abs(socket) >= abs(part))
    )


def _told(vector: complex, budget: Budget) -> bool | None:
    """Whether a runout is more than its uncertainty; None where that was not stated."""
    if budget.not_stated:
        return None
    return abs(vector) > length_half_width(abs(vector), budget)


def _leave(told: dict[str, bool | None]) -> bool | None:
    """Whether no clocking is better than another: one of both runs true as far as can be told."""
    values = set(told.values())
    return None if None in values else not all(values)


def _clocked(measured: CorrectionReseating, turned_degrees: float | None) -> Budget:
    """Budget of the runout with the work turned so far from its first clocking.

    Socket + part turned by φ is m_0 (1 + exp iφ)/2 + m_180 (1 - exp iφ)/2.
    """
    half = math.radians(turned_degrees or 0.0) / 2.0
    return budget_of_found(
        {
            "measured/at_0": (measured.at_0, math.cos(half)),
            "measured/at_180": (measured.at_180, math.sin(half)),
        }
    )


def _kept(vector: complex, budget: Budget, limit_tir: float | None) -> Forecast | None:
    """Whether a runout keeps the limit, at 95 and 5 of 100; None without one."""
    if limit_tir is None:
        return None
    return forecast_by(verdict_within(vector, budget, limit_tir / 2.0), budget)


def _found(told: dict[str, bool | None], socket_larger: bool) -> dict[CauseName, Evidence]:
    """What the readings say: the larger of both first, nothing of what was not told."""
    found: dict[CauseName, Evidence] = {}
    names: tuple[tuple[str, CauseName, bool], ...] = (
        ("socket", "runout-of-the-socket", socket_larger),
        ("part", "runout-of-the-part", not socket_larger),
    )
    for key, cause, larger in names:
        if told[key] is False:
            found[cause] = "against"
        elif told[key] and larger:
            found[cause] = "for"
    return found

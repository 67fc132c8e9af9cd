"""When to stop so that the size comes inside its tolerance, by what is read and fed. One unit.

Derived here. What is read says of the size as much as one layer changes both. A slide that moves by
steps stops anywhere within one of them past where it should, half of it either way of the middle.
Pieces of a dress that are not measured come out by what the wheel has lost since the last that was:
from nothing to all of it, half either way of the middle, toward more stock left. Work warmer than
what it is measured with reads large by its expansion.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.planning.feed import ErrorLimits, FedSurface, Motion, Reading
from halfangle_service.trade.tables.materials.expansion import materials
from halfangle_service.trade.tapers.feed import amount_of
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule
from halfangle_service.trade.uncertainty.zones import Case

#: The field that states the error of each reading, and the rest of what a size is uncertain by.
READ_BY = {
    "diameter": "diameter_error_limit",
    "axial-position": "axial_position_error_limit",
    "height": "height_error_limit",
    "feed-dial": "dial_error_limit",
}
STEP, WEAR, WARMTH = "dial_step", "size_wear_per_piece", "work_temperature_difference_celsius"


@dataclass(frozen=True, slots=True)
class SizeErrors:
    """What was stated of a size: limits of the readings, None where not stated, and the rest.

    `pieces_between` are those ground after one that was measured, until the next is.
    """

    readings: ErrorLimits
    dial_step: float | None
    wear_per_piece: float | None
    warmth_celsius: float | None
    pieces_between: int


@dataclass(frozen=True, slots=True)
class Sized:
    """A size with its ± tolerance: nominal, and what one layer square to the surface changes it."""

    nominal: float
    tolerance: float
    per_layer: float


def sized_of(surface: FedSurface, nominal: float, tolerance: float) -> Sized:
    """A cone's diameter at its gauge line, or a face's distance square to itself."""
    per_layer = amount_of(1.0, "diameter", surface.half_angle_rad) if surface.turned else 1.0
    return Sized(nominal, tolerance, per_layer)


def size_budget(
    sized: Sized, motion: Motion, half_angle_rad: float, reading: Reading, errors: SizeErrors
) -> Budget:
    """The error of the size where the work is stopped by a reading, its mean left out.

    Contributions have the names of the fields that state them; steel is taken for the work.
    """
    limits = errors.readings
    read = {
        "diameter": limits.diameter,
        "axial-position": limits.axial,
        "height": limits.height,
        "feed-dial": limits.dial,
    }[reading.name]
    by_dial = sized.per_layer / amount_of(1.0, motion.dial, half_angle_rad)
    asked = [
        (READ_BY[reading.name], read, sized.per_layer / reading.per_layer, "length"),
        (STEP, errors.dial_step, by_dial / 2.0, "length"),
        (
            WARMTH,
            errors.warmth_celsius,
            sized.nominal * materials()["steel"].coefficient,
            "celsius",
        ),
    ]
    if errors.pieces_between:
        by_wear = sized.per_layer * errors.pieces_between / 2.0
        asked.insert(2, (WEAR, errors.wear_per_piece, by_wear, "length"))
    return Budget(
        tuple(
            Contribution(f"feeding/{name}", value, sensitivity=slope, unit=unit)
            for name, value, slope, unit in asked
            if value is not None
        ),
        not_stated=tuple(f"feeding/{name}" for name, value, _, _ in asked if value is None),
    )


def drift(sized: Sized, errors: SizeErrors, *, internal: bool) -> float:
    """What the size drifts by in the mean until the next piece is measured, signed.

    Stock is left on: a plug comes out larger, a socket smaller.
    """
    if errors.wear_per_piece is None:
        return 0.0
    mean = sized.per_layer * errors.wear_per_piece * errors.pieces_between / 2.0
    return -mean if internal else mean


@dataclass(frozen=True, slots=True)
class StopZone:
    """Readings between which to stop, the smaller first, and the one to stop at."""

    smallest: float
    largest: float
    aim: float


def stop_zone(
    sized: Sized,
    reading: Reading,
    budget: Budget,
    drifts: float,
    rule: DecisionRule,
    *,
    internal: bool,
) -> StopZone | None:
    """Where to stop so that the size is inside by the rule; None where no reading says so.

    Also where the reading has no figure, as of a dial without an allowance. The step of the slide
    is no error of what is read, so it takes nothing off the zone; the aim is its middle.
    """
    if reading.at_size is None:
        return None
    parts = tuple(part for part in budget.contributions if part.name != f"feeding/{STEP}")
    zone = Case(-sized.tolerance, sized.tolerance, Budget(parts), rule).accepted()
    if zone is None or not all(map(math.isfinite, zone)):
        return None
    ratio = _rises_with_size(reading, internal=internal) * reading.per_layer / sized.per_layer
    ends = sorted(reading.at_size + (end - drifts) * ratio for end in zone)
    return StopZone(ends[0], ends[1], reading.at_size - drifts * ratio)


def _rises_with_size(reading: Reading, *, internal: bool) -> float:
    """Whether a reading rises, 1, or falls, −1, as the size does.

    Stock that is left makes a plug large and a socket small; a gauge stands off by it, and the
    dial is so much short.
    """
    if reading.name in {"diameter", "height"}:
        return 1.0
    left = -1.0 if internal else 1.0
    return left if reading.name == "axial-position" else -left

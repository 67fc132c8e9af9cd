"""How a layer is ground off: passes, travel, turns of the work, and by which reading to stop.

Lengths in one unit, angles in radians. A layer is measured square to the surface. α is a cone's
half angle; a face has none. What shops do where nothing was stated is common practice, no source;
what a plan took of it is named in it.

Derived here: a wheel that is seen as a circle of radius R and passes f along the slant in a turn of
the work leaves cusps R − √(R² − f²/4) high; one that is seen on edge covers its width.
"""

import math
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Literal

from halfangle_service.trade.tapers.feed import Measure, amount_of, passes
from halfangle_service.trade.units import Units, bench_step, from_mm

#: What of the wheel passes along the slant: the lowest line of its rim, seen as a circle; its
#: width, seen on edge; or nothing, where it is plunged.
Passing = Literal["rim", "width", "nothing"]
PhaseName = Literal["rough", "finish", "spark-out"]
ReadingName = Literal["diameter", "axial-position", "height", "feed-dial"]

#: Surface speed of the wheel over that of the work, where the work is driven, and turns of a
#: fixture turned by hand, in 1/min; all of this table common practice, no source.
SPEED_RATIO = 100.0
TURNS_BY_HAND = 40.0
#: Speed of the table over a face, in m/min.
TABLE_M_PER_MIN = 12.0
#: Turns of the work for each step of feed of a wheel that is plunged.
TURNS_A_STEP = 3.0
#: Share of the wheel's width that passes in a turn of the work, or in a stroke over a face.
WIDTH_SHARE: dict[PhaseName, float] = {"rough": 0.5, "finish": 0.25, "spark-out": 0.25}
FACE_SHARE: dict[PhaseName, float] = {"rough": 0.25, "finish": 0.125, "spark-out": 0.125}
#: Height of the cusps that a rim leaves, in mm: 0.0001 and 0.00001 in.
CUSP_MM: dict[PhaseName, float] = {"rough": 0.00254, "finish": 0.000254, "spark-out": 0.000254}
#: Downfeed of a roughing pass and stock left for finishing, in bench steps; past either end of the
#: surface the wheel goes so many of them too.
ROUGH_STEPS: dict[Units, float] = {"in": 5.0, "mm": 10.0}
FINISH_STOCK_STEPS: dict[Units, float] = {"in": 5.0, "mm": 12.0}
OVERRUN_STEPS: dict[Units, float] = {"in": 1000.0, "mm": 2500.0}
SPARK_OUT_PASSES = 2


@dataclass(frozen=True, slots=True)
class FedSurface:
    """The surface to grind: its half angle, its length along the slope, and how wide it is.

    `diameter` is a cone's largest, None of a face; `width` a face's across the slope, None of a
    cone and where it is not stated. `internal`: a socket's.
    """

    half_angle_rad: float
    slant: float
    diameter: float | None
    width: float | None = None
    internal: bool = False

    @property
    def turned(self) -> bool:
        """True for a cone, which turns about its axis."""
        return self.diameter is not None


@dataclass(frozen=True, slots=True)
class Motion:
    """How a way feeds: what its feed dial measures of a layer, and what passes along the slant.

    A plate tilted along the travel shows the wheel as a circle, across it on edge.
    """

    dial: Measure
    passing: Passing


#: The ways of feeding, by what is tilted or swivelled. A slide that moves square to a generator
#: takes off the layer itself; one that moves square to the work's axis 1 / cos α of it.
MOTIONS: dict[str, Motion] = {
    "plate-along-travel": Motion("square-to-surface", "rim"),
    "plate-across-travel": Motion("square-to-surface", "width"),
    "dressed-wheel": Motion("radius", "nothing"),
    "wheel-side": Motion("square-to-surface", "width"),
    "swivelled-workhead": Motion("square-to-surface", "width"),
}


@dataclass(frozen=True, slots=True)
class Habits:
    """How a shop feeds; None where it does not say, and then `usual` fills it in."""

    rough_downfeed_per_pass: float | None = None
    finish_downfeed_per_pass: float | None = None
    finish_allowance: float | None = None
    spark_out_passes: int | None = None
    past_large_end: float | None = None
    past_small_end: float | None = None


@cache
def usual(units: Units) -> Habits:
    """What shops do; common practice, no source."""
    step = bench_step(units)
    past = _times(OVERRUN_STEPS[units], step)
    return Habits(
        rough_downfeed_per_pass=_times(ROUGH_STEPS[units], step),
        finish_downfeed_per_pass=step,
        finish_allowance=_times(FINISH_STOCK_STEPS[units], step),
        spark_out_passes=SPARK_OUT_PASSES,
        past_large_end=past,
        past_small_end=past,
    )


@dataclass(frozen=True, slots=True)
class Wheel:
    """Diameter, width and surface speed (m/s) of the wheel; None where it is not stated."""

    diameter: float | None = None
    width: float | None = None
    speed_m_per_s: float | None = None


@dataclass(frozen=True, slots=True)
class Phase:
    """Roughing, finishing or sparking out.

    `dial` is what the feed dial moves a pass; `advance` along the slant in a turn of the work, or
    across a face in a stroke: None where nothing advances, or the wheel was not stated.
    """

    name: PhaseName
    stock: float
    passes: int
    downfeed: float
    last_downfeed: float
    dial: float
    advance: float | None


def phases(
    surface: FedSurface,
    motion: Motion,
    habits: Habits,
    allowance: float,
    wheel: Wheel,
    units: Units,
) -> tuple[Phase, ...]:
    """The phases that take an allowance off; `habits` with everything stated.

    All of an allowance no larger than the finishing stock is finished.
    """
    finish = min(allowance, habits.finish_allowance or 0.0)
    rough = float(Decimal(str(allowance)) - Decimal(str(finish)))
    stocks: tuple[tuple[PhaseName, float, float | None], ...] = (
        ("rough", rough, habits.rough_downfeed_per_pass),
        ("finish", finish, habits.finish_downfeed_per_pass),
    )
    found = []
    for name, stock, a_pass in stocks:
        if stock > 0.0 and a_pass:
            count, last = passes(stock, a_pass)
            downfeed = min(a_pass, stock)
            dial = amount_of(downfeed, motion.dial, surface.half_angle_rad)
            advance = advance_of(name, surface, motion, wheel, units)
            found.append(Phase(name, stock, count, downfeed, last, dial, advance))
    advance = advance_of("spark-out", surface, motion, wheel, units)
    without = habits.spark_out_passes or 0
    return (*found, Phase("spark-out", 0.0, without, 0.0, 0.0, 0.0, advance))


def advance_of(
    phase: PhaseName, surface: FedSurface, motion: Motion, wheel: Wheel, units: Units
) -> float | None:
    """Advance along the slant in a turn of the work, or across a face in a stroke of the table.

    None where the wheel is plunged, or was not stated.
    """
    if not surface.turned:
        return None if wheel.width is None else FACE_SHARE[phase] * wheel.width
    if motion.passing == "width":
        return None if wheel.width is None else WIDTH_SHARE[phase] * wheel.width
    if motion.passing == "nothing" or wheel.diameter is None:
        return None
    return advance_for_cusps(wheel.diameter / 2.0, from_mm(CUSP_MM[phase], units))


def advance_for_cusps(wheel_radius: float, cusp_height: float) -> float:
    """Advance in a turn with which a wheel seen as a circle leaves cusps so high: a chord.

    A wheel no larger than its cusps advances by its diameter.

    >>> round(advance_for_cusps(3.5, 0.00001), 5)
    0.01673
    """
    height = min(cusp_height, wheel_radius)
    return 2.0 * math.sqrt(height * (2.0 * wheel_radius - height))


def travel_of(surface: FedSurface, motion: Motion, habits: Habits, wheel: Wheel) -> float | None:
    """Travel along the slant of a pass, both overruns with it; 0 where the wheel is plunged.

    A wheel seen on edge is fed until its width has covered them, as its clearance has it. None
    where its width was not stated.
    """
    if motion.passing == "nothing" and surface.turned:
        return 0.0
    whole = surface.slant + (habits.past_large_end or 0.0) + (habits.past_small_end or 0.0)
    if motion.passing != "width" or not surface.turned:
        return whole
    return None if wheel.width is None else max(0.0, whole - wheel.width)


def minutes_of(
    phase: Phase,
    surface: FedSurface,
    travel: float | None,
    work_rpm: float | None,
    table_per_min: float,
) -> float | None:
    """Time of all passes of a phase in minutes; None where travel, turns or wheel are unknown.

    A turn more than the travel takes, since the last advance is ground in a whole turn. A face is
    ground in strokes of the table, back and forth, from one edge to the other.
    """
    if not surface.turned:
        if travel is None or phase.advance is None or surface.width is None:
            return None
        strokes = math.ceil(surface.width / phase.advance - 1e-9) + 1
        return phase.passes * strokes * travel / table_per_min
    if work_rpm is None or travel is None:
        return None
    if travel == 0.0:
        return phase.passes * TURNS_A_STEP / work_rpm
    if phase.advance is None:
        return None
    return phase.passes * (travel / phase.advance + 1.0) / work_rpm


@dataclass(frozen=True, slots=True)
class Reading:
    """What can be read to stop by: how it goes with the layer still to come off.

    `per_layer` is its change for one unit of layer, `at_finish` what it reads when finishing
    begins and `at_size` when it is done; of the feed dial `at_size` is counted from the first
    touch. `error_limit` ± is the reading's own; None where it is not stated, and the wheel's wear
    is never in it.
    """

    name: ReadingName
    per_layer: float
    at_finish: float | None
    at_size: float | None
    error_limit: float | None

    @property
    def layer_error_limit(self) -> float | None:
        """The layer that its error limit comes to, square to the surface."""
        return None if self.error_limit is None else self.error_limit / self.per_layer


@dataclass(frozen=True, slots=True)
class ErrorLimits:
    """Limits ± of what can be read: a diameter, a place along the axis, a height, the feed dial."""

    diameter: float | None = None
    axial: float | None = None
    height: float | None = None
    dial: float | None = None


def readings(
    surface: FedSurface,
    motion: Motion,
    allowance: float | None,
    finish_stock: float | None,
    size: float | None,
    limits: ErrorLimits,
) -> tuple[Reading, ...]:
    """What can be read to stop by; `size` is the diameter at the gauge line, or a face's height.

    A diameter and a height read more than their size while stock is left, a socket's diameter
    less. The axial position is what the gauge still stands off its place.
    """

    def left(per_layer: float) -> float | None:
        return None if finish_stock is None else finish_stock * per_layer

    def sized(name: ReadingName, per_layer: float, limit: float | None) -> Reading:
        more = left(per_layer)
        sign = -1.0 if surface.internal else 1.0
        start = None if size is None or more is None else size + sign * more
        return Reading(name, per_layer, start, size, limit)

    half = surface.half_angle_rad
    dial = amount_of(1.0, motion.dial, half)
    roughed = None if allowance is None or finish_stock is None else allowance - finish_stock
    by_dial = Reading(
        "feed-dial",
        dial,
        None if roughed is None else roughed * dial,
        None if allowance is None else allowance * dial,
        limits.dial,
    )
    if not surface.turned:
        return sized("height", 1.0, limits.height), by_dial
    shift = amount_of(1.0, "axial", half)
    axial = Reading("axial-position", shift, left(shift), 0.0, limits.axial)
    return sized("diameter", amount_of(1.0, "diameter", half), limits.diameter), axial, by_dial


def finest(found: tuple[Reading, ...]) -> Reading | None:
    """The reading whose error limit is the thinnest layer; None where none states its limit."""
    stated = [reading for reading in found if reading.layer_error_limit is not None]
    return min(stated, key=lambda reading: reading.layer_error_limit or 0.0, default=None)


def _times(steps: float, step: float) -> float:
    """So many steps, as a person would write them."""
    return float(Decimal(str(steps)) * Decimal(str(step)))

"""How the allowance is ground off by a way: passes, travel, work speed, and when to stop.

The layer is measured square to the surface, as `downfeed` of a center's plan measures it.
"""

from collections.abc import Iterator
from dataclasses import dataclass, fields, replace
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    CountOut,
    Length,
    LengthOut,
    MinutesOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    Rpm,
    Unit,
    bench_step,
    to_mm,
)
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.numbers import SparkOutPasses
from halfangle_service.fields.set_up_errors import Kelvins
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.shop.wheel import PlanWheel
from halfangle_service.trade.clearance.assembly import Direction
from halfangle_service.trade.inspection.practice import MICROMETER_STEPS
from halfangle_service.trade.planning.feed import (
    MOTIONS,
    SPARK_OUT_PASSES,
    SPEED_RATIO,
    TABLE_M_PER_MIN,
    TURNS_BY_HAND,
    ErrorLimits,
    FedSurface,
    Habits,
    Motion,
    Phase,
    Reading,
    ReadingName,
    Wheel,
    finest,
    minutes_of,
    phases,
    readings,
    travel_of,
    usual,
)
from halfangle_service.trade.planning.times import grinding_time
from halfangle_service.trade.tapers.feed import Measure
from halfangle_service.trade.units import Units, from_mm
from halfangle_service.trade.wheel.speed import rpm_for_speed, surface_speed

RpmOut = Annotated[float, Unit("per_minute")]


class PlanFeeding(RequestModel):
    """How the shop feeds. What is absent is taken as usual, and the plan says so."""

    grinding_allowance: Length | None = Field(
        None,
        description="Stock left on the surface, measured square to it, in `units`. Absent: passes "
        "and times of them are not told.",
        examples=[0.004],
    )
    rough_downfeed_per_pass: Length | None = Field(
        None, description="Downfeed of a roughing pass, square to the surface, in `units`."
    )
    finish_downfeed_per_pass: Length | None = Field(
        None, description="Downfeed of a finishing pass, square to the surface, in `units`."
    )
    finish_allowance: NonNegativeLength | None = Field(
        None, description="Stock left for finishing, square to the surface, in `units`."
    )
    spark_out_passes: SparkOutPasses = SPARK_OUT_PASSES
    past_large_end: NonNegativeLength | None = Field(
        None, description="How far the wheel goes past the large end of the ground line."
    )
    past_small_end: NonNegativeLength | None = Field(
        None, description="How far it goes past the small end."
    )
    width_across_slope: Length | None = Field(
        None, description="Width of a face across its slope, in `units`; not of a cone."
    )
    work_rpm: Rpm | None = Field(
        None, description="Turns of the work in a minute; not of a face.", examples=[40]
    )
    diameter_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the diameter as it is measured at the gauge line."
    )
    axial_position_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error ± of the place of gauge line or point along the axis, as it is "
        "measured, in `units`.",
    )
    height_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of a face's height as it is measured, in `units`."
    )
    dial_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error ± of the feed dial from the first touch on, the wheel's wear in "
        "it, in `units`.",
    )
    dial_step: NonNegativeLength | None = Field(
        None, description="Smallest step of the feed dial, in `units`; 0 where it has none."
    )
    size_wear_per_piece: NonNegativeLength | None = Field(
        None,
        description="What the wheel loses in one piece, square to the surface, in `units`; counts "
        "where pieces are stopped by the dial.",
    )
    work_temperature_difference_celsius: Kelvins = Field(
        None,
        description="Largest difference ± of the work's temperature from that of what measures it, "
        "in °C.",
    )


class PlanPhase(ResultModel):
    """Roughing or finishing. Lengths square to the surface but where they say otherwise."""

    stock: LengthOut = Field(description="What it takes off.")
    downfeed_per_pass: LengthOut = Field(description="Downfeed of a pass.")
    cutting_passes: CountOut = Field(description="Passes with feed.")
    last_pass: LengthOut = Field(description="Downfeed of the last of them.")
    dial_per_pass: LengthOut = Field(
        description="What the feed dial moves in a pass: the downfeed where the slide goes square "
        "to the surface, more where it goes square to the work's axis."
    )
    advance: LengthOut | None = Field(
        description="Advance along the slant in a turn of the work, or across a face in a stroke; "
        "null where the wheel is plunged, or was not stated."
    )
    minutes: MinutesOut | None = Field(description="Time that it takes; null where not known.")


class PlanStopReading(ResultModel):
    """What can be read to stop by."""

    read_off: ReadingName = Field(description="What is read.")
    per_downfeed: NumberOut = Field(description="Its change for one unit of downfeed.")
    at_finish: LengthOut | None = Field(
        description="What it reads when roughing is done; null where allowance or size is unknown."
    )
    at_size: LengthOut | None = Field(
        description="What it reads at size: diameter or height as such, the axial position what a "
        "gauge stands off its place, the dial counted from the first touch."
    )
    reading_error_limit: LengthOut | None = Field(
        description="Largest error ± of the reading; null where it is not stated."
    )
    layer_error_limit: LengthOut | None = Field(
        description="The layer, square to the surface, that this error comes to."
    )


class PlanAssumption(ResultModel):
    """What was taken as usual, since it was not stated; common practice, no source."""

    name: str = Field(description="Field of the request that would state it, as a path.")
    assumed_value: Annotated[float, Unit("stated")] = Field(
        description="What was taken, in `input_unit`."
    )
    input_unit: str = Field(description="Unit of the value, as `x-unit` names units.")


class PlanFeed(ResultModel):
    """How the allowance comes off."""

    dial_measures: Measure = Field(
        description="What the feed dial measures of a layer, as `amount_is` of `tapers.infeed` "
        "has it: by the way that the slide goes."
    )
    rough: PlanPhase | None = Field(
        description="Roughing; null where the allowance is unknown, or all of it is finished."
    )
    finish: PlanPhase | None = Field(description="Finishing; null where nothing is left for it.")
    spark_out_passes: CountOut = Field(description="Passes without feed at the end.")
    total_passes: CountOut | None = Field(description="Passes with and without feed.")
    travel: LengthOut | None = Field(
        description="Travel of a pass along the slant, both overruns with it; 0 where the wheel is "
        "plunged; null where it is seen on edge and its width was not stated."
    )
    work_rpm: RpmOut | None = Field(
        description="Turns of the work in a minute; null of a face, and where not known."
    )
    stop_by: ReadingName | None = Field(
        description="The reading to stop by: the one whose error is the thinnest layer."
    )
    stop_readings: list[PlanStopReading] = Field(description="What can be read to stop by.")
    assumptions: list[PlanAssumption] = Field(
        description="What was taken as usual; common practice, no source."
    )
    not_stated: NotStated


@dataclass(frozen=True, slots=True)
class Feeding:
    """What of a job is the same for all its ways: surface, habits of the shop, wheel."""

    wanted: Wanted
    stated: PlanFeeding
    wheel: PlanWheel | None

    @property
    def units(self) -> Units:
        """Unit of every length."""
        return self.wanted.units

    @property
    def surface(self) -> FedSurface:
        """The surface as it is fed."""
        wanted = self.wanted
        return FedSurface(
            wanted.angle_rad if wanted.turned else 0.0,
            wanted.slant,
            wanted.large_diameter if wanted.turned else None,
            None if wanted.turned else self.stated.width_across_slope,
            wanted.internal,
        )

    @property
    def habits(self) -> Habits:
        """The shop's habits, the usual ones where it has not stated its own."""
        given = {each.name: getattr(self.stated, each.name) for each in fields(Habits)}
        return replace(
            usual(self.units), **{name: value for name, value in given.items() if value is not None}
        )

    @property
    def flat_wheel(self) -> Wheel:
        """The wheel as far as it was stated; none that enters a bore is."""
        wheel = self.wheel
        if wheel is None or self.wanted.internal:
            return Wheel()
        speed = None if wheel.rpm is None else surface_speed(self._mm(wheel.diameter), wheel.rpm)
        return Wheel(wheel.diameter, wheel.width, speed)

    def motion(self, way: str, direction: Direction) -> Motion:
        """How a way feeds; on a plate, whatever stands under its rolls, by how it tilts."""
        if self.wanted.internal:
            return MOTIONS["plate-across-travel"]
        return MOTIONS.get(way, MOTIONS[f"plate-{direction}"])

    def work_rpm(self, *, driven: bool) -> float | None:
        """Turns of the work: as stated, by the wheel's speed where it is driven, else by hand."""
        if not self.wanted.turned or self.stated.work_rpm is not None:
            return self.stated.work_rpm if self.wanted.turned else None
        if not driven:
            return TURNS_BY_HAND
        speed = self.flat_wheel.speed_m_per_s
        if speed is None:
            return None
        return rpm_for_speed(self._mm(self.wanted.large_diameter), speed / SPEED_RATIO)

    def limits(self) -> ErrorLimits:
        """Limits of what is read, a micrometer's where none is stated; of the dial none then."""
        by_micrometer = MICROMETER_STEPS * bench_step(self.units)
        stated = (
            self.stated.diameter_error_limit,
            self.stated.axial_position_error_limit,
            self.stated.height_error_limit,
        )
        diameter, axial, height = (by_micrometer if limit is None else limit for limit in stated)
        return ErrorLimits(diameter, axial, height, self.stated.dial_error_limit)

    def _mm(self, length: float) -> float:
        return to_mm(length, self.units)


@dataclass(frozen=True, slots=True)
class Fed:
    """How a way feeds: as answered, minutes of a piece, its slide, the reading to stop by."""

    plan: PlanFeed
    minutes: float | None
    motion: Motion
    reading: Reading | None


def planned_feed_of(
    feeding: Feeding,
    way: str,
    direction: Direction,
    *,
    driven: bool,
    wheel: Wheel | None,
) -> Fed:
    """How a way feeds; `wheel` is the way's own, None where the shop's flat wheel grinds."""
    surface, habits, flat = feeding.surface, feeding.habits, wheel is None
    wheel = feeding.flat_wheel if wheel is None else wheel
    motion, units = feeding.motion(way, direction), feeding.units
    allowance, turns = feeding.stated.grinding_allowance, feeding.work_rpm(driven=driven)
    travel = travel_of(surface, motion, habits, wheel)
    table = from_mm(1000.0 * TABLE_M_PER_MIN, units)
    found: tuple[Phase, ...] = ()
    if allowance is not None:
        found = phases(surface, motion, habits, allowance, wheel, units)
    minutes = {each.name: minutes_of(each, surface, travel, turns, table) for each in found}
    by_name = {each.name: each for each in found}
    stock = by_name["finish"].stock if "finish" in by_name else None if allowance is None else 0.0
    read = readings(surface, motion, allowance, stock, feeding.wanted.size, feeding.limits())
    best = finest(read)
    rough, finish = (
        _phase(by_name[name], minutes[name]) if name in by_name else None
        for name in ("rough", "finish")
    )
    result = PlanFeed(
        dial_measures=motion.dial,
        rough=rough,
        finish=finish,
        spark_out_passes=habits.spark_out_passes or 0,
        total_passes=sum(each.passes for each in found) if found else None,
        travel=travel,
        work_rpm=turns,
        stop_by=None if best is None else best.name,
        stop_readings=[_reading(each) for each in read],
        assumptions=list(_assumed(feeding, driven=driven)),
        not_stated=list(_not_stated(feeding, motion, driven=driven, flat=flat)),
    )
    grinding = grinding_time([minutes[each.name] for each in found])
    return Fed(result, grinding, motion, best)


def cutting_passes(feed: PlanFeed) -> int:
    """How many passes cut; 0 where the allowance is not known."""
    return sum(phase.cutting_passes for phase in (feed.rough, feed.finish) if phase is not None)


def _phase(phase: Phase, minutes: float | None) -> PlanPhase:
    return PlanPhase(
        stock=phase.stock,
        downfeed_per_pass=phase.downfeed,
        cutting_passes=phase.passes,
        last_pass=phase.last_downfeed,
        dial_per_pass=phase.dial,
        advance=phase.advance,
        minutes=minutes,
    )


def _reading(reading: Reading) -> PlanStopReading:
    return PlanStopReading(
        read_off=reading.name,
        per_downfeed=reading.per_layer,
        at_finish=reading.at_finish,
        at_size=reading.at_size,
        reading_error_limit=reading.error_limit,
        layer_error_limit=reading.layer_error_limit,
    )


def _assumed(feeding: Feeding, *, driven: bool) -> Iterator[PlanAssumption]:
    """What of the feed was not stated and taken as usual."""
    stated, habits, limits = feeding.stated, feeding.habits, feeding.limits()
    taken: dict[str, float | int | None] = {
        each.name: getattr(habits, each.name) for each in fields(Habits)
    }
    if feeding.surface.turned:
        taken |= {
            "diameter_error_limit": limits.diameter,
            "axial_position_error_limit": limits.axial,
        }
    else:
        taken["height_error_limit"] = limits.height
    for name, value in taken.items():
        if getattr(stated, name) is None and value is not None:
            yield PlanAssumption(name=f"feeding/{name}", assumed_value=value, input_unit="length")
    turns = feeding.work_rpm(driven=driven)
    if stated.work_rpm is None and turns is not None:
        yield PlanAssumption(name="feeding/work_rpm", assumed_value=turns, input_unit="per_minute")


def _not_stated(feeding: Feeding, motion: Motion, *, driven: bool, flat: bool) -> Iterator[str]:
    """What leaves a figure of the feed null."""
    stated, wheel = feeding.stated, feeding.wheel
    if stated.grinding_allowance is None:
        yield "feeding/grinding_allowance"
    if stated.dial_error_limit is None:
        yield "feeding/dial_error_limit"
    if feeding.wanted.size_tolerance is None:
        size = "large_diameter_tolerance" if feeding.wanted.turned else "face_distance_tolerance"
        yield f"feature/{size}"
    if not feeding.wanted.turned and stated.width_across_slope is None:
        yield "feeding/width_across_slope"
    if flat and not feeding.wanted.internal:
        on_edge = motion.passing == "width" or not feeding.wanted.turned
        if wheel is None:
            yield "equipment/wheel"
        elif wheel.width is None and on_edge:
            yield "equipment/wheel/width"
    if feeding.work_rpm(driven=driven) is None and feeding.wanted.turned:
        yield "feeding/work_rpm"

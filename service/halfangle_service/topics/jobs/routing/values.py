"""The figures of a routing's operations, by the names that the plan's own answer has for them.

What is null in the plan has no figure: it is left out, and `not_stated` says of what it follows.
"""

from collections.abc import Iterator

from halfangle_service.fields import Units
from halfangle_service.topics.jobs.plan.checks import PlanChecks
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeed
from halfangle_service.topics.jobs.plan.result import PlannedWay
from halfangle_service.topics.jobs.routing.result import RoutingValue


class Figures:
    """Makes figures of a job in its unit of lengths."""

    def __init__(self, units: Units) -> None:
        self._length = "inch" if units == "in" else "millimetre"

    def of(self, name: str, value: float | None, unit: str = "length") -> Iterator[RoutingValue]:
        """A figure by its name, and none of what is null."""
        if value is not None:
            told = self._length if unit == "length" else unit
            yield RoutingValue(name=name, value=value, unit=told)

    def of_setting(self, way: PlannedWay) -> Iterator[RoutingValue]:
        """What is set to which angle and height, and the stacks with their blocks."""
        for setting in way.settings:
            yield from self.of(f"{setting.part}/angle", setting.angle.degrees, "degree")
            yield from self.of(f"{setting.part}/height", setting.height)
            yield from self.of(
                f"{setting.part}/deviation_arcsec", setting.deviation_arcsec, "arcsecond"
            )
        for stack in way.stacks:
            yield from self.of(f"{stack.role}/total", stack.total)
            for place, size in enumerate(stack.blocks, start=1):
                yield from self.of(f"{stack.role}/blocks/{place}", size)
        gap = way.clearance.smallest_gap
        yield from self.of("clearance/smallest_gap", None if gap is None else gap.gap)

    def of_grinding(self, way: PlannedWay) -> Iterator[RoutingValue]:
        """Passes, what the dial moves, and by which reading to stop."""
        yield from self._of_feed(way.feed_plan)
        size = way.size_plan
        if size is not None:
            yield from self.of("size/smallest_stop", size.smallest_stop)
            yield from self.of("size/largest_stop", size.largest_stop)
        yield from self.of("batch/pieces_per_dress", way.batch.pieces_per_dress, "count")

    def _of_feed(self, feed: PlanFeed) -> Iterator[RoutingValue]:
        for name, phase in (("rough", feed.rough), ("finish", feed.finish)):
            if phase is not None:
                yield from self.of(f"{name}/cutting_passes", phase.cutting_passes, "count")
                yield from self.of(f"{name}/downfeed_per_pass", phase.downfeed_per_pass)
                yield from self.of(f"{name}/dial_per_pass", phase.dial_per_pass)
        yield from self.of("spark_out_passes", feed.spark_out_passes, "count")
        yield from self.of("travel", feed.travel)
        yield from self.of("work_rpm", feed.work_rpm, "per_minute")
        for stop in feed.stop_readings:
            if stop.read_off == feed.stop_by:
                yield from self.of(f"stop/{stop.read_off}/at_finish", stop.at_finish)
                yield from self.of(f"stop/{stop.read_off}/at_size", stop.at_size)

    def of_inspecting(self, way: PlannedWay, checks: PlanChecks) -> Iterator[RoutingValue]:
        """The angle's tolerance, and of the best means what it is set to and what it reads."""
        for angle in way.angles:
            yield from self.of(f"{angle.of}/tolerance_arcsec", angle.tolerance_arcsec, "arcsecond")
        for means in checks.inspections:
            if means.means != checks.best:
                continue
            view = f"{means.of}/" if means.of else ""
            for setting in means.settings:
                yield from self.of(f"{view}{setting.name}", setting.set_to, setting.unit)
            for reading in means.readings:
                for limit in (
                    "expected_reading",
                    "smallest_accepted_reading",
                    "largest_accepted_reading",
                ):
                    yield from self.of(
                        f"{view}{reading.name}/{limit}", getattr(reading, limit), reading.unit
                    )

    def of_runout(self, limit_tir: float, checks: PlanChecks) -> Iterator[RoutingValue]:
        """The drawing's limit, and what may be read with the work seated again."""
        yield from self.of("limit_tir", limit_tir)
        for seat in checks.seat_readings:
            yield from self.of(f"{seat.turned}/largest_tir", seat.largest_tir)
        for check in checks.set_up_checks:
            yield from self.of(f"{check.check}/acceptance_tir", check.acceptance_tir)

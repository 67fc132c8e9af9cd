"""What a way has beside its angle and its stacks: feed, batch, time, clearance."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from halfangle_service.topics.jobs.plan.batch import Batch, PlanBatch, planned_batch
from halfangle_service.topics.jobs.plan.clearance import (
    Fouled,
    PlanClearance,
    PlanRoom,
    Standing,
    planned_clearance,
)
from halfangle_service.topics.jobs.plan.equipment import PlanEquipment
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.feed import Feeding, PlanFeed, planned_feed_of
from halfangle_service.topics.jobs.plan.times import PlanTime, planned_time
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, Way
from halfangle_service.trade.planning.times import JobTime

#: Ways whose work stands along the plate, turning in the spin fixture.
ALONG_THE_PLATE = frozenset({"sine-plate", "stacks-under-both-rolls"})
#: Ways whose work is driven by a motor.
DRIVEN = frozenset({"swivelled-workhead"})


@dataclass(frozen=True, slots=True)
class WayParts:
    """The parts of one way; `clearance` None where it is not worked out for such a way."""

    feed: PlanFeed
    batch: PlanBatch
    time: PlanTime
    whole: JobTime
    clearance: PlanClearance | None


@dataclass(frozen=True)
class Job:
    """What a job states beside its feature, for the parts of each of its ways."""

    wanted: Wanted
    equipment: PlanEquipment
    feeding: Feeding
    room: PlanRoom
    batch: Batch
    minutes_per_piece: float | None
    _clear: dict[tuple[str, float], PlanClearance | Fouled] = field(default_factory=dict)

    def clear(self, ways: Sequence[Way]) -> tuple[list[Way], list[RuledOut]]:
        """Those of the ways that nothing fouls, and those that something does."""
        kept, out = [], []
        for way in ways:
            found = self._clearance(way)
            if isinstance(found, Fouled):
                out.append(
                    RuledOut(way.name, way.equipment, found.reason, found.field, found.instead)
                )
            else:
                kept.append(way)
        return kept, out

    def parts(self, way: Way) -> WayParts:
        """Feed, batch, time and clearance of a way that nothing fouls."""
        direction = "along-travel" if way.plate is None else way.plate.tilt_direction
        feed, minutes = planned_feed_of(
            self.feeding, way.name, direction, driven=way.name in DRIVEN
        )
        batch = planned_batch(self.batch, way.angles)
        time, whole = planned_time(
            way.setup_minutes,
            way.inspection_minutes,
            self.minutes_per_piece,
            minutes,
            self.batch.pieces,
            batch,
        )
        found = self._clearance(way)
        clearance = None if isinstance(found, Fouled) else found
        return WayParts(feed, batch, time, whole, clearance)

    def _clearance(self, way: Way) -> PlanClearance | Fouled | None:
        """Clearance of a way, once for all that stand alike; None where it is not worked out."""
        plate, wanted = way.plate, self.wanted
        along = way.name in ALONG_THE_PLATE and wanted.turned and not wanted.internal
        if plate is None or not along:
            return None
        low = next((stack.total for stack in way.stacks if stack.role == "low"), 0.0)
        if (way.path, low) not in self._clear:
            standing = Standing(
                wanted,
                plate.body,
                plate.center_distance,
                way.path,
                plate.tilt_direction,
                self.equipment.spin_fixture,
                self.equipment.wheel,
                self.feeding.stated,
                self.room,
            )
            self._clear[way.path, low] = planned_clearance(standing, low)
        return self._clear[way.path, low]

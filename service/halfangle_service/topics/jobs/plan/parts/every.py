"""What a way has beside its angle and its stacks: feed, batch, time, clearance."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.parts.batch import (
    Batch,
    PlanBatch,
    planned_batch,
    without_wear,
)
from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    Fouled,
    PlanClearance,
    PlanRoom,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.every import Clearances
from halfangle_service.topics.jobs.plan.parts.clearance.under import Asked
from halfangle_service.topics.jobs.plan.parts.feed import (
    Fed,
    Feeding,
    PlanFeed,
    planned_feed_of,
)
from halfangle_service.topics.jobs.plan.parts.size import PlanSize, planned_size
from halfangle_service.topics.jobs.plan.parts.times import PlanTime, PlanTimes, planned_time
from halfangle_service.topics.jobs.plan.result import PlanWayName
from halfangle_service.topics.jobs.plan.safety import not_safe
from halfangle_service.topics.jobs.plan.shop.equipment import PlanEquipment, PlanSinePlate
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, Way
from halfangle_service.trade.planning.feed import Wheel
from halfangle_service.trade.planning.times import JobTime

#: Ways by another wheel than the flat one over the plates.
_OWN_WHEEL: frozenset[PlanWayName] = frozenset(
    {"dressed-wheel", "wheel-side", "swivelled-workhead"}
)
#: Ways whose work a motor turns.
_DRIVEN: frozenset[PlanWayName] = frozenset({"swivelled-workhead"})


#: How a way stands: turned a quarter, on what, on which low stack, how it is laid.
_Stands = tuple[bool, str, float, int]


def by_flat_wheel(way: Way) -> bool:
    """True where the flat wheel over the plates grinds."""
    return way.name not in _OWN_WHEEL


@dataclass(frozen=True, slots=True)
class WayParts:
    """The parts of one way; `first_fails`: the wheel spoils the first piece on a dress already."""

    feed: PlanFeed
    batch: PlanBatch
    first_fails: bool
    size: PlanSize | None
    time: PlanTime
    whole: JobTime
    clearance: PlanClearance


@dataclass(frozen=True)
class Job:
    """What a job states beside its feature, for the parts of each of its ways."""

    wanted: Wanted
    equipment: PlanEquipment
    feeding: Feeding
    room: PlanRoom
    batch: Batch
    minutes_per_piece: float | None
    times: PlanTimes
    _clear: dict[_Stands, PlanClearance | Fouled] = field(default_factory=dict)

    def sort_out(self, ways: Sequence[Way]) -> tuple[list[Way], list[RuledOut]]:
        """Those of the ways that are safe and clear, and those that are not."""
        kept, out = [], []
        for way in ways:
            unsafe = not_safe(self.wanted, self.equipment, way)
            if unsafe is not None:
                out.append(unsafe)
                continue
            found = self._clearance(way)
            if isinstance(found, Fouled):
                why = (found.reason, found.field, found.instead)
                out.append(RuledOut(way.name, way.equipment, *why))
            else:
                kept.append(way)
        return kept, out

    def parts(self, ways: Sequence[Way]) -> list[WayParts]:
        """The parts of each way, none of which is fouled.

        A piece takes what its feed takes only where that is known of every way: ways are ranked
        by time, and a reckoned one stands beside no usual one.
        """
        feeds = [self._feed(way) for way in ways]
        known = all(fed.minutes is not None for fed in feeds)
        return [
            self._parts_of(way, fed, fed.minutes if known else None)
            for way, fed in zip(ways, feeds, strict=True)
        ]

    def _parts_of(self, way: Way, fed: Fed, by_feed: float | None) -> WayParts:
        angles = [(without_wear(a.budget, a.per_unit), a.tolerance_arcsec) for a in way.angles]
        by_wheel = self.batch_by(way)
        batch = planned_batch(by_wheel, angles)
        fails = batch.pieces_per_dress == 0 and by_wheel.first_fails(angles)
        time, whole = planned_time(
            list(way.work.parts(way.setup_minutes, self.times.of_setup)),
            way.inspection_minutes,
            self.times,
            self.minutes_per_piece,
            by_feed,
            self.batch.pieces,
            batch,
        )
        found = self._clearance(way)
        clear = not_known([found.field]) if isinstance(found, Fouled) else found
        size = planned_size(self.feeding, fed, batch, self.batch.pieces, self.batch.rule)
        return WayParts(fed.plan, batch, fails, size, time, whole, clear)

    def batch_by(self, way: Way) -> Batch:
        """The batch as this way grinds it."""
        return self.batch if by_flat_wheel(way) else self.batch.by_other_wheel()

    def _feed(self, way: Way) -> Fed:
        plate = self._plate(way)
        direction = "along-travel" if plate is None else plate[1].tilt_direction
        wheel = None if by_flat_wheel(way) else self._wheel(way)
        return planned_feed_of(
            self.feeding, way.name, direction, driven=way.name in _DRIVEN, wheel=wheel
        )

    def _plate(self, way: Way) -> tuple[str, PlanSinePlate] | None:
        """The sine plate that a way takes, with its path in the request; None without one."""
        for place, plate in enumerate(self.equipment.sine_plates or ()):
            if plate.name in way.equipment:
                return f"equipment/sine_plates/{place}/", plate
        return None

    def _wheel(self, way: Way) -> Wheel:
        """The wheel of a way without a plate, as far as it counts for the feed."""
        sides = {side.name: side.usable_width for side in self.equipment.wheel_sides or ()}
        return Wheel(width=sides.get(way.equipment[0]))

    def _clearance(self, way: Way) -> PlanClearance | Fouled:
        """Clearance of a way, once for all that stand alike."""
        low = next((stack.total for stack in way.stacks if stack.role == "low"), 0.0)
        key = (way.name == "quarter-turn", way.equipment[0], low, id(way.laid))
        if key not in self._clear:
            stated, shop = self.feeding.stated, self.equipment
            asked = Asked(self.wanted, stated, self.room, shop.spin_fixture)
            self._clear[key] = Clearances(asked, shop).of(way)
        return self._clear[key]

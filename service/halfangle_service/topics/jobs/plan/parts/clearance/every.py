"""The set-up of a way, and its clearance."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol, TypeVar

from halfangle_service.topics.jobs.plan.parts.clearance import (
    along_plate,
    beside_wheel,
    faces,
    in_socket,
    on_compound,
)
from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    Fouled,
    PlanClearance,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.under import WHEEL, Asked, WheelAbout
from halfangle_service.topics.jobs.plan.shop.equipment import PlanEquipment, PlanSinePlate
from halfangle_service.topics.jobs.plan.ways.way import Way


class _Named(Protocol):
    @property
    def name(self) -> str: ...


Entry = TypeVar("Entry", bound=_Named)


def placed_of(entries: Sequence[Entry] | None, field: str, way: Way) -> tuple[str, Entry] | None:
    """What of one kind a way takes, with its path in the request; None where it takes none."""
    for place, entry in enumerate(entries or ()):
        if entry.name in way.equipment:
            return f"equipment/{field}/{place}", entry
    return None


@dataclass(frozen=True, slots=True)
class Clearances:
    """What a job asks of the clearance of each of its ways."""

    asked: Asked
    shop: PlanEquipment

    def of(self, way: Way) -> PlanClearance | Fouled:
        """Clearance of a way, or why it fouls."""
        shop, asked = self.shop, self.asked
        plate = placed_of(shop.sine_plates, "sine_plates", way)
        if plate is not None:
            return self._on_plate(way, *plate)
        compound = placed_of(shop.compound_plates, "compound_plates", way)
        if compound is not None and way.laid is not None:
            path, hinged = compound
            return on_compound.face_on_compound(asked, self._flat, hinged, f"{path}/", way.laid)
        dressed = placed_of(shop.dressed_wheels, "dressed_wheels", way)
        if dressed is not None:
            return beside_wheel.dressed(asked, dressed[1], dressed[0])
        side = placed_of(shop.wheel_sides, "wheel_sides", way)
        if side is not None:
            return beside_wheel.side(asked, side[1], side[0])
        head = placed_of(shop.swivelled_workheads, "swivelled_workheads", way)
        if head is not None:
            return beside_wheel.workhead(asked, head[1], head[0])
        return not_known(["equipment"])

    def _on_plate(self, way: Way, path: str, plate: PlanSinePlate) -> PlanClearance | Fouled:
        low = next((stack.total for stack in way.stacks if stack.role == "low"), 0.0)
        asked, flat, within = self.asked, self._flat, f"{path}/"
        quarter = way.name == "quarter-turn"
        if asked.wanted.internal:
            spindle = self.shop.internal_spindle
            return in_socket.socket_on_plate(asked, spindle, plate, within, low, quarter=quarter)
        if asked.wanted.turned:
            cone = faces.cone_quarter if quarter else along_plate.cone_along
            return cone(asked, flat, plate, within, low)
        face = faces.face_quarter if quarter else faces.face_along
        return face(asked, flat, plate, within, low)

    @property
    def _flat(self) -> WheelAbout:
        """The flat wheel over the plates."""
        wheel = self.shop.wheel
        if wheel is None:
            return WheelAbout(None, None, None, WHEEL, whole=True)
        names = ("diameter", "width")
        return WheelAbout(wheel.diameter, wheel.width, wheel.head, WHEEL, *names)

"""What each way asks of the hand for safety's sake; none of it may be softened.

The cautions are those of `cautions`. They are said for every way that can, not for the best alone:
whoever takes another way reads them too.
"""

from collections.abc import Iterator, Sequence

from halfangle_service.cautions import (
    DRESSED_ANGLE_UNPROVED,
    DRESSING_SAFETY,
    DRIVEN_WORK,
    GRINDING_DUST,
    MAGNETIC_HOLDING,
    ON_AN_UPRIGHT,
    WHEEL_SAFETY,
    internal_wheel,
    sliding_work,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import PlanWayName
from halfangle_service.topics.jobs.plan.shop.equipment import PlanEquipment
from halfangle_service.topics.jobs.plan.shop.reading import placed
from halfangle_service.topics.jobs.plan.shop.standing import PlanWorkHolder
from halfangle_service.topics.jobs.plan.ways.way import RuledOut, Way
from halfangle_service.trade.wording import plain

#: Ways whose work, or its fixture, stands on a plate or a table that may be magnetic.
_ON_A_TABLE: frozenset[PlanWayName] = frozenset(
    {
        "sine-plate",
        "stacks-under-both-rolls",
        "quarter-turn",
        "compound-sine-plate",
        "dressed-wheel",
        "wheel-side",
    }
)
#: Ways by the wheel over the plates, in a socket by the one on the quill.
_BY_FLAT_WHEEL = _ON_A_TABLE - {"dressed-wheel", "wheel-side"}
#: Ways whose work lies on its base on the tilted plate.
_ON_ITS_BASE: frozenset[PlanWayName] = frozenset(
    {"sine-plate", "stacks-under-both-rolls", "compound-sine-plate"}
)


def of_ways(wanted: Wanted, shop: PlanEquipment, ways: Sequence[Way]) -> Iterator[Advisory]:
    """What to mind of wheel, dust and holding by these ways."""
    names = {way.name for way in ways}
    yield WHEEL_SAFETY
    yield DRESSING_SAFETY
    yield GRINDING_DUST
    if names & _ON_A_TABLE:
        yield MAGNETIC_HOLDING
    if "quarter-turn" in names:
        yield ON_AN_UPRIGHT
    if not wanted.turned and names & _ON_ITS_BASE:
        yield from sliding_work(wanted.angle_degrees)
    if "dressed-wheel" in names:
        yield DRESSED_ANGLE_UNPROVED
    if "wheel-side" in names:
        yield note(
            "side-grinding-last",
            "The wheel's side heats the work and cannot be dressed as truly as its periphery: "
            "where another way fits, take that (common practice, no source).",
        )
    if "swivelled-workhead" in names:
        yield DRIVEN_WORK
    spindle = shop.internal_spindle
    if wanted.internal and spindle is not None:
        yield from internal_wheel(
            spindle.reach, spindle.quill_diameter, spindle.marked_rpm, wanted.units
        )


def not_safe(wanted: Wanted, shop: PlanEquipment, way: Way) -> RuledOut | None:
    """Why nobody runs a way, by what was stated; None where nothing says so."""
    if way.name in _BY_FLAT_WHEEL:
        spun = shop.internal_spindle if wanted.internal else shop.wheel
        path = "equipment/internal_spindle" if wanted.internal else "equipment/wheel"
        if spun is not None and spun.rpm and spun.marked_rpm and spun.rpm > spun.marked_rpm:
            turns, most = f"{plain(spun.rpm)} per minute", f"{plain(spun.marked_rpm)} per minute"
            return RuledOut(
                way.name,
                way.equipment,
                f"The spindle turns at {turns}; {most} is marked on the wheel.",
                f"{path}/rpm",
                f"A wheel marked for at least {turns}, or a slower spindle.",
            )
    return None if wanted.turned else _not_held(shop, way)


def _not_held(shop: PlanEquipment, way: Way) -> RuledOut | None:
    """Work of what no magnet holds, with nothing else to hold it."""
    if way.name == "quarter-turn":
        return None
    for path, name, holder in _holders(shop):
        if name not in way.equipment or holder is None:
            continue
        if holder.magnet_holds is False and holder.holder_height == 0.0:
            return RuledOut(
                way.name,
                way.equipment,
                "No magnet holds this work, and nothing else is stated to hold it.",
                f"{path}/work_holder/holder_height",
                "A vice, a clamp or an angle plate holds it: state how high it stands.",
            )
    return None


def _holders(shop: PlanEquipment) -> Iterator[tuple[str, str, PlanWorkHolder | None]]:
    """What holds work on its base: the path of what it stands on, its name, the holder."""
    for path, plate in placed("sine_plates", shop.sine_plates):
        yield path, plate.name, plate.work_holder
    for path, compound in placed("compound_plates", shop.compound_plates):
        yield path, compound.name, compound.work_holder
    for path, wheel in placed("dressed_wheels", shop.dressed_wheels):
        yield path, wheel.name, wheel.work_holder
